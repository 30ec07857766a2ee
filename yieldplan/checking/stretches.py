"""The stretches: what is ripped from a crooked, twisted or tapered board is short or narrow enough."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.checking.cuts import cuttings_of, where
from yieldplan.checking.facts import Cutting, Node, Piece, Plan
from yieldplan.checking.fits import lost_over


def ripped_stretches_are_straight_enough(plan: Plan) -> Iterator[str]:
    """Ensures that nothing with more crook than the fence takes is ripped."""
    for wood, cutting in cuttings_of(plan):
        most = wood.rules.crook_at_most
        piece = plan.piece_of[cutting.stock]
        for stretch in stretches(cutting.tree):
            lost = crook_of(piece, stretch)
            if most is not None and lost > most:
                yield (
                    f"{where(wood, cutting, stretch)}: {_long(plan, stretch)} of "
                    f"{piece.id} has {plan.say(lost)} of crook; {plan.say(most)} is the "
                    "most that is ripped."
                )


def twisted_stretches_are_short(plan: Plan) -> Iterator[str]:
    """Ensures that of a twisted piece only short stretches are ripped."""
    for wood, cutting in cuttings_of(plan):
        piece = plan.piece_of[cutting.stock]
        most = wood.rules.twisted_at_most + wood.rules.along
        for stretch in stretches(cutting.tree):
            if piece.twist and stretch.box[2] - stretch.box[0] > most:
                yield (
                    f"{where(wood, cutting, stretch)}: {piece.id} is twisted, and "
                    f"{_long(plan, stretch)} of it is ripped; {plan.say(most)} is the most."
                )


def blanks_stay_clear_of_the_far_edge(plan: Plan) -> Iterator[str]:
    """Ensures that no blank reaches into the far edge pass, or what crook and taper take."""
    for wood, cutting in cuttings_of(plan):
        piece = plan.piece_of[cutting.stock]
        for leaf, stretch in leaves_in_stretches(cutting):
            into = leaf.box[3] - usable_width(piece, stretch)
            if into <= 0:
                continue
            lost = f"the far edge pass of {plan.say(piece.edges[1])}"
            if not piece.is_straight:
                lost = f"what crook, taper and edge pass take of node {stretch.id}"
            yield (
                f"{where(wood, cutting, leaf)}: blank {leaf.blank} reaches "
                f"{plan.say(into)} into {lost}."
            )


def stretches(tree: Node) -> Iterator[Node]:
    """What is ripped first: the topmost nodes that are ripped, and blanks that no rip lies above."""
    if tree.cut == "rip" or tree.blank:
        yield tree
    else:
        for child in tree.into:
            yield from stretches(child)


def leaves_in_stretches(cutting: Cutting) -> Iterator[tuple[Node, Node]]:
    """Every blank of a cutting, with the stretch it is ripped from."""
    for stretch in stretches(cutting.tree):
        for node in stretch.every():
            if node.blank:
                yield node, stretch


def crook_of(piece: Piece, stretch: Node) -> int:
    """How much of its width a stretch loses to crook. [ticks]"""
    return lost_over(piece.crook, stretch.box[2] - stretch.box[0], piece.length)


def usable_width(piece: Piece, stretch: Node) -> int:
    """How far from the near edge the wood of a stretch is sound and straight. [ticks]"""
    narrower = min(piece.width_at(stretch.box[0]), piece.width_at(stretch.box[2]))
    return narrower - piece.edges[1] - crook_of(piece, stretch)


def _long(plan: Plan, stretch: Node) -> str:
    return plan.say(stretch.box[2] - stretch.box[0])


RULES = (
    ripped_stretches_are_straight_enough,
    twisted_stretches_are_short,
    blanks_stay_clear_of_the_far_edge,
)
