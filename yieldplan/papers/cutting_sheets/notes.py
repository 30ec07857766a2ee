"""What stands under a board: strokes, what happens next, and the sum that comes to its length or width."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby, pairwise

from yieldplan.drawing.cut_text import after_the_saw
from yieldplan.drawing.cuts import crosscuts
from yieldplan.drawing.saw import Saw
from yieldplan.model.blanks import Blank
from yieldplan.model.plan import Cutting, Node
from yieldplan.papers.cutting_sheets.runs import Run
from yieldplan.units import from_ticks, tape


def notes(cutting: Cutting, run: Run) -> list[str]:
    """Sentences, in the order they matter."""
    blanks = list({blank.id: blank for blank in run.blanks_of(cutting)}.values())
    said = [*_strokes(blanks), *_next(blanks), *_glued(blanks, run)]
    if any(leaf.face_up == "B" for leaf in cutting.tree.leaves() if leaf.blank):
        said.append(
            "FACE B UP: the good face of that piece is underneath; turn it over once it is sawn."
        )
    if any(blank.set_up for blank in blanks):
        said.append("Set-up pieces are test pieces for the joint they name.")
    return list(dict.fromkeys(said))


def _strokes(blanks: list[Blank]) -> Iterator[str]:
    sets = [blank for blank in blanks if blank.route == "match" or blank.step]
    if sets:
        yield "Strokes across a joint keep the pieces of a set in order: this face out, near edge down."


def _next(blanks: list[Blank]) -> Iterator[str]:
    milled: dict[int, list[str]] = {}
    for blank in blanks:
        parts = len(blank.inside)
        if parts < 2:
            continue
        if blank.slices > 1 or blank.route == "glue up":
            yield f"{after_the_saw(blank)}."
        else:
            milled.setdefault(parts, []).append(blank.words)
    for parts, names in sorted(milled.items()):
        yield f"Mill in one piece, then cut into {parts} parts: {', '.join(names)}."


def _glued(blanks: list[Blank], run: Run) -> Iterator[str]:
    for demand in dict.fromkeys(each for blank in blanks for each in blank.makes):
        part = run.parts.get(demand)
        if part is None:
            continue
        wide = tape(part.width.value, run.saw.unit)
        if part.strips > 1:
            yield f"{part.id}: {part.strips} strips are glued to a panel, then ripped to {wide}."
        elif part.glue_up is not None:
            yield f"{part.id}: strips are glued up until they give {wide}, and the trim."


def adds_up(cutting: Cutting, saw: Saw) -> str:
    """The sum of a board: mark to mark along it, or strips and kerfs across it."""
    tree = cutting.tree
    if tree.cut == "crosscut":
        return f"Along, mark to mark: {_along(tree, saw)}."
    if tree.cut == "rip":
        return f"Across: {_across(tree, saw)}."
    return ""


def _along(tree: Node, saw: Saw) -> str:
    marks = crosscuts(tree, saw.rules)
    ends = [tree.box[0], *marks.at, tree.box[2]]
    if marks.square_off:
        ends.insert(1, marks.origin)
    sizes = [after - before for before, after in pairwise(ends)]
    terms = []
    for size, alike in groupby(sizes):
        count, figure = len(list(alike)), tape(from_ticks(size), saw.unit)
        terms.append(figure if count == 1 else f"{count} × {figure}")
    whole = tape(from_ticks(tree.length), saw.unit)
    off = " (the first is squared off)" if marks.square_off else ""
    return f"{' + '.join(terms)} = {whole}{off}"


def _across(tree: Node, saw: Saw) -> str:
    def said(ticks: int) -> str:
        return tape(from_ticks(ticks), saw.unit)

    terms, at = [], tree.box[1]
    for number, strip in enumerate(tree.into):
        if strip.box[1] > at:
            terms.append(f"{said(strip.box[1] - at)} {'kerf' if number else 'edge'}")
        last = number == len(tree.into) - 1
        terms.append(said(strip.width) + (" rest" if last and strip.fate else ""))
        at = strip.box[3]
    if at < tree.box[3]:
        terms.append(f"{said(tree.box[3] - at)} edge")
    return f"{' + '.join(terms)} = {said(tree.width)}"
