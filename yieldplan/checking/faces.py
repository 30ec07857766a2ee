"""The faces: no blank shows a mark it may not have, on the face that is up or on its back."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.checking.cuts import cuttings_of, where
from yieldplan.checking.facts import Mark, Plan, Rules
from yieldplan.checking.stretches import crook_of, leaves_in_stretches
from yieldplan.checking.wanted import Blank, Box


def blanks_lie_clear_of_their_marks(plan: Plan) -> Iterator[str]:
    """Ensures that no mark overlaps a blank on a face that may not have it."""
    for wood, cutting in cuttings_of(plan):
        piece = plan.piece_of[cutting.stock]
        for leaf, stretch in leaves_in_stretches(cutting):
            blank = plan.blank_of[leaf.blank]
            lost = crook_of(piece, stretch)
            for mark in piece.marks:
                face = forbidden_on(plan, blank, mark, leaf.face_up)
                box = lowered(reach_to(mark, blank, wood.rules), lost)
                if face and overlap(box, leaf.box):
                    x0, y0, x1, y1 = mark.box
                    yield (
                        f"{where(wood, cutting, leaf)}: blank {blank.id} lies with face {leaf.face_up} up on "
                        f"a {mark.kind} ({mark.face}) from {plan.say(x0)} to "
                        f"{plan.say(x1)}, and from {plan.say(y0)} to {plan.say(y1)} "
                        f"across; {face} forbids it."
                    )


def blanks_are_as_clear_as_their_parts(plan: Plan) -> Iterator[str]:
    """Ensures that a blank keeps off every mark that a part inside it may not have."""
    for blank in plan.blanks:
        for demand in blank.makes:
            part = plan.part_of[demand]
            for words, of_part, of_blank in (
                ("shows", part.show_face, blank.show_face),
                ("has at its back", part.back_face, blank.back_face),
            ):
                let_in = plan.faces[of_part] - plan.faces[of_blank]
                if let_in:
                    yield (
                        f"blank {blank.id} {words} a face {of_blank!r} that lets in "
                        f"{', '.join(sorted(let_in))}; part {part.id} needs {of_part!r}."
                    )


def forbidden_on(plan: Plan, blank: Blank, mark: Mark, face_up: str) -> str:
    """The face that forbids a mark to a blank that lies this way up, in words; or nothing.

    With face A up the blank shows A and has B at its back; with face B up the other
    way about. A mark through the board is on both.
    """
    shown, hidden = ("A", "B") if face_up == "A" else ("B", "A")
    if mark.face in (shown, "through") and mark.kind in plan.faces[blank.show_face]:
        return f"its show face, {blank.show_face!r},"
    if mark.face in (hidden, "through") and mark.kind in plan.faces[blank.back_face]:
        return f"its back face, {blank.back_face!r},"
    return ""


def reach_to(mark: Mark, blank: Blank, rules: Rules) -> Box:
    """A mark's box with how far it reaches to a blank that may not have it. [ticks]

    A knot reaches all around; a check or a split along, where the blank shows.
    """
    along = across = 0
    if mark.kind == "knot":
        along = across = rules.around_knots
    elif mark.kind in ("check", "split") and blank.shows:
        along = rules.short_of_checks
    x0, y0, x1, y1 = mark.box
    return x0 - along, y0 - across, x1 + along, y1 + across


def lowered(box: Box, lost: int) -> Box:
    """A box that reaches further toward the near edge by what is lost to crook. [ticks]"""
    return box[0], box[1] - lost, box[2], box[3]


def overlap(one: tuple[int, ...], other: tuple[int, ...]) -> bool:
    """Whether two boxes share any wood; boxes that only touch do not."""
    return (
        one[0] < other[2]
        and other[0] < one[2]
        and one[1] < other[3]
        and other[1] < one[3]
    )


RULES = (blanks_lie_clear_of_their_marks, blanks_are_as_clear_as_their_parts)
