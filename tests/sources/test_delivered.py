"""What lies free counts as delivered when it is whole: a mark in a clear face, or a strip short, makes it wood again."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from tests.sources.tallies import make_job
from tests.sources.test_since import example, pieces, read
from yieldplan.sources.delivered import delivered
from yieldplan.sources.saved_pieces import Spot
from yieldplan.sources.saved_plan import left_of


def leaf(blank: str) -> str:
    """The name of the first leaf that is this blank."""
    return next(spot.name for spot in pieces().spots.values() if spot.blank == blank)


@pytest.mark.parametrize(
    ("mark", "is_delivered"),
    [
        ("", True),
        ("knot A 3 to 5 x 1 to 2", False),  # the fronts show a clear face A
        ("knot B 3 to 5 x 1 to 2", True),  # their backs need only be sound
        ("check B 3 to 5 x 1 to 2", False),
    ],
)
def test_a_mark_found_in_a_free_blank_counts_where_its_face_forbids_it(
    tmp_path: Any, mark: str, is_delivered: bool
) -> None:
    fronts = leaf("k1")
    notes = f"{fronts} cut\n" + (f"{fronts} {mark}\n" if mark else "")
    noted, faults = read(tmp_path, notes)
    assert not faults
    left = left_of(example(), pieces(), noted, "plan.json", make_job())
    made = {name for name in left.made if name.endswith("front")}
    assert bool(made) == is_delivered
    assert (fronts in {piece.id for piece in left.pieces}) != is_delivered


def spots(count: int) -> list[Spot]:
    node = {"id": "", "box": [0, 0, 1, 1], "blank": "k1", "face_up": "A"}
    return [
        Spot(name=f"W1.{n}", stock={}, copy=1, node=node, box=(0, 0, 1, 1), rules={})
        for n in range(count)
    ]


def document(makes: Mapping[str, int], **part: Any) -> dict[str, Any]:
    whole = {"id": "top", "quantity": 2, "strips": 1, "set_up": False, "glue_up": None}
    return {
        "parts": [{**whole, **part}],
        "blanks": [{"id": "k1", "makes": dict(makes)}],
    }


@pytest.mark.parametrize(
    ("free", "tops", "over"), [(2, 0, 2), (3, 1, 0), (5, 1, 2), (6, 2, 0)]
)
def test_strips_count_when_a_whole_top_is_sawn(free: int, tops: int, over: int) -> None:
    # A top is glued up from three strips: of five, three are a top and two are wood.
    done = delivered(spots(free), document({"top strip": 1}, strips=3))
    assert done.parts == ({"top": tops} if tops else {})
    assert len(done.over) == over


@pytest.mark.parametrize(("free", "tops", "over"), [(2, 0, 2), (3, 1, 0)])
def test_strips_of_free_width_count_when_they_are_as_wide_as_the_panel(
    free: int, tops: int, over: int
) -> None:
    # A panel of 10 steps; each strip brings 4: three are 12, two wider than it needs.
    panel = document({"top width": 4}, glue_up={"units": 10}, quantity=1)
    done = delivered(spots(free), panel)
    assert done.parts == ({"top": tops} if tops else {})
    assert len(done.over) == over


def test_a_spare_from_a_gang_is_no_second_part() -> None:
    done = delivered(spots(2), document({"top": 2}, quantity=3))
    assert done.parts == {"top": 3}
