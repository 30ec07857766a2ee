"""Reads one row of a tally: every cell on its own, so that all its mistakes are told together."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

import yieldplan.stock
from yieldplan.faults import did_you_mean
from yieldplan.measure.thickness import Thickness, parse_thickness
from yieldplan.model.faces import Mark
from yieldplan.model.job import Job
from yieldplan.model.names import tidy_name, trouble_with_name
from yieldplan.reference.tables import grade_name
from yieldplan.sources.columns import Row
from yieldplan.sources.crooked import OffStraight, off_straight, width_to_measure
from yieldplan.sources.marks import Board, marks_between, parse_marks
from yieldplan.stock.kind import StockKind
from yieldplan.stock.rough_board import RoughBoard
from yieldplan.stock.surfaced_board import SurfacedBoard
from yieldplan.units import Inches, TapeError

MOST_BOARDS = 5_000
SHORT = Fraction(12)
"""A bare length below this may be feet. [in]"""
WIDEST = Fraction(60)
"""Wider than the widest slab a yard sells: common practice, no source. [in]"""


@dataclass(frozen=True, kw_only=True)
class BoardRow:
    """A row all of whose cells could be read."""

    row: Row
    name: str
    wood: str
    thickness: Thickness
    kind: StockKind
    length: Inches
    width: Inches
    tally_width: Inches
    off: OffStraight
    grade: str
    lot: str
    pack: str
    for_pack: Decimal | None
    quantity: int
    feet: Fraction | None
    for_piece: Decimal | None
    per_foot: Decimal | None
    marks: tuple[Mark, ...]

    @property
    def line(self) -> str:
        """Wood and thickness, as a purchase line calls it."""
        return f"{self.wood} {self.thickness.name}"

    @property
    def names(self) -> list[str]:
        """The id of each of its boards."""
        if self.quantity == 1:
            return [self.name]
        return [f"{self.name}-{number}" for number in range(1, self.quantity + 1)]


def read_row(row: Row, number: int, job: Job) -> BoardRow | None:
    """The row as a board; None, with a fault for each mistake, where one is wrong.

    Parameters
    ----------
    number
        Which board of the tally it is, to name one that has no id.
    """
    before = len(row.faults)
    name = _name(row, number)
    wood = _wood(row, job)
    thickness = _thickness(row, job, wood)
    kind = _kind(row, thickness)
    length, width = row.length("length"), row.length("width")
    if length is not None and _may_be_feet(row, length):
        length = None
    if width is not None and kind is not None and _is_too_wide(row, width, kind):
        width = None
    off = off_straight(row, length, width)
    tally_width = row.length("tally_width")
    quantity = row.count("quantity", MOST_BOARDS)
    feet = row.feet("board_feet")
    per_foot, for_piece = row.amount("price_per_foot"), row.amount("price_for_piece")
    grade, lot = _words(row, "grade"), _words(row, "lot")
    pack, for_pack = _words(row, "pack"), row.amount("price_for_pack")
    marks = _marks(row, length, _widest(width, off))
    for column, size in (("length", length), ("width", width)):
        if size is None and not row.cell(column):
            row.wrong(column, f"the board has no {column}", "Measure it and write it")
    if thickness is None or kind is None:
        return None
    if length is None or width is None:
        return None
    if len(row.faults) > before:
        return None
    return BoardRow(
        row=row,
        name=name,
        wood=wood,
        thickness=thickness,
        kind=kind,
        length=length,
        width=width,
        tally_width=tally_width or width_to_measure(width, off, job.board_measure),
        off=off,
        grade=grade_name(grade),
        lot=lot,
        pack=pack,
        for_pack=for_pack,
        quantity=quantity,
        feet=feet,
        for_piece=for_piece,
        per_foot=per_foot,
        marks=marks,
    )


def _widest(width: Inches | None, off: OffStraight) -> Inches | None:
    """Marks may lie wherever there is wood, so at the wider end too."""
    if width is None or off.width_far is None:
        return width
    return max(width, off.width_far)


def _name(row: Row, number: int) -> str:
    return _words(row, "id") or f"B{number}"


def _words(row: Row, column: str) -> str:
    tidy = tidy_name(row.cell(column))
    trouble = trouble_with_name(tidy) if tidy else None
    if trouble is not None:
        row.wrong(column, *trouble)
        return ""
    return tidy


def _wood(row: Row, job: Job) -> str:
    said = tidy_name(row.cell("wood"))
    known = {name.lower(): name for name in job.woods}
    if said.lower() in known:
        return known[said.lower()]
    if not said and len(known) == 1:
        return next(iter(known.values()))
    if said in job.sheets:
        row.wrong(
            "wood", "this is a sheet", "Sheets stand in the job file: take it out"
        )
    elif said:
        row.wrong("wood", "the job has no such wood", did_you_mean(said, job.woods))
    elif known:
        several = ", ".join(sorted(job.woods))
        row.wrong("wood", "the job has several woods", f"Write which: {several}")
    else:
        row.wrong(
            "wood", "the job has no wood", "Add a table such as [wood.walnut] to it"
        )
    return ""


def _thickness(row: Row, job: Job, wood: str) -> Thickness | None:
    said = row.cell("thickness")
    if said:
        if row.is_date("thickness"):
            return None
        try:
            return parse_thickness(said[:80], job.unit, decimal_comma=row.decimal_comma)
        except TapeError as error:
            row.wrong("thickness", error.wrong, error.remedy)
            return None
    # Left out it is clear only where the price list knows one thickness of the wood.
    listed = sorted({price.thickness for price in job.prices if price.wood == wood})
    if len(listed) == 1:
        return parse_thickness(listed[0], job.unit)
    if wood:
        row.wrong("thickness", "the board has no thickness", "Write it, such as 4/4")
    return None


def _kind(row: Row, thickness: Thickness | None) -> StockKind | None:
    """The kind of stock that is written, else rough or surfaced as the thickness says."""
    said = tidy_name(row.cell("kind"))
    if not said:
        if thickness is None:
            return None
        return SurfacedBoard() if thickness.is_surfaced else RoughBoard()
    kinds = yieldplan.stock.kinds()
    boards = {name: kind for name, kind in kinds.items() if kind.is_board}
    known = {name.lower(): kind for name, kind in boards.items()}
    kind = known.get(said.lower())
    if kind is not None:
        if thickness is not None and thickness.is_surfaced != kind.is_planed:
            state = "surfaced" if thickness.is_surfaced else "rough"
            row.wrong(
                "kind",
                f"the thickness, {thickness.name}, is that of a {state} board",
                "Correct the kind, or write rough or surfaced after the thickness",
            )
        return kind
    if said.lower() in (name.lower() for name in kinds):
        row.wrong(
            "kind", "this is a sheet", "Sheets stand in the job file: take it out"
        )
    else:
        remedy = did_you_mean(said.lower(), boards)
        row.wrong("kind", "there is no such kind of stock", remedy)
    return None


def _is_too_wide(row: Row, width: Inches, kind: StockKind) -> bool:
    """Whether no board is so wide, which is noted."""
    if kind.is_sheet or width <= WIDEST:
        return False
    row.wrong(
        "width",
        "no board is so wide",
        "Look for a lost point (80 for 8.0) or another unit; a sheet's kind is sheet",
    )
    return True


def _may_be_feet(row: Row, length: Inches) -> bool:
    """Whether a bare length is so short that another unit may be meant, which is noted."""
    said = row.cell("length")
    if not said[-1:].isdigit() or length >= SHORT:
        return False
    row.wrong(
        "length",
        "a board this short may be meant in another unit",
        f"Write {said}' for feet, {said}\" if it is that short"
        if row.unit == "in"
        else f"Write the unit: {said} mm, {said} cm or {said} m",
    )
    return True


def _marks(row: Row, length: Inches | None, width: Inches | None) -> tuple[Mark, ...]:
    if length is None or width is None:
        return ()
    board = Board(
        length=length, width=width, unit=row.unit, decimal_comma=row.decimal_comma
    )

    def in_column(column: str) -> tuple[Mark, ...]:
        def wrong(said: str, why: str, remedy: str) -> None:
            row.wrong(column, why, remedy, said)

        read = parse_marks if column == "marks" else marks_between
        return read(row.cell(column), board, wrong)

    return in_column("marks") + in_column("clear")
