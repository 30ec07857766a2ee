"""Bookcases that cannot be built: what is wrong, and what would help."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.builders import inches, make_bookcase, make_job
from yieldplan.assemblies.bookcase import Bookcase
from yieldplan.assemblies.bookcase.keys import Back, End, Shelf, Side, ToeKick
from yieldplan.faults import Fault, Faults
from yieldplan.joints.dado import Dado
from yieldplan.joints.half_blind_dovetail import HalfBlindDovetail
from yieldplan.joints.rabbet import Rabbet


def faults_of(bookcase: Bookcase) -> list[Fault]:
    faults = Faults()
    assert bookcase.build(make_job(bookcase), faults).parts == ()
    return list(faults)


def sizes(*texts: str) -> tuple[Fraction, ...]:
    return tuple(inches(each) for each in texts)


def test_openings_that_do_not_fill_the_height_are_told_with_both_sums() -> None:
    # 40 - 2 x 3/4 = 38-1/2 inside; 10 + 12 + 14 + 2 x 3/4 = 37-1/2: 1 short, so 15 below.
    (fault,) = faults_of(make_bookcase(height="40", openings=sizes("10", "12", "14")))
    assert fault.wrong == (
        "the openings do not fill the height: 10 opening + 12 opening + 14 opening + "
        "2 × 3/4 shelf = 37 1/2, and inside it is 40 height − 3/4 top − 3/4 bottom = "
        "38 1/2"
    )
    assert fault.remedy.startswith("Make the lowest 15 in, or leave openings out")


def test_openings_far_too_high_leave_nothing_for_the_lowest() -> None:
    # 38-1/2 inside, 30 and 20 are too much by more than the lowest has: no -x is proposed.
    (fault,) = faults_of(make_bookcase(height="40", openings=sizes("30", "20", "1")))
    assert fault.remedy == "Take fewer or lower openings, or a higher case"


def test_more_shelves_than_there_is_height() -> None:
    # 20 - 2 x 3/4 = 18-1/2; 25 shelves of 3/4 are 18-3/4.
    (fault,) = faults_of(make_bookcase(height="20", fixed_shelves=25))
    assert "the shelves leave no openings" in fault.wrong
    assert "= 18 1/2 high" in fault.wrong


@pytest.mark.parametrize(
    ("bookcase", "wrong"),
    [
        (
            make_bookcase(
                bottom=End(joint=HalfBlindDovetail()),
                toe_kick=ToeKick(height=inches("4")),
            ),
            "with the toe kick the sides run past the bottom",
        ),
        (
            make_bookcase(top=End(joint=Rabbet(), set_in=inches("2"))),
            "with set_in the sides run past the top",
        ),
        (
            make_bookcase(
                bottom=End(set_in=inches("1")), toe_kick=ToeKick(height=inches("4"))
            ),
            "a toe kick says how high the bottom lies, and so does its set_in",
        ),
        (
            make_bookcase(shelf=Shelf(joint=HalfBlindDovetail()), fixed_shelves=1),
            "a half-blind dovetail does not join a shelf to the face of a side",
        ),
        (
            make_bookcase(shelf=Shelf(joint=Dado(deep=inches("3/4"))), fixed_shelves=1),
            "the joint of shelf and side cannot be cut: a dado 3/4 in deep goes through",
        ),
        (
            make_bookcase(back=Back(sheet="ply", joint=Rabbet(deep=inches("1")))),
            "the back's rabbet in the side cannot be cut",
        ),
        (make_bookcase(openings=sizes("69", "0")), "an opening of 0 holds nothing"),
        (
            make_bookcase(openings=sizes("30", "30"), fixed_shelves=3),
            "with 2 openings fixed_shelves is 1",
        ),
        (
            make_bookcase(back=Back(sheet="ply", wood="poplar")),
            "the back is of a wood or of a sheet, one of the two",
        ),
        (
            make_bookcase(back=Back(wood="poplar", thickness=inches("1/2"))),
            "a back of solid wood in one piece would split, or push the sides apart",
        ),
        (
            make_bookcase(
                back=Back(
                    wood="poplar",
                    thickness=inches("1/2"),
                    boards=6,
                    gap=inches("1/4"),
                )
            ),
            "with this gap a tongue of 1/4 in does not reach into its groove",
        ),
        (make_bookcase(back=Back(sheet="ply", boards=3)), "a sheet is one board across"),
        (
            make_bookcase(side=Side(wood="walnut")),
            "how thick the side is is missing",
        ),
        (
            make_bookcase(side=Side(sheet="ply", thickness=inches("3/4"))),
            "the side is of a sheet that measures 1/4 in",
        ),
        (
            make_bookcase(top=End(wood="oak")),
            "the top is of a wood the job does not have",
        ),
        (
            make_bookcase(depth="1/4", back=Back(sheet="ply")),
            "nothing is left of den/top, 0 in wide",
        ),
    ],
)  # fmt: skip
def test_what_cannot_be_built_is_told_with_a_remedy(
    bookcase: Bookcase, wrong: str
) -> None:
    found = faults_of(bookcase)
    assert any(wrong in fault.wrong for fault in found), [str(each) for each in found]
    assert all(fault.remedy for fault in found)


def test_every_mistake_is_told_in_one_run() -> None:
    found = faults_of(
        make_bookcase(
            top=End(wood="oak"),
            shelf=Shelf(joint=HalfBlindDovetail()),
            fixed_shelves=1,
            back=Back(sheet="tin"),
        )
    )
    assert {fault.said for fault in found} == {"oak", "half-blind dovetail", "tin"}
