"""Lengths printed in old books of furniture, held against ours.

READ: both figures are printed. DERIVED: the answer follows from printed figures by the
sum beside it.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.builders import inches, make_job, make_plain, parts_by_id
from yieldplan.assemblies.part import Between
from yieldplan.joints.butt import Butt
from yieldplan.joints.dado import Dado
from yieldplan.joints.joint import Joint
from yieldplan.joints.mortise_and_tenon import MortiseAndTenon

WINDSOR_1 = "H. H. Windsor (ed.), Mission Furniture, How to Make It, Part 1"
WINDSOR_3 = "H. H. Windsor (ed.), Mission Furniture, How to Make It, Part 3, 1912"
CRAIGIN = "H. Craigin, A Boy's Workshop, 1884"


def tenon(length: str) -> Joint:
    return MortiseAndTenon(length=inches(length))


def housed(depth: str) -> Joint:
    return Dado(deep=inches(depth))


def length_of(
    clear: str, joint: Joint, mate: str | None = None, far: Joint | None = None
) -> Fraction:
    """Length of a part that spans so much between its mates."""
    between = Between(
        clear=inches(clear),
        joint=joint,
        far_joint=far,
        mate=inches(mate) if mate else None,
    )
    job = make_job(make_plain("part", length=None, between=between))
    return parts_by_id(job)["part"].length.value


@pytest.mark.parametrize(
    ("clear", "joint", "overall"),
    [
        # READ: oak table, p. 25: 22 overall, "2 in. shorter" with dowels: 22 - 2 = 20.
        pytest.param("20", tenon("1"), "22", id=f"oak table rail: {WINDSOR_3}"),
        # DERIVED: oak table slat 15-1/8, let in 1/4: 15-1/8 - 2 x 1/4 = 14-5/8.
        pytest.param("14-5/8", housed("1/4"), "15-1/8", id=f"oak slat: {WINDSOR_3}"),
        # DERIVED: dictionary stand shelf 17, let in 1/4: 17 - 2 x 1/4 = 16-1/2.
        pytest.param("16-1/2", housed("1/4"), "17", id=f"stand shelf: {WINDSOR_3}"),
        # DERIVED: book rack slat 3-1/2, mortised 1/4: 3-1/2 - 2 x 1/4 = 3.
        pytest.param("3", housed("1/4"), "3-1/2", id=f"book rack slat: {WINDSOR_3}"),
        # DERIVED: sewing table rails 14-1/2, tenons 1: 14-1/2 - 2 = 12-1/2.
        pytest.param("12-1/2", tenon("1"), "14-1/2", id=f"side rail: {WINDSOR_3}"),
        # DERIVED: its front rails 14-1/2, tenons 3/4: 14-1/2 - 1-1/2 = 13.
        pytest.param("13", tenon("3/4"), "14-1/2", id=f"front rail: {WINDSOR_3}"),
        # READ: settee rail 52-1/4, mortised 5/8; the cleats between are printed 51.
        pytest.param("51", tenon("5/8"), "52-1/4", id=f"settee rail: {WINDSOR_1}"),
        # DERIVED: settee end rail 24-1/4: 24-1/4 - 1-1/4 = 23.
        pytest.param("23", tenon("5/8"), "24-1/4", id=f"settee end: {WINDSOR_1}"),
        # DERIVED: settee slat 21-1/4, 5/8 into each rail: 21-1/4 - 1-1/4 = 20.
        pytest.param("20", housed("5/8"), "21-1/4", id=f"settee slat: {WINDSOR_1}"),
        # DERIVED: porch swing slat 16, mortised 1/2: 16 - 1 = 15.
        pytest.param("15", housed("1/2"), "16", id=f"swing slat: {WINDSOR_3}"),
        # DERIVED: hall tree brace 7-1/2, mortises 7/8: 7-1/2 - 1-3/4 = 5-3/4.
        pytest.param("5-3/4", tenon("7/8"), "7-1/2", id=f"hall tree: {WINDSOR_3}"),
        # DERIVED: morris chair rail 24, cleat between shoulders 22-1/2: tenons 3/4.
        pytest.param("22-1/2", tenon("3/4"), "24", id=f"morris rail: {WINDSOR_1}"),
        # DERIVED: second chair 28-1/2 and 26-1/2: tenons 1.
        pytest.param("26-1/2", tenon("1"), "28-1/2", id=f"chair rail: {WINDSOR_1}"),
    ],
)
def test_a_part_between_shoulders_is_as_long_as_printed(
    clear: str, joint: Joint, overall: str
) -> None:
    assert length_of(clear, joint) == inches(overall)


def test_a_leg_with_one_tenon() -> None:
    # DERIVED: arm chair front leg 26-3/4, one tenon 3/4: shoulder at 26. Windsor, Part 3.
    assert length_of("26", tenon("3/4"), far=Butt()) == inches("26-3/4")


def test_a_rail_through_both_posts() -> None:
    # DERIVED: roman chair, Windsor, Part 1: 14-1/8 between posts 1-7/8 thick,
    # 5/8 beyond each: 14-1/8 + 2 x (1-7/8 + 5/8) = 19-1/8.
    joint = MortiseAndTenon(through=True, proud=inches("5/8"))
    assert length_of("14-1/8", joint, mate="1-7/8") == inches("19-1/8")


def test_a_post_through_the_arm() -> None:
    # DERIVED: morris chair post, Windsor, Part 1: 24-15/16 + 7/8 arm + 3/16 = 26.
    joint = MortiseAndTenon(through=True, proud=inches("3/16"))
    post = length_of("24-15/16", joint, mate="7/8", far=Butt())
    assert post == inches("26")


def test_boards_that_butt_between_two_others() -> None:
    # READ: pedestal, Windsor, Part 3: sides 5 wide of 3/4 boards leave 3-1/2 between.
    assert length_of("3-1/2", Butt()) == inches("5") - 2 * inches("3/4")


def test_a_brace_across_two_legs() -> None:
    # READ: H. Craigin, A Boy's Workshop, 1884: 2 + 19 + 2 = 23; the brace butts at
    # the legs' outsides, so what it spans is 23.
    assert length_of("23", Butt()) == 2 + 19 + 2
