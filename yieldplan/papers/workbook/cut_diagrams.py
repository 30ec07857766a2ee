"""The sheet Cut diagrams: every board as a picture to saw from, and its cutting list in words under it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from yieldplan.drawing.board_scene import board_scene, common_scale
from yieldplan.drawing.cut_text import cutting_list
from yieldplan.drawing.fonts import width, wrap
from yieldplan.drawing.found import found
from yieldplan.drawing.saw import Saw
from yieldplan.measure.money import say_feet
from yieldplan.model.plan import Cutting, Plan
from yieldplan.papers.workbook.book import Book
from yieldplan.papers.workbook.cells import Put
from yieldplan.papers.workbook.sheet import LANDSCAPE, Sheet
from yieldplan.papers.workbook.words import UNIT_IN_WORDS, wood_in_words
from yieldplan.units import UnitName, feet_and_inches, tape

_COLUMNS = (110, LANDSCAPE / 2 - 110, LANDSCAPE / 2)
_STEP = 10.0
# "4 1/4" and "[ ]" are read as one; so is a box and what stands before it.
_TOGETHER = re.compile(r"(?<=\d) (?=\d+/\d)|(?<=\[) (?=\])| (?=\[ \])")


def fill(book: Book, plan: Plan) -> None:
    """Write the sheet."""
    note = (
        "Lengths are to scale, widths are not. The heavy line is the edge"
        " toward you, the numbered end is left, face A up. [ ] is ticked when the"
        f" piece is cut. Sizes in {UNIT_IN_WORDS[plan.job.unit]}."
    )
    sheet = book.sheet("Cut diagrams", _COLUMNS, landscape=True, note=note)
    blanks = {blank.id: blank for blank in plan.blanks}
    for wood in plan.woods:
        saw = Saw(blanks=blanks, unit=plan.job.unit, rules=wood.rules)
        scale = common_scale(wood.cuttings, plan.job.unit)
        for number, cutting in enumerate(wood.cuttings, start=1):
            place = f"{number} of {len(wood.cuttings)}"
            name = wood_in_words(plan.job, wood.wood)
            _board(sheet, cutting, saw, scale, f"{name}, {place}")


def _board(sheet: Sheet, cutting: Cutting, saw: Saw, scale: float, place: str) -> None:
    picture = board_scene(cutting, saw, scale)
    with sheet.together():
        sheet.gap(6)
        piece = cutting.piece
        name = piece.id if piece.copies == 1 else f"{piece.id}, no. {cutting.copy}"
        sheet.row(
            Put(value=name, size=16, bold=True, rule="head"),
            Put(value=f"{_title(cutting, saw.unit)}      {place}", size=10.5, bold=True, span=2, rule="head"),
            least=23,
        )  # fmt: skip
        sheet.gap(4)
        sheet.picture(picture.scene)
        steps = cutting_list(cutting, saw, numbered=picture.numbered)
        marks = found(cutting, saw.unit)
        _side_by_side(sheet, [*steps, *([marks] if marks else [])])


def _side_by_side(sheet: Sheet, lines: Sequence[str]) -> None:
    """The lines in their order, two beside each other where both are short."""
    half = LANDSCAPE / 2 - 12
    left = list(lines)
    while left:
        line = left.pop(0)
        if left and max(width(line, _STEP), width(left[0], _STEP)) <= half:
            sheet.row(
                Put(value=line, size=_STEP, span=2), Put(value=left.pop(0), size=_STEP)
            )
        else:
            sheet.across(Put(value=_broken(line), size=_STEP))


def _broken(line: str) -> str:
    """The line broken to the page's width, never within a size or a tick box."""
    glued = _TOGETHER.sub("\u00a0", line)
    lines = wrap(glued, LANDSCAPE - 10, _STEP)
    return "\n".join(lines).replace("\u00a0", " ")


def _title(cutting: Cutting, unit: UnitName) -> str:
    piece = cutting.piece
    long = (
        tape(piece.length, unit)
        if piece.is_sheet
        else feet_and_inches(piece.length, unit)
    )
    feet = piece.board_feet
    size = f"{long} × {tape(piece.width, unit)}"
    if piece.is_stick:
        size = f"{tape(piece.thick, unit)} × {tape(piece.width, unit)} × {long}"
    # The line of a sheet or stick says its size, and its wood stands beside it.
    stock = piece.line if piece.thing == "board" else f"{piece.thickness} {piece.thing}"
    words = [
        f"{stock} {piece.grade}".strip() if not piece.is_stick else "",
        size,
        cutting.how_cut.upper(),
        f"{say_feet(feet)} board feet" if feet is not None else "",
    ]
    return "   ".join(word for word in words if word)
