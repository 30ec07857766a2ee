"""Where the wood goes: every square inch bought, from finished part to sawdust."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, fields
from decimal import Decimal
from itertools import pairwise

from yieldplan.model.faces import FORBIDS
from yieldplan.model.plan import Box, Node, Plan, WoodPlan
from yieldplan.model.rounding import blank_in_ticks, mark_in_ticks


@dataclass(frozen=True, kw_only=True)
class WasteSplit:
    """The face of the stock cut for one wood, by what became of it. [ticks^2]

    Parameters
    ----------
    parts
        Finished face of the parts.
    planing
        Milled off between the piece as sawn and the parts in it.
    kerf
        Sawdust of the cuts in the plan.
    trim
        End trims and edge passes.
    misfit
        Sound wood that no part fits; set-up pieces come out of it.
    defects
        Marks that some part of this wood may not have.
    offcuts
        Kept for another job.
    """

    parts: int = 0
    planing: int = 0
    kerf: int = 0
    trim: int = 0
    misfit: int = 0
    defects: int = 0
    offcuts: int = 0

    def shares(self) -> dict[str, int]:
        """Every share by its name, in the order of the class. [ticks^2]"""
        return {each.name: getattr(self, each.name) for each in fields(self)}

    @property
    def bought(self) -> int:
        """All of it: the face of the stock that was cut. [ticks^2]"""
        return sum(self.shares().values())

    def percent(self) -> dict[str, Decimal]:
        """The shares in parts of a hundred, to a tenth, adding up to 100.0.

        Each is rounded down; the tenths left over go to the shares that lost most.
        Nothing was bought: all are 0.
        """
        shares, bought = self.shares(), self.bought
        if not bought:
            return dict.fromkeys(shares, Decimal("0.0"))
        tenths = {name: area * 1000 // bought for name, area in shares.items()}
        lost = {name: area * 1000 % bought for name, area in shares.items()}
        left_over = 1000 - sum(tenths.values())
        # `sorted` keeps the order of the class where two lost the same.
        for name in sorted(lost, key=lambda name: -lost[name])[:left_over]:
            tenths[name] += 1
        return {name: Decimal(tenth).scaleb(-1) for name, tenth in tenths.items()}

    def __add__(self, other: WasteSplit) -> WasteSplit:
        mine, theirs = self.shares(), other.shares()
        return WasteSplit(**{name: mine[name] + theirs[name] for name in mine})


def split(wood_plan: WoodPlan, plan: Plan) -> WasteSplit:
    """Where the stock of one wood goes; the shares add up to what was cut, exactly."""
    blank_of = {
        blank.id: blank for blank in plan.blanks if blank.wood == wood_plan.wood
    }
    minded = frozenset(
        kind
        for blank in blank_of.values()
        if not blank.set_up
        for kind in FORBIDS[blank.show_face] | FORBIDS[blank.back_face]
    )
    finished = {
        name: sum(
            _area(box)
            for place, box in zip(
                blank.inside,
                blank_in_ticks(blank, plan.job.shop.kerf).inside,
                strict=True,
            )
            # The face of a board is counted once, whatever is resawn from under it.
            if place.slice == 0
        )
        for name, blank in blank_of.items()
        if not blank.set_up
    }
    total = WasteSplit()
    for cutting in wood_plan.cuttings:
        marks = [
            mark_in_ticks(mark) for mark in cutting.piece.marks if mark.kind in minded
        ]
        total += WasteSplit(kerf=_kerf(cutting.tree))
        for leaf in cutting.tree.leaves():
            total += _of_leaf(leaf, finished, marks)
    return total


def _of_leaf(leaf: Node, finished: dict[str, int], marks: list[Box]) -> WasteSplit:
    area = _area(leaf.box)
    if leaf.blank in finished:
        parts = finished[leaf.blank]
        return WasteSplit(parts=parts, planing=area - parts)
    if leaf.fate in ("trim", "edge"):
        return WasteSplit(trim=area)
    if leaf.fate == "keep":
        return WasteSplit(offcuts=area)
    spoiled = 0 if leaf.blank is not None else _covered(leaf.box, marks)
    return WasteSplit(misfit=area - spoiled, defects=spoiled)


def _kerf(node: Node) -> int:
    if not node.into:
        return 0
    left = sum(_area(child.box) for child in node.into)
    return _area(node.box) - left + sum(_kerf(child) for child in node.into)


def _area(box: Box) -> int:
    return (box[2] - box[0]) * (box[3] - box[1])


def _covered(box: Box, marks: Iterable[Box]) -> int:
    """How much of the box the marks cover, overlaps counted once. [ticks^2]"""
    inside = list(_clipped(box, marks))
    xs = sorted({x for mark in inside for x in (mark[0], mark[2])})
    covered = 0
    for x0, x1 in pairwise(xs):
        # Between two neighbouring xs every mark is either all there or not at all.
        top = box[1]
        for y0, y1 in sorted((m[1], m[3]) for m in inside if m[0] <= x0 and x1 <= m[2]):
            covered += (x1 - x0) * max(0, y1 - max(y0, top))
            top = max(top, y1)
    return covered


def _clipped(box: Box, marks: Iterable[Box]) -> Iterator[Box]:
    for mark in marks:
        x0, y0 = max(box[0], mark[0]), max(box[1], mark[1])
        x1, y1 = min(box[2], mark[2]), min(box[3], mark[3])
        if x0 < x1 and y0 < y1:
            yield x0, y0, x1, y1
