"""How much work a search is allowed where nobody says, by what kind of job it is."""

from __future__ import annotations

from collections.abc import Sequence

from yieldplan.packing.filling.first_plan import all_copies
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.improving.board_sets import MOST_BOARDS

SOON_LISTED = 12
"""Up to so many kinds of part, all that a board can make is soon listed."""
_WORK_LEAST = 8_000_000
_WORK_PER_BIN = 300_000
_WORK_MOST = 200_000_000
_ROUNDS_LEAST, _ROUNDS_MOST = 10, 60
"""Rounds of prices that the work allowed must hold beside the search."""
_FEW_KINDS = 6
"""Of so few kinds of sheet or stick many are cut alike."""
_ROUNDS_PER_CUT, _ROUNDS_PER_KIND = 80, 5
"""More rounds then: for every board to be cut alike; for every kind of part, where few boards must hold them all."""
_FEW_OF_EACH, _FEW_OF_MOST = 3, 2
"""Parts of a kind: in the mean; or of half the kinds at the most, where a glued-up panel wants scores of one."""
_TIMES = 2
"""As many times the work where no board is cut like another: there is most to be found."""


def work_for(yard: Yard) -> int:
    """Units of work allowed where the stop does not say."""
    num_bins, to_cut = len(yard.pricing.bins), _boards_to_cut(yard)
    rounds = min(_ROUNDS_MOST, _ROUNDS_LEAST + num_bins)
    if are_alike(yard):
        rounds += _ROUNDS_PER_CUT * to_cut
    if num_bins <= MOST_BOARDS:
        rounds += _ROUNDS_PER_KIND * len(yard.problem.demands)
    # Of one kind of sheet or stick many are cut, and each is a choice.
    search = _WORK_LEAST + _WORK_PER_BIN * max(num_bins, to_cut)
    needs = [demand.need for demand in yard.problem.demands]
    if are_hardly_alike(needs):
        search *= _TIMES
    return min(_WORK_MOST, search + rounds * yard.pricing.round_work)


def are_alike(yard: Yard) -> bool:
    """Whether many boards are cut, of few kinds of sheet or stick."""
    is_small = sum(all_copies(yard).values()) <= MOST_BOARDS
    return not is_small and len(yard.pricing.bins) <= _FEW_KINDS


def are_few_of_each(needs: Sequence[int]) -> bool:
    """Whether parts are asked for so seldom that a board's best pattern says little of what it will hold."""
    asked = sorted(count for count in needs if count)
    if sum(asked) <= _FEW_OF_EACH * len(asked):
        return True
    return asked[(len(asked) - 1) // 2] <= _FEW_OF_MOST


def are_hardly_alike(needs: Sequence[int]) -> bool:
    """Whether there are many kinds, and few of each."""
    return are_few_of_each(needs) and sum(map(bool, needs)) > SOON_LISTED


def _boards_to_cut(yard: Yard) -> int:
    """About how many boards it takes, as if they were all alike."""
    bins = [yard.problem.bins[number] for number in yard.pricing.bins]
    area = sum(piece.length * piece.width * piece.copies for piece in bins)
    copies = sum(piece.copies for piece in bins)
    needed = sum(demand.area * demand.need for demand in yard.problem.demands)
    return min(copies, -(-needed * copies // max(1, area)))
