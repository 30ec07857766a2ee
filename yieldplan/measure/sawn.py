"""Where parts come from: the blanks they are milled from, and the boards those are cut from."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from yieldplan.measure.order import natural
from yieldplan.model.blanks import Blank
from yieldplan.model.parts import Part
from yieldplan.model.plan import Missing, Plan


@dataclass(frozen=True, kw_only=True)
class Sawn:
    """Where a part comes from.

    Parameters
    ----------
    blanks
        The blanks it is milled from, as used in the plan or as a bid counts on them.
    boards
        The pieces they are cut from.
    missing
        What the plan leaves out of it.
    left_out
        Set-up pieces there was no waste for.
    """

    blanks: tuple[Blank, ...] = ()
    boards: tuple[str, ...] = ()
    missing: Missing | None = None
    left_out: int = 0


@dataclass
class _Used:
    blanks: dict[str, Blank] = field(default_factory=dict)
    boards: set[str] = field(default_factory=set)


def sawn_by_plan(plan: Plan) -> dict[str, Sawn]:
    """For every demand, what the plan makes of it.

    A part asks under `Part.demand`: its id, or its strips' where it is glued up.
    """
    blank_of = {blank.id: blank for blank in plan.blanks}
    used: dict[str, _Used] = {}
    for wood in plan.woods:
        for cutting in wood.cuttings:
            for leaf in cutting.tree.leaves():
                if leaf.blank is None:
                    continue
                blank = blank_of[leaf.blank]
                for demand in blank.makes:
                    entry = used.setdefault(demand, _Used())
                    entry.blanks[blank.id] = blank
                    entry.boards.add(cutting.piece.id)
    missing = {each.demand: each for wood in plan.woods for each in wood.missing}
    left = {d: n for wood in plan.woods for d, n in wood.set_up_left.items()}
    return {
        demand: Sawn(
            blanks=tuple(used.get(demand, _Used()).blanks.values()),
            boards=tuple(sorted(used.get(demand, _Used()).boards, key=natural)),
            missing=missing.get(demand),
            left_out=left.get(demand, 0),
        )
        for demand in sorted({*used, *missing, *left})
    }


def sawn_by_routes(blanks: Iterable[Blank]) -> dict[str, Sawn]:
    """For every demand, the blanks that could make it, when no board is known."""
    made: dict[str, list[Blank]] = {}
    for blank in blanks:
        for demand in blank.makes:
            made.setdefault(demand, []).append(blank)
    return {demand: Sawn(blanks=tuple(each)) for demand, each in made.items()}


def together(parts: Iterable[Part], sawn: Mapping[str, Sawn]) -> Sawn:
    """Where parts that are alike come from."""
    each = [sawn.get(part.demand, Sawn()) for part in parts]
    boards = {board for one in each for board in one.boards}
    return Sawn(
        blanks=tuple({b.id: b for one in each for b in one.blanks}.values()),
        boards=tuple(sorted(boards, key=natural)),
        missing=next((one.missing for one in each if one.missing), None),
        left_out=sum(one.left_out for one in each),
    )
