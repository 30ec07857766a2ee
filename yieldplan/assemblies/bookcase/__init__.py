"""Bookcase: a case with fixed shelves let into its sides, loose shelves, a toe kick and a rabbeted back."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from yieldplan.assemblies.assembly import Assembly, Fit
from yieldplan.assemblies.bookcase import checks
from yieldplan.assemblies.bookcase.build import built
from yieldplan.assemblies.bookcase.case import Across, Case, equal_openings
from yieldplan.assemblies.bookcase.fits import fits
from yieldplan.assemblies.bookcase.keys import (
    Back,
    Board,
    End,
    Loose,
    Shelf,
    Side,
    ToeKick,
)
from yieldplan.assemblies.bookcase.stuff import Stuff, stuff_of
from yieldplan.faults import Faults
from yieldplan.joints.butt import Butt
from yieldplan.joints.dado import Dado
from yieldplan.joints.joint import Joint
from yieldplan.joints.rabbet import Rabbet
from yieldplan.model.job import Job
from yieldplan.model.parts import Built, Part
from yieldplan.units import Inches


@dataclass(frozen=True, kw_only=True)
class Bookcase(Assembly):
    """A bookcase: two sides, top, bottom, fixed and loose shelves, back and toe kick.

    The sides are as high and as deep as the case. The back stands in a rabbet of
    theirs and covers the rear edges of bottom and shelves, so these are shallower
    by its thickness. Whatever is not said of top, bottom, shelves and toe kick is
    as with the sides. Shelves that sag too much under books are named among the
    cautions.
    """

    width: Inches = field(metadata={"words": "over both sides"})
    height: Inches = field(metadata={"words": "from the floor to the top"})
    depth: Inches = field(metadata={"words": "from the front edges to the wall"})
    side: Side = field(metadata={"words": "both sides"})
    top: End = field(default=End(), metadata={"words": "the top"})
    bottom: End = field(default=End(), metadata={"words": "the bottom"})
    shelf: Shelf = field(default=Shelf(), metadata={"words": "the fixed shelves"})
    fixed_shelves: int | None = field(
        default=None,
        metadata={
            "words": "how many fixed shelves, equally far apart where openings are left out",
            "least": 0,
        },
    )
    openings: tuple[Inches, ...] = field(
        default=(),
        metadata={
            "words": "clear heights from the top down; with the shelves between them they fill the height exactly"
        },
    )
    loose: Loose | None = field(default=None, metadata={"words": "the loose shelves"})
    toe_kick: ToeKick | None = field(
        default=None, metadata={"words": "the board under the bottom"}
    )
    back: Back | None = field(
        default=None, metadata={"words": "the back; left out: none"}
    )
    load: Fraction | None = field(
        default=None,
        metadata={
            "words": "what the shelves bear, in lb on each foot (in a job in mm in kg on each metre); left out: the shop's shelf_load"
        },
    )

    def joint_of(self, what: str) -> Joint:
        """How the top or the bottom meets the sides."""
        end = self._end(what)
        if end.joint is not None:
            return end.joint
        return Dado() if self.run_past(what) else Rabbet()

    def run_past(self, what: str) -> Inches:
        """How far the job says the sides run past the top or the bottom."""
        if what == "bottom" and self.toe_kick is not None:
            return self.toe_kick.height
        return self._end(what).set_in or Fraction(0)

    def build(self, job: Job, faults: Faults) -> Built:
        found = Faults()
        checks.check_keys(self, found)
        stuff = self._stuff(job, found)
        parts = Built(parts=()) if len(found) else self._build(job, stuff, found)
        faults.extend(found)
        return Built(parts=()) if len(found) else parts

    def put_together(self, parts: Mapping[str, Part], job: Job) -> tuple[Fit, ...]:
        own = {
            part.id.removeprefix(f"{self.name}/"): part
            for part in parts.values()
            if part.id.startswith(f"{self.name}/")
        }
        case = self._case(job, self._stuff(job, Faults()))
        return tuple(fits(self, case, own))

    def _build(self, job: Job, stuff: Mapping[str, Stuff], found: Faults) -> Built:
        case = self._case(job, stuff)
        checks.check_case(self, case, job.unit, found)
        if len(found):
            return Built(parts=())
        made = built(self, case, stuff, job)
        checks.check_sizes(self, made.parts, job.unit, found)
        return made

    def _end(self, what: str) -> End:
        return self.top if what == "top" else self.bottom

    def _stuff(self, job: Job, found: Faults) -> dict[str, Stuff]:
        asked: dict[str, Board | Back] = {
            "side": self.side,
            "top": self.top,
            "bottom": self.bottom,
        }
        if self.fixed_shelves or len(self.openings) > 1:
            asked["shelf"] = self.shelf
        if self.loose is not None:
            asked["loose shelf"] = self.loose
        if self.toe_kick is not None:
            asked["toe kick"] = self.toe_kick
        if self.back is not None:
            asked["back"] = self.back
        return {
            what: stuff_of(own, self.side, f"the {what}", job, self.where, found)
            for what, own in asked.items()
        }

    def _case(self, job: Job, stuff: Mapping[str, Stuff]) -> Case:
        shop, back = job.shop, self.back
        top, bottom = (self._across(what, job, stuff) for what in ("top", "bottom"))
        shelf = Across(
            words="shelf",
            thickness=stuff["shelf"].thickness if "shelf" in stuff else Fraction(0),
            joint=self.shelf.joint.settled(shop),
        )
        inside = self.height - top.set_in - bottom.set_in
        inside -= top.thickness + bottom.thickness
        said = self.loose.clearance if self.loose is not None else None
        kick = self.toe_kick.joint if self.toe_kick is not None else Butt()
        return Case(
            width=self.width,
            height=self.height,
            depth=self.depth,
            side=stuff["side"].thickness,
            top=top,
            bottom=bottom,
            shelf=shelf,
            openings=self.openings
            or equal_openings(inside, shelf.thickness, self.fixed_shelves or 0),
            toe_kick=self.toe_kick,
            kick_joint=kick.settled(shop),
            kick_thickness=(
                stuff["toe kick"].thickness if "toe kick" in stuff else Fraction(0)
            ),
            back=back,
            back_thickness=stuff["back"].thickness if "back" in stuff else Fraction(0),
            play=(shop.sheet_play if back is not None and back.sheet else Fraction(0)),
            tongue=_or(back.tongue if back is not None else None, shop.groove_depth),
            gap=_or(back.gap if back is not None else None, shop.board_gap),
            loose_clearance=_or(said, shop.shelf_clearance),
        )

    def _across(self, what: str, job: Job, stuff: Mapping[str, Stuff]) -> Across:
        joint, thickness = self.joint_of(what), stuff[what].thickness
        set_in = self.run_past(what)
        if self._end(what).set_in is None and not set_in:
            # A dado needs wood beyond it, or its far wall breaks out.
            set_in = Fraction(0) if joint.makes_box_corner else thickness
        return Across(
            words=what,
            thickness=thickness,
            joint=joint.settled(job.shop),
            set_in=set_in,
        )


def _or(said: Inches | None, left_out: Inches) -> Inches:
    return left_out if said is None else said
