"""What a strip or a stack of strips can be worth: tables that all pieces of a line share."""

from __future__ import annotations

from operator import add

from yieldplan.checking.clear_wood import ClearWood
from yieldplan.checking.obstacles import Soft
from yieldplan.checking.sums import sums_of
from yieldplan.checking.worths import Harm, Held, Item


class Tables:
    """Greatest worths of strips and stacks, worked out when first asked for.

    Parameters
    ----------
    longest, widest
        The largest piece they are for. [cells]
    is_marked
        Whether any of the pieces has marks.
    """

    def __init__(
        self, held: Held, longest: int, widest: int, *, is_marked: bool = False
    ) -> None:
        self.held = held
        self.longest = longest
        self.widest = widest
        items = held.goods or held.items
        self.widths = sorted({item.wide for item in items if item.wide <= widest})
        # Where blanks are counted as asked, a longer section that holds no more may meet
        # one more mark, and be said to hold more for it.
        self.lengths = (
            list(range(1, longest + 1))
            if held.goods and is_marked
            else sums_of({item.long for item in items}, longest)
        )
        """The only lengths worth cutting: sums of blanks."""
        self._strips: dict[tuple[int, int], list[int]] = {}
        self._at_lengths: dict[tuple[int, int], list[int]] = {}
        self._stacks: dict[tuple[int, tuple[Soft, ...]], list[int]] = {}
        self._runs: dict[tuple[int, int, tuple[Soft, ...]], int] = {}
        self._clear: list[list[int]] = []
        self.clear = (
            ClearWood(held, self.lengths, longest, widest) if held.goods else None
        )
        """Of clear wood, where no blank is counted oftener than it is asked for."""

    def strip(self, classes: int, wide: int) -> list[int]:
        """Greatest worth of a strip so wide, by its length, from items of these classes."""
        key = classes, wide
        if key not in self._strips:
            items: list[tuple[int, int]] = []
            for item in self.held.items:
                if item.wide > wide or not classes >> item.face & 1:
                    continue
                # They come by length: a longer one must be worth more.
                if not items or item.worth > items[-1][1]:
                    items.append((item.long, item.worth))
            best = [0] * (self.longest + 1)
            for length in range(1, self.longest + 1):
                most = best[length - 1]
                for long, worth in items:
                    if long > length:
                        break
                    most = max(most, best[length - long] + worth)
                best[length] = most
            self._strips[key] = best
        return self._strips[key]

    def run(
        self, wide: int, length: int, soft: tuple[Soft, ...], *, is_mixed: bool = False
    ) -> int:
        """Greatest worth of one run of a strip, with what blocks some of the items in it.

        Here an item has to be allowed only where it lies itself.

        Parameters
        ----------
        is_mixed
            Whether some blanks of the wood can bear a mark that its strip meets, and
            others not.
        """
        if not soft:
            if self.clear and not is_mixed:
                return self.clear.strip(self.held.everyone, wide)[length]
            return self.strip(self.held.everyone, wide)[length]
        key = wide, length, soft
        if key not in self._runs:
            self._runs[key] = self._along(wide, length, soft)
        return self._runs[key]

    def _along(self, wide: int, length: int, soft: tuple[Soft, ...]) -> int:
        items: list[list[Item]] = [[] for _ in self.held.faces]
        for item in self.held.items:
            if item.wide <= wide:
                items[item.face].append(item)
        zones = _ahead([block for block in soft if block.in_zones], length)
        # A far zone slides off a mark too, when its blank begins further to the left.
        ends = {block.end for block in soft} | {
            block.end - item.long + item.zones[1]
            for block in soft
            if block.in_zones
            for each in items
            for item in each
            if item.zones[1]
        }
        best = [0] * (length + 1)
        for start in range(length):
            if start:
                # Where nothing has been gained, a start further left does as well,
                # unless a block has just been passed.
                gained = best[start] > best[start - 1]
                best[start] = max(best[start], best[start - 1])
                if not gained and start not in ends:
                    continue
            ahead = [block for block in soft if block.end > start]
            for face, each in enumerate(items):
                reach = max(
                    min(
                        (b.start for b in ahead if b.harm.face_a >> face & 1),
                        default=length,
                    ),
                    min(
                        (b.start for b in ahead if b.harm.face_b >> face & 1),
                        default=length,
                    ),
                )
                for item in each:
                    end = start + item.long
                    if end > reach:
                        break
                    near, far = item.zones
                    if near and zones[start] < start + near:
                        continue
                    if not far or zones[end - far] >= end:
                        best[end] = max(best[end], best[start] + item.worth)
        return max(best)

    def stack(
        self, height: int, soft: tuple[Soft, ...], *, is_mixed: bool = False
    ) -> list[int]:
        """Greatest worth of strips side by side in this height, at each of `lengths`.

        Here an item has to be allowed on its whole strip, end to end.

        Parameters
        ----------
        is_mixed
            Whether some blanks of the wood can bear a mark that the section meets, and
            others not.
        """
        if not soft:
            if self.clear and not is_mixed:
                return self.clear.stack(height)
            if not self._clear:
                self._clear = self._across(self.widest, ())
            return self._clear[height]
        key = height, soft
        if key not in self._stacks:
            self._stacks[key] = self._across(height, soft)[height]
        return self._stacks[key]

    def _across(self, height: int, soft: tuple[Soft, ...]) -> list[list[int]]:
        """The stacks of every height up to this one."""
        widths = {
            (classes, item.wide)
            for item in self.held.goods or self.held.items
            for classes in self._class_sets(soft)
            if classes >> item.face & 1
        }
        ends = {block.end for block in soft}
        nothing = [0] * len(self.lengths)
        best = [nothing]
        starts = [True]
        for top in range(1, height + 1):
            most = best[top - 1]
            for wide in self.widths:
                bottom = top - wide
                if bottom < 0:
                    break
                if not starts[bottom]:
                    continue
                classes = self._allowed(bottom, top, soft)
                # Without an item of just this width, a narrower strip does as well.
                if (classes, wide) in widths:
                    strip = self._at(classes, wide)
                    most = list(map(max, most, map(add, best[bottom], strip)))
            gained = most != best[top - 1]
            best.append(most if gained else best[top - 1])
            starts.append(gained or top in ends)
        return best

    def _class_sets(self, soft: tuple[Soft, ...]) -> set[int]:
        """Every set of classes that can be left when some of these blocks are met."""
        harms = {Harm()}
        for block in soft:
            harms |= {harm | block.harm for harm in harms}
        return {self.held.everyone & ~harm.out for harm in harms}

    def _allowed(self, bottom: int, top: int, soft: tuple[Soft, ...]) -> int:
        harm = Harm()
        for block in soft:
            if block.start < top and block.end > bottom:
                harm |= block.harm
        return self.held.everyone & ~harm.out

    def _at(self, classes: int, wide: int) -> list[int]:
        key = classes, wide
        if key not in self._at_lengths:
            strip = (self.clear or self).strip(classes, wide)
            self._at_lengths[key] = [strip[length] for length in self.lengths]
        return self._at_lengths[key]


def _ahead(blocks: list[Soft], length: int) -> list[int]:
    """How far the wood is clear from each place on; no bound where nothing is in the way."""
    ahead = [2 * length + 1] * (length + 1)
    for block in blocks:
        for place in range(min(block.end, length + 1)):
            ahead[place] = min(ahead[place], block.start)
    return ahead
