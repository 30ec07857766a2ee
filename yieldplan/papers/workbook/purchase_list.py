"""The sheet Purchase list: every line of stock, its board feet from net to bought, and its live price."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from yieldplan.measure.minimum import say_minimum
from yieldplan.measure.packs import say_left_whole
from yieldplan.measure.purchase import net_and_rough, running_length, say_run
from yieldplan.model.pieces import Piece
from yieldplan.model.plan import Plan, PurchaseLine
from yieldplan.papers.workbook.book import Book
from yieldplan.papers.workbook.cells import EACH, FEET, MONEY, PERCENT, Put, money
from yieldplan.papers.workbook.metric import metric_table
from yieldplan.papers.workbook.numbers import decimal
from yieldplan.papers.workbook.sheet import Sheet
from yieldplan.papers.workbook.stored import Value
from yieldplan.papers.workbook.words import counted, half_up, listed, wood_in_words

_HEAD = (
    "wood", "stock", "grade", "pieces", "net", "rough", "bought", "net of bought",
    "price", "cost",
)  # fmt: skip
_COLUMNS = (94, 56, 62, 40, 44, 44, 48, 46, 52, 54)
_BOUGHT, _PRICE, _COST = 7, 9, 10


@dataclass(frozen=True, kw_only=True)
class Cells:
    """Where other sheets find the money.

    Parameters
    ----------
    lines
        The cost of each purchase line, in the order of the plan.
    total
        What all cost together.
    """

    lines: tuple[str, ...]
    total: str


def fill(book: Book, plan: Plan) -> Cells:
    """Write the sheet; returns where its sums stand."""
    sheet = book.sheet("Purchase list", _COLUMNS)
    piece_of = {piece.id: piece for piece in plan.pieces}
    sheet.row(
        *(
            Put(value=word, size=9, align="left" if n < 3 else "right", rule="head")
            for n, word in enumerate(_HEAD)
        )
    )
    rows: list[int] = []
    for line in plan.purchase:
        if line.by == "minimum":
            rows.append(_minimum(book, sheet, plan, line, rows))
        else:
            rows.append(_line(book, sheet, plan, line, piece_of))
    total_row = _together(sheet, plan, rows)
    _notes(sheet, plan, piece_of)
    if plan.job.unit == "mm":
        metric_table(book, sheet, plan, rows, piece_of)
    total = sheet.cell_from_elsewhere(_COST, total_row)
    book.name("total", total)
    return Cells(
        lines=tuple(sheet.cell_from_elsewhere(_COST, row) for row in rows), total=total
    )


def _line(
    book: Book,
    sheet: Sheet,
    plan: Plan,
    line: PurchaseLine,
    piece_of: Mapping[str, Piece],
) -> int:
    row = sheet.next_row
    count = sum(copies for _, copies in line.pieces)
    feet = line.board_feet
    price = book.name(
        f"price_{line.line}_{line.grade}_{line.by}_{line.pack}",
        sheet.cell_from_elsewhere(_PRICE, row),
    )
    amount = sheet.cell(_BOUGHT if line.by == "foot" else 4, row)
    # A pack's price is the price of all its pieces.
    cost = price if line.by == "pack" else f"{amount}*{price}"
    measures = [Put(value="", rule="thin")] * 4
    if feet is not None:
        net, rough = net_and_rough(plan, line)
        share = f"{sheet.cell(5, row)}/{sheet.cell(_BOUGHT, row)}*100"
        shown = half_up(net, 2)
        measures = [
            _feet(net),
            _feet(rough),
            _feet(feet),
            Put(
                formula=f"ROUND({share},1)", value=decimal(shown / feet * 100, 1),
                align="right", number_format=PERCENT, rule="thin",
            )
            if feet
            else Put(value="", rule="thin"),
        ]  # fmt: skip
    return sheet.row(
        Put(value=wood_in_words(plan.job, line.wood), rule="thin"),
        Put(value=_stock(line, piece_of), rule="thin"),
        Put(value=line.grade, rule="thin"),
        Put(value=count, align="right", rule="thin"),
        *measures,
        Put(
            value=money(line.per), align="right", rule="box",
            number_format=EACH if line.by == "piece" else MONEY,
        ),
        Put(
            formula=f"ROUND({cost},2)", value=money(line.total),
            align="right", number_format=MONEY, rule="thin",
        ),
        least=20,
    )  # fmt: skip


def _minimum(
    book: Book, sheet: Sheet, plan: Plan, line: PurchaseLine, rows: Sequence[int]
) -> int:
    """What an order lacks of the least it must come to; it follows the prices above."""
    row = sheet.next_row
    least = book.name(
        f"minimum_order_{line.wood}", sheet.cell_from_elsewhere(_PRICE, row)
    )
    paid = ",".join(
        sheet.cell(_COST, other)
        for other, bought in zip(rows, plan.purchase, strict=False)
        if line.wood in ("", bought.wood)
    )
    wood = wood_in_words(plan.job, line.wood) if line.wood else "the whole order"
    return sheet.row(
        Put(value=wood, rule="thin"),
        Put(value="to fill up the minimum order", span=7, rule="thin"),
        Put(value=money(line.per), align="right", rule="box", number_format=MONEY),
        Put(
            formula=f"ROUND(MAX(0,{least}-SUM({paid})),2)", value=money(line.total),
            align="right", number_format=MONEY, rule="thin",
        ),
        least=20,
    )  # fmt: skip


def _stock(line: PurchaseLine, piece_of: Mapping[str, Piece]) -> str:
    """What it is sold by, without the wood: `4/4`, `5.2 mm sheet`, `stick 8 ft`."""
    piece = piece_of[line.pieces[0][0]]
    # A sheet's or stick's line also says its size where there are several.
    size = line.line.removeprefix(line.wood).removeprefix(f" {piece.thickness}").strip()
    if piece.is_sheet:
        return f"{piece.thickness} sheet {size}".strip()
    if piece.is_stick:
        return f"stick {size}"
    return (
        f"{piece.thickness}, whole pack {line.pack}" if line.pack else piece.thickness
    )


def _feet(board_feet: Fraction) -> Put:
    return Put(
        value=decimal(board_feet, 2), align="right", number_format=FEET, rule="thin"
    )


def _together(sheet: Sheet, plan: Plan, rows: list[int]) -> int:
    feet = [line.board_feet for line in plan.purchase if line.board_feet is not None]
    blank = Put(value="", rule="thick")
    cells = [Put(value="together", bold=True, span=3, rule="thick")]
    count = sum(copies for line in plan.purchase for _, copies in line.pieces)
    cells.append(_sum(sheet, 4, rows, count, "General"))
    pairs = [
        net_and_rough(plan, ln) for ln in plan.purchase if ln.board_feet is not None
    ]
    if not feet:
        blanks = [Put(value="", rule="thick")] * 3
        cells += [
            *blanks,
            blank,
            blank,
            _sum(sheet, _COST, rows, money(plan.total), MONEY),
        ]
        return sheet.row(*cells, least=22)
    for column, each in ((5, [p[0] for p in pairs]), (6, [p[1] for p in pairs])):
        shown = sum((half_up(value, 2) for value in each), Fraction(0))
        cells.append(_sum(sheet, column, rows, decimal(shown, 2), FEET))
    bought = decimal(sum(feet, Fraction(0)), 2)
    cells.append(_sum(sheet, _BOUGHT, rows, bought, FEET))
    cells += [blank, blank, _sum(sheet, _COST, rows, money(plan.total), MONEY)]
    return sheet.row(*cells, least=22)


def _sum(sheet: Sheet, column: int, rows: list[int], value: Value, shown: str) -> Put:
    stretch = (
        f"{sheet.cell(column, rows[0])}:{sheet.cell(column, rows[-1])}" if rows else "0"
    )
    return Put(
        formula=f"SUM({stretch})", value=value,
        align="right", bold=True, number_format=shown, rule="thick",
    )  # fmt: skip


def _notes(sheet: Sheet, plan: Plan, piece_of: Mapping[str, Piece]) -> None:
    sheet.gap(4)
    notes = [
        f"Net, rough and bought in board feet, costs in {plan.job.currency}. Net is the"
        " finished parts, rough the blanks as sawn, both at the thickness the stock is"
        " measured by.",
        "A price in a frame may be changed: the costs follow. The plan itself was made"
        " at the prices shown, and another price may make another plan the better one.",
        _sticks(plan, piece_of),
        say_left_whole(plan),
        *say_minimum(plan),
        _dates(plan),
        "Tax, surfacing and delivery are not in it.",
    ]
    for note in notes:
        if note:
            sheet.across(Put(value=note, size=9))


def _sticks(plan: Plan, piece_of: Mapping[str, Piece]) -> str:
    """How far the sticks run in all, as a yard asks."""
    runs: dict[str, Fraction] = {}
    for line in plan.purchase:
        run = running_length(line, piece_of)
        if run is not None:
            runs[line.wood] = runs.get(line.wood, Fraction(0)) + run
    said = [
        f"{wood_in_words(plan.job, wood)} {say_run(run, plan.job.unit)}"
        for wood, run in runs.items()
    ]
    return f"Sticks: {listed(said)}." if said else ""


def _dates(plan: Plan) -> str:
    dated = [
        f"{price.wood} {price.thickness} {price.grade}".strip() + f" of {price.as_of}"
        for price in plan.job.prices
        if price.as_of is not None
    ]
    return f"Prices: {'; '.join(dated)}." if dated else ""


def pieces_in_words(line: PurchaseLine, piece_of: Mapping[str, Piece]) -> str:
    """`4 boards: W1, W2, W3, W4`."""
    if line.by == "minimum":
        return "to fill it up"
    count = sum(copies for _, copies in line.pieces)
    kind = piece_of[line.pieces[0][0]].thing
    if kind != "board":
        return counted(count, kind)
    names = ", ".join(
        name if copies == 1 else f"{copies} × {name}" for name, copies in line.pieces
    )
    return f"{counted(count, kind)}: {names}"
