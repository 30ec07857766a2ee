"""Names: each thing of the plan is called one thing, and every name that is used stands for something."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator

from yieldplan.checking.facts import Plan


def no_two_share_a_name(plan: Plan) -> Iterator[str]:
    """Ensures that no two parts, blanks, pieces, woods, nodes or offcuts share a name."""
    nodes = [
        node
        for wood in plan.woods
        for cutting in wood.cuttings
        for node in cutting.tree.every()
    ]
    yield from _doubled("part", (part.id for part in plan.parts))
    yield from _doubled("demand", (part.demand for part in plan.parts))
    yield from _doubled("blank", (blank.id for blank in plan.blanks))
    yield from _doubled("piece of stock", (piece.id for piece in plan.stock))
    yield from _doubled("wood", (wood.name for wood in plan.woods))
    yield from _doubled("node", (node.id for node in nodes))
    yield from _doubled("offcut", (node.name for node in nodes if node.name))


def parts_are_known(plan: Plan) -> Iterator[str]:
    """Ensures that blanks, needs and prices speak of parts of the job."""
    for blank in plan.blanks:
        yield from _unknown(plan.part_of, f"blank {blank.id} makes", blank.makes)
        for inside in blank.inside:
            yield from _unknown(blank.makes, f"inside blank {blank.id}:", [inside.part])
    for wood in plan.woods:
        yield from _unknown(plan.part_of, f"{wood.name} needs", wood.need)
        yield from _unknown(plan.part_of, f"{wood.name} lacks", wood.missing)
        yield from _unknown(plan.part_of, f"{wood.name} prices", wood.bound.prices)


def faces_are_known(plan: Plan) -> Iterator[str]:
    """Ensures that every word for a face is one the file explains."""
    for kind, things in (("part", plan.parts), ("blank", plan.blanks)):
        for thing in things:
            words = sorted({thing.show_face, thing.back_face})
            yield from _unknown(plan.faces, f"{kind} {thing.id} has a face", words)


def stock_is_known(plan: Plan) -> Iterator[str]:
    """Ensures that what is cut or bought is stock that was offered, and blanks are listed."""
    for wood in plan.woods:
        for cutting in wood.cuttings:
            yield from _unknown(plan.piece_of, f"{wood.name} cuts", [cutting.stock])
        for cutting, node in wood.leaves():
            where = f"{wood.name}, {cutting.stock}, node {node.id} is blank"
            yield from _unknown(plan.blank_of, where, [node.blank])
    for line in plan.purchase:
        bought = [stock for stock, _ in line.pieces]
        yield from _unknown(plan.piece_of, f"purchase line {line.line} buys", bought)


def _doubled(kind: str, names: Iterable[str]) -> Iterator[str]:
    seen: set[str] = set()
    for name in names:
        if name in seen:
            yield f"The name {name!r} stands for two things: {kind} {name} is there twice."
        seen.add(name)


def _unknown(known: Container[str], who: str, names: Iterable[str]) -> Iterator[str]:
    for name in names:
        if name not in known:
            yield f"The file does not say what {name!r} is, yet {who} {name!r}."


RULES = (no_two_share_a_name, parts_are_known, faces_are_known, stock_is_known)
