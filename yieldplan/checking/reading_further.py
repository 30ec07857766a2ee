"""Reading the further proofs of a floor, a tree of any depth without recursion."""

from __future__ import annotations

from yieldplan.checking.further import Branch, Leaf, Limited, Packs, Row, Sets, Tried
from yieldplan.checking.shape import LARGEST, Record

MOST_VECTORS = 400
"""Rows of prices in one proof."""
MOST_NODES = 200_000
MOST_LEVELS = 400


def limited_of(row: Record) -> tuple[Limited, ...]:
    """The lesser values beside some prices; none where the file has no such entry."""
    if not row.has("limited"):
        return ()
    return tuple(
        Limited(each.texts("stock"), each.counts("prices"))
        for each in row.records("limited")
    )


def sets_of_pieces(bound: Record) -> Sets | None:
    """The proof by sets of pieces, where there is one."""
    if not bound.has("sets"):
        return None
    sets = bound.record("sets")
    return Sets(sets.whole("least"), _rows(sets), _tree(sets))


def tried_of(bound: Record) -> Tried | None:
    """The proof by trying, where there is one."""
    if not bound.has("tried"):
        return None
    tried = bound.record("tried")
    return Tried(tried.whole("least"), _rows(tried))


def packs_chosen(bound: Record) -> Packs | None:
    """The proof by choices of packs, where there is one."""
    if not bound.has("packs"):
        return None
    packs = bound.record("packs")
    return Packs(packs.whole("least"), _rows(packs))


def _rows(proof: Record) -> tuple[Row, ...]:
    return tuple(
        Row(row.counts("prices"), limited_of(row))
        for row in proof.records("rows", most=MOST_VECTORS)
    )


def _tree(sets: Record) -> tuple[Branch | Leaf, ...]:
    """The nodes in the order they are read in: a node, what "no more" holds, what "more" holds."""
    nodes: list[Branch | Leaf] = []
    waiting = [(sets.record("tree"), 1)]
    while waiting:
        row, level = waiting.pop()
        # A path of four hundred keys says less than a number.
        row.where = f"{sets.where}, node {len(nodes) + 1} of the tree"
        if row.has("weights"):
            weights = row.rows_of("weights", 2, least=0, most=LARGEST)
            leaf = tuple((number, weight) for number, weight in weights)
            nodes.append(Leaf(leaf, row.whole("of", least=1)))
            continue
        nodes.append(Branch(row.text("stock"), row.whole("at_most")))
        if level == MOST_LEVELS or len(nodes) + len(waiting) >= MOST_NODES:
            row.objections.append(
                f"{row.where}: the tree has more than {MOST_NODES} nodes, or more than "
                f"{MOST_LEVELS} levels."
            )
            return ()
        waiting.append((row.record("more"), level + 1))
        waiting.append((row.record("no_more"), level + 1))
    return tuple(nodes)
