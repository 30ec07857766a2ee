"""A benchmark's problem and its solution as plan.json, so that the checker goes over every cut and floor of it.

Written from `plan_format.md`, but for the wood's own entry, which the writer of plan.json
writes: its floor carries whatever proofs the packer has.
"""

from __future__ import annotations

from collections import Counter

from tests.benchmarks.goods import (
    KINDS,
    WOOD,
    Document,
    Goods,
    face,
    zone_kinds,
)
from tests.builders import make_job, make_piece
from yieldplan import plan_file
from yieldplan.model.plan import Cutting, Missing, Plan, Rules, WoodPlan
from yieldplan.packing import Problem, Solution
from yieldplan.packing.wood.bound_by_name import bound_by_name
from yieldplan.packing.wood.lay import numbered
from yieldplan.packing.wood.leftovers import (
    KeepSizes,
    with_fates,
    with_names,
    with_worth,
)
from yieldplan.packing.wood.trees import tree_of

CENT = 100


def document(
    problem: Problem, solution: Solution, *, is_sheet: bool = False
) -> Document:
    """The plan of one wood.

    Parameters
    ----------
    is_sheet
        Whether the bins are sheets, so that a part may lie across.

    Raises
    ------
    NotOnThePage
        Random problems ask for more than jobs can: two lists of what no joint may hold.
    """
    return plan_file.write(_plan(problem, solution, is_sheet=is_sheet)) | {
        "faces": {
            face(mask): [kind for bit, kind in KINDS.items() if bit & mask]
            for mask in range(sum(KINDS) + 1)
        },
        "zones": zone_kinds(problem),
        **Goods(problem, is_sheet=is_sheet).written(),
        "money": _money(problem, solution, is_sheet=is_sheet),
    }


def _plan(problem: Problem, solution: Solution, *, is_sheet: bool) -> Plan:
    """The plan as the writer of plan.json takes it; parts, blanks and stock are written here."""
    copies: Counter[int] = Counter()
    cuttings = []
    for pattern, worth in zip(solution.patterns, solution.worths, strict=True):
        piece = problem.bins[pattern.bin]
        copies[pattern.bin] += 1
        tree = with_fates(
            tree_of(pattern, problem, exact=is_sheet), piece, KeepSizes(())
        )
        name = f"{piece.name}/{copies[pattern.bin]}"
        cuttings.append(
            Cutting(
                piece=make_piece(piece.name),
                copy=copies[pattern.bin],
                tree=with_names(numbered(with_worth(tree, worth), name)),
                breakdown="rip first" if pattern.breakdown == "R" else "crosscut first",
            )
        )
    named = [demand.name for demand in problem.demands]
    wood = WoodPlan(
        wood=WOOD,
        is_sheet=is_sheet,
        rules=Rules(
            family=problem.family,
            kerf=problem.kerf,
            step_along=problem.step_along,
            step_across=problem.step_across,
            marks_from=problem.marks_from,
            crook_at_most=problem.crook_at_most,
            twisted_at_most=problem.twisted_at_most,
            around_knots=0,
            short_of_checks=0,
            resaw_kerf=0,
            offcut_percent=problem.offcut_percent,
            offcut_sizes=problem.offcut_sizes,
        ),
        need=dict(zip(named, solution.need, strict=True)),
        missing=tuple(
            Missing(
                demand=name, count=count, reason="too little wood", remedy="buy more"
            )
            for name, count in zip(named, solution.short, strict=True)
            if count
        ),
        cuttings=tuple(cuttings),
        cost=solution.cost,
        bound=bound_by_name(solution, problem),
        set_up_left={},
    )
    return Plan(
        job=make_job(),
        parts=(),
        blanks=(),
        pieces=(),
        fits={},
        woods=(wood,),
        purchase=(),
        cautions=(),
    )


def _money(problem: Problem, solution: Solution, *, is_sheet: bool) -> Document:
    """One line for every price and stock line, by the piece."""
    line_of = Goods(problem, is_sheet=is_sheet).line_of
    bought: dict[tuple[str, int], Counter[str]] = {}
    for pattern in solution.patterns:
        piece = problem.bins[pattern.bin]
        heading = (line_of[piece.holds], piece.price)
        bought.setdefault(heading, Counter())[piece.name] += 1
    lines = [
        {
            "wood": WOOD,
            "line": line,
            "grade": "",
            "pieces": sorted([name, count] for name, count in pieces.items()),
            "board_feet": None if is_sheet else f"{pieces.total()}.00",
            "by": "piece",
            "per": price,
            "total": (2 * price * pieces.total() + CENT) // (2 * CENT) * CENT,
        }
        for (line, price), pieces in sorted(bought.items())
    ]
    return {"lines": lines, "total": sum(line["total"] for line in lines)}
