"""The sheet Where it goes: each wood's face bought, from finished part to sawdust."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from yieldplan.drawing.bar_scene import bar_scene
from yieldplan.measure import waste
from yieldplan.model.plan import Plan, WoodPlan
from yieldplan.papers.workbook.book import Book
from yieldplan.papers.workbook.cells import PERCENT, Put
from yieldplan.papers.workbook.cost import area_bought, meaning, section
from yieldplan.papers.workbook.numbers import decimal
from yieldplan.papers.workbook.sheet import PORTRAIT, Sheet
from yieldplan.papers.workbook.words import wood_in_words

_COLUMNS = (24, 90, 70, 96, 260)


def fill(book: Book, plan: Plan) -> None:
    """Write the sheet."""
    note = (
        "Shares of the face of the stock that is cut. The first share is what"
        " ends up in the work; rounding makes the tenths add up to 100."
    )
    sheet = book.sheet("Where it goes", _COLUMNS, note=note)
    for wood in plan.woods:
        if wood.cuttings:
            with sheet.together():
                _wood(sheet, plan, wood)


def _wood(sheet: Sheet, plan: Plan, wood: WoodPlan) -> None:
    shares = waste.split(wood, plan)
    percent = shares.percent()
    area, unit = area_bought(plan, shares)
    section(sheet, wood_in_words(plan.job, wood.wood), f"{area} {unit} bought")
    sheet.gap(3)
    said = ", ".join(f"{name} {share} %" for name, share in percent.items())
    sheet.picture(bar_scene(percent, PORTRAIT - 6, said))
    words = ("", "share", "per cent", unit, "what it is")
    sheet.row(
        *(
            Put(
                value=word, size=9, rule="head",
                align="right" if n in (2, 3) else "left", indent=1 if n == 4 else 0,
            )
            for n, word in enumerate(words)
        )
    )  # fmt: skip
    first = sheet.next_row
    whole = sheet.cell(4, first + len(percent))
    for number, (name, share) in enumerate(percent.items(), start=1):
        row = sheet.next_row
        sheet.row(
            Put(value=number, bold=True, rule="thin"),
            Put(value=name, rule="thin"),
            Put(value=share, align="right", number_format=PERCENT, rule="thin"),
            Put(
                formula=f"ROUND({whole}*{sheet.cell(3, row)}/100,2)",
                value=decimal(Fraction(area) * Fraction(share) / 100, 2),
                align="right", number_format="0.00", rule="thin",
            ),
            Put(value=meaning(name), size=9, indent=1, rule="thin"),
        )  # fmt: skip
    stretch = f"{sheet.cell(3, first)}:{sheet.cell(3, sheet.next_row - 1)}"
    sheet.row(
        Put(value="", rule="thick"),
        Put(value="bought", bold=True, rule="thick"),
        Put(
            formula=f"SUM({stretch})", value=sum(percent.values(), Decimal(0)),
            bold=True, align="right", number_format=PERCENT, rule="thick",
        ),
        Put(value=area, bold=True, align="right", number_format="0.00", rule="thick"),
        Put(value="", rule="thick"),
    )  # fmt: skip
