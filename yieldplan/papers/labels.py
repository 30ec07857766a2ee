"""Labels: one to stick on every part as it comes off the saw, on sheets of labels any stationer has."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from yieldplan.drawing import pdf
from yieldplan.drawing.fonts import width, wrap
from yieldplan.drawing.scene import Scene, Text
from yieldplan.model.blanks import Blank
from yieldplan.model.parts import Part
from yieldplan.model.plan import Cutting, Node, Plan
from yieldplan.model.report import Report
from yieldplan.papers.paper import Paper
from yieldplan.papers.workbook.words import finished_size, size
from yieldplan.units import from_ticks

FILE = "labels.pdf"
_INSET, _HIGH = 9.0, 58.0  # from the label's edge; height of what stands on one


@dataclass(frozen=True, kw_only=True)
class Label:
    """What one label says.

    Parameters
    ----------
    name, place
        `front` and ` 2 of 4`, the place with the space before it.
    size
        Finished thickness × width × length; of a part that is glued up, the panel's.
    mind
        The one thing that is forgotten at the bench.
    """

    name: str
    place: str = ""
    size: str
    mind: str
    board: str


@dataclass(frozen=True, kw_only=True)
class _Sheet:
    """A sheet of labels: how many across and down, and the pitch of them. [pt]"""

    page: pdf.PageName
    across: int
    down: int
    wide: float
    high: float
    pitch: float


_MM = 72 / 25.4
# 2-5/8 x 1 in on Letter, an eighth between the columns; 70 x 36 mm edge to edge on A4.
_LETTER = _Sheet(page="letter", across=3, down=10, wide=189, high=72, pitch=198)
_A4 = _Sheet(page="A4", across=3, down=8, wide=70 * _MM, high=36 * _MM, pitch=70 * _MM)


class Labels(Paper):
    """A label for every part and every offcut that is kept; no frames are printed."""

    def write(self, plan: Plan, report: Report, folder: Path) -> tuple[Path, ...]:
        """Write `labels.pdf`, to be printed at its own size; nothing when nothing is cut."""
        found = list(labels(plan))
        if not found:
            return ()
        sheet = _A4 if plan.job.unit == "mm" else _LETTER
        count = sheet.across * sheet.down
        pages = [
            _page(found[start : start + count], plan.job.title, sheet)
            for start in range(0, len(found), count)
        ]
        path = folder / FILE
        title = f"{plan.job.title}: labels"
        path.write_bytes(pdf.paint(pages, sheet.page, title))
        return (path,)


def labels(plan: Plan) -> Iterator[Label]:
    """Every label, part by part in the order of the job, then the offcuts."""
    blanks = {blank.id: blank for blank in plan.blanks}
    places: dict[str, list[tuple[Cutting, Node, Blank]]] = {}
    kept: list[tuple[Cutting, Node]] = []
    for cutting in (each for wood in plan.woods for each in wood.cuttings):
        for leaf in cutting.tree.leaves():
            if leaf.fate == "keep" and leaf.name:
                kept.append((cutting, leaf))
            if leaf.blank is None:
                continue
            blank = blanks[leaf.blank]
            for inside in blank.inside:
                places.setdefault(inside.demand, []).append((cutting, leaf, blank))
    for part in plan.parts:
        yield from _of_part(part, places.get(part.demand, []), plan)
    for cutting, leaf in kept:
        sides = [from_ticks(leaf.width), from_ticks(leaf.length)]
        yield Label(
            name=leaf.name,
            size=f"offcut {size(sides, plan.job.unit)}",
            mind=f"{cutting.piece.wood}: KEEP",
            board=_board(cutting),
        )


def _of_part(
    part: Part, places: Sequence[tuple[Cutting, Node, Blank]], plan: Plan
) -> Iterator[Label]:
    # Of strips whose widths the plan chooses nobody can say beforehand how many.
    asked = len(places) if part.glue_up else part.needed
    is_panel = len(places) > 1 and (part.strips > 1 or part.glue_up is not None)
    finished = finished_size(part, plan.job.unit)
    for nth, (cutting, leaf, blank) in enumerate(places, start=1):
        place = f" {nth} of {asked}" if asked > 1 else ""
        yield Label(
            name=part.id,
            place=place if nth <= asked else ", spare",
            size=f"panel {finished}" if is_panel else finished,
            mind=f"{part.wood}: {_mind(part, leaf, blank, is_strip=is_panel)}",
            board=_board(cutting),
        )


def _mind(part: Part, leaf: Node, blank: Blank, *, is_strip: bool) -> str:
    said = [_handling(part, leaf, blank, is_strip=is_strip), part.note]
    return "; ".join(each for each in said if each) or "either face out"


def _handling(part: Part, leaf: Node, blank: Blank, *, is_strip: bool) -> str:
    if is_strip:
        return "strip of a panel, glue in order"
    if blank.slices > 1:
        return "resaw, then plane"
    return f"show face {leaf.face_up}" if part.show_face == "clear" else ""


def _board(cutting: Cutting) -> str:
    piece = cutting.piece
    return piece.id if piece.copies == 1 else f"{piece.id} no. {cutting.copy}"


def _page(found: Sequence[Label], title: str, sheet: _Sheet) -> Scene:
    gap = sheet.pitch - sheet.wide
    page = Scene(sheet.across * sheet.pitch - gap, sheet.down * sheet.high)
    for place, label in enumerate(found):
        row, column = divmod(place, sheet.across)
        top = row * sheet.high + (sheet.high - _HIGH) / 2
        one = _drawn(label, title, sheet.wide - 2 * _INSET)
        page.place(one, column * sheet.pitch + _INSET, top)
    return page


def _drawn(label: Label, title: str, room: float) -> Scene:
    scene = Scene(room, _HIGH)
    whole = label.name + label.place
    large = next((pt for pt in (15, 13, 12, 11, 10) if _fits(whole, room, pt)), 0)
    if large:
        scene.add(Text(x=0, y=16, text=whole, size=large, bold=True))
    else:
        for n, line in enumerate(_in_two_lines(label, room)):
            y = 8.0 + 10 * n
            scene.add(Text(x=0, y=y, text=line, size=9, bold=True, condensed=True))
    sizes = (pt for pt in (10.5, 9.5, 8.5) if len(wrap(label.size, room, pt)) == 1)
    points = next(sizes, 7.5)
    # A size is never cut: where it is too long for a line it takes two.
    lines = wrap(label.size, room, points, condensed=True)
    for number, line in enumerate(lines):
        y = 31.0 if len(lines) == 1 else 26 + 7.5 * number
        scene.add(Text(x=0, y=y, text=line, size=points, condensed=True, figures=True))
    # A board keeps to its half of the line.
    board = next((n for n in (11.0, 9.0) if _fits(label.board, room / 2, n)), 7.5)
    from_ = label.board if board > 7.5 else _cut(label.board, room / 2, 7.5)
    right = width(from_, board, bold=board > 7.5, condensed=board == 7.5)
    mind = _cut(label.mind, room - right - 4, 7.5)
    scene.add(
        Text(x=0, y=44, text=mind, size=7.5, condensed=True),
        Text(
            x=room,
            y=44,
            text=from_,
            size=board,
            align="right",
            bold=board > 7.5,
            condensed=board == 7.5,
        ),
        Text(x=0, y=54, text=_cut(title, room, 7.5), size=7.5, condensed=True),
    )
    return scene


def _in_two_lines(label: Label, room: float) -> list[str]:
    """The name, condensed; what is too long for two lines loses its end, never its place."""
    name, whole = label.name, label.name + label.place
    while len(lines := wrap(whole, room, 9, bold=True, condensed=True)) > 2:
        name = name[:-1]
        whole = f"{name.rstrip()}…{label.place}"
    return lines


def _fits(text: str, room: float, points: float) -> bool:
    return width(text, points, bold=True) <= room


def _cut(text: str, room: float, points: float) -> str:
    """The text as far as it goes, condensed."""
    if width(text, points, condensed=True) <= room:
        return text
    while text and width(f"{text}…", points, condensed=True) > room:
        text = text[:-1]
    return f"{text.rstrip()}…"
