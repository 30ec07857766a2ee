"""Tray: a small open box, four sides joined at the corners and a bottom let into them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from yieldplan.assemblies.assembly import Assembly, Fit
from yieldplan.assemblies.ends import folded, from_outside
from yieldplan.assemblies.material import known_sheet, known_wood
from yieldplan.assemblies.meet import meet
from yieldplan.faults import Faults
from yieldplan.joints.finger_joint import FingerJoint
from yieldplan.joints.joint import Joint, Role
from yieldplan.joints.rabbet import Rabbet
from yieldplan.model.job import Job
from yieldplan.model.parts import Built, Part
from yieldplan.model.sums import Sum
from yieldplan.units import Inches, tape


@dataclass(frozen=True, kw_only=True)
class Tray(Assembly):
    """A tray or small box: two sides, two ends between or through them, a plywood bottom.

    The ends enter the sides, which run to the outside of the work at every corner.
    """

    length: Inches = field(metadata={"words": "along the sides"})
    width: Inches = field(metadata={"words": "along the ends"})
    height: Inches = field(metadata={"words": "of the sides and ends"})
    measured: Literal["outside", "inside"] = field(
        default="outside",
        metadata={"words": "whether length and width are those outside or inside"},
    )
    wood: str = field(metadata={"words": "wood of the sides and ends"})
    thickness: Inches = field(metadata={"words": "their finished thickness"})
    joint: Joint = field(
        default=FingerJoint(), metadata={"words": "how the corners meet"}
    )
    bottom: str = field(metadata={"words": "sheet product of the bottom"})
    bottom_in: Literal["groove", "rabbet"] = field(
        default="groove", metadata={"words": "what holds the bottom all round"}
    )

    def build(self, job: Job, faults: Faults) -> Built:
        found = Faults()
        self._check(job, found)
        if not len(found):
            parts = tuple(self._parts(job))
            if min(min(p.length.value, p.width.value) for p in parts) <= 0:
                wrong = "nothing is left between its sides"
                found.add(self.where, "", wrong, "Make it larger, or its sides thinner")
        faults.extend(found)
        if len(found):
            return Built(parts=())
        joint = self.joint.settled(job.shop)
        corner = meet(
            joint,
            job,
            housed=f"{self.name}/end",
            housing=f"{self.name}/side",
            mate=self.thickness,
        )
        mind = tuple(self._cautions(joint, job))
        return Built(parts=parts, meetings=(corner,), cautions=mind)

    def put_together(self, parts: Mapping[str, Part], job: Job) -> tuple[Fit, ...]:
        names = ("side", "end", "bottom")
        side, end, bottom = (parts[f"{self.name}/{each}"] for each in names)
        joint, thick = self.joint.settled(job.shop), side.thickness.value
        ends_proud = joint.allowance(role=Role.HOUSING, own=thick, mate=thick).value
        left = thick - joint.depth(mate=thick).value
        long = side.length.value - 2 * ends_proud
        wide = end.length.value + 2 * left
        walls = 2 * thick if self.measured == "inside" else Fraction(0)
        held = 2 * self._into(job).value - job.shop.sheet_play
        sizes = (
            ("along the sides", long - walls, self.length),
            ("along the ends", wide - walls, self.width),
            ("height of a side", side.width.value, self.height),
            ("height of an end", end.width.value, self.height),
            ("bottom, along", bottom.length.value - held, long - 2 * thick),
            ("bottom, across", bottom.width.value - held, wide - 2 * thick),
        )
        return tuple(Fit(words=w, got=got, asked=asked) for w, got, asked in sizes)

    def _check(self, job: Job, found: Faults) -> None:
        known_wood(self.wood, "the tray", job, self.where, found)
        sheet = known_sheet(self.bottom, "the bottom", job, self.where, found)
        joint = self.joint.settled(job.shop)
        if not joint.makes_box_corner:
            wrong = f"a {joint.name} does not join the corners of a box"
            remedy = (
                "Write a joint for corners, such as finger joint or through dovetail"
            )
            found.add(self.where, joint.name, wrong, remedy)
        elif wrong := joint.impossible(mate=self.thickness, unit=job.unit):
            found.add(
                self.where, joint.name, wrong, "Change the joint or the thickness"
            )
        into = self._into(job).value
        up = job.shop.groove_up if self.bottom_in == "groove" else Fraction(0)
        if into >= self.thickness:
            said, wrong = tape(into, job.unit), f"the {self.bottom_in} comes through"
            found.add(self.where, said, wrong, "Make the sides thicker")
        if sheet is not None and up + sheet.thickness >= self.height:
            said, wrong = tape(self.height, job.unit), "the bottom finds no room in it"
            found.add(self.where, said, wrong, "Make the tray higher")

    def _parts(self, job: Job) -> Iterator[Part]:
        joint, thick, shop = self.joint.settled(job.shop), self.thickness, job.shop
        walls = Sum.of(("wall", thick, 2)) if self.measured == "inside" else Sum(())
        long = Sum.of((f"{self.measured} length", self.length)) + walls
        wide = Sum.of((f"{self.measured} width", self.width)) + walls
        both = ("side", long, Role.HOUSING), ("end", wide, Role.HOUSED)
        for what, over, role in both:
            end = from_outside(joint, role, own=thick, mate=thick, mate_words="side")
            yield Part(
                id=f"{self.name}/{what}",
                quantity=2,
                wood=self.wood,
                length=folded(over + end.times(2)),
                width=Sum.of(("height", self.height)),
                thickness=Sum.of(("thickness", thick)),
                where=self.where,
            )
        between = Sum.of(("wall", -thick, 2)) + self._into(job).times(2)
        between += Sum.of(("play", -shop.sheet_play))
        yield Part(
            id=f"{self.name}/bottom",
            quantity=1,
            wood=self.bottom,
            is_sheet=True,
            length=folded(long + between),
            width=folded(wide + between),
            thickness=Sum.of(("sheet", job.sheets[self.bottom].thickness)),
            where=self.where,
        )

    def _into(self, job: Job) -> Sum:
        """How far the bottom enters sides and ends."""
        if self.bottom_in == "rabbet":
            return Rabbet().depth(mate=self.thickness)
        return Sum.of(("groove", job.shop.groove_depth))

    def _cautions(self, joint: Joint, job: Job) -> Iterator[str]:
        same = self.thickness
        for warning in joint.limits(own=same, mate=same, unit=job.unit):
            yield f"{self.name}: {warning}."
        if joint.base == "outside":
            # Common practice, no source.
            yield f"{self.name}: stop the {self.bottom_in} in the sides, or it shows at the corners."
        yield from joint.cautions
