"""Plain part: a part by its finished size, or by the distance between the shoulders of its joints."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from yieldplan.assemblies.assembly import Assembly, Fit
from yieldplan.assemblies.ends import folded, from_inside
from yieldplan.assemblies.material import known_sheet, known_wood
from yieldplan.faults import Faults
from yieldplan.joints.joint import Joint
from yieldplan.model.faces import FaceWord
from yieldplan.model.job import Job
from yieldplan.model.parts import Built, Meeting, Part
from yieldplan.model.sums import Sum
from yieldplan.units import Inches, tape


@dataclass(frozen=True, kw_only=True)
class Between:
    """The distance a part spans, and the joint at each of its ends.

    Parameters
    ----------
    clear
        From shoulder to shoulder, or between the faces of the mates. [in]
    mate, far_mate
        What the mates measure in the direction of the part; a joint that takes its
        depth from its mate needs it. [in]
    """

    clear: Inches = field(metadata={"words": "clear distance between its mates"})
    joint: Joint = field(metadata={"words": "the joint at both ends"})
    far_joint: Joint | None = field(
        default=None, metadata={"words": "the joint at the far end, where it differs"}
    )
    mate: Inches | None = field(
        default=None,
        metadata={
            "words": "what its mates measure in the part's direction: a board's thickness, a stile's width"
        },
    )
    far_mate: Inches | None = field(
        default=None,
        metadata={"words": "what the mate at the far end measures, where it differs"},
    )

    def ends(self, job: Job) -> tuple[tuple[Joint, Inches | None], ...]:
        """Joint and mate at the near and at the far end."""
        far = self.far_joint or self.joint
        far_mate = self.mate if self.far_mate is None else self.far_mate
        return (
            (self.joint.settled(job.shop), self.mate),
            (far.settled(job.shop), far_mate),
        )


@dataclass(frozen=True, kw_only=True)
class PlainPart(Assembly):
    """A part by itself: a shelf, a rail, a panel, a leg.

    Its length is given finished, or worked from the distance between its mates.
    """

    wood: str | None = field(default=None, metadata={"words": "wood of the part"})
    sheet: str | None = field(
        default=None, metadata={"words": "sheet product, instead of a wood"}
    )
    length: Inches | None = field(
        default=None, metadata={"words": "finished length, with the grain"}
    )
    between: Between | None = field(
        default=None, metadata={"words": "the distance it spans, instead of its length"}
    )
    width: Inches = field(metadata={"words": "finished width, across the grain"})
    thickness: Inches | None = field(
        default=None, metadata={"words": "finished thickness; a sheet brings its own"}
    )
    quantity: int = field(default=1, metadata={"words": "how many"})
    strips: int = field(
        default=1, metadata={"words": "equal strips it is glued up from"}
    )
    show_face: FaceWord = field(
        default="sound", metadata={"words": "what its show face must be free of"}
    )
    back_face: FaceWord = field(
        default="sound", metadata={"words": "what its back must be free of"}
    )
    flat: bool = field(
        default=False,
        metadata={"words": "its stock is flat: the least planing will do"},
    )
    leg: bool = field(
        default=False, metadata={"words": "a leg or post: more is left on its length"}
    )

    def build(self, job: Job, faults: Faults) -> Built:
        found = Faults()
        thickness = self._thickness(job, found)
        length = self._length(job, thickness, found)
        faults.extend(found)
        if len(found):
            return Built(parts=())
        part = Part(
            id=self.name,
            quantity=self.quantity,
            wood=self.sheet or self.wood or "",
            is_sheet=self.sheet is not None,
            length=length,
            width=Sum.of(("width", self.width)),
            thickness=Sum.of(("sheet" if self.sheet else "thickness", thickness)),
            show_face=self.show_face,
            back_face=self.back_face,
            strips=self.strips,
            flat=self.flat,
            leg=self.leg,
            where=self.where,
        )
        return Built(
            parts=(part,),
            meetings=tuple(self._meetings(job)),
            cautions=tuple(self._cautions(job, thickness)),
        )

    def put_together(self, parts: Mapping[str, Part], job: Job) -> tuple[Fit, ...]:
        if self.between is None:
            return ()
        clear = parts[self.name].length.value
        for joint, mate in self.between.ends(job):
            clear -= joint.depth(mate=mate or Fraction(0)).value
        fit = Fit(words="clear between its mates", got=clear, asked=self.between.clear)
        return (fit,)

    def _thickness(self, job: Job, found: Faults) -> Inches:
        if (self.wood is None) == (self.sheet is None):
            found.add(
                self.where,
                self.wood or "",
                "a part is of a wood or of a sheet, one of the two",
                "Write wood = ... and a thickness, or sheet = ...",
            )
            return Fraction(0)
        if self.sheet is not None:
            if self.strips > 1:
                found.add(
                    self.where,
                    str(self.strips),
                    "a sheet is not glued up from strips",
                    "Leave strips out",
                )
            sheet = known_sheet(self.sheet, "this part", job, self.where, found)
            if sheet is None:
                return Fraction(0)
            if self.thickness not in (None, sheet.thickness):
                found.add(
                    self.where,
                    tape(self.thickness or Fraction(0), job.unit),
                    f"the sheet measures {tape(sheet.thickness, job.unit)} {job.unit}",
                    "Leave thickness out, a sheet brings its own",
                )
            return sheet.thickness
        known_wood(self.wood or "", "this part", job, self.where, found)
        if self.thickness is None:
            found.add(
                self.where,
                self.wood or "",
                "how thick the part is is missing",
                "Write its finished thickness",
            )
        return self.thickness or Fraction(0)

    def _length(self, job: Job, thickness: Inches, found: Faults) -> Sum:
        if (self.length is None) == (self.between is None):
            found.add(
                self.where,
                tape(self.length, job.unit) if self.length else "",
                "a part has its finished length, or the distance it spans, one of the two",
                "Write length = ... or between = { clear = ..., joint = ... }",
            )
        if self.between is None:
            return Sum.of(("length", self.length or Fraction(0)))
        total = Sum.of(("between shoulders", self.between.clear))
        for joint, mate in self.between.ends(job):
            if mate is None and joint.needs_mate:
                found.add(
                    self.where,
                    joint.name,
                    f"how deep a {joint.name} goes depends on its mate, and how thick that is is missing",
                    "Write mate = ... inside between, or the joint's depth",
                )
                continue
            if mate is not None and (why := joint.impossible(mate=mate, unit=job.unit)):
                remedy = "Change the joint's figures or the mate"
                found.add(self.where, joint.name, f"it cannot be cut: {why}", remedy)
            total += from_inside(
                joint, own=thickness, mate=mate or Fraction(0), mate_words="mate"
            )
        return folded(total)

    def _meetings(self, job: Job) -> Iterator[Meeting]:
        ends = self.between.ends(job) if self.between is not None else ()
        for joint, mate in dict.fromkeys(ends):
            yield Meeting(
                joint=joint.name,
                housed=self.name,
                depth=joint.depth(mate=mate or Fraction(0)),
                needs_set_up=joint.needs_set_up,
            )

    def _cautions(self, job: Job, thickness: Inches) -> Iterator[str]:
        ends = self.between.ends(job) if self.between is not None else ()
        for joint, mate in dict.fromkeys(ends):
            if mate is not None:
                for warning in joint.limits(own=thickness, mate=mate, unit=job.unit):
                    yield f"{self.name}: {warning}."
            yield from joint.cautions
