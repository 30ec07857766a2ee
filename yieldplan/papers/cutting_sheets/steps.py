"""What is done to a board, step by step, beside its number."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.drawing.cuts import crosscuts, flat, rips
from yieldplan.drawing.found import what_first
from yieldplan.drawing.saw import Saw
from yieldplan.model.plan import Cutting, Node
from yieldplan.units import from_ticks, tape


def steps(cutting: Cutting, saw: Saw) -> list[str]:
    """The steps in their order, for a person who has the drawing below them."""
    tree = cutting.tree
    if not tree.into:
        return ["Take it whole: no cut."]
    told = _crosscut_first if tree.cut == "crosscut" else _rip_first
    first = what_first(cutting.piece)
    return [*([f"{first}."] if first else []), *told(cutting, saw)]  # fmt: skip


def _crosscut_first(cutting: Cutting, saw: Saw) -> Iterator[str]:
    tree = cutting.tree
    marks = crosscuts(tree, saw.rules)
    strokes = " and strokes" if _has_strokes(cutting, saw) else ""
    if marks.square_off:
        off = tape(from_ticks(marks.square_off), saw.unit)
        yield f"Square the zero end, {off} off; zero is the fresh end."
    number = len(marks.at)
    if number:
        cuts = "1" if number == 1 else f"1 to {number}"
        yield f"Chalk marks{strokes}, cut {cuts}."
    sections = [piece for piece in flat(tree) if piece.cut == "rip"]
    if sections:
        yield from _rip_them(sections, cutting, "each piece")
    yield from _then_within(sections)


def _rip_first(cutting: Cutting, saw: Saw) -> Iterator[str]:
    tree = cutting.tree
    strips = list(rips(tree))
    edge = "Trim" if cutting.piece.is_sheet else "Joint"
    if any(rip.pass_before for rip in strips):
        yield f"{edge} the near edge, fence on it."
    settings = [rip for rip in strips if rip.kind == "rip"]
    if settings:
        count = "the strip" if len(settings) == 1 else f"the {len(settings)} strips"
        yield f"Rip {count}, full length, near edge first."
    crossed = [rip.node for rip in strips if rip.node.cut == "crosscut"]
    if crossed:
        strokes = " and its strokes" if _has_strokes(cutting, saw) else ""
        off = max(crosscuts(node, saw.rules).square_off for node in crossed)
        if off:
            size = tape(from_ticks(off), saw.unit)
            yield f"Square each strip's zero end, {size} off."
        yield f"Chalk each strip{strokes} from its own zero, then cut it."
    sections = [p for node in crossed for p in flat(node) if p.cut == "rip"]
    if sections:
        yield from _rip_them(sections, cutting, "what is ripped again")
    yield from _then_within(sections)


def _rip_them(sections: list[Node], cutting: Cutting, which: str) -> Iterator[str]:
    edge = "Trim" if cutting.piece.is_sheet else "Joint"
    every = [rip for section in sections for rip in rips(section)]
    if any(rip.pass_before for rip in every):
        yield f"{edge} the near edge of {which}."
    if any(rip.kind == "rip" for rip in every):
        yield "Near edge on the fence, rip upward."


def _then_within(sections: list[Node]) -> Iterator[str]:
    """A strip of a section that is cut again across, and perhaps once more along."""
    strips = [rip.node for section in sections for rip in rips(section)]
    crossed = [strip for strip in strips if strip.cut == "crosscut"]
    if crossed:
        again = any(piece.cut == "rip" for strip in crossed for piece in flat(strip))
        yield "Cut to length where it says cut" + (
            "; then rip again." if again else "."
        )


def _has_strokes(cutting: Cutting, saw: Saw) -> bool:
    used = [saw.blanks[leaf.blank] for leaf in cutting.tree.leaves() if leaf.blank]
    return any(blank.route == "match" or blank.step for blank in used)
