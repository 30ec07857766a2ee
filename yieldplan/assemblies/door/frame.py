"""The frame of a door leaf: length of its rails, and what its grooves leave room for."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from yieldplan.assemblies.ends import folded, from_inside
from yieldplan.joints.joint import Joint
from yieldplan.model.sums import Sum
from yieldplan.units import Inches


@dataclass(frozen=True, kw_only=True)
class Middle:
    """A middle rail.

    Parameters
    ----------
    name
        What it is called.
    width
        [in]
    up
        Lower edge of the door to its lower edge; None shares the height equally. [in]
    """

    name: str
    width: Inches
    up: Inches | None


@dataclass(frozen=True, kw_only=True)
class Row:
    """The panel between two rails.

    Parameters
    ----------
    name
        What its panel is called.
    high
        From the bottom of the lower rail's groove to that of the upper one's.
    """

    name: str
    high: Sum


@dataclass(frozen=True, kw_only=True)
class Frame:
    """Stiles, rails and groove of one leaf.

    Parameters
    ----------
    width, height
        Outside, without horns.
    stile, thickness, horns
        Width and thickness of the stiles, what they are left long at each end. [in]
    joint
        Between rail and stile, with all its figures.
    groove
        Depth of the panel's groove. [in]
    top, bottom
        Widths of the rails. [in]
    middles
        From the top down.
    """

    width: Sum
    height: Sum
    stile: Inches
    thickness: Inches
    horns: Inches
    joint: Joint
    groove: Inches
    top: Inches
    bottom: Inches
    middles: tuple[Middle, ...]

    @property
    def stile_length(self) -> Sum:
        """The full height, and the horns."""
        return (
            self.height + Sum.of(("horn", self.horns, 2)) if self.horns else self.height
        )

    @property
    def rail_length(self) -> Sum:
        """From shoulder to shoulder and what the joint adds at each end."""
        end = from_inside(
            self.joint,
            own=self.thickness,
            mate=self.stile,
            mate_words="stile",
        )
        return folded(self.width + Sum.of(("stile", -self.stile, 2)) + end.times(2))

    @property
    def wide(self) -> Sum:
        """From the bottom of one stile's groove to that of the other."""
        return self.width + Sum.of(
            ("stile", -self.stile, 2), ("groove", self.groove, 2)
        )

    @property
    def sight(self) -> Inches:
        """What shows between the stiles. [in]"""
        return self.width.value - 2 * self.stile

    def rows(self) -> Iterator[Row]:
        """The panels from the top down."""
        names = _row_names(len(self.middles) + 1)
        grooves = Sum.of(("groove", self.groove, 2))
        if any(middle.up is None for middle in self.middles):
            for name in names:
                yield Row(name=name, high=folded(self._equal_share() + grooves))
            return
        above = self.height + Sum.of(("top rail", -self.top))
        for name, middle in zip(names, self.middles, strict=False):
            up = middle.up or self.bottom
            below = Sum.of((f"up to {middle.name}", -up), (middle.name, -middle.width))
            yield Row(name=name, high=folded(above + below + grooves))
            above = Sum.of((f"up to {middle.name}", up))
        below = Sum.of(("bottom rail", -self.bottom))
        yield Row(name=names[-1], high=folded(above + below + grooves))

    def _equal_share(self) -> Sum:
        """What each row shows where all are alike: the height less all rails, shared."""
        rows = len(self.middles) + 1
        rails = Sum.of(
            ("top rail", -self.top),
            *((middle.name, -middle.width) for middle in self.middles),
            ("bottom rail", -self.bottom),
        )
        whole = self.height + rails
        if rows == 1:
            return whole
        share = {2: "half", 3: "a third"}.get(rows, f"1/{rows}")
        return Sum.of(
            *((f"{share} of {t.words}", t.inches / rows, t.times) for t in whole)
        )


def _row_names(rows: int) -> tuple[str, ...]:
    few = {
        1: ("panel",),
        2: ("upper panel", "lower panel"),
        3: ("upper panel", "middle panel", "lower panel"),
    }
    return few.get(rows) or tuple(f"panel {n}" for n in range(1, rows + 1))
