"""The sheet Assumptions and cautions: what the figures rest on, and what comes before anything printed here."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Sequence
from fractions import Fraction

from yieldplan.measure.gap import how_cut
from yieldplan.model.job import Job
from yieldplan.model.plan import Plan, WoodPlan
from yieldplan.model.report import Report
from yieldplan.papers.workbook.book import Book
from yieldplan.papers.workbook.cells import Put
from yieldplan.papers.workbook.cost import section
from yieldplan.papers.workbook.sheet import Sheet
from yieldplan.papers.workbook.words import UNIT_IN_WORDS, wood_in_words
from yieldplan.reference.tables import shop_defaults
from yieldplan.units import UnitName, from_ticks, tape

_COLUMNS = (320, 76, 144)
_MEASURE = {
    "nhla": "Board feet by the yard's rule: surface measure to the whole foot, times the"
    " nominal thickness; exact halves go up and down in turn.",
    "exact": "Board feet as length × width × nominal thickness ÷ 144, to the hundredth.",
}


def fill(book: Book, plan: Plan, report: Report) -> None:
    """Write the sheet for a plan."""
    sheet = book.sheet("Assumptions and cautions", _COLUMNS)
    blanks = [blank for blank in plan.blanks if blank.cautions]
    used = {leaf.blank for wood in plan.woods for cutting in wood.cuttings
            for leaf in cutting.tree.leaves()}  # fmt: skip
    own = [
        caution for blank in blanks if blank.id in used for caution in blank.cautions
    ]
    _cautions(sheet, plan.job, [*plan.cautions, *own])
    section(sheet, "What the plan rests on")
    for line in _rests_on(plan):
        _line(sheet, line)
    section(sheet, "How it was checked")
    _line(
        sheet, "A separate program went over the saved plan before anything was shown."
    )
    for line in report.checked:
        _line(sheet, line)
    _settings(sheet, plan.job)


def fill_for_bid(book: Book, job: Job, cautions: Sequence[str]) -> None:
    """Write the sheet for a quick bid."""
    sheet = book.sheet("Assumptions and cautions", _COLUMNS)
    _cautions(sheet, job, cautions)
    section(sheet, "What the bid rests on")
    _line(sheet, _MEASURE[job.board_measure])
    _line(
        sheet,
        "No board is known yet. What to buy is the rough board feet of the blanks and"
        " the shop's addition for ends, knots and misfits; the real boards decide.",
    )
    _settings(sheet, job)


def _line(sheet: Sheet, words: str) -> None:
    sheet.across(Put(value=f"– {words}", size=9.5))


def _cautions(sheet: Sheet, job: Job, own: Sequence[str]) -> None:
    section(sheet, "Before anything else")
    sheet.across(
        Put(
            value="The machine's manual, local codes and licensed practice come before"
            " anything printed here. A plan is arithmetic: it has not seen your wood,"
            " your machines or your hands.",
            size=11, bold=True,
        )
    )  # fmt: skip
    section(sheet, "At the machines")
    for line in machine_cautions(job):
        _line(sheet, line)
    if own:
        section(sheet, "In this job")
        for line in dict.fromkeys(own):
            _line(sheet, line)


def machine_cautions(job: Job) -> Iterator[str]:
    """What short, narrow and thin stock, routers and dust ask for, with the shop's own sizes."""
    unit, shop = job.unit, job.shop
    word = "mm" if unit == "mm" else "in"
    short, rip, narrow = (
        f"{tape(size, unit)} {word}"
        for size in (shop.machine_length, shop.shortest_rip, shop.narrowest_rip)
    )
    yield (
        f"Short stock: nothing under {short} goes over the jointer or through the planer"
        " by itself. Mill it while it is part of a longer piece, and part it last."
    )
    yield (
        f"At the fence: rip nothing shorter than {rip} and no strip narrower than"
        f" {narrow}; use push blocks, and a hand saw or a band saw where they do not reach."
    )
    yield (
        "Thin stock rides on a carrier board, and never through a planer below what its"
        " manual allows."
    )
    yield (
        "Kickback: keep the riving knife and guard on, a straight edge to the fence and"
        " yourself out of the line of the blade. Never crosscut against the rip fence;"
        " let the blade stop before you clear an offcut."
    )
    yield (
        "Wood with a split, a loose knot or tension in it can close on a blade or let go"
        " in a planer: cut that out first, and stop when a cut begins to close."
    )
    yield (
        "Routers: feed against the turning of the cutter, in several light passes, with"
        " the work held so that it cannot be pulled in; small parts stay in a larger"
        " blank until they are shaped. Mind the speed a large cutter allows."
    )
    yield (
        "Dust: extraction at the machine and a mask that fits. Fine dust harms lungs and"
        " burns; some woods irritate skin and breath."
    )
    yield (
        "The plan knows the marks that were written down and no others. When a cut or"
        " the planer opens a new one: mark it, stop, plan again before the next board."
    )


def _rests_on(plan: Plan) -> Iterator[str]:
    unit = plan.job.unit
    for wood in plan.woods:
        yield f"{wood_in_words(plan.job, wood.wood)}: {_how_cut(wood, unit)}"
        if wood.ended:
            yield f"{wood.wood}: the search ended because {wood.ended}."
        for demand, count in sorted(wood.set_up_left.items()):
            yield f"{wood.wood}: no waste was large enough for {count} × {demand}."
    yield _MEASURE[plan.job.board_measure]
    for price in plan.job.prices:
        if price.as_of is not None:
            named = f"{price.wood} {price.thickness} {price.grade}".strip()
            yield f"Price of {named}: {price.per_foot} {plan.job.currency} a board foot, as of {price.as_of}."
    yield "Thicker stock may serve where its price decides so; the diagrams name the stock."


def _how_cut(wood: WoodPlan, unit: UnitName) -> str:
    rules = wood.rules
    kerf, along, across = (
        tape(from_ticks(ticks), unit)
        for ticks in (rules.kerf, rules.step_along, rules.step_across)
    )
    start = "zero end" if rules.marks_from == "zero end" else "fresh end"
    if wood.is_stick:
        return (
            f"{how_cut(wood)}; marks every {along} from the {start}, kerf {kerf}. The"
            " floor is for every way to cut them."
        )
    return (
        f"{how_cut(wood)}; marks every {along} from the {start}, fence"
        f" settings every {across}, kerf {kerf}. The floor is for plans of this kind."
    )


def _settings(sheet: Sheet, job: Job) -> None:
    section(sheet, "The shop's settings", f"lengths in {UNIT_IN_WORDS[job.unit]}")
    for field in dataclasses.fields(job.shop):
        value = getattr(job.shop, field.name)
        usual = shop_defaults().get(field.name)
        words = usual.words if usual else field.name.replace("_", " ")
        sheet.row(
            Put(value=words, size=8.5, rule="thin"),
            Put(value=_set_to(field, value, job.unit), size=8.5, align="right", rule="thin"),
            Put(value=f"[shop] {field.name}", size=8, indent=1, rule="thin"),
        )  # fmt: skip


def _set_to(field: dataclasses.Field[object], value: object, unit: UnitName) -> str:
    if "percent" in field.name or field.name.startswith("moisture"):
        return f"{value} %"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, tuple):
        return ", ".join(value) or "none"
    # (Fields' types are kept as they are written: other fractions are no lengths.)
    if isinstance(value, Fraction) and field.type == "Inches":
        return tape(value, unit, grid=64)
    return str(value)
