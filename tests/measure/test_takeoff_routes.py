"""What a bid counts on where a part has several routes."""

from __future__ import annotations

from collections import Counter

from tests.builders import HERE, make_job, make_part
from yieldplan.assemblies.glued import GluedUp, glued_up
from yieldplan.blanks import routes
from yieldplan.faults import Faults
from yieldplan.measure.takeoff import takeoff
from yieldplan.model.job import GrainMatch, Laid
from yieldplan.model.parts import Part


def counted_on(*parts: Part, laid: Laid | None = None) -> Counter[tuple[str, bool]]:
    """Blanks by route, and whether they are steps of a set."""
    matches = ()
    if laid is not None:
        names = tuple(part.id for part in parts)
        matches = (GrainMatch(name="set", parts=names, laid=laid, where=HERE),)
    job = make_job(grain_matches=matches)
    found = Counter[tuple[str, bool]]()
    for each in takeoff(parts, routes(parts, job, Faults())):
        found[each.blank.route, each.blank.step is not None] += each.count
    return found


def test_not_on_resawing_nor_on_milling_together() -> None:
    side = make_part("side", "20", "5", "1/2", quantity=4)
    assert counted_on(side) == Counter({("plane", False): 4})


def test_not_on_steps() -> None:
    fronts = make_part("upper", "22", "5"), make_part("lower", "22", "8")
    found = counted_on(*fronts, laid="end to end")
    assert found == Counter({("match", False): 1})


def test_on_resawing_where_a_pair_asks_for_it() -> None:
    panels = make_part("left", "22", "7", "1/2"), make_part("right", "22", "7", "1/2")
    found = counted_on(*panels, laid="book-matched")
    assert found == Counter({("match", False): 1})


def test_on_strips_enough_for_a_panel() -> None:
    # 20 + 1/2 is 82 steps of 1/4; the widest strips have 20: five of them, one trimmed.
    part = make_part("top", "30", "20")
    (top,) = glued_up(part, GluedUp(), make_job(), Faults())
    assert counted_on(top) == Counter({("glue up", False): 5})
