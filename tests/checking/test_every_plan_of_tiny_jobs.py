"""The checker accepts every plan there is of a tiny job, and no floor is above the cheapest."""

from __future__ import annotations

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from tests.checking import brute
from tests.checking.enumerate_plans import cheapest, plans
from tests.checking.test_bound_by_trying_everything import tiny_woods
from tests.checking.tiny import TinyBlank, TinyPiece, TinyWood, document
from yieldplan.checking import check

# Kerf 3, cells 4 x 5 ticks: a kerf is neither one cell nor a whole number of them.
# The 7 x 4 front takes ceil(10/4) = 3 cells along and ceil(7/5) = 2 across, the 5 x 2
# side 2 and 1, the pair of fronts 7 + 3 + 7 = 17 long ceil(20/4) = 5 and 2.
# B1: marks from ceil(2/4) x 4 = 4, floor((27 - 2 - 4)/4) = 5 cells along (from the
# trimmed end, at 2 - 3 = -1: 6), floor((12 - 2 + 3)/5) = 2 across. S: 4 or 5, and 2.
FRONT = TinyBlank("front", (7, 4), {"front": 1}, ("clear", "sound"))
SIDE = TinyBlank("side", (5, 2), {"side": 1}, ("sound", "sound"))
PAIR = TinyBlank("pair", (17, 4), {"front": 2}, ("clear", "sap allowed"), "match")
MARKED = TinyPiece(
    id="B1",
    size=(27, 12),
    price=700,
    trims=(2, 2),
    edges=(1, 1),
    marks=(("sap", "A", (14, 2, 19, 6)), ("split", "through", (22, 0, 24, 3))),
)
SHEET = TinyPiece(id="S", size=(19, 8), price=450, copies=2)


def _job(family: str, marks_from: str, fronts: int) -> TinyWood:
    return TinyWood(
        family=family,
        kerf=3,
        step=(4, 5),
        blanks=(FRONT, SIDE, PAIR),
        pieces=(MARKED, SHEET),
        need={"front": fronts, "side": 1},
        marks_from=marks_from,
    )


# The numbers are our own counts; with two fronts E has 69,904 plans from the trimmed end
# (all hold, in 100 s), so one front there.
@pytest.mark.parametrize(
    ("family", "marks_from", "fronts", "number"),
    [
        ("R", "zero end", 2, 608),
        ("R", "trimmed end", 2, 2568),
        ("C", "zero end", 2, 2904),
        ("C", "trimmed end", 1, 4058),
        ("E", "zero end", 1, 2902),
    ],
)
def test_every_plan_of_a_tiny_job_holds(
    family: str, marks_from: str, fronts: int, number: int
) -> None:
    wood = _job(family, marks_from, fronts)
    prices = {"front": 330, "side": 140}
    priced = brute.priced(wood, prices)
    costs = []
    for cost, cuttings in plans(wood):
        costs.append(cost)
        report = check(document(wood, cuttings, prices=prices, priced=priced))
        assert report["objections"] == []
        assert report["costs"] == {"oak": cost}
        assert report["floors"]["oak"] <= cost
    least = cheapest(wood)
    assert least is not None
    assert min(costs) == least[0]
    assert len(costs) == number


@settings(max_examples=70, deadline=None)
@given(st.data(), tiny_woods((5, 3), most_blanks=2, most_needed=2))
def test_no_floor_is_above_the_cheapest_plan(
    data: st.DataObject, wood: TinyWood
) -> None:
    found = cheapest(wood)
    assume(found is not None)
    least, cuttings = found
    prices = {part: data.draw(st.integers(0, 2000)) for part in wood.need}
    priced = brute.priced(wood, prices)
    assert priced <= least
    report = check(document(wood, cuttings, prices=prices, priced=priced))
    assert report["objections"] == []
    assert report["floors"]["oak"] <= least
