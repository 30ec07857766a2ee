"""What each part of a bookcase is made of, once everything that was left out is as with the sides."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from yieldplan.assemblies.bookcase.keys import Back, Board
from yieldplan.assemblies.material import known_sheet, known_wood
from yieldplan.faults import Faults, Where
from yieldplan.joints.joint import say
from yieldplan.model.faces import FaceWord
from yieldplan.model.job import Job
from yieldplan.units import Inches


@dataclass(frozen=True, kw_only=True)
class Stuff:
    """A material and a thickness the job knows. [in]"""

    of: str
    is_sheet: bool
    thickness: Inches
    strips: int
    show_face: FaceWord
    back_face: FaceWord


def stuff_of(
    own: Board | Back, like: Board, what: str, job: Job, where: Where, faults: Faults
) -> Stuff:
    """What a part is made of; mistakes go to `faults`.

    Parameters
    ----------
    like
        What holds where the part says neither wood nor sheet: the sides.
    what
        What is to be made of it, for the message: `the top`.
    """
    is_like = own.wood is None and own.sheet is None
    wood, sheet = (like.wood, like.sheet) if is_like else (own.wood, own.sheet)
    strips, thickness = getattr(own, "strips", 1), own.thickness
    if strips is None:
        strips = (like.strips or 1) if wood is not None else 1
    if thickness is None and wood is not None and like.wood is not None:
        thickness = like.thickness
    if (wood is None) == (sheet is None):
        faults.add(
            where,
            wood or "",
            f"{what} is of a wood or of a sheet, one of the two",
            "Write wood = ... and a thickness, or sheet = ...",
        )
    elif sheet is not None:
        product = known_sheet(sheet, what, job, where, faults)
        measured = product.thickness if product is not None else Fraction(0)
        if product is not None and thickness not in (None, measured):
            faults.add(
                where,
                say(thickness or Fraction(0), job.unit),
                f"{what} is of a sheet that measures {say(measured, job.unit)}",
                "Leave thickness out, a sheet brings its own",
            )
        if strips > 1:
            wrong = f"{what} is of a sheet, and a sheet is not glued up from strips"
            faults.add(where, str(strips), wrong, "Leave strips out")
        thickness = measured
    else:
        known_wood(wood or "", what, job, where, faults)
        if thickness is None:
            wrong = f"how thick {what} is is missing"
            faults.add(where, wood or "", wrong, "Write its finished thickness")
    return Stuff(
        of=sheet or wood or "",
        is_sheet=sheet is not None,
        thickness=thickness or Fraction(0),
        strips=strips,
        show_face=own.show_face,
        back_face=own.back_face,
    )
