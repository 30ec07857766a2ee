"""The joint zones: where a tenon, a dovetail or a dado is cut the wood is sound on both faces."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.checking.cuts import cuttings_of, where
from yieldplan.checking.faces import lowered, overlap
from yieldplan.checking.facts import Mark, Plan, Rules
from yieldplan.checking.stretches import crook_of, leaves_in_stretches
from yieldplan.checking.wanted import Blank, Box


def joint_zones_are_clear(plan: Plan) -> Iterator[str]:
    """Ensures that no mark lies where a blank is to be joined, whatever its faces may show."""
    for wood, cutting in cuttings_of(plan):
        piece = plan.piece_of[cutting.stock]
        for leaf, stretch in leaves_in_stretches(cutting):
            blank = plan.blank_of[leaf.blank]
            lost = crook_of(piece, stretch)
            for mark in piece.marks:
                box = lowered(reach_in_zones(mark, wood.rules), lost)
                zones = zones_on(leaf.box, blank, zones_of(plan, blank))
                if mark.kind in plan.zones and any(overlap(box, z) for z in zones):
                    yield (
                        f"{where(wood, cutting, leaf)}: a {mark.kind} ({mark.face}) from "
                        f"{plan.say(mark.box[0])} to {plan.say(mark.box[2])} lies in a "
                        f"joint zone of blank {blank.id}."
                    )


def zones_of(plan: Plan, blank: Blank) -> tuple[int, int]:
    """How far from its zero end and from its far end a blank is a joint zone. [ticks]"""
    longest = max((plan.part_of[each.part].zone for each in blank.inside), default=0)
    if not longest or blank.turned:
        return 0, 0
    if len({inside.box for inside in blank.inside}) > 1:
        # Ends of parts lie in the middle of it, wherever they are sawn apart.
        return blank.length, blank.length
    x0, _, x1, _ = blank.inside[0].box
    return x0 + longest, blank.length - x1 + longest


def zones_on(box: Box, blank: Blank, zones: tuple[int, int]) -> list[Box]:
    """The joint zones of a blank on its leaf. [ticks]"""
    x0, y0, x1, y1 = box
    at_zero, at_far_end = zones
    on_leaf = []
    if at_zero:
        on_leaf.append((x0, y0, min(x0 + at_zero, x1), y1))
    if at_far_end:
        on_leaf.append((max(x0 + blank.length - at_far_end, x0), y0, x1, y1))
    return on_leaf


def reach_in_zones(mark: Mark, rules: Rules) -> Box:
    """A mark's box with its reach in a joint zone: a knot's, and no other's. [ticks]"""
    around = rules.around_knots if mark.kind == "knot" else 0
    x0, y0, x1, y1 = mark.box
    return x0 - around, y0 - around, x1 + around, y1 + around


RULES = (joint_zones_are_clear,)
