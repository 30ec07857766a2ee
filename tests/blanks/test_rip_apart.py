"""Slats out of one wide blank, worked by hand from the defaults. Common practice, no source."""

from __future__ import annotations

from tests.builders import inches, make_job, make_part, make_shop
from yieldplan.blanks import routes
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part


def ripped(*parts: Part, job: Job | None = None) -> list[Blank]:
    found = routes(parts, job or make_job(), Faults())
    return [blank for blank in found if blank.route == "rip apart"]


def test_four_slats_lie_a_kerf_and_a_pass_of_the_jointer_apart() -> None:
    # 4 x 1-1/4 + 3 x 1/8 kerf + 3 x 1/32 to joint + 1/4 rough width = 5-23/32;
    # 30 + 1 rough length (over 24). The first begins 1/8 up, the next 1-1/4 + 1/8 + 1/32 higher.
    part = make_part("slat", "30", "1-1/4", quantity=4)
    four = ripped(part)[-1]
    assert dict(four.makes) == {"slat": 4}
    assert (four.length.value, four.width.value) == (
        inches("31"),
        inches("5-23/32"),
    )
    assert [each.y for each in four.inside] == [
        inches("1/8"), inches("1-17/32"), inches("2-15/16"), inches("4-11/32"),
    ]  # fmt: skip
    # By themselves they take 4 x (1-1/4 + 1/8) + 3 x 1/8 = 5-7/8.
    assert four.width.value < inches("5-7/8")
    assert not four.may_spare


def test_three_to_six_are_offered_and_never_more_than_are_asked_for() -> None:
    def counts(quantity: int) -> list[int]:
        part = make_part("slat", "30", "1", quantity=quantity)
        return [blank.makes["slat"] for blank in ripped(part)]

    assert counts(2) == []
    assert counts(4) == [3, 4]
    assert counts(9) == [3, 4, 5, 6]


def test_no_blank_is_wider_than_the_jointer() -> None:
    # Three of 1-1/4: 3-3/4 + 2/8 + 2/32 + 1/4 = 4-5/16; four are 5-23/32, over 5.
    part = make_part("slat", "30", "1-1/4", quantity=6)
    job = make_job(shop=make_shop(jointer_width="5"))
    assert [blank.makes["slat"] for blank in ripped(part, job=job)] == [3]


def test_wide_and_short_parts_are_not_ripped_apart() -> None:
    assert ripped(make_part("rail", "30", "1-9/16", quantity=6)) == []
    assert ripped(make_part("stop", "9", "1", quantity=6)) == []


def test_a_shop_can_do_without_it() -> None:
    job = make_job(shop=make_shop(without="rip apart"))
    assert ripped(make_part("slat", "30", "1", quantity=6), job=job) == []


def test_it_tells_how_to_do_it_safely() -> None:
    (three,) = ripped(make_part("slat", "30", "1", quantity=3))
    assert any("push block" in caution for caution in three.cautions)
