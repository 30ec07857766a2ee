"""Draws the pieces of a row of crosscuts a little apart, each to scale, a figure at every cut."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from yieldplan.drawing.cuts import crosscuts, flat
from yieldplan.drawing.running_marks import Figure
from yieldplan.drawing.saw import Saw
from yieldplan.drawing.scene import Rect
from yieldplan.model.plan import Node
from yieldplan.units import from_ticks, tape


@dataclass(frozen=True, kw_only=True)
class Spacing:
    """How a row is drawn along the page.

    Parameters
    ----------
    left
        Where its wood begins. [pt]
    scale
        Points to the inch.
    apart
        Between two pieces. [pt]
    """

    left: float
    scale: float
    apart: float

    def points(self, ticks: int) -> float:
        """A length as it is drawn. [pt]"""
        return float(from_ticks(ticks)) * self.scale


def pull_apart(
    node: Node, row: Sequence[Node], rise: tuple[float, float], saw: Saw, space: Spacing
) -> tuple[list[tuple[Node, Rect]], list[Figure]]:
    """The pieces of a row with the places they are drawn at, and the figures at its cuts.

    Parameters
    ----------
    node
        What is crosscut.
    row
        Its pieces, or neighbours among them.
    rise
        Top and bottom of the row. [pt]
    """
    marks = crosscuts(node, saw.rules)
    panels: list[tuple[Node, Rect]] = []
    figures: list[Figure] = []
    whole = row[0] is flat(node)[0]
    x, at = space.left, node.box[0] if whole else row[0].box[0]
    for child in row:
        x += space.points(child.box[0] - at)
        wide = space.points(child.length)
        panels.append((child, Rect(x, rise[0], x + wide, rise[1])))
        x, at = x + wide, child.box[2]
        if at < node.box[2]:
            if at in marks.at:
                said = tape(from_ticks(marks.figure(at)), saw.unit)
                figures.append(Figure(x=x + space.apart / 2, says=said))
            x += space.apart
    return panels, figures
