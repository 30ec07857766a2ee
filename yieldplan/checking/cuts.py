"""The cuts: every piece comes apart into its leaves and sawdust, and nothing is lost or made up."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from yieldplan.checking.facts import Cutting, Node, Plan, Wood


def trees_start_from_the_whole_piece(plan: Plan) -> Iterator[str]:
    """Ensures that the first node of every cutting is the whole piece."""
    for wood, cutting in cuttings_of(plan):
        piece = plan.piece_of[cutting.stock]
        whole = (0, 0, piece.length, piece.width)
        if cutting.tree.box != whole:
            yield (
                f"{where(wood, cutting, cutting.tree)} starts as the box "
                f"{list(cutting.tree.box)}, yet the whole piece is {list(whole)}: "
                f"{plan.say(piece.length)} long and {plan.say(piece.width)} wide."
            )


def children_are_as_wide_as_their_node(plan: Plan) -> Iterator[str]:
    """Ensures that a crosscut goes across the whole width and a rip along the whole length."""
    for wood, cutting, node in _cut_nodes(plan):
        low, high, words = (
            (1, 3, "width") if node.cut == "crosscut" else (0, 2, "length")
        )
        for child in node.into:
            if (child.box[low], child.box[high]) != (node.box[low], node.box[high]):
                yield (
                    f"{where(wood, cutting, child)} runs from "
                    f"{plan.say(child.box[low])} to {plan.say(child.box[high])} of the "
                    f"{words}; a {node.cut} of node {node.id} leaves it from "
                    f"{plan.say(node.box[low])} to {plan.say(node.box[high])}."
                )


def neighbours_are_one_kerf_apart(plan: Plan) -> Iterator[str]:
    """Ensures that exactly one kerf lies between any two neighbours of a cut."""
    for wood, cutting, node in _cut_nodes(plan):
        low, high = _along(node)
        for first, second in pairwise(node.into):
            gap = second.box[low] - first.box[high]
            if gap != wood.rules.kerf:
                said = (
                    f"overlap by {plan.say(-gap)}"
                    if gap < 0
                    else f"are {plan.say(gap)} apart"
                )
                yield (
                    f"{where(wood, cutting, first)} and node {second.id} {said}; the "
                    f"blade between them takes {plan.say(wood.rules.kerf)}."
                )


def ends_lose_at_most_a_kerf(plan: Plan) -> Iterator[str]:
    """Ensures that before the first and after the last child lies nothing but a kerf's sawdust."""
    for wood, cutting, node in _cut_nodes(plan):
        low, high = _along(node)
        ends = (
            (node.into[0], node.into[0].box[low] - node.box[low]),
            (node.into[-1], node.box[high] - node.into[-1].box[high]),
        )
        for child, gap in ends:
            if gap < 0:
                yield (
                    f"{where(wood, cutting, child)} reaches {plan.say(-gap)} out of "
                    f"node {node.id}, which it is cut from."
                )
            elif gap > wood.rules.kerf:
                yield (
                    f"{where(wood, cutting, child)} leaves {plan.say(gap)} of node "
                    f"{node.id} unaccounted for; one kerf is {plan.say(wood.rules.kerf)}."
                )


def blanks_are_large_enough(plan: Plan) -> Iterator[str]:
    """Ensures that a leaf is at least as long and as wide as the blank it is to be."""
    for wood in plan.woods:
        for cutting, leaf in wood.leaves():
            blank = plan.blank_of[leaf.blank]
            x0, y0, x1, y1 = leaf.box
            for is_, least, words in (
                (x1 - x0, blank.length, "long"),
                (y1 - y0, blank.width, "wide"),
            ):
                if is_ < least:
                    yield (
                        f"{where(wood, cutting, leaf)} is {plan.say(is_)} {words}; "
                        f"blank {blank.id} needs {plan.say(least)}."
                    )


def cuttings_of(plan: Plan) -> Iterator[tuple[Wood, Cutting]]:
    """Every piece that is cut, with the wood it is cut for."""
    for wood in plan.woods:
        for cutting in wood.cuttings:
            yield wood, cutting


def where(wood: Wood, cutting: Cutting, node: Node) -> str:
    """A node of a tree, as objections name it."""
    return f"{wood.name}, {cutting.stock} copy {cutting.copy}, node {node.id}"


def _cut_nodes(plan: Plan) -> Iterator[tuple[Wood, Cutting, Node]]:
    for wood, cutting in cuttings_of(plan):
        for node in cutting.tree.every():
            if node.into:
                yield wood, cutting, node


def _along(node: Node) -> tuple[int, int]:
    """Where a box says where a child of this cut begins and ends."""
    return (0, 2) if node.cut == "crosscut" else (1, 3)


RULES = (
    trees_start_from_the_whole_piece,
    children_are_as_wide_as_their_node,
    neighbours_are_one_kerf_apart,
    ends_lose_at_most_a_kerf,
    blanks_are_large_enough,
)
