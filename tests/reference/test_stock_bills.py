"""Bills of stock printed in old textbooks: our blanks by their printed rule are their ordered sizes.

The rule: 1/4 in wider and 1/2 in longer than finished; stock 1/8 in thicker to plane.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.builders import inches, make_job, make_part, make_shop
from yieldplan.blanks import routes
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.parts import Part
from yieldplan.model.shop import Shop

STOCK = [Fraction(1, 2), Fraction(1), Fraction(3, 2), Fraction(2)]
"""Thicknesses the bills are ordered in. [in]"""


def by_the_printed_rule() -> Shop:
    return make_shop(
        rough_length_short="1/2",
        rough_length_long="1/2",
        rough_width_small="1/4",
        rough_width="1/4",
        rough_width_long="1/4",
        planing="1/8",
        planing_large="1/8",
        # The bills order short slats singly; machine sizes are not their subject.
        machine_length=Fraction(0),
    )


def blank_of(part: Part) -> Blank:
    job = make_job(shop=by_the_printed_rule())
    (blank,) = routes([part], job, Faults())
    return blank


@pytest.mark.parametrize(
    ("what", "finished", "ordered"),
    [
        # I. S. Griffith, Correlated Courses in Woodwork and Mechanical Drawing, 1912:
        # walnut stand. READ: ordered sizes and finished thicknesses are printed;
        # finished width and length are the printed rule turned round.
        ("slats", ("12", "3", "3/8"), ("12-1/2", "3-1/4", "1/2")),
        ("stretcher", ("14", "8", "7/8"), ("14-1/2", "8-1/4", "1")),
        ("rails", ("12", "3", "7/8"), ("12-1/2", "3-1/4", "1")),
        ("top", ("14", "14", "7/8"), ("14-1/2", "14-1/4", "1")),
        ("posts", ("24", "1-1/4", "1-1/4"), ("24-1/2", "1-1/2", "1-1/2")),
    ],
)
def test_the_walnut_stand_is_ordered_as_printed(
    what: str, finished: tuple[str, str, str], ordered: tuple[str, str, str]
) -> None:
    length, width, thickness = finished
    blank = blank_of(make_part(what, length, width, thickness))
    assert blank.length.value == inches(ordered[0])
    assert blank.width.value == inches(ordered[1])
    least = min(stock for stock in STOCK if stock >= blank.thickness.value)
    assert least == inches(ordered[2])


@pytest.mark.parametrize(
    ("what", "finished", "ordered"),
    [
        # H. H. Windsor (ed.), Mission Furniture, Part 3, 1912: wall shelf. READ: ordered
        # sizes and the rule; thickness was bought planed, so it is the finished one.
        ("sides", ("16", "7", "3/4"), ("16-1/2", "7-1/4")),
        ("lower shelf", ("30", "6", "3/4"), ("30-1/2", "6-1/4")),
        ("upper shelf", ("30", "4-1/2", "3/4"), ("30-1/2", "4-3/4")),
        ("lower back", ("30", "3-1/4", "3/8"), ("30-1/2", "3-1/2")),
        ("upper back", ("30", "2-3/4", "3/8"), ("30-1/2", "3")),
    ],
)
def test_the_wall_shelf_is_ordered_as_printed(
    what: str, finished: tuple[str, str, str], ordered: tuple[str, str]
) -> None:
    length, width, thickness = finished
    blank = blank_of(make_part(what, length, width, thickness))
    assert blank.length.value == inches(ordered[0])
    assert blank.width.value == inches(ordered[1])
    assert blank.finished_thickness == inches(thickness)
