"""A stretch of a board that is left of a saved plan, as a piece that can be cut again."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from fractions import Fraction
from math import ceil, floor

from yieldplan import stock
from yieldplan.faults import Where
from yieldplan.measure.board_feet import to_hundredths
from yieldplan.measure.thickness import parse_thickness
from yieldplan.model.faces import Mark
from yieldplan.model.pieces import Piece
from yieldplan.sources.saved_pieces import Document, Spot
from yieldplan.units import Inches, TapeError, UnitName, from_ticks, to_ticks_down


def whole_piece(
    spot: Spot, marks: Sequence[Mark], where: Where, unit: UnitName, *, is_paid: bool
) -> Piece:
    """A board that was not begun, as it was offered; for nothing where it is paid."""
    saved = spot.stock
    near, far = saved["widths"]
    kind = stock.kinds()[saved["kind"]]
    return Piece(
        id=saved["id"],
        wood=saved["wood"],
        line=saved["line"],
        kind=saved["kind"],
        thickness=saved["thickness"],
        thick=_thick(saved, unit),
        grade=saved["grade"],
        lot=saved["lot"],
        length=from_ticks(saved["size"][0]),
        width=from_ticks(near),
        width_far=None if far == near else from_ticks(far),
        board_feet=None if saved["board_feet"] is None else Fraction(saved["board_feet"]),
        per_foot=None if is_paid else saved["per_foot"],
        price=0 if is_paid else saved["price"],
        is_planed=saved["planed"],
        is_sheet=kind.is_sheet,
        is_stick=kind.is_stick,
        end_trims=_both(saved["trims"]),
        edge_passes=_both(saved["edges"]),
        marks=tuple(marks),
        crook=from_ticks(saved["crook"]),
        bow=from_ticks(saved["bow"]),
        twist=from_ticks(saved["twist"]),
        marks_from=spot.rules["marks_from"],
        pack="" if is_paid else saved.get("pack", ""),
        where=where,
    )  # fmt: skip


def rest_piece(
    spot: Spot,
    stretch: Spot | None,
    name: str,
    marks: Sequence[Mark],
    where: Where,
    unit: UnitName,
) -> Piece | None:
    """What lies on the bench of a board, in its own frame; None when it is all trim.

    It is paid for. Sawn ends and edges need no trim; where it still has the board's own
    end or edge, it loses what the board lost there. Marks on it move into its frame.

    Parameters
    ----------
    stretch
        What it was ripped from; None where it has both edges of the board.
    marks
        In the frame of the board.
    """
    whole = whole_piece(spot, marks, where, unit, is_paid=True)
    length, width = spot.stock["size"]
    x0, y0, x1, y1 = spot.box
    trims, edges = spot.stock["trims"], spot.stock["edges"]
    lost = 0
    if stretch is None:
        ends = [_width_at(spot.stock, x) for x in (x0, x1)]
    else:
        s0, s1 = stretch.box[0], stretch.box[2]
        lost = ceil(Fraction(spot.stock["crook"] * (s1 - s0) ** 2, length**2))
        top = min(_width_at(spot.stock, x) for x in (s0, s1)) - lost
        ends = [min(y1, top) - y0] * 2
        width = top
    far_edge = max(0, min(y1, width) - (width - edges[1])) if stretch else edges[1]
    new_trims = (max(0, trims[0] - x0), max(0, x1 - (length - trims[1])))
    new_edges = (max(0, edges[0] - y0), far_edge)
    if x1 - x0 <= sum(new_trims) or min(ends) <= sum(new_edges):
        return None
    share = Fraction((x1 - x0) * sum(ends), 2 * length * _mean_width(spot.stock))
    return dataclasses.replace(
        whole,
        id=name,
        length=from_ticks(x1 - x0),
        width=from_ticks(ends[0]),
        width_far=None if ends[0] == ends[1] else from_ticks(ends[1]),
        copies=1,
        board_feet=None
        if whole.board_feet is None
        else max(to_hundredths(whole.board_feet * share), Fraction(1, 100)),
        end_trims=_both(new_trims),
        edge_passes=_both(new_edges),
        marks=_in_frame(marks, spot, lost, max(ends)),
        # A sawn strip has a straight edge; a section keeps its share of the crook.
        crook=from_ticks(0) if stretch else _share(spot, "crook", 2),
        bow=_share(spot, "bow", 2),
        twist=_share(spot, "twist", 1),
        # Its end is sawn: the wood begins there, not a kerf further in.
        marks_from="trimmed end",
    )


def _share(spot: Spot, what: str, power: int) -> Inches:
    """Crook and bow go down with the length squared, twist with the length."""
    length = spot.stock["size"][0]
    part = Fraction(spot.box[2] - spot.box[0], length)
    return from_ticks(ceil(spot.stock[what] * part**power))


def _in_frame(
    marks: Sequence[Mark], spot: Spot, lost: int, width: int
) -> tuple[Mark, ...]:
    """The marks that touch a stretch, in its own frame and cut off at its edges.

    A board that was straightened lost up to so much at the near edge: marks lie lower.
    """
    x0, y0, x1, _ = (from_ticks(tick) for tick in spot.box)
    down = from_ticks(lost)
    found = []
    for mark in marks:
        x = max(mark.x0, x0) - x0, min(mark.x1, x1) - x0
        y = max(mark.y0 - down - y0, Fraction(0)), min(mark.y1 - y0, from_ticks(width))
        if x[0] < x[1] and y[0] < y[1]:
            found.append(dataclasses.replace(mark, x0=x[0], x1=x[1], y0=y[0], y1=y[1]))
    return tuple(found)


def _width_at(saved: Document, x: int) -> int:
    near, far = saved["widths"]
    return int(near + floor(Fraction((far - near) * x, saved["size"][0])))


def _mean_width(saved: Document) -> Fraction:
    return Fraction(sum(saved["widths"]), 2)


def _thick(saved: Document, unit: UnitName) -> Inches:
    """The thickness, exactly where its name says it; the file has it in whole ticks."""
    exact = from_ticks(saved["thick"])
    try:
        named = parse_thickness(saved["thickness"], unit).thick
    except TapeError:
        return exact
    return named if abs(to_ticks_down(named) - saved["thick"]) <= 1 else exact


def _both(ticks: Sequence[int]) -> tuple[Inches, Inches]:
    return from_ticks(ticks[0]), from_ticks(ticks[1])
