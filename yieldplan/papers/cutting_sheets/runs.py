"""What is sawn in one go: all boards of one wood and thickness, in the order they are chalked."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from yieldplan.drawing.cuts import kept
from yieldplan.drawing.saw import Saw
from yieldplan.drawing.saw_size.board import Named
from yieldplan.measure.order import natural
from yieldplan.model.blanks import Blank
from yieldplan.model.parts import Part
from yieldplan.model.plan import Cutting, Plan, WoodPlan
from yieldplan.papers.workbook.words import incomplete


@dataclass(frozen=True, kw_only=True)
class Run:
    """One wood and thickness of a plan.

    Parameters
    ----------
    name
        Wood and thickness, as the sheets are headed.
    cuttings
        In chalk order: matched sets first, then clear faces, then the rest.
    names
        What each blank is called, by the id of its node; `2 of 4` counts over the run.
    parts
        By what they ask of the saw.
    incomplete
        What is missing from the plan, in words; nothing when it is whole.
    product
        What a sheet or stick is sold as, where its name does not say it.
    """

    name: str
    job: str
    mark: str
    cuttings: tuple[Cutting, ...]
    saw: Saw
    names: Mapping[str, Named]
    parts: Mapping[str, Part]
    incomplete: str
    product: str = ""

    def blanks_of(self, cutting: Cutting) -> Iterator[Blank]:
        """The blanks cut from a board, from zero, each as often as it is cut."""
        for node in kept(cutting.tree):
            if node.blank is not None:
                yield self.saw.blanks[node.blank]


def runs_of(plan: Plan) -> Iterator[Run]:
    """The runs of a plan, wood by wood, the thinnest stock first."""
    blanks = {blank.id: blank for blank in plan.blanks}
    for wood in plan.woods:
        lines = {cutting.piece.line: cutting.piece.thick for cutting in wood.cuttings}
        for line in sorted(lines, key=lambda name: (lines[name], name)):
            yield _run(plan, wood, line, blanks)


def _run(plan: Plan, wood: WoodPlan, line: str, blanks: Mapping[str, Blank]) -> Run:
    cuttings = sorted(
        (each for each in wood.cuttings if each.piece.line == line),
        key=lambda each: _chalk_order(each, blanks),
    )
    return Run(
        name=line,
        job=plan.job.title,
        mark=plan.mark,
        cuttings=tuple(cuttings),
        saw=Saw(blanks=blanks, unit=plan.job.unit, rules=wood.rules),
        names=_named(cuttings, blanks),
        parts={part.demand: part for part in plan.parts},
        incomplete=incomplete(plan),
        product=_product(plan, wood),
    )


def _product(plan: Plan, wood: WoodPlan) -> str:
    said = ""
    if wood.is_sheet and wood.wood in plan.job.sheets:
        said = plan.job.sheets[wood.wood].product
    elif wood.is_stick and wood.wood in plan.job.sticks:
        said = plan.job.sticks[wood.wood].product
    return "" if said in wood.wood else said


def _chalk_order(cutting: Cutting, blanks: Mapping[str, Blank]) -> tuple[object, ...]:
    cut = [blanks[node.blank] for node in kept(cutting.tree) if node.blank]
    if any(blank.route == "match" or blank.step for blank in cut):
        rank = 0
    else:
        rank = 1 if any(blank.show_face == "clear" for blank in cut) else 2
    return (rank, natural(cutting.piece.id), cutting.copy)


def _named(cuttings: list[Cutting], blanks: Mapping[str, Blank]) -> dict[str, Named]:
    nodes = [node for each in cuttings for node in kept(each.tree) if node.blank]
    cut = [(node.id, blanks[node.blank]) for node in nodes if node.blank]
    often = Counter(blank.words for _, blank in cut)
    so_far: Counter[str] = Counter()
    named: dict[str, Named] = {}
    for node, blank in cut:
        so_far[blank.words] += 1
        place = ""
        if blank.step is not None:
            place = f"{blank.step.number} of {blank.step.of}"
        elif often[blank.words] > 1:
            place = f"{so_far[blank.words]} of {often[blank.words]}"
        named[node] = Named(name=blank.words, place=place)
    return named
