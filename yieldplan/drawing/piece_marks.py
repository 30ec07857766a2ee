"""What is drawn on a single piece: its marks, the parts inside it, witness strokes, the frame of an offcut."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import pairwise

from yieldplan.drawing.scene import Box, Item, Line, Rect
from yieldplan.model.blanks import Blank, Step
from yieldplan.model.faces import Mark
from yieldplan.model.plan import Node
from yieldplan.model.rounding import mark_in_ticks
from yieldplan.units import to_ticks_up

_LEAST = 7.0  # a pin knot is still seen; its figures stay true
_STROKE = 5.5
_MOST_STROKES = 4


def marks_on(
    node: Node, rect: Rect, marks: Iterable[Mark]
) -> Iterator[tuple[Mark, Rect]]:
    """The marks that lie on a leaf, and where they are drawn in it."""
    across, along = rect.height / node.width, rect.width / node.length
    left, near = node.box[0], node.box[1]
    for mark in marks:
        box = mark_in_ticks(mark)
        x0, x1 = max(box[0], node.box[0]), min(box[2], node.box[2])
        y0, y1 = max(box[1], node.box[1]), min(box[3], node.box[3])
        if x0 >= x1 or y0 >= y1:
            continue
        drawn = Rect(
            rect.x0 + (x0 - left) * along,
            rect.y1 - (y1 - near) * across,
            rect.x0 + (x1 - left) * along,
            rect.y1 - (y0 - near) * across,
        )
        yield mark, _at_least(drawn, rect)


def _at_least(drawn: Rect, rect: Rect) -> Rect:
    x0, x1 = _grown(drawn.x0, drawn.x1, rect.x0, rect.x1)
    y0, y1 = _grown(drawn.y0, drawn.y1, rect.y0, rect.y1)
    return Rect(x0, y0, x1, y1)


def _grown(low: float, high: float, least: float, most: float) -> tuple[float, float]:
    more = min(_LEAST, most - least) - (high - low)
    if more <= 0:
        return low, high
    low = min(max(low - more / 2, least), most - (high - low) - more)
    return low, low + min(_LEAST, most - least)


def inside(blank: Blank, node: Node, rect: Rect) -> Iterator[tuple[str, Rect]]:
    """The parts of a matched set with their names, each less the room its strokes take.

    Any other blank is named as a whole.
    """
    if len(blank.laid_out) < 2 or blank.route != "match":
        yield blank.words, rect
        return
    strokes = _strokes(blank)
    order = _in_order(blank)
    edges = [0.0, *_joint_places(blank, node), 1.0]
    for number, demand in enumerate(order):
        low, high = edges[number], edges[number + 1]
        name = demand if strokes else f"{demand}, {number + 1} of {len(order)}"
        if _is_end_to_end(blank):
            before = _swing(number) if strokes and number else 0.0
            after = _swing(number + 1) if strokes and number + 1 < len(order) else 0.0
            yield name, Rect(
                rect.x0 + low * rect.width + before, rect.y0,
                rect.x0 + high * rect.width - after, rect.y1,
            )  # fmt: skip
        else:
            yield name, Rect(
                rect.x0 + (_swing(len(order)) if strokes else 0.0),
                rect.y1 - high * rect.height,
                rect.x1, rect.y1 - low * rect.height,
            )  # fmt: skip


def joints(blank: Blank, node: Node, rect: Rect) -> Iterator[Item]:
    """The cuts that part a blank after milling, and the strokes that keep a set in order."""
    if len(blank.laid_out) < 2:
        return
    for number, share in enumerate(_joint_places(blank, node), start=1):
        if _is_end_to_end(blank):
            x = rect.x0 + share * rect.width
            yield Line(x0=x, y0=rect.y0, x1=x, y1=rect.y1, weight=0.75, dash=(4.0, 2.5))
            y = rect.y1 - min(rect.height * 0.3, 12.0)
            strokes = _slanted(number, x, y) if _strokes(blank) else iter(())
        else:
            y = rect.y1 - share * rect.height
            yield Line(x0=rect.x0, y0=y, x1=rect.x1, y1=y, weight=0.75, dash=(4.0, 2.5))
            middle = rect.x0 + _swing(len(blank.laid_out)) / 2 + 2
            strokes = _upright(number, middle, y) if _strokes(blank) else iter(())
        yield from strokes


def step_strokes(
    panels: Sequence[tuple[Node, Rect]], blanks: Mapping[str, Blank], apart: float
) -> Iterator[Item]:
    """Strokes across the crosscuts between the steps of a set: one, then two, then three.

    Parameters
    ----------
    panels
        The sections of a board from zero, as they are drawn.
    apart
        Between two sections. [pt]
    """
    for (before, rect), (after, _) in pairwise(panels):
        sets = {step.set: step for step in _steps(before, blanks)}
        for step in _steps(after, blanks):
            last = sets.get(step.set)
            if last is None or step.of > _MOST_STROKES + 1:
                continue
            lower = min(last.number, step.number)
            y = rect.y1 - min(rect.height * 0.3, 14.0)
            yield from _slanted(lower, rect.x1 + apart / 2, y, apart)


def _steps(node: Node, blanks: Mapping[str, Blank]) -> Iterator[Step]:
    for leaf in node.leaves():
        step = blanks[leaf.blank].step if leaf.blank else None
        if step is not None:
            yield step


def joint_lines(blank: Blank, node: Node, rect: Rect) -> list[Rect]:
    """Where the lines between the parts of a blank run, for words to stay clear of."""
    if _is_end_to_end(blank):
        xs = [rect.x0 + s * rect.width for s in _joint_places(blank, node)]
        return [Rect(x - 1, rect.y0, x + 1, rect.y1) for x in xs]
    ys = [rect.y1 - s * rect.height for s in _joint_places(blank, node)]
    return [Rect(rect.x0, y - 1, rect.x1, y + 1) for y in ys]


def kept_frame(rect: Rect) -> Iterator[Item]:
    """The frame of an offcut worth keeping."""
    yield Box(rect=rect.inset(2.5), weight=1.0, dash=(9.0, 2.0, 2.5, 2.0, 2.5, 2.0))


def _is_end_to_end(blank: Blank) -> bool:
    return len({part.x for part in blank.laid_out}) == len(blank.laid_out)


def _in_order(blank: Blank) -> list[str]:
    return [p.demand for p in sorted(blank.laid_out, key=lambda p: (p.x, p.y))]


def _joint_places(blank: Blank, node: Node) -> list[float]:
    """Where one part ends and the next begins, as shares of the piece. [-]"""
    ordered = sorted(blank.laid_out, key=lambda part: (part.x, part.y))
    if _is_end_to_end(blank):
        ends = [(part.x, part.x + part.length) for part in ordered]
        whole = node.length
    else:
        ends = [(part.y, part.y + part.width) for part in ordered]
        whole = node.width
    return [
        (to_ticks_up(before[1]) + to_ticks_up(after[0])) / 2 / whole
        for before, after in pairwise(ends)
    ]


def _strokes(blank: Blank) -> bool:
    """Whether strokes show the order; a long set is told by its numbers alone."""
    return blank.route == "match" and len(blank.laid_out) <= _MOST_STROKES + 1


def _swing(count: int) -> float:
    return _STROKE + 2.2 * count


def _slanted(count: int, x: float, y: float, over: float = 0.0) -> Iterator[Item]:
    half = _STROKE + over / 2
    for stroke in range(count):
        up = (stroke - (count - 1) / 2) * 4.4
        yield Line(x0=x - half, y0=y + 2 - up, x1=x + half, y1=y - 3 - up, weight=2.4)


def _upright(count: int, x: float, y: float) -> Iterator[Item]:
    for stroke in range(count):
        aside = (stroke - (count - 1) / 2) * 4.4
        yield Line(
            x0=x + aside - 2, y0=y + _STROKE, x1=x + aside + 2, y1=y - _STROKE,
            weight=2.4,
        )  # fmt: skip
