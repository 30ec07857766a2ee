"""The case of a bookcase between its outsides: every size a sum a maker would write."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from yieldplan.assemblies.bookcase.keys import Back, ToeKick
from yieldplan.assemblies.ends import folded, from_outside
from yieldplan.joints.joint import Joint, Role
from yieldplan.model.sums import Sum
from yieldplan.units import Inches, UnitName, tape


@dataclass(frozen=True, kw_only=True)
class Across:
    """A board from side to side, as far as its sizes go.

    Parameters
    ----------
    words
        What it is called: `top`.
    joint
        How it meets the sides, its figures settled.
    set_in
        How far the sides run past it. [in]
    """

    words: str
    thickness: Inches
    joint: Joint
    set_in: Inches = Fraction(0)


@dataclass(frozen=True, kw_only=True)
class Case:
    """The case as the job and the shop say it.

    Parameters
    ----------
    width, height, depth
        Over all. [in]
    back_thickness
        0 where there is no back. [in]
    play
        Room a sheet back has in its rabbets. [in]
    tongue, gap
        Of the boards of a solid back. [in]
    openings
        Clear heights from the top down. [in]
    loose_clearance
        Left free at each end of a loose shelf. [in]
    """

    width: Inches
    height: Inches
    depth: Inches
    side: Inches
    top: Across
    bottom: Across
    shelf: Across
    openings: tuple[Inches, ...]
    toe_kick: ToeKick | None
    kick_joint: Joint
    kick_thickness: Inches
    back: Back | None
    back_thickness: Inches
    play: Inches
    tongue: Inches
    gap: Inches
    loose_clearance: Inches

    @property
    def num_shelves(self) -> int:
        """How many fixed shelves there are."""
        return len(self.openings) - 1

    @property
    def side_length(self) -> Sum:
        """Length of a side, from the floor to the top of the case."""
        total = Sum.of(("height", self.height))
        for end in (self.top, self.bottom):
            if end.joint.makes_box_corner and not end.set_in:
                total += from_outside(
                    end.joint,
                    Role.HOUSING,
                    own=self.side,
                    mate=end.thickness,
                    mate_words=end.words,
                )
        return folded(total)

    def across(self, joint: Joint, thickness: Inches) -> Sum:
        """Length of a part from side to side, joined to both. [in]"""
        end = from_outside(
            joint, Role.HOUSED, own=thickness, mate=self.side, mate_words="side"
        )
        return folded(Sum.of(("width", self.width)) + end.times(2))

    @property
    def clear(self) -> Sum:
        """Between the sides' faces."""
        return Sum.of(("width", self.width), ("side", -self.side, 2))

    @property
    def loose_length(self) -> Sum:
        """Length of a loose shelf."""
        return self.clear + _less("clearance", self.loose_clearance, 2)

    def front_to_back(self, set_back: Inches = Fraction(0)) -> Sum:
        """Width of a board that the back covers behind.

        Parameters
        ----------
        set_back
            From the sides' front edges. [in]
        """
        return (
            Sum.of(("depth", self.depth))
            + _less("back", self.back_thickness)
            + _less("set back", set_back)
        )

    @property
    def top_width(self) -> Sum:
        """Width of the top: it covers the back where it is rabbeted for it."""
        whole = Sum.of(("depth", self.depth))
        return whole if self.top_is_rabbeted else self.front_to_back()

    @property
    def top_is_rabbeted(self) -> bool:
        """Whether the back ends in a rabbet of the top."""
        return self.back is not None and self.back.rabbeted == "sides and top"

    @property
    def inside_height(self) -> Sum:
        """From the bottom's upper face to the top's lower one."""
        return (
            Sum.of(("height", self.height))
            + _less("above the top", self.top.set_in)
            + Sum.of(("top", -self.top.thickness), ("bottom", -self.bottom.thickness))
            + self._below()
        )

    @property
    def filled(self) -> Sum:
        """What the openings and the shelves between them come to."""
        total = Sum(tuple(t for o in self.openings for t in Sum.of(("opening", o))))
        if self.num_shelves:
            total += Sum.of(("shelf", self.shelf.thickness, self.num_shelves))
        return folded(total)

    @property
    def back_height(self) -> Sum:
        """Height of the back: from the bottom's underside to the top, or into it."""
        total = (
            Sum.of(("height", self.height))
            + _less("above the top", self.top.set_in)
            + self._below()
        )
        if self.back is not None and self.top_is_rabbeted:
            rabbet = self.back.joint.depth(mate=self.top.thickness)
            total += Sum.of(("top", -self.top.thickness)) + rabbet
            total += _less("play", self.play)
        return total

    @property
    def back_width(self) -> Sum:
        """Width of the back, from rabbet to rabbet."""
        if self.back is None:
            return self.clear
        rabbet = self.back.joint.depth(mate=self.side)
        return folded(self.clear + rabbet.times(2) + _less("play", self.play))

    def lower_faces(self) -> Iterator[tuple[str, Inches]]:
        """How high over the floor the lower face of the bottom and of each shelf lies."""
        up = self.bottom.set_in
        yield "bottom", up
        up += self.bottom.thickness
        for opening in self.openings[:0:-1]:
            up += opening
            yield "shelf", up
            up += self.shelf.thickness

    def setting_out(self, unit: UnitName) -> str:
        """What the bench marks on a side."""
        *faces, _ = [*self.lower_faces(), ("top", self.height)]
        marks = ", ".join(
            f"{words} {tape(up, unit, join='-')}" for words, up in faces if up
        )
        return f"lower faces from the floor: {marks}" if marks else ""

    def _below(self) -> Sum:
        words = "toe kick" if self.toe_kick is not None else "below the bottom"
        return _less(words, self.bottom.set_in)


def equal_openings(inside: Inches, shelf: Inches, shelves: int) -> tuple[Inches, ...]:
    """Clear heights of the openings when all are alike.

    Parameters
    ----------
    inside
        Height between bottom and top. [in]
    shelf
        Thickness of a shelf. [in]
    """
    return ((inside - shelves * shelf) / (shelves + 1),) * (shelves + 1)


def _less(words: str, inches: Inches, times: int = 1) -> Sum:
    return Sum.of((words, -inches, times)) if inches else Sum(())
