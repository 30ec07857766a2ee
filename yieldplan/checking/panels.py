"""The panels: strips of the plan's choice are neither too narrow nor too wide, and match in colour."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.checking.facts import Plan
from yieldplan.checking.wanted import Blank, Inside, Part


def panels_ask_for_their_width(plan: Plan) -> Iterator[str]:
    """Ensures that the steps of width a panel asks for are as wide as it, for one panel a part."""
    for part in plan.parts:
        glue_up = part.glue_up
        if glue_up is None:
            continue
        if glue_up.units * glue_up.step < part.size[1]:
            yield (
                f"part {part.id} is {plan.say(part.size[1])} wide; {glue_up.units} steps "
                f"of {plan.say(glue_up.step)} do not make that."
            )
        if part.quantity > 1 or part.strips > 1:
            yield (
                f"part {part.id} is glued up from strips of any width; its quantity is "
                f"{part.quantity} and its strips {part.strips}, and neither may be more "
                "than 1."
            )


def strips_keep_within_their_limits(plan: Plan) -> Iterator[str]:
    """Ensures that a strip that is less than the whole panel has a width the panel allows."""
    for blank in plan.blanks:
        for inside in blank.inside:
            part = plan.part_of[inside.part]
            _, wide = size_in(blank, inside)
            if part.glue_up is None or wide >= part.size[1]:
                continue
            if not part.glue_up.least <= wide <= part.glue_up.most:
                yield (
                    f"blank {blank.id}: a strip of {part.id} is {plan.say(wide)} wide; "
                    f"from {plan.say(part.glue_up.least)} to "
                    f"{plan.say(part.glue_up.most)} will do."
                )


def strips_of_a_panel_match(plan: Plan) -> Iterator[str]:
    """Ensures that strips that are to match come from one lot or from one board."""
    for part in plan.parts:
        if part.glue_up is None or part.glue_up.colour == "any":
            continue
        sources = set()
        for wood in plan.woods:
            for cutting, leaf in wood.leaves():
                if part.demand not in plan.blank_of[leaf.blank].makes:
                    continue
                piece = plan.piece_of[cutting.stock]
                if part.glue_up.colour == "one board":
                    sources.add(f"{piece.id} copy {cutting.copy}")
                elif piece.lot:
                    sources.add(f"lot {piece.lot}")
                else:
                    yield (
                        f"part {part.id}: its strips are to come from one lot, and "
                        f"{piece.id} is of no lot."
                    )
        if len(sources) > 1:
            yield (
                f"part {part.id}: its strips are to come from {part.glue_up.colour}, and "
                f"come from {', '.join(sorted(sources))}."
            )


def size_in(blank: Blank, inside: Inside) -> tuple[int, int]:
    """Length and width of the part in a place; in a turned blank it lies across. [ticks]"""
    x0, y0, x1, y1 = inside.box
    return (y1 - y0, x1 - x0) if blank.turned else (x1 - x0, y1 - y0)


def steps_brought(part: Part, wide: int) -> int:
    """How many steps of its panel's width a strip so wide brings; how many pieces else.

    Parameters
    ----------
    wide
        Width of its place. [ticks]
    """
    if part.glue_up is None:
        return 1
    if wide >= part.size[1]:
        return part.glue_up.units
    return wide // part.glue_up.step


RULES = (
    panels_ask_for_their_width,
    strips_keep_within_their_limits,
    strips_of_a_panel_match,
)
