"""Drawer: a box made to its opening, from the runners or slides inwards."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from yieldplan.assemblies.assembly import Fit
from yieldplan.assemblies.drawer import checks, sizes
from yieldplan.assemblies.drawer.box import Box, Groove
from yieldplan.assemblies.drawer.fits import fits
from yieldplan.assemblies.drawer.keys import (
    Back,
    BoxFront,
    DrawerKeys,
    Front,
    Side,
)
from yieldplan.assemblies.drawer.keys import Fit as HowFitted
from yieldplan.assemblies.meet import meet
from yieldplan.assemblies.movement import growth_of
from yieldplan.faults import Faults
from yieldplan.joints.half_blind_dovetail import HalfBlindDovetail
from yieldplan.joints.joint import Joint
from yieldplan.joints.through_dovetail import ThroughDovetail
from yieldplan.model.job import Job
from yieldplan.model.parts import Built, Meeting, Part
from yieldplan.model.sums import Sum
from yieldplan.units import Inches


@dataclass(frozen=True, kw_only=True)
class Drawer(DrawerKeys):
    """A drawer: front, two sides, back and bottom, sized from its opening.

    On wooden runners its front is joined to the sides. On bought slides (or with an
    overlay) the front that shows is applied to a box with a front of its own.
    """

    @property
    def on_slides(self) -> bool:
        """Whether it runs on bought slides."""
        return self.runs != "on wooden runners"

    @property
    def is_applied(self) -> bool:
        """Whether the front that shows is applied to the box."""
        return self.on_slides or sizes.is_overlaid(self.front)

    @property
    def front_joint(self) -> Joint:
        """How the sides meet the front of the box."""
        if self.front.joint is not None:
            return self.front.joint
        return ThroughDovetail() if self.is_applied else HalfBlindDovetail()

    def build(self, job: Job, faults: Faults) -> Built:
        found = Faults()
        checks.check_materials(self, job, found)
        checks.check_keys(self, found)
        built = Built(parts=()) if len(found) else self._build(job, found)
        faults.extend(found)
        return Built(parts=()) if len(found) else built

    def put_together(self, parts: Mapping[str, Part], job: Job) -> tuple[Fit, ...]:
        own = {
            part.id.removeprefix(f"{self.name}/"): part
            for part in parts.values()
            if part.id.startswith(f"{self.name}/")
        }
        box, groove = self._box(job, Faults()), self._groove(job)
        return tuple(fits(box, groove, self._play(job), self.front, own))

    def _build(self, job: Job, found: Faults) -> Built:
        box, groove = self._box(job, found), self._groove(job)
        checks.check_box(self, box, groove, job.unit, found)
        if len(found):
            return Built(parts=())
        parts = tuple(self._parts(job, box, groove))
        checks.check_sizes(self, parts, job.unit, found)
        return Built(
            parts=parts,
            meetings=self._meetings(box, job),
            cautions=tuple(self._cautions(job, box, groove)),
        )

    def _box(self, job: Job, found: Faults) -> Box:
        shop, on_template = job.shop, self.jig is not None
        is_inset = self.is_applied and not sizes.is_overlaid(self.front)
        fit: HowFitted = self.fit or ("net" if self.on_slides else "plane to fit")

        def growth(wood: str) -> Inches:
            if self.on_slides or fit != "net" or self.clearance.height is not None:
                return Fraction(0)
            return growth_of(self.opening.height, wood, job, self.where, found)

        return Box(
            opening=self.opening,
            runs=self.runs,
            fit=fit,
            clearance=self.clearance,
            jig=self.jig,
            slide_length=self.slide_length,
            front=(self._behind if self.is_applied else self.front).thickness,
            front_joint=self.front_joint.settled(shop, on_template=on_template),
            inset_front=self.front.thickness if is_inset else Fraction(0),
            side=self.side.thickness,
            back=self.back,
            back_joint=self.back.joint.settled(shop, on_template=on_template),
            front_growth=Fraction(0) if self.is_applied else growth(self.front.wood),
            side_growth=growth(self.side.wood),
            shop=shop,
        )

    @property
    def _behind(self) -> BoxFront:
        """The box front: as given, else as the sides."""
        if self.box_front is not None:
            return self.box_front
        side = self.side
        return BoxFront(
            wood=side.wood,
            thickness=side.thickness,
            show_face=side.show_face,
            back_face=side.back_face,
        )

    def _groove(self, job: Job) -> Groove:
        shop, own = job.shop, self.bottom
        up = shop.groove_up
        if self.runs == "under-mounted slides":
            up = shop.groove_up_undermount
        return Groove(
            depth=shop.groove_depth if own.groove_depth is None else own.groove_depth,
            up=up if own.groove_up is None else own.groove_up,
        )

    def _play(self, job: Job) -> Inches:
        return job.shop.sheet_play if self.bottom.sheet else Fraction(0)

    def _parts(self, job: Job, box: Box, groove: Groove) -> Iterator[Part]:
        planed = "plane to its opening" if box.fit == "plane to fit" else ""
        joined = sizes.joined_front(box)
        if self.is_applied:
            shown = sizes.applied_front(self.front, box)
            yield self._part("front", self.front, shown, note="applied to the box")
            behind = sizes.Size(length=joined.length, width=box.side_width)
            yield self._part("box front", self._behind, behind)
        else:
            yield self._part("front", self.front, joined, note=planed)
        side = sizes.side(box)
        yield self._part("side", self.side, side, quantity=2, note=planed)
        bottom = self._bottom_thickness(job)
        back = sizes.back(box, groove, bottom.value)
        yield self._part("back", self.back, back)
        size = sizes.bottom(box, groove, self._play(job))
        yield Part(
            id=f"{self.name}/bottom",
            quantity=1,
            wood=self.bottom.sheet or self.bottom.wood or "",
            is_sheet=self.bottom.sheet is not None,
            length=size.length,
            width=size.width,
            thickness=bottom,
            show_face=self.bottom.show_face,
            back_face=self.bottom.back_face,
            strips=self.bottom.strips,
            note="grain side to side",
            where=self.where,
        )

    def _part(
        self,
        what: str,
        made_of: Front | BoxFront | Side | Back,
        size: sizes.Size,
        *,
        quantity: int = 1,
        note: str = "",
    ) -> Part:
        return Part(
            id=f"{self.name}/{what}",
            quantity=quantity,
            wood=made_of.wood,
            length=size.length,
            width=size.width,
            thickness=Sum.of(("thickness", made_of.thickness)),
            show_face=made_of.show_face,
            back_face=made_of.back_face,
            note=note,
            where=self.where,
        )

    def _bottom_thickness(self, job: Job) -> Sum:
        if self.bottom.sheet is not None:
            return Sum.of(("sheet", job.sheets[self.bottom.sheet].thickness))
        return Sum.of(("thickness", self.bottom.thickness or Fraction(0)))

    def _meetings(self, box: Box, job: Job) -> tuple[Meeting, ...]:
        front = "box front" if self.is_applied else "front"
        back, side = f"{self.name}/back", f"{self.name}/side"
        tails = box.back_joint.has_tails
        return (
            meet(
                box.front_joint,
                job,
                housed=side,
                housing=f"{self.name}/{front}",
                mate=box.front,
            ),
            meet(
                box.back_joint,
                job,
                housed=side if tails else back,
                housing=back if tails else side,
                mate=box.back.thickness if tails else box.side,
            ),
        )

    def _cautions(self, job: Job, box: Box, groove: Groove) -> Iterator[str]:
        tails = box.back_joint.has_tails
        back = box.back.thickness
        at_front = box.front_joint.limits(own=box.side, mate=box.front, unit=job.unit)
        at_back = box.back_joint.limits(
            own=box.side if tails else back,
            mate=back if tails else box.side,
            unit=job.unit,
        )
        for warning in (*at_front, *at_back):
            yield f"{self.name}: {warning}."
        if groove.depth > box.side / 2:
            # Common practice, no source: half the side's thickness at the most.
            yield f"{self.name}: the bottom's groove is deeper than half the side."
        if self.on_slides:
            yield "Slides: hold every clearance against the slide's own sheet; it rules."
        yield from box.front_joint.cautions
        yield from box.back_joint.cautions
