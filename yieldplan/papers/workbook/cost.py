"""The first sheet, Cost: what the wood costs, what to buy, how good the plan is, where the wood goes, what to mind."""

from __future__ import annotations

from decimal import Decimal

from yieldplan.drawing.bar_scene import bar_scene
from yieldplan.drawing.fonts import width
from yieldplan.measure import waste
from yieldplan.measure.gap import (
    counted_for,
    floor_of,
    floor_with_minimum,
    gap_in_words,
    gap_percent,
    how_cut,
    less_offcuts,
)
from yieldplan.measure.minimum import say_minimum
from yieldplan.measure.packs import say_left_whole, say_line
from yieldplan.model.plan import Plan, PurchaseLine, WoodPlan
from yieldplan.papers.workbook.book import Book
from yieldplan.papers.workbook.cells import FEET, MONEY, Put, money
from yieldplan.papers.workbook.numbers import decimal
from yieldplan.papers.workbook.purchase_list import Cells, pieces_in_words
from yieldplan.papers.workbook.sheet import PORTRAIT, Sheet
from yieldplan.papers.workbook.words import (
    floor_in_print,
    half_up,
    listed,
    what_is_bought,
    wood_in_words,
)
from yieldplan.units import from_ticks

_COLUMNS = (148, 128, 84, 84, 96)
_MOST_LINES = 12
_MOST_CAUTIONS = 5


def begin(book: Book) -> Sheet:
    """The sheet, still empty: it stands first but reads from the others."""
    return book.sheet("Cost", _COLUMNS)


def fill(sheet: Sheet, plan: Plan, cells: Cells) -> None:
    """Write the sheet."""
    _cost(sheet, plan, cells)
    _what_to_buy(sheet, plan, cells)
    _how_good(sheet, plan, cells)
    for wood in plan.woods:
        known = plan.job.woods.get(wood.wood)
        if wood.cuttings and known is not None and known.is_show_wood:
            _where_it_goes(sheet, plan, wood)
    _mind(sheet, plan)


def section(sheet: Sheet, title: str, aside: str = "") -> None:
    """The heading of a section, with a remark at its right."""
    sheet.gap(9)
    sheet.keep_with_next()
    left = sheet.columns_for(width(title, 13, bold=True) + 12)
    sheet.row(
        Put(value=title, size=13, bold=True, span=left, rule="thick"),
        Put(
            value=aside,
            size=9,
            align="right",
            span=len(sheet.columns) - left,
            rule="thick",
        ),
    )
    sheet.keep_with_next()


def _cost(sheet: Sheet, plan: Plan, cells: Cells) -> None:
    gap = plan.total - counted_for(plan.woods) - floor_of(plan)
    every = "Every part can be cut." if plan.complete else "Some parts are missing."
    if not plan.purchase:
        how_far = ""
    elif gap_percent(plan) <= 0:
        how_far = " No plan of this kind costs less."
    else:
        how_far = f" No plan of this kind is more than {money(gap):.2f} cheaper."
    bought = what_is_bought(plan) or "nothing is bought"
    sheet.row(
        Put(
            formula=cells.total, value=money(plan.total), size=30, bold=True,
            number_format=MONEY, wrap=False,
        ),
        Put(
            value=f"{plan.job.currency} is what the wood costs{less_offcuts(plan.woods)}: {bought}. {every}{how_far}",
            size=12, span=4,
        ),
        least=48,
    )  # fmt: skip


def _what_to_buy(sheet: Sheet, plan: Plan, cells: Cells) -> None:
    piece_of = {piece.id: piece for piece in plan.pieces}
    section(sheet, "What to buy", "boards by their numbers, more on the next sheets")
    _head(sheet, "stock", "pieces", "board feet", "price", "cost")
    shown = plan.purchase[:_MOST_LINES]
    for line, cell in zip(shown, cells.lines, strict=False):
        feet = line.board_feet
        sheet.row(
            Put(value=say_line(line), rule="thin"),
            Put(value=pieces_in_words(line, piece_of), size=9, rule="thin"),
            Put(
                value=decimal(feet, 2) if feet is not None else "", align="right",
                number_format=FEET, rule="thin",
            ),
            Put(
                value=money(line.per), align="right", number_format=MONEY, rule="thin"
            ),
            Put(
                formula=cell, value=money(line.total), align="right",
                number_format=MONEY, rule="thin",
            ),
            least=17,
        )  # fmt: skip
    rest = plan.purchase[_MOST_LINES:]
    if rest:
        first, last = cells.lines[_MOST_LINES], cells.lines[-1].rpartition("!")[2]
        sheet.row(
            Put(value=f"{len(rest)} more lines: Purchase list", span=4, rule="thin"),
            Put(
                formula=f"SUM({first}:{last})",
                value=money(sum(line.total for line in rest)),
                align="right", number_format=MONEY, rule="thin",
            ),
        )  # fmt: skip
    sheet.row(
        Put(value="together", bold=True, span=4, rule="thick"),
        Put(
            formula=cells.total, value=money(plan.total), bold=True, align="right",
            number_format=MONEY, rule="thick",
        ),
        least=19,
    )  # fmt: skip
    for said in (say_left_whole(plan), *say_minimum(plan)):
        if said:
            sheet.across(Put(value=said, size=9))
    sheet.across(Put(value="Tax, surfacing and delivery are not in it.", size=9))


def _head(sheet: Sheet, *words: str, left: int = 2) -> None:
    sheet.row(
        *(
            Put(value=word, size=9, align="left" if n < left else "right", rule="head")
            for n, word in enumerate(words)
        )
    )


def _how_good(sheet: Sheet, plan: Plan, cells: Cells) -> None:
    if not plan.woods:
        return
    section(sheet, "How good the plan is")
    _head(sheet, "wood", "in words", "cost", "floor", "gap")
    rows = []
    for wood in plan.woods:
        lines = [n for n, each in enumerate(plan.purchase) if each.wood == wood.wood]
        paid = sum(plan.purchase[n].total for n in lines)
        total = "+".join(cells.lines[n] for n in lines) or "0"
        floor = floor_in_print(wood, paid, floor_with_minimum(wood, plan))
        rows.append(
            _judged(sheet, wood_in_words(plan.job, wood.wood), gap_in_words(plan, wood),
                    total, paid, floor)
        )  # fmt: skip
    for line, cell in zip(plan.purchase, cells.lines, strict=True):
        if line.by == "minimum" and not line.wood:
            rows.append(_filling_up(sheet, line, cell))
    together = f"SUM({sheet.cell(3, rows[0])}:{sheet.cell(3, rows[-1])})"
    _judged(sheet, "together", gap_in_words(plan), together, plan.total,
            floor_of(plan), last=True)  # fmt: skip
    kinds = listed(dict.fromkeys(how_cut(wood) for wood in plan.woods))
    sheet.across(
        Put(
            value=f"Floor: no plan of this kind ({kinds}) on the pieces offered costs"
            " less; rounded down to the cent. A separate program worked it out again"
            " from the saved plan. A plan of another kind might cost less."
            + ("" if plan.complete else " It holds for the parts that are planned."),
            size=9,
        )
    )


def _filling_up(sheet: Sheet, line: PurchaseLine, cell: str) -> int:
    """What fills up the whole order: it is paid, and belongs to no wood's plan."""
    return sheet.row(
        Put(value="minimum order", rule="thin"),
        Put(value="filled up", size=9, rule="thin"),
        Put(
            formula=cell, value=money(line.total), align="right",
            number_format=MONEY, rule="thin",
        ),
        Put(value="", rule="thin"),
        Put(value="", rule="thin"),
        least=17,
    )  # fmt: skip


def _judged(
    sheet: Sheet, name: str, words: str, formula: str, paid: int, floor: int,
    *, last: bool = False,
) -> int:  # fmt: skip
    row = sheet.next_row
    rule = "thick" if last else "thin"
    figure = {"align": "right", "number_format": MONEY, "rule": rule, "bold": last}
    gap = f"{sheet.cell(3, row)}-{sheet.cell(4, row)}"
    return sheet.row(
        Put(value=name, bold=last, rule=rule),  # type: ignore[arg-type]
        Put(value=words, size=9, rule=rule),  # type: ignore[arg-type]
        Put(formula=formula, value=money(paid), **figure),  # type: ignore[arg-type]
        Put(value=money(floor), **figure),  # type: ignore[arg-type]
        Put(formula=f"ROUND({gap},2)", value=money(paid - floor), **figure),  # type: ignore[arg-type]
        least=17,
    )


def _where_it_goes(sheet: Sheet, plan: Plan, wood: WoodPlan) -> None:
    shares = waste.split(wood, plan)
    percent = shares.percent()
    with sheet.together():
        section(
            sheet, f"Where the {wood.wood} goes", f"{face_bought(plan, shares)} bought"
        )
        sheet.gap(3)
        said = ", ".join(f"{name} {share} %" for name, share in percent.items())
        sheet.picture(bar_scene(percent, PORTRAIT - 6, said))
        numbered = list(enumerate(percent.items(), start=1))
        for pair in zip(numbered[:4], [*numbered[4:], None], strict=True):
            cells = [Put(value=_share(each), size=9, span=span, wrap=False)
                     for each, span in zip(pair, (2, 3), strict=True)]  # fmt: skip
            sheet.row(*cells)


_MEANING = {
    "parts": "what you will see and touch",
    "planing": "jointed and planed off the blanks",
    "kerf": "sawdust",
    "trim": "ends and edges",
    "misfit": "sound wood that no part fits",
    "defects": "marks no part may have",
    "offcuts": "kept for another job",
}


def meaning(share: str) -> str:
    """What a share of the wood is, in a few words."""
    return _MEANING[share]


def face_bought(plan: Plan, shares: waste.WasteSplit) -> str:
    """Face of what was cut, in square feet or square metres."""
    area, word = area_bought(plan, shares)
    return f"{area} {word}"


def area_bought(plan: Plan, shares: waste.WasteSplit) -> tuple[Decimal, str]:
    """The face bought as a figure and its unit."""
    square_inches = from_ticks(1) ** 2 * shares.bought
    if plan.job.unit == "mm":
        return decimal(half_up(square_inches * 64516 / 10**8, 2), 2), "square metres"
    return decimal(half_up(square_inches / 144, 1), 1), "square feet"


def _share(each: tuple[int, tuple[str, Decimal]] | None) -> str:
    if each is None:
        return ""
    number, (name, percent) = each
    return f"{number}   {name}  {percent} %   {_MEANING[name]}"


def _mind(sheet: Sheet, plan: Plan) -> None:
    with sheet.together():
        section(sheet, "Mind")
        for caution in plan.cautions[:_MOST_CAUTIONS]:
            sheet.across(Put(value=f"– {caution}", size=10))
        more = len(plan.cautions) - _MOST_CAUTIONS
        rest = f"{more} more for this job, and the" if more > 0 else "The"
        sheet.across(
            Put(
                value=f"– {rest} cautions for the machines stand on the sheet"
                " Assumptions and cautions. The machine's manual, local codes and"
                " licensed practice come first.",
                size=10,
            )
        )
