"""Why a part cannot be made from what is offered, and what to do about it, in words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from math import ceil

from yieldplan.model.job import Job
from yieldplan.model.pieces import Piece
from yieldplan.model.plan import Missing
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.problem import Item
from yieldplan.units import UnitName, feet_and_inches, from_ticks, tape


def missing_part(
    demand: int,
    count: int,
    yard: Yard,
    pieces: Sequence[Piece],
    thickness: Mapping[str, Fraction],
    job: Job,
    *,
    was_stopped: bool = False,
) -> Missing:
    """One part that is left out: how many, why, and what to do.

    Parameters
    ----------
    was_stopped
        Whether the search was stopped before it could tell that wood is too little.
    pieces
        In the order of the problem's bins.
    thickness
        Least rough thickness of each blank. [in]
    """
    problem = yard.problem
    name = problem.demands[demand].name
    makers = [
        number for number, item in enumerate(problem.items) if demand in item.makes
    ]
    if not makers:
        reason, remedy = (
            "nothing that can be sawn makes it",
            "Look at its wood and size",
        )
    elif yard.can_make(demand) and was_stopped:
        reason = "the search was stopped before it found a place for it"
        remedy = "Plan again and let the search run, or add wood"
    elif yard.can_make(demand):
        reason, remedy = _too_little(demand, count, makers, yard, pieces, job)
    else:
        reason, remedy = _no_place(makers, yard, thickness, job)
    whole = problem.demands[demand].whole
    parts = -(-count // whole) if whole > 1 else None
    return Missing(demand=name, count=count, reason=reason, remedy=remedy, parts=parts)


def _size(ticks: int, unit: UnitName) -> str:
    return f"{tape(from_ticks(ticks), unit, join='-')} {unit}"


def _no_place(
    makers: Sequence[int], yard: Yard, thickness: Mapping[str, Fraction], job: Job
) -> tuple[str, str]:
    problem, unit = yard.problem, job.unit
    serving = [
        (number, bin_)
        for number in makers
        for bin_, piece in enumerate(problem.bins)
        if number in piece.holds
    ]
    if not serving:
        least = min(thickness[problem.items[number].name] for number in makers)
        thick = f"{tape(least, unit, join='-')} {unit}"
        return (
            f"needs stock at least {thick} thick; nothing offered serves",
            "Add a piece that is thick enough, or make the part thinner",
        )
    # The least demanding way to make it tells best what is lacking.
    number = min(
        {number for number, _ in serving},
        key=lambda n: (problem.items[n].width, problem.items[n].length, n),
    )
    bins = [bin_ for one, bin_ in serving if one == number]
    item, size = problem.items[number], yard.sizes[number]
    grids = [yard.grids[bin_] for bin_ in bins]
    if all(grid.across < size.across for grid in grids):
        has = max(problem.bins[b].width - sum(problem.bins[b].edges) for b in bins)
        step = problem.step_across
        need = item.width if has < item.width else size.across * step - problem.kerf
        best = has if has < item.width else (
            max(grid.across for grid in grids) * step - problem.kerf
        )  # fmt: skip
        return (
            f"needs {_size(need, unit)} clear width; the widest piece less its edges "
            f"has {_size(best, unit)}",
            _narrower(item),
        )
    if all(grid.along < size.along for grid in grids):
        has = max(problem.bins[b].length - sum(problem.bins[b].trims) for b in bins)
        step = problem.step_along
        need = item.length if has < item.length else size.along * step - problem.kerf
        best = has if has < item.length else (
            max(grid.along for grid in grids) * step - problem.kerf
        )  # fmt: skip
        return (
            f"needs {_size(need, unit)} in length; the longest piece less its end trims "
            f"has {_size(best, unit)}",
            "Add a longer piece, or make the part shorter",
        )
    both = f"{_size(item.length, unit)} x {_size(item.width, unit)}"
    if any(g.along >= size.along and g.across >= size.across for g in grids):
        return (
            f"needs {both} free of the marks it may not show; no piece has such a place",
            "Add a clearer piece, or let the part show more",
        )
    return (
        f"needs {both}; no piece is both long and wide enough",
        "Add a piece of that size, or make the part smaller",
    )


def _narrower(item: Item) -> str:
    if sum(item.makes.values()) > 1:
        return (
            "Match fewer parts side by side, lay them end to end, or add a wider piece"
        )
    return "Add a wider piece, glue the part up from strips, or make it narrower"


def _too_little(
    demand: int,
    count: int,
    makers: Sequence[int],
    yard: Yard,
    pieces: Sequence[Piece],
    job: Job,
) -> tuple[str, str]:
    problem = yard.problem
    served = [n for n in makers if any(n in piece.holds for piece in problem.bins)]
    # The smallest blank that makes it asks for the smallest board.
    number = min(
        served or makers,
        key=lambda n: (problem.items[n].length * problem.items[n].width, n),
    )
    item = problem.items[number]
    blanks = -(-count // item.makes[demand])
    serving = sorted(
        (piece.line, place)
        for place, (piece, bin_) in enumerate(zip(pieces, problem.bins, strict=True))
        if number in bin_.holds
    )
    return (
        "the pile is too small: there is no room left for it",
        _what_to_buy(number, item, blanks, serving, yard, pieces, job),
    )


def _least_board(number: int, bin_: int, yard: Yard) -> tuple[int, int]:
    """Length and width of the least piece the item can be sawn from, trims and all. [ticks]"""
    problem, size = yard.problem, yard.sizes[number]
    trims, edges = problem.bins[bin_].trims, problem.bins[bin_].edges
    length = yard.grids[bin_].zero + size.along * problem.step_along + trims[1]
    width = sum(edges) + size.across * problem.step_across - problem.kerf
    return length, width


def _what_to_buy(
    number: int,
    item: Item,
    blanks: int,
    serving: Sequence[tuple[str, int]],
    yard: Yard,
    pieces: Sequence[Piece],
    job: Job,
) -> str:
    """How much more of which line, with the shop's own planning waste."""
    unit = job.unit
    if not serving:
        return "Buy more of the wood"
    line, place = serving[0]
    piece = pieces[place]
    long, wide = _least_board(number, place, yard)
    size = (
        f"{feet_and_inches(from_ticks(long), unit)} long and {_size(wide, unit)} wide"
    )
    if piece.board_feet is None:
        return f"Buy one more of {line}, or a piece at least {size}"
    area = from_ticks(item.length) * from_ticks(item.width) * blanks
    net = area * piece.thick / 144
    feet = ceil(net * (100 + job.shop.add_percent) / 100)
    return f"Buy about {feet} bf more of {line}, in pieces at least {size}"
