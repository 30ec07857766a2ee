"""The demands: every part is made as often as the job asks, from a blank it truly lies in."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import combinations

from yieldplan.checking.facts import Plan, Wood
from yieldplan.checking.panels import size_in, steps_brought


def sums_add_up_to_the_sizes(plan: Plan) -> Iterator[str]:
    """Ensures that the terms behind a size add up to it, to within a tick a term."""
    for part in plan.parts:
        for size, terms, words in zip(
            part.size, part.why, ("length", "width", "thickness"), strict=True
        ):
            if abs(sum(terms) - size) > len(terms):
                yield (
                    f"part {part.id}: the terms of its {words} add up to "
                    f"{plan.say(sum(terms))}, yet it is {plan.say(size)}."
                )


def blanks_hold_what_they_make(plan: Plan) -> Iterator[str]:
    """Ensures that a blank places every part it makes, at its finished size, within itself."""
    for blank in plan.blanks:
        placed = Counter[str]()
        for inside in blank.inside:
            _, wide = size_in(blank, inside)
            placed[inside.part] += steps_brought(plan.part_of[inside.part], wide)
        for demand, count in blank.makes.items():
            if placed[demand] != count:
                yield (
                    f"blank {blank.id} makes {count} of {demand} and has "
                    f"{placed[demand]} inside."
                )
        for inside in blank.inside:
            x0, y0, x1, y1 = inside.box
            if x0 < 0 or y0 < 0 or x1 > blank.length or y1 > blank.width:
                yield (
                    f"blank {blank.id}: {inside.part} lies in {list(inside.box)}, outside "
                    f"the blank's {plan.say(blank.length)} by {plan.say(blank.width)}."
                )
            part = plan.part_of[inside.part]
            length, width, _ = part.size
            long, wide = size_in(blank, inside)
            too_narrow = part.glue_up is None and wide * part.strips < width
            if long < length or too_narrow:
                yield (
                    f"blank {blank.id}: {inside.part} has {plan.say(long)} by "
                    f"{plan.say(wide)} inside; part {part.id} is {plan.say(length)} by "
                    f"{plan.say(width)}, in {part.strips}."
                )


def parts_inside_a_blank_are_a_kerf_apart(plan: Plan) -> Iterator[str]:
    """Ensures that the parts within a blank, or within a slice of it, can be sawn apart."""
    kerfs = {wood.name: wood.rules.kerf for wood in plan.woods}
    for blank in plan.blanks:
        kerf = kerfs.get(blank.wood, 0)
        for one, other in combinations(blank.inside, 2):
            along = max(one.box[0] - other.box[2], other.box[0] - one.box[2])
            across = max(one.box[1] - other.box[3], other.box[1] - one.box[3])
            if one.slice == other.slice and max(along, across) < kerf:
                yield (
                    f"blank {blank.id}: {one.part} at {list(one.box)} and {other.part} "
                    f"at {list(other.box)} are not one kerf of {plan.say(kerf)} apart."
                )


def needs_are_what_the_job_asks(plan: Plan) -> Iterator[str]:
    """Ensures that of every part need and missing add up to what is asked for."""
    told: Counter[str] = Counter()
    for wood in plan.woods:
        for count in (wood.need, wood.missing):
            told.update(count)
    for part in plan.parts:
        if told[part.demand] != part.asked:
            why = " (nothing demands a set-up piece)" if part.set_up else ""
            yield (
                f"{part.demand}: {part.asked} asked for{why}; need and missing come to "
                f"{told[part.demand]}."
            )


def complete_means_nothing_is_missing(plan: Plan) -> Iterator[str]:
    """Ensures that the plan calls itself complete exactly when nothing is missing."""
    missing = sorted(
        demand for wood in plan.woods for demand, n in wood.missing.items() if n
    )
    if plan.complete and missing:
        yield f"The plan calls itself complete; {', '.join(missing)} is missing."
    if not plan.complete and not missing:
        yield "The plan calls itself incomplete, yet nothing is missing from it."


def parts_are_made_as_often_as_needed(plan: Plan) -> Iterator[str]:
    """Ensures that every part is made exactly as often as needed, or spare by a blank that may."""
    for wood in plan.woods:
        made, by_the_way = _made(plan, wood), _made(plan, wood, may_spare=True)
        for demand in sorted({*made, *wood.need}):
            need, count = wood.need.get(demand, 0), made[demand]
            if plan.part_of[demand].set_up:
                continue
            if count < need:
                yield (f"{wood.name}, {demand}: {need} needed, {count} made.")
            elif count - need > by_the_way[demand]:
                yield (
                    f"{wood.name}, {demand}: {need} needed, {count} made; blanks that may "
                    f"bring spares made {by_the_way[demand]} of them."
                )


def _made(plan: Plan, wood: Wood, *, may_spare: bool = False) -> Counter[str]:
    """How often each part is made, by all blanks or by those alone that may bring spares."""
    made: Counter[str] = Counter()
    for _, leaf in wood.leaves():
        blank = plan.blank_of[leaf.blank]
        if blank.may_spare or not may_spare:
            made.update(blank.makes)
    return made


RULES = (
    sums_add_up_to_the_sizes,
    blanks_hold_what_they_make,
    parts_inside_a_blank_are_a_kerf_apart,
    needs_are_what_the_job_asks,
    complete_means_nothing_is_missing,
    parts_are_made_as_often_as_needed,
)
