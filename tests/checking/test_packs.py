"""Plans with whole packs: what is bought adds up, the floor is proved, and damage is refused."""

from __future__ import annotations

from collections.abc import Callable
from copy import deepcopy
from typing import Any

import pytest

from tests.packing.wood_jobs import make_blank, make_board, make_part, plan_of
from yieldplan import plan_file
from yieldplan.checking import check

Document = dict[str, Any]

SHELF = make_part("shelf", "40", "6", 3)
"""A blank is 40-1/2 x 6-1/8: a 50 x 8 board less 2 in at each end gives one."""


def planned() -> Document:
    """Three shelves: pack 7 has two boards for 60.00 in all, pack 8 four for 100.00, W9 costs 45.00.

    Pack 7 and W9 cost 105.00, pack 8 alone 100.00 and leaves a board whole.
    """
    pieces = [
        make_board("W1", "50", "8", per_foot=None, price=300_000, pack="7"),
        make_board("W2", "50", "8", per_foot=None, price=300_000, pack="7"),
        *(
            make_board(f"W{n}", "50", "8", per_foot=None, price=250_000, pack="8")
            for n in (3, 4, 5, 6)
        ),
        make_board("W9", "50", "8", per_foot=None, price=450_000),
    ]
    plan, _ = plan_of([SHELF], [make_blank([SHELF])], pieces, work=4_000_000)
    return plan_file.write(plan)


PLANNED = planned()


def test_the_cheapest_choice_of_packs_is_bought_whole_and_proved() -> None:
    report = check(PLANNED)
    assert report["objections"] == []
    (wood,) = PLANNED["woods"]
    # Prices alone: the four boards of pack 8 give four shelves' worth for 100.00, so
    # three shelves might be had for 75.00; only choices of packs show that they are not.
    assert (wood["cost"], wood["bound"]["value"]) == (1_000_000, 1_000_000)
    assert report["floors"] == {"walnut": 1_000_000}
    (line,) = PLANNED["money"]["lines"]
    assert line["pieces"] == [["W3", 1], ["W4", 1], ["W5", 1], ["W6", 1]]
    assert (line["by"], line["pack"], line["per"], line["total"]) == (
        "pack",
        "8",
        1_000_000,
        1_000_000,
    )
    assert len(wood["cuttings"]) == 3


def _bought_in_part(plan: Document) -> None:
    line = plan["money"]["lines"][0]
    line["pieces"].pop()


def _paid_in_part(plan: Document) -> None:
    plan["woods"][0]["cost"] = 750_000


def _line_by_the_piece(plan: Document) -> None:
    line = plan["money"]["lines"][0]
    line["by"], line["per"] = "piece", 250_000


def _another_thickness(plan: Document) -> None:
    plan["stock"][0]["line"] = "walnut 8/4"
    plan["blanks"][0]["stock"].append("walnut 8/4")


def _higher(plan: Document) -> None:
    plan["woods"][0]["bound"]["packs"]["least"] += 1


def _fewer_rows(plan: Document) -> None:
    plan["woods"][0]["bound"]["packs"]["rows"] = []


def _no_proof(plan: Document) -> None:
    del plan["woods"][0]["bound"]["packs"]


def _unknown_part(plan: Document) -> None:
    plan["woods"][0]["bound"]["packs"]["rows"][0]["prices"]["drawer"] = 1


def _offcuts(plan: Document) -> None:
    plan["woods"][0]["rules"]["offcuts"]["percent"] = 25


def _sold_singly(plan: Document) -> None:
    del plan["stock"][2]["pack"]


@pytest.mark.parametrize(
    ("damage", "said"),
    [
        (_bought_in_part, "W6: 1 in the pack, 0 bought"),
        (_paid_in_part, "the pieces bought, less the offcuts, cost 100.00"),
        (_line_by_the_piece, "W3: 1 in the pack, 0 bought"),
        (_another_thickness, "Pack 7 holds W1 of walnut 8/4 and W2 of walnut 4/4"),
        (_higher, "any choice of packs costs 100.0001"),
        (_fewer_rows, "with packs 7 the rows prove 60.00; the plan says"),
        (_no_proof, "gives its floor as 100.00"),
        (_unknown_part, "row 0 of `packs` prices 'drawer'"),
        (_offcuts, "walnut has packs, and its offcuts"),
        (_sold_singly, "W3: 1 cut, 0 bought under walnut 4/4 at 25.00 a piece"),
    ],
)
def test_damage_is_refused(damage: Callable[[Document], None], said: str) -> None:
    plan = deepcopy(PLANNED)
    damage(plan)
    objections = check(plan)["objections"]
    assert any(said in objection for objection in objections), objections
