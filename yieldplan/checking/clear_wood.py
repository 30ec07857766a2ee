"""What clear wood can be worth where no blank is counted oftener than it is asked for.

Blanks go into strips in the order of their width; the last of them leads its strip, which
is as wide as that one, and strips beside each other are led by a blank no oftener than it
is asked for either.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from operator import add

from yieldplan.checking.sums import at_a_time, floors, sums_of
from yieldplan.checking.worths import Held, Item


class ClearWood:
    """Greatest worths of clear strips and of clear stacks, worked out when first asked for.

    Parameters
    ----------
    lengths
        The lengths of a section worth cutting: sums of blanks. [cells]
    longest, widest
        The largest piece they are for. [cells]
    """

    def __init__(
        self, held: Held, lengths: Sequence[int], longest: int, widest: int
    ) -> None:
        self.held = held
        self.lengths = lengths
        self.longest = longest
        self.widest = widest
        self._goods = sorted(held.goods, key=lambda good: (good.wide, good.long))
        self._strips: dict[int, dict[int, list[int]]] = {}
        self._led: list[tuple[Item, list[int]]] = []
        self._stacks: list[list[int]] = []

    def strip(self, classes: int, wide: int) -> list[int]:
        """Greatest worth of a strip so wide, by its length, from items of these classes."""
        if classes not in self._strips:
            self._strips[classes] = self._by_width(classes)
        strips = self._strips[classes]
        return strips[max((each for each in strips if each <= wide), default=0)]

    def _by_width(self, classes: int) -> dict[int, list[int]]:
        """The strips of every width some item has, and of none."""
        row = [0] * (self.longest + 1)
        strips = {0: row}
        for good in self._goods:
            if not classes >> good.face & 1 or not good.at_most:
                continue
            further = _with_more(row, good.long, good.worth, good.at_most - 1)
            first = [good.worth + worth for worth in further]
            if classes == self.held.everyone:
                self._led.append((good, first))
            row = row[: good.long] + list(map(max, row[good.long :], first))
            strips[good.wide] = row
        return strips

    def stack(self, height: int) -> list[int]:
        """Greatest worth of strips side by side in this height, at each of `lengths`."""
        if not self._stacks:
            self.strip(self.held.everyone, 0)
            self._stacks = self._work_out()
        return self._stacks[height]

    def _work_out(self) -> list[list[int]]:
        nothing = [0] * len(self.lengths)
        best = {0: nothing}
        any_number: dict[int, list[int]] = {}
        few: set[int] = set()
        for good, first in self._led:
            worths = [
                first[length - good.long] if length >= good.long else 0
                for length in self.lengths
            ]
            if good.at_most >= self.widest // good.wide:
                others = any_number.get(good.wide, nothing)
                any_number[good.wide] = list(map(max, others, worths))
                continue
            if good.wide not in few:
                few.add(good.wide)
                best = self._with_sums_of(few, best)
            _put_on(best, good, worths)
        best = self._with_sums_of({good.wide for good, _ in self._led}, best)
        lower = floors(list(best), self.widest)
        before = nothing
        for top in best:
            most = list(map(max, before, best[top]))
            for wide, worths in any_number.items():
                if wide > top:
                    break
                under = best[lower[top - wide]]
                most = list(map(max, most, map(add, under, worths)))
            before = best[top] = most
        return [best[lower[height]] for height in range(self.widest + 1)]

    def _with_sums_of(
        self, widths: set[int], best: Mapping[int, list[int]]
    ) -> dict[int, list[int]]:
        """The stacks for every sum of these widths.

        Only sums are worth filling: any other height holds what the next lower one does.
        """
        lower = floors(list(best), self.widest)
        return {
            height: best[lower[height]] for height in [0, *sums_of(widths, self.widest)]
        }


def _put_on(best: dict[int, list[int]], good: Item, worths: list[int]) -> None:
    """Raise the stacks by strips that a blank leads, as many as it is asked for at the most."""
    heights = list(best)
    lower = floors(heights, heights[-1])
    for take in at_a_time(good.at_most):
        high, times = take * good.wide, [take * worth for worth in worths]
        for top in reversed(heights):
            if top < high:
                break
            under = best[lower[top - high]]
            best[top] = list(map(max, best[top], map(add, under, times)))


def _with_more(row: list[int], long: int, worth: int, copies: int) -> list[int]:
    """The worths of strips with so many more of a blank in them, or fewer."""
    for take in at_a_time(copies):
        reach, gain = take * long, take * worth
        if reach >= len(row):
            break
        row = row[:reach] + list(map(max, row[reach:], [gain + each for each in row]))
    return row
