"""The purchase list in metric measure: thickness in mm, cubic metres, price per cubic metre."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from yieldplan.model.pieces import MONEY_PER_UNIT, Piece
from yieldplan.model.plan import Plan
from yieldplan.papers.workbook.book import Book
from yieldplan.papers.workbook.cells import MONEY, Put
from yieldplan.papers.workbook.numbers import decimal
from yieldplan.papers.workbook.sheet import Sheet
from yieldplan.papers.workbook.words import wood_in_words
from yieldplan.units import cubic_metres_per_board_foot, tape

_CUBIC = "0.0000"
_HEAD = (("wood", 1), ("stock", 1), ("mm thick", 2), ("cubic metres", 3), ("price per cubic metre", 3))  # fmt: skip


def metric_table(
    book: Book,
    sheet: Sheet,
    plan: Plan,
    rows: Sequence[int],
    piece_of: Mapping[str, Piece],
) -> None:
    """The same lines once more; figures follow the board feet and prices above.

    Parameters
    ----------
    rows
        Where the purchase lines stand on the sheet.
    """
    bought = [
        (line, row)
        for line, row in zip(plan.purchase, rows, strict=True)
        if line.board_feet is not None
    ]
    if not bought:
        return
    each = cubic_metres_per_board_foot()
    sheet.gap(10)
    with sheet.together():
        sheet.across(Put(value="In metric measure", size=13, bold=True, rule="thick"))
        constant = sheet.row(
            Put(value="cubic metres in a board foot", span=4, size=9),
            Put(
                value=decimal(each, 12), span=3, size=9,
                number_format="0.000000000000", align="right",
            ),
        )  # fmt: skip
        name = book.name(
            "cubic_metres_in_a_board_foot", sheet.cell_from_elsewhere(5, constant)
        )
        sheet.row(
            *(
                Put(
                    value=word, span=span, size=9, rule="head",
                    align="left" if n < 2 else "right",
                )
                for n, (word, span) in enumerate(_HEAD)
            )
        )  # fmt: skip
        for line, row in bought:
            feet = line.board_feet or Fraction(0)
            volume = decimal(feet * each, 4)
            cells = [
                Put(value=wood_in_words(plan.job, line.wood), rule="thin"),
                Put(value=line.line, rule="thin"),
                Put(
                    value=tape(piece_of[line.pieces[0][0]].thick, "mm"), span=2,
                    align="right", rule="thin",
                ),
                Put(
                    formula=f"ROUND({sheet.cell(7, row)}*{name},4)", value=volume,
                    span=3, align="right", number_format=_CUBIC, rule="thin",
                ),
            ]  # fmt: skip
            if line.by == "foot":
                price = Fraction(line.per, MONEY_PER_UNIT) / each
                cells.append(
                    Put(
                        formula=f"ROUND({sheet.cell(9, row)}/{name},2)",
                        value=decimal(price, 2), span=3, align="right",
                        number_format=MONEY, rule="thin",
                    )
                )  # fmt: skip
            else:
                sold = "the whole pack" if line.pack else "by the piece"
                cells.append(Put(value=sold, span=3, align="right", rule="thin"))
            sheet.row(*cells)
