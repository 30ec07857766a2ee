"""One wood from question to finished plan: posed, solved, its trees cut, its leftovers named."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import Executor

from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.model.pieces import Piece
from yieldplan.model.plan import Cutting, Missing, Rules, WoodPlan
from yieldplan.packing.ask_wood import Asked, ask_wood
from yieldplan.packing.filling.yard import Yard
from yieldplan.packing.problem import Problem
from yieldplan.packing.searching.solution import Solution
from yieldplan.packing.stop import IN_WORDS, Progress, Stop
from yieldplan.packing.wood.bound_by_name import bound_by_name
from yieldplan.packing.wood.lay import numbered
from yieldplan.packing.wood.leftovers import with_fates, with_names, with_worth
from yieldplan.packing.wood.missing import missing_part
from yieldplan.packing.wood.pose import (
    blanks_for,
    item_of,
    keep_sizes,
    parts_asked,
    pieces_of,
)
from yieldplan.packing.wood.set_up import CutBoard, place_set_up
from yieldplan.packing.wood.trees import tree_of
from yieldplan.units import to_ticks_up


def plan_wood(
    wood: str,
    parts: Sequence[Part],
    blanks: Sequence[Blank],
    pieces: Sequence[Piece],
    fits: Mapping[str, tuple[str, ...]],
    job: Job,
    stop: Stop,
    hear: Callable[[Progress], None],
    executor: Executor | None = None,
) -> WoodPlan:
    """The plan for one wood.

    Parameters
    ----------
    fits
        Blank id to the stock lines it may be cut from.
    hear
        Told of every better plan and floor while the search runs.
    executor
        Where parts of the search are done side by side; None does all of it here.
    """
    question = ask_wood(wood, parts, blanks, pieces, fits, job)
    solution = question.solve(stop, hear, executor)
    return wood_plan(question, solution, parts, blanks, pieces, fits, job)


def wood_plan(
    question: Asked,
    solution: Solution,
    parts: Sequence[Part],
    blanks: Sequence[Blank],
    pieces: Sequence[Piece],
    fits: Mapping[str, tuple[str, ...]],
    job: Job,
) -> WoodPlan:
    """The packer's answer in the words of the job: boards, cuts, what is left of them."""
    wood, problem = question.wood, question.problem
    asked = parts_asked(wood, parts)
    offered = pieces_of(wood, pieces)
    is_sheet = any(part.is_sheet for part in asked)
    keep = keep_sizes(asked, job.shop)
    boards = [
        CutBoard(
            pattern.bin,
            with_worth(
                with_fates(
                    tree_of(pattern, problem, exact=is_sheet),
                    problem.bins[pattern.bin],
                    keep,
                ),
                worth,
            ),
        )
        for pattern, worth in zip(solution.patterns, solution.worths, strict=True)
    ]
    boards, set_up_left = _set_up(
        wood, parts, blanks, offered, fits, job, boards, problem
    )
    return WoodPlan(
        wood=wood,
        is_sheet=is_sheet,
        is_stick=any(part.is_stick for part in asked),
        rules=Rules(
            family=problem.family,
            kerf=problem.kerf,
            step_along=problem.step_along,
            step_across=problem.step_across,
            marks_from=problem.marks_from,
            crook_at_most=problem.crook_at_most,
            twisted_at_most=problem.twisted_at_most,
            around_knots=to_ticks_up(job.shop.knot_margin),
            short_of_checks=to_ticks_up(job.shop.check_margin),
            resaw_kerf=to_ticks_up(job.shop.resaw_kerf),
            offcut_percent=problem.offcut_percent,
            offcut_sizes=problem.offcut_sizes,
        ),
        need={
            demand.name: count
            for demand, count in zip(problem.demands, solution.need, strict=True)
            if count
        },
        missing=_missing(blanks_for(wood, blanks), offered, job, problem, solution),
        cuttings=_cuttings(boards, solution, offered),
        cost=solution.cost,
        bound=bound_by_name(solution, problem),
        set_up_left=set_up_left,
        stages=solution.stages,
        ended=IN_WORDS[solution.ended],
    )


def _cuttings(
    boards: Sequence[CutBoard], solution: Solution, offered: Sequence[Piece]
) -> tuple[Cutting, ...]:
    copies: dict[int, int] = {}
    cuttings = []
    for board, pattern in zip(boards, solution.patterns, strict=True):
        piece = offered[board.bin]
        copy = copies[board.bin] = copies.get(board.bin, 0) + 1
        name = piece.id if piece.copies == 1 else f"{piece.id}/{copy}"
        cuttings.append(
            Cutting(
                piece=piece,
                copy=copy,
                tree=with_names(numbered(board.tree, name)),
                breakdown=(
                    "rip first" if pattern.breakdown == "R" else "crosscut first"
                ),
            )
        )
    return tuple(cuttings)


def _set_up(
    wood: str,
    parts: Sequence[Part],
    blanks: Sequence[Blank],
    offered: Sequence[Piece],
    fits: Mapping[str, tuple[str, ...]],
    job: Job,
    boards: list[CutBoard],
    problem: Problem,
) -> tuple[list[CutBoard], dict[str, int]]:
    """The boards with set-up pieces cut from waste, and those there was no room for."""
    keep = keep_sizes(parts_asked(wood, parts), job.shop)
    left = {
        part.demand: part.needed
        for part in parts
        if part.set_up and part.wood == wood and part.needed
    }
    place = {demand: number for number, demand in enumerate(sorted(left))}
    pieces = [blank for blank in blanks_for(wood, blanks) if blank.set_up]
    # The largest first: it finds a place least easily.
    items = sorted(
        (item_of(blank, place, parts, job) for blank in pieces),
        key=lambda item: (-item.length * item.width, item.name),
    )
    names = sorted(left)
    for item in items:
        holds = frozenset(
            number
            for number, piece in enumerate(offered)
            if piece.line in fits.get(item.name, ()) and piece.is_straight
        )
        while item.makes and any(left[names[made]] for made in item.makes):
            found = place_set_up(item, boards, problem.bins, holds, keep, problem.kerf)
            if found is None:
                break
            boards = found
            for made, count in item.makes.items():
                left[names[made]] = max(0, left[names[made]] - count)
    return boards, {demand: count for demand, count in sorted(left.items()) if count}


def _missing(
    blanks: Sequence[Blank],
    offered: Sequence[Piece],
    job: Job,
    problem: Problem,
    solution: Solution,
) -> tuple[Missing, ...]:
    if not any(solution.short):
        return ()
    yard = Yard(problem)
    thickness = {blank.id: blank.thickness.value for blank in blanks}
    return tuple(
        missing_part(
            demand,
            count,
            yard,
            offered,
            thickness,
            job,
            was_stopped=solution.ended in ("asked", "clock"),
        )
        for demand, count in enumerate(solution.short)
        if count
    )
