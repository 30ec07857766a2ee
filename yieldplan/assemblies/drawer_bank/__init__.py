"""Drawer bank: drawers one above the other that fill an opening of a case exactly."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar

from yieldplan.assemblies.assembly import Fit
from yieldplan.assemblies.drawer import Drawer
from yieldplan.assemblies.drawer.keys import DrawerKeys, Opening
from yieldplan.assemblies.drawer_bank import checks, rails
from yieldplan.assemblies.drawer_bank.heights import STEP, Shared
from yieldplan.assemblies.drawer_bank.keys import Frame, Graduated, Rail
from yieldplan.assemblies.drawer_bank.stack import Stack
from yieldplan.faults import Faults
from yieldplan.model.job import Job
from yieldplan.model.parts import Built, Meeting, Part
from yieldplan.model.sums import Sum, Term
from yieldplan.units import Inches


@dataclass(frozen=True, kw_only=True)
class DrawerBank(DrawerKeys):
    """A bank of drawers: one above the other, filling an opening of a case.

    Its drawers are made as `[[drawer]]` makes them and take what [shop.drawer]
    says; the top one is called 1 (`bank/1/front`). What is shared out are the
    heights of applied fronts, else those of the openings, equally or graduated.
    They come down to the sixteenth (1 mm), and the lowest takes what is left.
    Fronts are matched like any others: in [[grain_match]] parts =
    ["bank/1/front", "bank/2/front"], laid = "one above the other".
    """

    shop_table_of: ClassVar[str] = "drawer"

    opening: Opening = field(
        metadata={"words": "the hole in the case that the whole bank fills"}
    )
    drawers: int | None = field(default=None, metadata={"words": "how many drawers"})
    heights: tuple[Inches, ...] = field(
        default=(),
        metadata={
            "words": "heights from the top down, of applied fronts or else of openings; they fill the opening exactly"
        },
    )
    graduated: Graduated | None = field(
        default=None,
        metadata={"words": "how they grow from the top down; left out: all equal"},
    )
    rounded_to: Inches | None = field(
        default=None,
        metadata={
            "words": "all but the lowest come down to this step; left out: 1/16 in, in a job in mm 1 mm"
        },
    )
    rail: Rail | None = field(
        default=None, metadata={"words": "the rails between the drawers"}
    )
    frame: Frame | None = field(
        default=None, metadata={"words": "what makes web frames of the rails"}
    )
    gap_between: Inches | None = field(
        default=None,
        metadata={
            "words": "left free between two applied fronts that no rail keeps apart; left out: their gap, or the shop's front_gap"
        },
    )

    @property
    def num_drawers(self) -> int:
        """How many drawers there are."""
        return len(self.heights) or self.drawers or 0

    @property
    def is_applied(self) -> bool:
        """Whether its fronts are applied to boxes of their own."""
        return self._drawer(0, self.opening).is_applied

    def build(self, job: Job, faults: Faults) -> Built:
        found = Faults()
        checks.check_keys(self, job, found)
        if not len(found) and self.rail is not None:
            rails.check_rails(self, self.rail, job, found)
        if not len(found):
            heights, stack = self._heights(job), self._stack(job)
            checks.check_heights(self, stack, heights, job.unit, found)
        built = Built(parts=()) if len(found) else self._build(job, found)
        faults.extend(found)
        return Built(parts=()) if len(found) else built

    def put_together(self, parts: Mapping[str, Part], job: Job) -> tuple[Fit, ...]:
        fits = list(self._stacked(parts, job))
        for drawer, _ in self._drawers(job):
            fits += [
                dataclasses.replace(fit, words=f"{drawer.name}: {fit.words}")
                for fit in drawer.put_together(parts, job)
            ]
        if self.rail is not None and self.num_drawers > 1:
            fits += rails.rail_fits(self, self.rail, parts, job)
        return tuple(fits)

    def _build(self, job: Job, found: Faults) -> Built:
        parts: list[Part] = []
        meetings: list[Meeting] = []
        cautions: list[str] = []
        for drawer, height in self._drawers(job):
            built = drawer.build(job, found)
            parts += [_explained(part, height) for part in built.parts]
            meetings += built.meetings
            # What is unwise in one drawer is so in all of them.
            cautions += [
                each.replace(f"{drawer.name}:", f"{self.name}:", 1)
                for each in built.cautions
            ]
        if self.rail is not None and self.num_drawers > 1:
            parts += rails.rail_parts(self, self.rail, job)
            meetings += rails.rail_meetings(self, self.rail, job)
            cautions += rails.rail_cautions(self, self.rail, job)
        return Built(
            parts=tuple(parts),
            meetings=tuple(meetings),
            cautions=tuple(dict.fromkeys(cautions)),
        )

    def _drawers(self, job: Job) -> Iterator[tuple[Drawer, Sum]]:
        """Each drawer from the top down, and the sum behind its opening's height."""
        stack = self._stack(job)
        for number, height in enumerate(self._heights(job)):
            high = stack.opening(number, height)
            opening = dataclasses.replace(self.opening, height=high.value)
            drawer = self._drawer(number, opening)
            if stack.overlays is not None:
                above, below = stack.overlays_of(number)
                front = dataclasses.replace(
                    drawer.front, overlay_top=above, overlay_bottom=below
                )
                drawer = dataclasses.replace(drawer, front=front)
            yield drawer, high

    def _drawer(self, number: int, opening: Opening) -> Drawer:
        said = {
            each.name: getattr(self, each.name)
            for each in dataclasses.fields(DrawerKeys)
        }
        return Drawer(
            **said | {"name": f"{self.name}/{number + 1}", "opening": opening}
        )

    def _heights(self, job: Job) -> tuple[Sum, ...]:
        stack = self._stack(job)
        if self.heights:
            return tuple(
                Sum.of((f"{stack.what} {number}", height))
                for number, height in enumerate(self.heights, start=1)
            )
        step = STEP[job.unit] if self.rounded_to is None else self.rounded_to
        return Shared(
            total=stack.to_share,
            drawers=self.num_drawers,
            graduated=self.graduated,
            step=step,
            what=stack.what,
            unit=job.unit,
        ).heights()

    def _stack(self, job: Job) -> Stack:
        front = self.front
        around = front.overlay, front.overlay_top, front.overlay_bottom
        overlays = None
        if around != (None, None, None):
            above, below = (
                (front.overlay or Fraction(0)) if each is None else each
                for each in around[1:]
            )
            overlays = above, below
        gap = job.shop.front_gap if front.gap is None else front.gap
        return Stack(
            height=self.opening.height,
            drawers=self.num_drawers,
            rail=self.rail.thickness if self.rail is not None else None,
            is_applied=self.is_applied,
            overlays=overlays,
            gap=gap,
            between=gap if self.gap_between is None else self.gap_between,
        )

    def _stacked(self, parts: Mapping[str, Part], job: Job) -> Iterator[Fit]:
        """Fronts, gaps and rails added up beside the opening of the whole bank."""
        stack, count = self._stack(job), self.num_drawers
        high = Fraction(0)
        for drawer, _ in self._drawers(job):
            front = parts[f"{drawer.name}/front"].width.value
            high += front if self.is_applied else drawer.opening.height
        if self.rail is not None and count > 1:
            high += (count - 1) * parts[f"{self.name}/rail"].thickness.value
        elif self.is_applied:
            high += (count - 1) * stack.between
        fronts = count if self.rail is not None else 1
        if self.is_applied and stack.overlays is None:
            high += fronts * 2 * stack.gap
        elif stack.overlays is not None:
            high -= fronts * sum(stack.overlays)
        yield Fit(words="height of the bank", got=high, asked=self.opening.height)


def _explained(part: Part, height: Sum) -> Part:
    """The part with its opening's height written out in every sum that starts from it."""
    return dataclasses.replace(
        part, length=_told(part.length, height), width=_told(part.width, height)
    )


def _told(size: Sum, height: Sum) -> Sum:
    terms: list[Term] = []
    for term in size:
        if term.words == "overlay" and not term.inches:
            # Two fronts that meet without a rail have nothing to lie on there.
            continue
        is_height = term.words == "opening height" and term.inches == height.value
        terms += height if is_height else (term,)
    return Sum(tuple(terms)).folded()
