"""The lines under a part: its route, and the rough size of strips of free width."""

from __future__ import annotations

from tests.builders import make_job, make_part
from yieldplan.assemblies.glued import GluedUp, glued_up
from yieldplan.blanks import routes
from yieldplan.faults import Faults
from yieldplan.measure.sawn import Sawn
from yieldplan.model.parts import Part
from yieldplan.papers.workbook.part_sums import lines_under

ROUTE = "resawn, two from 6/4; next best: planed from 4/4, about 2.00 more wood"


def lines(part: Part, route: str = "") -> list[str]:
    sawn = Sawn(blanks=tuple(routes([part], make_job(), Faults())))
    return lines_under(part, sawn, "in", {}, route)


def test_the_route_stands_under_the_part() -> None:
    assert f"route: {ROUTE}" in lines(make_part("side"), ROUTE)
    assert not any(line.startswith("route") for line in lines(make_part("side")))


def test_of_a_sheet_the_note_says_it_already() -> None:
    sheet = make_part("bottom", "20", "9", "1/4", wood="ply", is_sheet=True)
    said = lines(sheet, "sawn to size from 1/4")
    assert not any(line.startswith("route") for line in said)
    assert "sawn to size from the sheet" in said


def test_strips_of_a_panel_are_told_in_one_line() -> None:
    # From 2 + 1/8 to 5 + 1/8 wide; 30 + 1 long; 3/4 + 1/16 + 3/16 thick.
    (top,) = glued_up(make_part("top", "30", "20"), GluedUp(), make_job(), Faults())
    (rough,) = (line for line in lines(top) if line.startswith("rough"))
    assert rough.startswith("rough strips: 1 × 2 1/8 to 5 1/8 × 31   (length 30")
    assert rough.endswith("width 1/8 over what the strip brings)")
