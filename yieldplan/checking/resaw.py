"""Resawing: a blank that is sawn into slices is thick enough, and clear where the saw opens it."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.checking.facts import Plan
from yieldplan.checking.fits import may_come_from, sliced


def slices_are_numbered_from_the_show_face(plan: Plan) -> Iterator[str]:
    """Ensures that every slice from 0 on gives a part."""
    for blank in plan.blanks:
        empty = {*range(blank.num_slices)} - {each.slice for each in blank.inside}
        if empty and blank.inside:
            yield f"blank {blank.id}: nothing lies in its slice {min(empty)}."


def slices_fit_their_blank_and_stock(plan: Plan) -> Iterator[str]:
    """Ensures that a blank, and all it may come from, is as thick as its slices and saw cuts."""
    rules_of = {wood.name: wood.rules for wood in plan.woods}
    for blank in plan.blanks:
        rules = rules_of.get(blank.wood)
        if blank.num_slices == 1 or rules is None:
            continue
        least, slack = sliced(plan, rules, blank)
        thick = {f"blank {blank.id}": blank.thickness} | {
            piece.id: piece.thick
            for piece in plan.stock
            if may_come_from(plan, rules, blank, piece)
        }
        for name, is_ in thick.items():
            if is_ + slack < least:
                yield (
                    f"{name} is {plan.say(is_)} thick; the {blank.num_slices} slices of "
                    f"blank {blank.id} and the cuts between them take {plan.say(least)}."
                )


def resawn_blanks_are_clear_on_both_faces(plan: Plan) -> Iterator[str]:
    """Ensures that a blank that is sawn open keeps off what any face of its parts may not have."""
    for blank in plan.blanks:
        if blank.num_slices == 1:
            continue
        for demand in blank.makes:
            part = plan.part_of[demand]
            forbidden = plan.faces[part.show_face] | plan.faces[part.back_face]
            for word in (blank.show_face, blank.back_face):
                let_in = forbidden - plan.faces[word]
                if let_in:
                    yield (
                        f"blank {blank.id} is resawn, and its face {word!r} lets in "
                        f"{', '.join(sorted(let_in))}; a new face of part {part.id} "
                        "would have it."
                    )


RULES = (
    slices_are_numbered_from_the_show_face,
    slices_fit_their_blank_and_stock,
    resawn_blanks_are_clear_on_both_faces,
)
