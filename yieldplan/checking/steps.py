"""Sets in steps: parts that match follow one another along one board, each from its own section."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.checking.cuts import cuttings_of, where
from yieldplan.checking.facts import Cutting, Node, Plan, Wood
from yieldplan.checking.wanted import Blank, Step


def sets_are_whole_and_of_one_kind(plan: Plan) -> Iterator[str]:
    """Ensures that the steps of a set are there once each, of one wood, stock and face."""
    for name, blanks in sets_of(plan).items():
        steps = [blank.step for blank in blanks if blank.step]
        numbers = [step.number for step in steps]
        if numbers != [*range(1, len(steps) + 1)] or {step.of for step in steps} != {
            len(steps)
        }:
            yield (
                f"set {name} has the steps {', '.join(map(str, numbers))}; "
                f"{steps[0].of} are said to be there, once each."
            )
        kinds = {(b.wood, b.lines, b.show_face, b.back_face) for b in blanks}
        if len(kinds) > 1:
            yield (
                f"set {name}: its steps are not all of one wood, from the same stock, "
                "with the same faces."
            )


def sets_are_cut_in_order(plan: Plan) -> Iterator[str]:
    """Ensures that the steps of a set come from sections side by side, in their order."""
    for wood, cutting in cuttings_of(plan):
        tree = cutting.tree
        steps = _steps_in(plan, tree)
        if not steps:
            continue
        if tree.cut != "crosscut":
            leaf = steps[0][0]
            yield (
                f"{where(wood, cutting, leaf)}: blank {leaf.blank} is a step of a set, and "
                f"{cutting.stock} is not crosscut first."
            )
            continue
        yield from _out_of_order(plan, wood, cutting)


def steps_lie_at_the_near_edge(plan: Plan) -> Iterator[str]:
    """Ensures that a step begins in the corner of its section, so that the grain runs on."""
    for wood, cutting in cuttings_of(plan):
        near = plan.piece_of[cutting.stock].edges[0]
        for section in cutting.tree.into:
            for leaf, _ in _steps_in(plan, section):
                if leaf.box[:2] != (section.box[0], near):
                    yield (
                        f"{where(wood, cutting, leaf)}: blank {leaf.blank} is a step of a "
                        f"set and begins at {plan.say(leaf.box[0])}, "
                        f"{plan.say(leaf.box[1])} across; the corner of its section is at "
                        f"{plan.say(section.box[0])}, {plan.say(near)} across."
                    )


def sets_of(plan: Plan) -> dict[str, list[Blank]]:
    """The blanks of every set, by number."""
    sets: dict[str, list[Blank]] = {}
    for blank in plan.blanks:
        if blank.step is not None:
            sets.setdefault(blank.step.set, []).append(blank)
    for blanks in sets.values():
        blanks.sort(key=lambda each: each.step.number if each.step else 0)
    return sets


def _out_of_order(plan: Plan, wood: Wood, cutting: Cutting) -> Iterator[str]:
    """Goes along the sections and says where a set breaks off or begins in its middle."""
    before: tuple[Node, Step] | None = None
    for section in cutting.tree.into:
        found = _steps_in(plan, section)
        if len(found) > 1:
            yield (
                f"{where(wood, cutting, section)} holds {len(found)} steps of sets; a "
                "section holds one at most."
            )
        leaf, step = found[0] if found else (section, None)
        if before and before[1].number < before[1].of:
            last, wanted = before[1], before[1].number + 1
            if step is None or (step.set, step.number) != (last.set, wanted):
                yield (
                    f"{where(wood, cutting, section)}: step {wanted} of set {last.set} "
                    f"should lie here, next to node {before[0].id}."
                )
            elif leaf.face_up != before[0].face_up:
                yield (
                    f"{where(wood, cutting, leaf)}: step {wanted} of set {last.set} lies "
                    f"with face {leaf.face_up} up, the step before with face "
                    f"{before[0].face_up}."
                )
        elif step is not None and step.number != 1:
            yield (
                f"{where(wood, cutting, leaf)}: step {step.number} of set {step.set} lies "
                "here without the step before."
            )
        before = (leaf, step) if step is not None else None
    if before and before[1].number < before[1].of:
        yield (
            f"{where(wood, cutting, before[0])}: set {before[1].set} breaks off after step "
            f"{before[1].number} of {before[1].of}."
        )


def _steps_in(plan: Plan, node: Node) -> list[tuple[Node, Step]]:
    return [
        (each, step)
        for each in node.every()
        if each.blank and (step := plan.blank_of[each.blank].step) is not None
    ]


RULES = (
    sets_are_whole_and_of_one_kind,
    sets_are_cut_in_order,
    steps_lie_at_the_near_edge,
)
