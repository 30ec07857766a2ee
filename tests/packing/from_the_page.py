"""The greatest value of one piece by trying every pattern, written from `plan_format.md` alone."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache
from itertools import groupby
from math import ceil, floor

from yieldplan.packing.problem import Bin, Block, Problem


class Page:
    """One bin of a problem, as the page lays it out."""

    def __init__(self, problem: Problem, piece: Bin) -> None:
        self.problem, self.piece = problem, piece
        kerf, step = problem.kerf, problem.step_along
        trim, far = piece.trims
        if problem.marks_from == "zero end":
            self.first = ceil(Fraction(trim, step)) * step
        else:
            self.first = trim - kerf
        self.along = floor(Fraction(piece.length - far - self.first, step))
        self.across = floor(
            Fraction(piece.width - sum(piece.edges) + kerf, problem.step_across)
        )

    def takes(self, number: int) -> tuple[int, int]:
        """Cells of an item, along and across."""
        item, kerf = self.problem.items[number], self.problem.kerf
        return (
            ceil(Fraction(item.length + kerf, self.problem.step_along)),
            ceil(Fraction(item.width + kerf, self.problem.step_across)),
        )

    def room(self, i: int, j: int, family: str) -> tuple[int, int]:
        """Cells across of a stretch, and by how many its marks reach further down."""
        piece, problem = self.piece, self.problem
        step_x, step_y = problem.step_along, problem.step_across
        length = piece.length
        near, far = piece.widths or (piece.width, piece.width)
        if family == "R":
            m, wide, wood = length, min(near, far), length
        else:
            m, wood = (j - i) * step_x, (j - i) * step_x - problem.kerf
            at = [min(max(self.first + mark * step_x, 0), length) for mark in (i, j)]
            wide = min(near + floor(Fraction((far - near) * x, length)) for x in at)
        crook = Fraction(piece.crook * m * m, length * length)
        most = problem.crook_at_most
        if most is not None and ceil(crook) > most:
            return 0, 0
        if piece.is_twisted and wood > problem.twisted_at_most + step_x:
            return 0, 0
        down = ceil(crook / step_y)
        across = floor(Fraction(wide - sum(piece.edges) + problem.kerf, step_y)) - down
        return max(across, 0), down

    def zones(self, number: int) -> tuple[int, int]:
        """Cells of an item's zones, at zero and at its far end."""
        item, problem = self.problem.items[number], self.problem
        long, _ = self.takes(number)
        near, far = item.zones
        return (
            min(long, ceil(Fraction(near + problem.kerf, problem.step_along)))
            if near
            else 0,
            min(
                long,
                ceil(
                    Fraction(
                        far + long * problem.step_along - item.length,
                        problem.step_along,
                    )
                ),
            )
            if far
            else 0,
        )

    def meets(
        self,
        box: tuple[int, int, int, int],
        i: int,
        j: int,
        u: int,
        v: int,
        down: int = 0,
    ) -> bool:
        """Whether a rectangle of cells meets a mark."""
        x0, y0, x1, y1 = box
        step_x, step_y = self.problem.step_along, self.problem.step_across
        edge = self.piece.edges[0]
        low = floor(Fraction(y0 - edge + self.problem.kerf, step_y))
        high = ceil(Fraction(y1 - edge, step_y))
        return (
            i < ceil(Fraction(x1 - self.first, step_x))
            and j > floor(Fraction(x0 - self.first, step_x))
            and u < high
            and v > min(low, high - 1) - down
        )

    def ways_up(
        self, number: int, i: int, j: int, u: int, v: int, family: str, down: int = 0
    ) -> set[int]:
        """The faces that may be up (0 is A, 1 is B) when the item lies in a rectangle.

        Rip first i to j is its own stretch, crosscut first its section's.
        """
        item = self.problem.items[number]

        def met(a: int, b: int) -> list[Block]:
            return [
                block
                for block in self.piece.blocks
                if self.meets(block.box, a, b, u, v, down)
            ]

        near, far = self.zones(number)
        in_zones: list[Block] = []
        if family == "R":
            in_zones += met(i, i + near) if near else []
            in_zones += met(j - far, j) if far else []
        elif near or far:
            in_zones += met(i, j)
        if any((block.on_a | block.on_b) & item.zone_bits for block in in_zones):
            return set()
        return {
            way
            for way, (side_a, side_b) in enumerate(item.layers)
            if not any(b.on_a & side_a or b.on_b & side_b for b in met(i, j))
        }

    def may_lie(
        self, number: int, i: int, j: int, u: int, v: int, family: str = "C"
    ) -> bool:
        """Whether the item may lie in a rectangle with face A up or with face B up."""
        _, down = self.room(i, j, family)
        return bool(self.ways_up(number, i, j, u, v, family, down))

    def greatest(self, prices: Sequence[int], family: str) -> int:
        """V of the page."""
        if self.along < 1 or self.across < 1:
            return 0
        if family[0] == "E":
            return max(self.greatest(prices, way + family[1:]) for way in "RC")
        value = {
            number: sum(
                prices[demand] * count
                for demand, count in self.problem.items[number].makes.items()
            )
            for number in self.piece.holds
            if number not in self.problem.in_sets()
        }
        self.of_sets = [
            (
                steps,
                sum(
                    prices[demand] * count
                    for number in steps
                    for demand, count in self.problem.items[number].makes.items()
                ),
            )
            for steps in self.problem.sets
            if set(steps) <= self.piece.holds and self.piece.is_straight
        ]
        if family.endswith("+"):
            return BesideMarks(self, value).greatest(family)
        return self._rip(value) if family == "R" else self._crosscut(value)

    def worth(self, length: int, width: int, box: tuple[int, int, int, int]) -> int:
        """What an offcut counts for, left in a box of cells (i, j, u, v)."""
        piece, problem = self.piece, self.problem
        area, whole = length * width, piece.length * piece.width
        if (
            not piece.is_straight
            or length <= 0
            or width <= 0
            or 10 * area < 3 * whole
            or not any(length >= a and width >= b for a, b in problem.offcut_sizes)
            or any(self.meets(found, *box) for found in piece.found)
        ):
            return 0
        share = Fraction(problem.offcut_percent * area, 100 * whole)
        return floor(piece.price * share)

    def end_worth(self, j: int) -> int:
        """Of what lies beyond mark j."""
        if j >= self.along:
            return 0
        length = (self.along - j) * self.problem.step_along - self.problem.kerf
        width = self.piece.width - sum(self.piece.edges)
        return self.worth(length, width, (j, self.along, 0, self.across))

    def edge_worth(self, v: int) -> int:
        """Of what lies beyond cell v of a board that is ripped first."""
        if v >= self.across:
            return 0
        length = self.along * self.problem.step_along - self.problem.kerf
        width = (self.across - v) * self.problem.step_across - self.problem.kerf
        return self.worth(length, width, (0, self.along, v, self.across))

    # -- no blank oftener than it is asked for ----------------------------------

    def asked(self, number: int) -> int:
        """How often the page counts a blank at the most."""
        item, demands = self.problem.items[number], self.problem.demands
        of_each = [Fraction(demands[d].need, count) for d, count in item.makes.items()]
        return max(map(ceil, of_each), default=0)

    def is_mixed(self, block: Block, family: str) -> bool:
        """Whether some blanks of the wood cannot bear a mark and others can."""
        shunned, matters = [], []
        for number, item in enumerate(self.problem.items):
            ways = [
                bool(block.on_a & side_a or block.on_b & side_b)
                for side_a, side_b in item.layers
            ]
            zoned = bool(
                any(self.zones(number)) and (block.on_a | block.on_b) & item.zone_bits
            )
            shunned.append(all(ways) or (family == "C" and zoned))
            matters.append(any(ways) or zoned)
        return any(matters) and not all(shunned)

    def met(
        self, i: int, j: int, u: int, v: int, down: int, family: str
    ) -> tuple[list[Block], bool]:
        """Marks in a rectangle that matter to a blank of the wood, and whether one is mixed."""
        met = [b for b in self.piece.blocks if self.meets(b.box, i, j, u, v, down)]
        matters = [
            block
            for block in met
            if any(
                block.on_a & side_a or block.on_b & side_b
                for item in self.problem.items
                for side_a, side_b in item.layers
            )
            or any(
                any(self.zones(number)) and (block.on_a | block.on_b) & item.zone_bits
                for number, item in enumerate(self.problem.items)
            )
        ]
        return matters, any(self.is_mixed(block, family) for block in matters)

    def in_order(self, value: dict[int, int]) -> list[int]:
        """Blanks by the cells they take across, then along, then as the file has them."""
        return sorted(value, key=lambda n: (*reversed(self.takes(n)), n))

    def _filled(
        self, value: dict[int, int], numbers: Sequence[int], wide: int, long: int
    ) -> int:
        """The most in one run of a strip: every blank no oftener than it is asked for."""
        best = [0] * (long + 1)
        for number in numbers:
            takes, across = self.takes(number)
            if across > wide:
                continue
            best = [
                max(
                    best[room - count * takes] + count * value[number]
                    for count in range(min(self.asked(number), room // takes) + 1)
                )
                for room in range(long + 1)
            ]
        return best[long]

    def _led(self, value: dict[int, int], number: int, long: int) -> int:
        """The most in a strip that is led by a blank."""
        takes, across = self.takes(number)
        order = self.in_order(value)
        before = order[: order.index(number)]
        return max(
            (
                count * value[number]
                + self._filled(value, before, across, long - count * takes)
                for count in range(1, self.asked(number) + 1)
                if count * takes <= long
            ),
            default=0,
        )

    def _rip(self, value: dict[int, int]) -> int:
        across, down = self.room(0, self.along, "R")
        order = self.in_order(value)

        @lru_cache(None)
        def beside_marks(u: int, v: int, i: int) -> int:
            if i >= self.along:
                return 0
            best = beside_marks(u, v, i + 1)
            for number, worth in value.items():
                long, wide = self.takes(number)
                if (
                    i + long <= self.along
                    and wide <= v - u
                    and self.may_lie(number, i, i + long, u, v, "R")
                ):
                    best = max(best, worth + beside_marks(u, v, i + long))
            return best

        @lru_cache(None)
        def strip(u: int, v: int) -> int:
            marks, is_mixed = self.met(0, self.along, u, v, down, "R")
            if is_mixed:
                return beside_marks(u, v, 0)
            is_free = [
                not any(self.meets(b.box, i, i + 1, u, v, down) for b in marks)
                for i in range(self.along)
            ]
            return sum(self._filled(value, order, v - u, run) for run in _runs(is_free))

        @lru_cache(None)
        def board(u: int) -> int:
            return max(
                [self.edge_worth(u)]
                + [strip(u, v) + board(v) for v in range(u + 1, across + 1)]
                + ([board(u + 1)] if u < across else [])
            )

        return board(0)

    def _crosscut(self, value: dict[int, int]) -> int:
        order = self.in_order(value)

        @lru_cache(None)
        def strip(i: int, j: int, u: int, v: int) -> int:
            allowed = [n for n in order if self.may_lie(n, i, j, u, v)]
            return self._filled(value, allowed, v - u, j - i)

        @lru_cache(None)
        def led(number: int, long: int) -> int:
            return self._led(value, number, long)

        @lru_cache(None)
        def stack(first: int, high: int, long: int) -> int:
            """Strips led by the first so many blanks in order."""
            if first == 0:
                return 0
            number = order[first - 1]
            wide, worth = self.takes(number)[1], led(number, long)
            return max(
                count * worth + stack(first - 1, high - count * wide, long)
                for count in range(min(self.asked(number), high // wide) + 1)
            )

        @lru_cache(None)
        def mixed(i: int, j: int, u: int, across: int) -> int:
            return max(
                [0]
                + [
                    strip(i, j, u, v) + mixed(i, j, v, across)
                    for v in range(u + 1, across + 1)
                ]
                + ([mixed(i, j, u + 1, across)] if u < across else [])
            )

        @lru_cache(None)
        def section(i: int, j: int, u: int) -> int:
            across, down = self.room(i, j, "C")
            if u >= across:
                return 0
            marks, is_mixed = self.met(i, j, u, across, down, "C")
            if is_mixed:
                return mixed(i, j, u, across)
            is_free = [
                not any(self.meets(b.box, i, j, cell, cell + 1, down) for b in marks)
                for cell in range(u, across)
            ]
            return sum(stack(len(order), run, j - i) for run in _runs(is_free))

        def in_steps(i: int, steps: tuple[int, ...], worth: int) -> tuple[int, int]:
            """Where a set that begins at i ends, and its value with what lies beside it."""
            ways, at = {0, 1}, i
            for number in steps:
                long, wide = self.takes(number)
                if at + long > self.along or wide > self.across:
                    return 0, -1
                ways &= self.ways_up(number, at, at + long, 0, wide, "C")
                worth += section(at, at + long, wide)
                at += long
            return (at, worth) if ways else (0, -1)

        # Where marks that matter end: there a section may begin whatever lies before it.
        marks, _ = self.met(0, self.along, 0, self.across, 0, "C")
        ends = {
            ceil(Fraction(b.box[2] - self.first, self.problem.step_along))
            for b in marks
        }
        best = [0] * (self.along + 1)
        sets = {
            i: [in_steps(i, *each) for each in self.of_sets] for i in range(self.along)
        }
        begins = [True]
        for s in range(1, self.along + 1):
            best[s] = max(
                [best[s - 1]]
                + [best[i] + section(i, s, 0) for i in range(s) if begins[i]]
                + [
                    best[i] + worth
                    for i in range(s)
                    for j, worth in sets[i]
                    if worth >= 0 and j == s
                ]
            )
            begins.append(
                best[s] > best[s - 1] or s in ends or not self.piece.is_straight
            )
        return max(best[j] + self.end_worth(j) for j in range(self.along + 1))


def _runs(is_free: Sequence[bool]) -> list[int]:
    """How long the stretches of free cells are."""
    return [len(list(cells)) for free, cells in groupby(is_free) if free]


class BesideMarks:
    """V of the page in R+ and C+: blanks on cells of their own."""

    def __init__(self, page: Page, value: dict[int, int]) -> None:
        self.page = page
        self.value = value
        self.places: dict[tuple[int, int], list[int]] = {}
        for number in value:
            long, wide = page.takes(number)
            for x in range(page.along - long + 1):
                # Taken for straight: nothing reaches further down.
                self.places[number, x] = [
                    u
                    for u in range(page.across - wide + 1)
                    if page.ways_up(number, x, x + long, u, u + wide, "R")
                ]
        self.strip = lru_cache(None)(self._strip)
        self.section = lru_cache(None)(self._section)
        self.clear_strip = lru_cache(None)(self._clear_strip)
        self.clear = lru_cache(None)(self._clear)

    def greatest(self, family: str) -> int:
        page = self.page
        if family == "C+":
            return self._board()
        if not page.piece.is_straight:
            room, _ = page.room(0, page.along, "R")
            whole = self.section(0, page.along, page.across)
            return min(whole, self.clear(page.along, room))
        return max(
            self.section(0, page.along, v) + page.edge_worth(v)
            for v in range(page.across + 1)
        )

    def _board(self) -> int:
        page = self.page
        best = [page.end_worth(0)] + [0] * page.along
        begin = [0] * (page.along + 1)
        for j in range(1, page.along + 1):
            begin[j] = max(
                [begin[j - 1]]
                + [begin[i] + self._worth(i, j) for i in range(j)]
                + [
                    begin[j - long] + worth
                    for long, worth in (self._in_steps(j, *s) for s in page.of_sets)
                    if worth >= 0
                ]
            )
            best[j] = begin[j] + page.end_worth(j)
        return max(best)

    def _worth(self, i: int, j: int) -> int:
        page = self.page
        worth = self.section(i, j, page.across)
        if page.piece.is_straight:
            return worth
        room, _ = page.room(i, j, "C")
        return min(worth, self.clear(j - i, room))

    def _in_steps(
        self, end: int, steps: tuple[int, ...], worth: int
    ) -> tuple[int, int]:
        """Cells along of a set that ends at a mark, and its worth; -1 where it may not."""
        page, ways = self.page, {0, 1}
        long_all = sum(page.takes(number)[0] for number in steps)
        at = end - long_all
        if at < 0:
            return 0, -1
        for number in steps:
            long, wide = page.takes(number)
            if wide > page.across:
                return 0, -1
            ways &= page.ways_up(number, at, at + long, 0, wide, "C")
            worth += self.clear(long, page.across - wide)
            at += long
        return (long_all, worth) if ways else (0, -1)

    def _section(self, i: int, j: int, v: int) -> int:
        if v == 0:
            return 0
        return max(
            [self.section(i, j, v - 1)]
            + [self.section(i, j, u) + self.strip(i, j, u, v) for u in range(v)]
        )

    def _strip(self, i: int, j: int, u: int, v: int) -> int:
        if i == j:
            return 0
        best = self.strip(i + 1, j, u, v)
        for number, worth in self.value.items():
            long, wide = self.page.takes(number)
            if i + long <= j and any(
                u <= low and low + wide <= v for low in self.places[number, i]
            ):
                best = max(best, worth + self.strip(i + long, j, u, v))
        return best

    def _clear(self, long: int, high: int) -> int:
        """Strips of any widths beside each other, without a mark."""
        return max(
            [0]
            + [
                self.clear(long, high - wide) + self.clear_strip(long, wide)
                for wide in range(1, high + 1)
            ]
        )

    def _clear_strip(self, long: int, wide: int) -> int:
        best = 0
        for number, worth in self.value.items():
            takes, needs = self.page.takes(number)
            if takes <= long and needs <= wide:
                best = max(best, worth + self.clear_strip(long - takes, wide))
        return best


def floor_of(problem: Problem, prices: Sequence[int], need: Sequence[int]) -> int:
    """`priced` of the page."""
    return sum(p * n for p, n in zip(prices, need, strict=True)) + sum(
        piece.copies
        * min(0, piece.price - Page(problem, piece).greatest(prices, problem.family))
        for piece in problem.bins
    )
