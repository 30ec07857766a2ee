"""The fence settings of a run in an order that no strip is taken out of: a knot stays where it is drawn."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from yieldplan.drawing.cuts import Rip, crosscuts, flat, kept, rips
from yieldplan.drawing.saw import Saw
from yieldplan.model.plan import Cutting, Node
from yieldplan.papers.cutting_sheets.block import name_of
from yieldplan.papers.cutting_sheets.runs import Run
from yieldplan.units import from_ticks, tape


@dataclass(frozen=True, kw_only=True)
class FenceSetting:
    """One setting of the fence.

    Parameters
    ----------
    figure
        [ticks]
    gives
        What comes off, in words.
    where
        The boards and pieces it is used on.
    nodes
        Ids of the strips it frees: a box to tick for each.
    """

    figure: int
    gives: str
    where: str
    nodes: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class _Cut:
    figure: int
    node: Node
    gives: str
    board: str
    place: str


def fence_settings(run: Run) -> list[FenceSetting]:
    """Every rip of a run.

    Full-length strips first, in drawn order. Then pieces whose strips do not come off
    widest first, in drawn order; then all others together, widest first. At last what is
    ripped once more after it was cut to length, in the same way.
    """
    full: list[_Cut] = []
    in_order: tuple[list[_Cut], list[_Cut]] = ([], [])
    by_width: tuple[list[_Cut], list[_Cut]] = ([], [])
    for cutting in run.cuttings:
        board = name_of(cutting.piece, cutting.copy)
        for node, depth, place in _ripped(cutting, run.saw):
            cuts = list(_cuts(node, run, board, place))
            if depth == 0:
                full.extend(cuts)
            elif [c.figure for c in cuts] == sorted(
                (c.figure for c in cuts), reverse=True
            ):
                by_width[min(depth, 2) - 1].extend(cuts)
            else:
                in_order[min(depth, 2) - 1].extend(cuts)
    settings = [*_merged(full)]
    for level in (0, 1):
        settings += _merged(in_order[level])
        widest_first = sorted(by_width[level], key=lambda cut: -cut.figure)
        settings += _merged(widest_first, tells_place=False)
    return settings


def _ripped(cutting: Cutting, saw: Saw) -> Iterator[tuple[Node, int, str]]:
    """What is ripped, how often it was ripped before, and where it lies on the board."""
    tree = cutting.tree
    if tree.cut == "rip":
        yield tree, 0, "full length"
        for rip in rips(tree):
            yield from _within(rip.node, rip.node, 1, saw)
    else:
        yield from _within(tree, tree, 1, saw)


def _within(
    node: Node, row: Node, depth: int, saw: Saw
) -> Iterator[tuple[Node, int, str]]:
    if node.cut == "crosscut":
        for piece in flat(node):
            # Of a strip in a section the section is told, whose marks are chalked.
            yield from _within(piece, node if depth == 1 else row, depth, saw)
    elif node.cut == "rip":
        yield node, depth, _stretch(node, row, saw)
        for rip in rips(node):
            yield from _within(rip.node, row, depth + 1, saw)


def _stretch(node: Node, row: Node, saw: Saw) -> str:
    """`42 to 79`, as the board is marked."""
    if row.cut != "crosscut":
        return "all of it"
    marks = crosscuts(row, saw.rules)
    before = [cut for cut in marks.at if cut < node.box[0]]
    after = [cut for cut in marks.at if cut >= node.box[2]]
    start = marks.figure(before[-1]) if before else 0
    end = marks.figure(after[0]) if after else row.box[2] - marks.origin
    return f"{tape(from_ticks(start), saw.unit)} to {tape(from_ticks(end), saw.unit)}"


def _cuts(node: Node, run: Run, board: str, place: str) -> Iterator[_Cut]:
    for rip in rips(node):
        if rip.kind == "rip":
            yield _Cut(
                figure=rip.node.width, node=rip.node, gives=_gives(rip, run),
                board=board, place=place,
            )  # fmt: skip


def _gives(rip: Rip, run: Run) -> str:
    names = []
    for node in kept(rip.node):
        named = run.names.get(node.id)
        names.append(named.name if named else f"KEEP {node.name}")
    told = list(dict.fromkeys(names))
    return ", ".join(told) if told else rip.node.fate or "burn"


def _merged(cuts: list[_Cut], *, tells_place: bool = True) -> list[FenceSetting]:
    """Neighbours in the list that need the same setting, as one line.

    Parameters
    ----------
    tells_place
        Whether it says which piece of a board, where the order of its strips matters.
    """
    groups: list[list[_Cut]] = []
    for cut in cuts:
        if groups and groups[-1][0].figure == cut.figure:
            groups[-1].append(cut)
        else:
            groups.append([cut])
    return [
        FenceSetting(
            figure=group[0].figure,
            gives=", ".join(dict.fromkeys(cut.gives for cut in group)),
            where=_places(group) if tells_place else _boards(group),
            nodes=tuple(cut.node.id for cut in group),
        )
        for group in groups
    ]


def _places(group: list[_Cut]) -> str:
    places: dict[str, list[str]] = {}
    for cut in group:
        known = places.setdefault(cut.board, [])
        if cut.place not in known:
            known.append(cut.place)
    said = [f"{board}, {' and '.join(each)}" for board, each in places.items()]
    return f"{'; '.join(said)}: in this order"


def _boards(group: list[_Cut]) -> str:
    often = Counter(cut.board for cut in group)
    return ", ".join(
        board if number == 1 else f"{board} ({number} ×)"
        for board, number in often.items()
    )
