"""Routes a shop does without."""

from __future__ import annotations

import pytest

from tests.builders import build, make_drawer, make_job, make_part, make_shop
from yieldplan.blanks import routes
from yieldplan.faults import Fault, Faults


def found(*without: str) -> tuple[set[str], list[Fault]]:
    faults = Faults()
    parts = [
        make_part("stop", "9", "2", quantity=2),
        make_part("side", "20", "5", "1/2", quantity=2),
    ]
    job = make_job(shop=make_shop(without=without))
    return {blank.route for blank in routes(parts, job, faults)}, list(faults)


def test_a_shop_takes_every_route_unless_it_says_so() -> None:
    assert found() == ({"plane", "gang", "resaw", "mill together"}, [])


@pytest.mark.parametrize("written", ["mill together", "Mill-Together", "mill_together"])
def test_it_can_do_without_some(written: str) -> None:
    assert found(written, "gang") == ({"plane", "resaw"}, [])


def test_without_gangs_test_pieces_are_cut_one_by_one() -> None:
    job = make_job(make_drawer(), shop=make_shop(without=("gang",)))
    faults = Faults()
    pieces = [b for b in routes(build(job).parts, job, faults) if b.set_up]
    assert [blank.route for blank in pieces] == ["plane"] * 4
    assert list(faults) == []


def test_a_route_nobody_knows_is_a_mistake() -> None:
    _, (fault,) = found("resow")
    assert (fault.said, fault.remedy) == ("resow", 'Did you mean "resaw"?')
    assert str(fault.where) == "job.toml, shop.without"


@pytest.mark.parametrize("name", ["plane", "saw", "match"])
def test_some_no_shop_can_do_without(name: str) -> None:
    ways, (fault,) = found(name)
    assert "no shop can do without" in fault.wrong
    assert "plane" in ways
