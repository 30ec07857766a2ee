"""Plain part: a part by its finished size, or by the distance between the shoulders of its joints."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from yieldplan.assemblies.assembly import Assembly, Fit
from yieldplan.assemblies.ends import folded, from_inside
from yieldplan.assemblies.glued import GluedUp, glued_up, panel_names
from yieldplan.assemblies.material import known_sheet, known_stick, known_wood
from yieldplan.assemblies.meet import meet
from yieldplan.faults import Faults
from yieldplan.joints.joint import Joint
from yieldplan.model.faces import FaceWord
from yieldplan.model.job import Job
from yieldplan.model.parts import Built, Meeting, Part
from yieldplan.model.sums import Sum
from yieldplan.units import Inches, from_ticks, tape


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
    stick: str | None = field(
        default=None, metadata={"words": "stick, instead of a wood or sheet"}
    )
    length: Inches | None = field(
        default=None, metadata={"words": "finished length, with the grain"}
    )
    between: Between | None = field(
        default=None, metadata={"words": "the distance it spans, instead of its length"}
    )
    width: Inches | None = field(
        default=None,
        metadata={"words": "finished width, across the grain; a stick brings its own"},
    )
    thickness: Inches | None = field(
        default=None,
        metadata={"words": "finished thickness; a sheet or stick brings its own"},
    )
    quantity: int = field(default=1, metadata={"words": "how many"})
    strips: int = field(
        default=1, metadata={"words": "equal strips it is glued up from"}
    )
    glue_up: GluedUp | None = field(
        default=None,
        metadata={
            "words": "it may be glued up from strips of any width; true takes the shop's figures",
            "true_takes_defaults": True,
        },
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

    turn: bool | None = field(
        default=None,
        metadata={
            "words": "whether it may lie across its sheet; left out, where the face has no grain"
        },
    )

    def build(self, job: Job, faults: Faults) -> Built:
        found = Faults()
        width, thickness = self._cross_section(job, found)
        length = self._length(job, thickness, found)
        faults.extend(found)
        if len(found):
            return Built(parts=())
        part = Part(
            id=self.name,
            quantity=self.quantity,
            wood=self.stick or self.sheet or self.wood or "",
            is_sheet=self.sheet is not None,
            is_stick=self.stick is not None,
            length=length,
            width=Sum.of(("stick" if self.stick else "width", width)),
            thickness=Sum.of((self._thickness_from(), thickness)),
            show_face=self.show_face,
            back_face=self.back_face,
            strips=self.strips,
            flat=self.flat,
            leg=self.leg,
            may_turn=self.turn,
            where=self.where,
        )
        parts: tuple[Part, ...] = (part,)
        if self.glue_up is not None:
            parts = tuple(glued_up(part, self.glue_up, job, faults))
        if not parts:
            return Built(parts=())
        return Built(
            parts=parts,
            meetings=tuple(self._meetings(job)),
            cautions=tuple(self._cautions(job, thickness)),
        )

    def put_together(self, parts: Mapping[str, Part], job: Job) -> tuple[Fit, ...]:
        if self.between is None:
            return ()
        clear = parts[self._names()[0]].length.value
        for joint, mate in self.between.ends(job):
            clear -= joint.depth(mate=mate or Fraction(0)).value
        fit = Fit(words="clear between its mates", got=clear, asked=self.between.clear)
        return (fit,)

    def _cross_section(self, job: Job, found: Faults) -> tuple[Inches, Inches]:
        """Width and thickness, as given or as they come with the stock."""
        named = [each for each in (self.wood, self.sheet, self.stick) if each]
        if len(named) != 1:
            found.add(
                self.where,
                ", ".join(named),
                "a part is of a wood, of a sheet or of a stick, one of the three",
                "Write wood = ... and a thickness, or sheet = ..., or stick = ...",
            )
            return Fraction(0), Fraction(0)
        self._check_shape(found)
        if self.stick is not None:
            stick = known_stick(self.stick, "this part", job, self.where, found)
            if stick is None:
                return Fraction(0), Fraction(0)
            self._check_same("width", self.width, stick.width, job, found)
            self._check_same("thickness", self.thickness, stick.thickness, job, found)
            return stick.width, stick.thickness
        if not self.width:
            wrong, remedy = (
                "how wide the part is is missing",
                "Write its finished width",
            )
            found.add(self.where, "", wrong, remedy)
        width = self.width or Fraction(0)
        if self.sheet is not None:
            sheet = known_sheet(self.sheet, "this part", job, self.where, found)
            if sheet is None:
                return width, Fraction(0)
            self._check_same("thickness", self.thickness, sheet.thickness, job, found)
            return width, sheet.thickness
        known_wood(self.wood or "", "this part", job, self.where, found)
        if self.thickness is None:
            found.add(
                self.where,
                self.wood or "",
                "how thick the part is is missing",
                "Write its finished thickness",
            )
        return width, self.thickness or Fraction(0)

    def _thickness_from(self) -> str:
        return "stick" if self.stick else "sheet" if self.sheet else "thickness"

    def _check_shape(self, found: Faults) -> None:
        """Note what only boards, or only sheets, can be asked for."""
        if self.strips > 1 and self.wood is None:
            kind = "sheet" if self.sheet is not None else "stick"
            wrong = f"a {kind} is not glued up from strips"
            found.add(self.where, str(self.strips), wrong, "Leave strips out")
        if self.turn is not None and self.sheet is None:
            kind = "stick" if self.stick is not None else "board"
            wrong = f"a part of a {kind} is not turned"
            found.add(self.where, "", wrong, "Leave turn out")

    def _check_same(
        self, name: str, said: Inches | None, own: Inches, job: Job, found: Faults
    ) -> None:
        # A stick's width is kept to whole ticks; what was written may be finer.
        if said is None or abs(said - own) < from_ticks(1):
            return
        kind = "sheet" if self.sheet is not None else "stick"
        found.add(
            self.where,
            tape(said, job.unit),
            f"the {kind} measures {tape(own, job.unit)} {job.unit}",
            f"Leave {name} out, a {kind} brings its own",
        )

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
            for name in self._names():
                yield meet(joint, job, housed=name, mate=mate or Fraction(0))

    def _names(self) -> tuple[str, ...]:
        """What its parts are called: each panel that is glued up is a part of its own."""
        if self.glue_up is None:
            return (self.name,)
        return panel_names(self.name, self.quantity)

    def _cautions(self, job: Job, thickness: Inches) -> Iterator[str]:
        ends = self.between.ends(job) if self.between is not None else ()
        for joint, mate in dict.fromkeys(ends):
            if mate is not None:
                for warning in joint.limits(own=thickness, mate=mate, unit=job.unit):
                    yield f"{self.name}: {warning}."
            yield from joint.cautions
