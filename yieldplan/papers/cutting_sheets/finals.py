"""Final widths and lengths of what a run gives, once it is planed: the last settings of fence and stop."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from yieldplan.drawing.cuts import kept
from yieldplan.measure.order import natural
from yieldplan.model.blanks import Blank
from yieldplan.model.parts import Part
from yieldplan.model.plan import Node
from yieldplan.papers.cutting_sheets.runs import Run
from yieldplan.units import Inches, tape, to_ticks_up

Way = Literal["width", "length"]


@dataclass(frozen=True, kw_only=True)
class FinalSize:
    """One final setting.

    Parameters
    ----------
    size, thickness
        What the parts end at. [in]
    parts
        The parts, and how many of each this run gives.
    notes
        What the bench should know of them.
    """

    size: Inches
    thickness: Inches
    parts: tuple[tuple[str, int], ...]
    notes: tuple[str, ...]

    @property
    def count(self) -> int:
        """How many pieces are cut at it."""
        return sum(number for _, number in self.parts)


def final_sizes(run: Run, way: Way) -> list[FinalSize]:
    """The settings, the largest first; parts of two thicknesses are told apart."""
    counted: dict[tuple[Inches, Inches], Counter[str]] = {}
    notes: dict[tuple[Inches, Inches], list[str]] = {}
    for each in _pieces(run, way):
        key = (each.size, each.thickness)
        counted.setdefault(key, Counter())[each.name] += each.number
        if each.note and each.note not in notes.setdefault(key, []):
            notes[key].append(each.note)
    return [
        FinalSize(
            size=key[0],
            thickness=key[1],
            parts=tuple(
                sorted(counted[key].items(), key=lambda each: natural(each[0]))
            ),
            notes=tuple(notes.get(key, ())),
        )
        for key in sorted(counted, reverse=True)
    ]


@dataclass(frozen=True, kw_only=True)
class _Piece:
    name: str
    size: Inches
    thickness: Inches
    number: int
    note: str


def _pieces(run: Run, way: Way) -> Iterator[_Piece]:
    """Everything that is brought to a final size."""
    panels: Counter[str] = Counter()
    for node, blank in _cut(run):
        if blank.is_sawn_to_size and _is_to_size(node, blank):
            continue
        for inside in blank.inside:
            part = run.parts.get(inside.demand)
            if part is not None and _is_glued(part):
                panels[part.demand] += 1
                continue
            yield _Piece(
                name=inside.demand,
                size=inside.width if way == "width" else inside.length,
                thickness=part.thickness.value if part else blank.finished_thickness,
                number=1,
                note=part.note if part else "",
            )
    for demand, strips in sorted(panels.items()):
        part = run.parts[demand]
        yield _Piece(
            name=f"{part.id} (panel)",
            size=part.width.value if way == "width" else part.length.value,
            thickness=part.thickness.value,
            number=1 if part.glue_up else max(1, -(-strips // part.strips)),
            note="panels are glued up first",
        )


def _cut(run: Run) -> Iterator[tuple[Node, Blank]]:
    for cutting in run.cuttings:
        for node in kept(cutting.tree):
            if node.blank is not None:
                yield node, run.saw.blanks[node.blank]


def _is_glued(part: Part) -> bool:
    return part.strips > 1 or part.glue_up is not None


def _is_to_size(node: Node, blank: Blank) -> bool:
    """Whether the rough cut leaves nothing to take off."""
    return node.length == to_ticks_up(blank.length.value) and node.width == to_ticks_up(
        blank.width.value
    )


def in_words(final: FinalSize) -> str:
    """`side, back, 2 × rail`."""
    return ", ".join(
        name if number == 1 else f"{number} × {name}" for name, number in final.parts
    )


def thicknesses(run: Run) -> list[str]:
    """What a run is planed to, the thickest first; nothing where nothing is planed."""
    sizes = {
        run.parts[inside.demand].thickness.value
        for _, blank in _cut(run)
        if not blank.is_sawn_to_size
        for inside in blank.inside
        if inside.demand in run.parts
    }
    said = [tape(size, run.saw.unit) for size in sorted(sizes, reverse=True)]
    return [size.removeprefix("about ") for size in said]
