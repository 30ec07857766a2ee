"""One-dimensional instances drawn by the procedures of published test classes, as sticks to crosscut.

- `u`, `t`: E. Falkenauer, A hybrid grouping genetic algorithm for bin packing, Journal of
  Heuristics 2 (1996) 5-30. Sizes 20 to 100 into 150; triplets that fill 1000 exactly.
- `scholl1`, `scholl2`, `scholl3`: A. Scholl, R. Klein, C. Juergens, BISON, Computers &
  Operations Research 24 (1997) 627-645. The third is drawn on a grid ten times as coarse
  (into 10,000): plan.json holds no finer one.
- `schwerin`: P. Schwerin, G. Waescher, The bin-packing problem, International Transactions
  in Operational Research 4 (1997) 377-389. Sizes 150 to 200 into 1000.
- `waescher`: T. Gau, G. Waescher, CUTGEN1, European Journal of Operational Research 84
  (1995) 572-579. Kinds with a mean demand, sizes up to a share of 10,000.
- `lengths`: ours. Three or four stock lengths, the longer ones cheaper a foot, with a kerf.

The procedures are from memory of these papers; draws are ours, so no published optimum
stands beside them, but for the triplets (a third as many sticks as parts).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from tests.packing.plates import ROLL, make_problem
from yieldplan.packing import Problem


@dataclass(frozen=True, kw_only=True)
class Sticks:
    """One instance.

    Parameters
    ----------
    stock
        Length and price of each stock length. [money/10,000]
    parts
        Length to number asked for.
    known
        Sticks of the best plan, where the procedure tells.
    """

    stock: tuple[tuple[int, int], ...]
    parts: dict[int, int]
    kerf: int = 0
    known: int | None = None

    def problem(self) -> Problem:
        """Crosscut only: one cell across."""
        sizes = sorted(self.parts, reverse=True)
        copies = sum(self.parts.values())
        (first, price), *others = self.stock
        one = make_problem(
            (first, 1),
            [(size, 1) for size in sizes],
            [self.parts[size] for size in sizes],
            "R",
            copies=copies,
            kerf=self.kerf,
            price=price,
        )
        bins = [replace(one.bins[0], name="stock 1")]
        bins += [
            replace(one.bins[0], name=f"stock {number}", length=length, price=price)
            for number, (length, price) in enumerate(others, start=2)
        ]
        return replace(one, bins=tuple(bins), step_across=1 + self.kerf)


Rng = np.random.Generator


def _uniform(rng: Rng, count: int, low: int, high: int, into: int) -> Sticks:
    sizes = rng.integers(low, high + 1, size=count).tolist()
    return Sticks(stock=((into, ROLL),), parts=dict(Counter(sizes)))


def _triplets(rng: Rng, count: int) -> Sticks:
    sizes: list[int] = []
    for _ in range(count // 3):
        first = int(rng.integers(380, 491))
        second = int(rng.integers(250, (1000 - first) // 2 + 1))
        sizes += [first, second, 1000 - first - second]
    return Sticks(stock=((1000, ROLL),), parts=dict(Counter(sizes)), known=count // 3)


def _scholl2(rng: Rng) -> Sticks:
    mean = 1000 / int(rng.choice([3, 5, 7, 9]))
    spread = float(rng.choice([0.2, 0.5, 0.9]))
    count = int(rng.choice([50, 100, 200, 500]))
    low, high = round(mean * (1 - spread)), round(mean * (1 + spread))
    return _uniform(rng, count, low, high, 1000)


def _scholl1(rng: Rng) -> Sticks:
    low, into = int(rng.choice([1, 20, 30])), int(rng.choice([100, 120, 150]))
    return _uniform(rng, int(rng.choice([50, 100, 200, 500])), low, 100, into)


def _waescher(rng: Rng) -> Sticks:
    kinds, most = int(rng.integers(20, 51)), float(rng.choice([0.25, 0.5, 0.75]))
    sizes = rng.integers(1000, int(10_000 * most) + 1, size=kinds).tolist()
    needs = rng.multinomial(int(rng.choice([2, 10, 50])) * kinds, [1 / kinds] * kinds)
    parts = Counter[int]()
    for size, need in zip(sizes, needs.tolist(), strict=True):
        parts[size] += max(1, need)
    return Sticks(stock=((10_000, ROLL),), parts=dict(parts))


def _lengths(rng: Rng) -> Sticks:
    feet = sorted(rng.choice([6, 8, 10, 12, 14, 16], size=int(rng.integers(3, 5)), replace=False).tolist())  # fmt: skip
    # In 1/8 in: 96 to the foot; 2.00 to 3.00 a foot.
    stock = tuple(
        (96 * each, 100 * each * int(rng.integers(270 - 4 * each, 300 - 4 * each)))
        for each in feet
    )
    kinds = int(rng.integers(8, 31))
    sizes = rng.integers(8 * 8, feet[0] * 96, size=kinds).tolist()
    parts = Counter[int]()
    for size in sizes:
        parts[size] += int(rng.integers(1, 21))
    return Sticks(stock=stock, parts=dict(parts), kerf=1)


CLASSES: dict[str, Callable[[Rng], Sticks]] = {
    "u120": lambda rng: _uniform(rng, 120, 20, 100, 150),
    "u250": lambda rng: _uniform(rng, 250, 20, 100, 150),
    "u500": lambda rng: _uniform(rng, 500, 20, 100, 150),
    "u1000": lambda rng: _uniform(rng, 1000, 20, 100, 150),
    "t60": lambda rng: _triplets(rng, 60),
    "t120": lambda rng: _triplets(rng, 120),
    "t249": lambda rng: _triplets(rng, 249),
    "t501": lambda rng: _triplets(rng, 501),
    "scholl1": _scholl1,
    "scholl2": _scholl2,
    "scholl3": lambda rng: _uniform(rng, 200, 2000, 3500, 10_000),
    "schwerin1": lambda rng: _uniform(rng, 100, 150, 200, 1000),
    "schwerin2": lambda rng: _uniform(rng, 120, 150, 200, 1000),
    "waescher": _waescher,
    "lengths": _lengths,
}


def draw_sticks(name: str, number: int) -> Sticks:
    """One instance of a class."""
    return CLASSES[name](np.random.default_rng([number, *name.encode()]))
