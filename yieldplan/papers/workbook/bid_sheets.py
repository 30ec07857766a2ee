"""The money sheets of a quick bid: what to buy before any board is known, and what it comes to."""

from __future__ import annotations

from fractions import Fraction

from yieldplan.model.bid import Bid, BidLine
from yieldplan.papers.workbook.book import Book
from yieldplan.papers.workbook.cells import FEET, MONEY, PERCENT, Put, money
from yieldplan.papers.workbook.cost import section
from yieldplan.papers.workbook.numbers import decimal
from yieldplan.papers.workbook.sheet import Sheet
from yieldplan.papers.workbook.stored import Value
from yieldplan.papers.workbook.words import listed, wood_in_words
from yieldplan.units import cubic_metres_per_board_foot

_HEAD = ("wood", "stock", "grade", "net", "rough", "add", "that is waste", "buy", "price", "cost")  # fmt: skip
_COLUMNS = (100, 70, 66, 44, 46, 36, 44, 40, 44, 50)
_BUY, _PRICE, _COST = 8, 9, 10
_NO_PRICE = "no price"
_COST_COLUMNS = (160, 380)


def begin(book: Book) -> Sheet:
    """The first sheet, still empty: it reads from the purchase list."""
    return book.sheet("Cost", _COST_COLUMNS)


def fill_cost(sheet: Sheet, bid: Bid, total: str) -> None:
    """Write the first sheet.

    Parameters
    ----------
    total
        The cell of the purchase list that holds the total.
    """
    missing = [line.line for line in bid.lines if line.total is None]
    said = (
        f"{bid.job.currency} is what the wood costs, before any board is known: board feet"
        " of the blanks and the shop's addition for waste."
        if not missing
        else f"There is no price for {listed(missing)}. Write it into the framed cell of"
        " the Purchase list and the total appears here."
    )
    sheet.row(
        Put(
            formula=total, value=_total(bid), size=30 if not missing else 16, bold=True,
            number_format=MONEY, wrap=False,
        ),
        Put(value=said, size=12),
        least=48,
    )  # fmt: skip
    section(sheet, "What to buy")
    for line in bid.lines:
        sheet.row(
            Put(value=line.amount, size=12, bold=True, rule="thin"),
            Put(value=_in_words(line), rule="thin"),
            least=18,
        )
    if bid.cautions:
        section(sheet, "Mind")
        for caution in bid.cautions[:5]:
            sheet.across(Put(value=f"– {caution}"))
    sheet.gap()
    sheet.across(
        Put(
            value="This is a bid, not a plan: tally the boards, and plan again with the"
            " tally. Tax, surfacing and delivery are not in it.",
            size=9,
        )
    )


def _in_words(line: BidLine) -> str:
    waste = decimal(line.waste_percent, 0)
    note = f" ({line.price_note})" if line.price_note else ""
    return (
        f"{line.line} {line.grade}".strip()
        + f": add {line.add_percent} %, which is {waste} % waste{note}"
    )


def fill_purchase(book: Book, bid: Bid) -> str:
    """Write the purchase list; returns the cell with the total."""
    sheet = book.sheet("Purchase list", _COLUMNS)
    sheet.row(
        *(
            Put(value=word, size=9, align="left" if n < 3 else "right", rule="head")
            for n, word in enumerate(_HEAD)
        )
    )
    rows = [_line(book, sheet, bid, line) for line in bid.lines]
    stretch = (
        f"{sheet.cell(_COST, rows[0])}:{sheet.cell(_COST, rows[-1])}" if rows else ""
    )
    formula = (
        f'IF(COUNT({stretch})=ROWS({stretch}),SUM({stretch}),"{_NO_PRICE}")'
        if rows
        else "0"
    )
    row = sheet.row(
        Put(value="together", bold=True, span=9, rule="thick"),
        Put(
            formula=formula, value=_total(bid), bold=True, align="right",
            number_format=MONEY, rule="thick",
        ),
        least=22,
    )  # fmt: skip
    _notes(sheet, bid)
    total = sheet.cell_from_elsewhere(_COST, row)
    book.name("total", total)
    return total


def _line(book: Book, sheet: Sheet, bid: Bid, line: BidLine) -> int:
    row = sheet.next_row
    price = book.name(
        f"price_{line.line}_{line.grade}", sheet.cell_from_elsewhere(_PRICE, row)
    )
    amount = f"ROUND({sheet.cell(_BUY, row)}*{price},2)"
    return sheet.row(
        Put(value=wood_in_words(bid.job, line.wood), rule="thin"),
        Put(value=line.thickness or line.sold_by, rule="thin"),
        Put(value=line.grade, rule="thin"),
        _feet(line.net),
        _feet(line.rough),
        Put(value=Fraction(line.add_percent).numerator, align="right", number_format='0" %"', rule="thin"),
        Put(value=decimal(line.waste_percent, 1), align="right", number_format=PERCENT, rule="thin"),
        Put(value=decimal(line.buy, 0), align="right", bold=True, rule="thin"),
        Put(
            value=money(line.per) if line.per is not None else None, align="right",
            number_format=MONEY, rule="box",
        ),
        Put(
            formula=f'IF(ISNUMBER({price}),{amount},"{_NO_PRICE}")',
            value=money(line.total) if line.total is not None else _NO_PRICE,
            align="right", number_format=MONEY, rule="thin",
        ),
        least=20,
    )  # fmt: skip


def _feet(board_feet: Fraction | None) -> Put:
    if board_feet is None:
        return Put(value="", rule="thin")
    return Put(
        value=decimal(board_feet, 2), align="right", number_format=FEET, rule="thin"
    )


def _total(bid: Bid) -> Value:
    return money(bid.total) if bid.total is not None else _NO_PRICE


def _notes(sheet: Sheet, bid: Bid) -> None:
    sheet.gap(4)
    notes = [
        f"Board feet at nominal thickness, whole feet, sheets and sticks to buy, costs in"
        f' {bid.job.currency}. "Add 30 %" and "30 % waste" are two things: adding 30'
        " to 100 buys 130, of which 30 (23 %) are waste; 30 % waste would need 143.",
        *(f"{line.line}: {line.price_note}." for line in bid.lines if line.price_note),
        "A price in a frame may be changed or filled in: the costs follow.",
    ]
    if bid.job.unit == "mm":
        feet = sum(
            (line.buy for line in bid.lines if line.sold_by == "foot"), Fraction(0)
        )
        cubic = decimal(feet * cubic_metres_per_board_foot(), 4)
        notes.append(
            f"Boards to buy: {feet} board feet, which is {cubic} cubic metres."
        )
    for note in notes:
        sheet.across(Put(value=note, size=9))
