"""Banks of drawers that cannot be built: what is wrong, and what would help."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.builders import inches, make_bank, make_job
from yieldplan.assemblies.drawer.keys import Front, Side
from yieldplan.assemblies.drawer_bank import DrawerBank
from yieldplan.assemblies.drawer_bank.keys import Frame, Graduated, Rail
from yieldplan.faults import Fault, Faults
from yieldplan.joints.dado import Dado
from yieldplan.joints.joint import Joint
from yieldplan.joints.rabbet import Rabbet

SLIDES = {"runs": "side-mounted slides", "slide_length": inches("18")}


def faults_of(bank: DrawerBank) -> list[Fault]:
    faults = Faults()
    assert bank.build(make_job(bank), faults).parts == ()
    return list(faults)


def rail(wood: str = "walnut", joint: Joint | None = None, thick: str = "3/4") -> Rail:
    return Rail(
        wood=wood,
        thickness=inches(thick),
        width=inches("2"),
        case_side=inches("3/4"),
        joint=joint or Dado(),
    )


def heights(*texts: str) -> tuple[Fraction, ...]:
    return tuple(inches(each) for each in texts)


def test_heights_that_do_not_fill_the_opening_are_told_with_both_sums() -> None:
    # 6 + 8 + 10 = 24; 30 - 2 x 3/4 = 28-1/2: 4-1/2 short, so 14-1/2 below.
    (fault,) = faults_of(make_bank(heights=heights("6", "8", "10"), rail=rail()))
    assert fault.wrong == (
        "the heights do not fill the opening: 6 opening + 8 opening + 10 opening = 24, "
        "and there is 30 opening height − 2 × 3/4 rail = 28 1/2"
    )
    assert fault.remedy == "Make the lowest 14 1/2 in, or leave heights out"


@pytest.mark.parametrize(
    ("bank", "wrong"),
    [
        (make_bank(), "how many drawers there are is missing"),
        (
            make_bank(heights=heights("15", "15"), drawers=3),
            "heights are given for 2 drawers",
        ),
        (
            make_bank(
                heights=heights("15", "15"), graduated=Graduated(step=inches("1"))
            ),
            "heights are given, and graduated would work them out",
        ),
        (
            make_bank(drawers=3, graduated=Graduated()),
            "heights grow by a step or in a ratio, one of the two",
        ),
        (
            make_bank(drawers=3, graduated=Graduated(ratio=Fraction(0))),
            "in this ratio nothing is left of the second",
        ),
        (
            # (30 - 10 x 3) / 5 = 0.
            make_bank(drawers=5, graduated=Graduated(step=inches("3"))),
            "nothing is left for the smallest opening",
        ),
        (make_bank(drawers=3, rounded_to=Fraction(0)), "a step of 0 has no marks"),
        (
            make_bank(drawers=3, frame=Frame(wood="ash", width=inches("2"))),
            "a web frame has a rail in front, and rail is missing",
        ),
        (
            make_bank(drawers=3, rail=rail(), gap_between=inches("1/8")),
            "gap_between is for fronts that no rail keeps apart",
        ),
        (
            make_bank(drawers=3, gap_between=inches("1/8")),
            "gap_between is for applied fronts",
        ),
        (
            # 2 x 1/2 of overlay on a rail of 3/4.
            make_bank(
                drawers=3,
                rail=rail(),
                front=Front(
                    wood="walnut", thickness=inches("3/4"), overlay=inches("1/2")
                ),
                **SLIDES,
            ),
            "two fronts would meet on the rail between them: 3/4 in rail, 1 in of overlay",
        ),
        (
            make_bank(drawers=3, rail=rail("oak")),
            "the rail is of a wood the job does not have",
        ),
        (
            make_bank(drawers=3, rail=rail(joint=Rabbet())),
            "a rabbet does not join a rail to the face of a case's side",
        ),
        (
            make_bank(drawers=3, rail=rail(joint=Dado(deep=inches("3/4")))),
            "the joint of the rail cannot be cut: a dado 3/4 in deep goes through",
        ),
        (
            make_bank(
                depth="10",
                drawers=3,
                rail=rail(),
                frame=Frame(wood="ash", width=inches("8")),
            ),
            "between the rails of the frame",
        ),
        (
            make_bank(depth="1", drawers=3, rail=rail()),
            "the opening is 1 in deep",
        ),
        (
            # A drawer's own mistakes are told as a drawer tells them.
            make_bank(drawers=3, side=Side(wood="oak", thickness=inches("1/2"))),
            "the side is of a wood the job does not have",
        ),
    ],
)  # fmt: skip
def test_what_cannot_be_built_is_told_once_with_a_remedy(
    bank: DrawerBank, wrong: str
) -> None:
    (fault,) = faults_of(bank)
    assert wrong in fault.wrong
    assert fault.remedy
    assert fault.where.key == 'drawer_bank "bank"'
