"""The faces: no blank shows a mark it may not have, on the face that is up or on its back."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.checking.facts import Blank, Mark, Plan


def blanks_lie_clear_of_their_marks(plan: Plan) -> Iterator[str]:
    """Ensures that no mark overlaps a blank on a face that may not have it."""
    for wood in plan.woods:
        for cutting, leaf in wood.leaves():
            blank = plan.blank_of[leaf.blank]
            for mark in plan.piece_of[cutting.stock].marks:
                face = forbidden_on(plan, blank, mark, leaf.face_up)
                if face and overlap(mark.box, leaf.box):
                    x0, y0, x1, y1 = mark.box
                    yield (
                        f"{wood.name}, {cutting.stock} copy {cutting.copy}, node "
                        f"{leaf.id}: blank {blank.id} lies with face {leaf.face_up} up on "
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


def overlap(one: tuple[int, ...], other: tuple[int, ...]) -> bool:
    """Whether two boxes share any wood; boxes that only touch do not."""
    return (
        one[0] < other[2]
        and other[0] < one[2]
        and one[1] < other[3]
        and other[1] < one[3]
    )


RULES = (blanks_lie_clear_of_their_marks, blanks_are_as_clear_as_their_parts)
