"""The sheet Boards to pull: what to take off the pile, and how to know that it is the right board."""

from __future__ import annotations

from yieldplan.drawing.found import mark_in_words, not_straight
from yieldplan.measure.order import natural
from yieldplan.measure.packs import left_whole
from yieldplan.model.pieces import Piece
from yieldplan.model.plan import Plan, WoodPlan
from yieldplan.papers.workbook.book import Book
from yieldplan.papers.workbook.cells import FEET, Put
from yieldplan.papers.workbook.numbers import decimal
from yieldplan.papers.workbook.sheet import Sheet
from yieldplan.papers.workbook.words import UNIT_IN_WORDS, wood_in_words
from yieldplan.units import UnitName, feet_and_inches, tape

_COLUMNS = (20, 8, 62, 74, 64, 66, 46, 44, 156)
_HEAD = ("", "", "number", "stock", "grade", "length", "width", "board feet", "known by")  # fmt: skip


def fill(book: Book, plan: Plan) -> None:
    """Write the sheet."""
    note = (
        f"Sizes in {UNIT_IN_WORDS[plan.job.unit]}; widths are the narrowest."
        " Number the end that the marks are measured from."
    )
    sheet = book.sheet("Boards to pull", _COLUMNS, note=note)
    for wood in plan.woods:
        _wood(sheet, plan, wood)


def _wood(sheet: Sheet, plan: Plan, wood: WoodPlan) -> None:
    sheet.gap(6)
    count = len(wood.cuttings)
    name = wood_in_words(plan.job, wood.wood)
    with sheet.together():
        sheet.row(
            Put(value=name, size=13, bold=True, span=7, rule="thick"),
            Put(value=f"{count} to pull", size=9, span=2, align="right", rule="thick"),
        )
        sheet.row(
            *(
                Put(
                    value=word,
                    size=9,
                    rule="head",
                    align="right" if column in (5, 6, 7) else "left",
                    indent=column == 8,
                )
                for column, word in enumerate(_HEAD)
            )
        )
    ordered = sorted(wood.cuttings, key=lambda cut: (natural(cut.piece.id), cut.copy))
    for cutting in ordered:
        _board(sheet, cutting.piece, cutting.copy, plan.job.unit)
    taken = {cutting.piece.id for cutting in wood.cuttings}
    whole = {piece.id: count for piece, count in left_whole(wood, plan.pieces)}
    if whole:
        names = [name if n == 1 else f"{n} of {name}" for name, n in whole.items()]
        said = f"Take along, uncut, with the packs: {', '.join(names)}."
        sheet.across(Put(value=said, size=9))
    left = sorted(
        (
            p.id
            for p in plan.pieces
            if p.wood == wood.wood and p.id not in {*taken, *whole}
        ),
        key=natural,
    )
    if left:
        sheet.across(Put(value=f"Leave: {', '.join(left)}.", size=9))


def _board(sheet: Sheet, piece: Piece, copy: int, unit: UnitName) -> None:
    marks = "; ".join(
        [mark_in_words(mark, unit) for mark in piece.marks]
        + list(not_straight(piece, unit))
    )
    known = [
        f"pack {piece.pack}" if piece.pack else "",
        f"lot {piece.lot}" if piece.lot else "",
        marks or "no marks noted",
    ]
    if piece.is_sheet or piece.is_stick:
        known = []
    name = piece.id if piece.copies == 1 else f"{piece.id}, no. {copy}"
    is_board = not piece.is_sheet
    length = (
        feet_and_inches(piece.length, unit) if is_board else tape(piece.length, unit)
    )
    # The number of a sheet or stick says its wood already.
    stock = piece.line if piece.thing == "board" else f"{piece.thickness} {piece.thing}"
    feet = piece.board_feet
    sheet.row(
        Put(value="", rule="box"),
        Put(value=""),
        Put(value=name, size=11, bold=True, rule="thin"),
        Put(value=stock, rule="thin"),
        Put(value=piece.grade, rule="thin"),
        Put(value=length, align="right", rule="thin"),
        Put(value=tape(piece.width, unit), align="right", rule="thin"),
        Put(
            value=decimal(feet, 2) if feet is not None else "", align="right",
            number_format=FEET, rule="thin",
        ),
        Put(value=". ".join(word for word in known if word), size=9, indent=1, rule="thin"),
        least=20,
    )  # fmt: skip
