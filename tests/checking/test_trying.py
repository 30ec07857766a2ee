"""A floor by trying holds to the last unit, and no further: against every choice and every way to cut."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from math import prod
from random import Random
from typing import Any

import pytest

from tests.checking.brute_makes import Counted, cheapest_choice, makes, outdone
from tests.checking.test_worth_of_marked_pieces import MODES, marked_wood
from tests.checking.tiny import TinyBlank, TinyPiece, TinyWood, document
from yieldplan.checking import floors
from yieldplan.checking.facts import Wood
from yieldplan.checking.near_pieces import NearPiece, fillings_for
from yieldplan.checking.reading import read
from yieldplan.checking.trying import nothing_cheaper_makes_everything
from yieldplan.checking.values import Values
from yieldplan.checking.wants import Wants

Document = dict[str, Any]
MIXES = [
    "",
    *(mode for mode in MODES if mode != "offcuts"),
    "trims crook taper",
    "trims crook margins zones",
    "trims taper twist bow",
    "trims zones margins steps",
    "trims crook taper twist bow margins zones steps",
]
NUMBER = {"R": 5, "C": 2, "E": 1}
MOST_WAYS = 12
MOST_CELLS = 27


def wood_to_try(family: str, random: Random, mode: str) -> TinyWood:
    """Two or three pieces, one of them perhaps there twice, and what some of them can make."""
    wood, _ = marked_wood(family, random, mode)
    pieces = []
    for number in range(random.choice([2, 2, 3])):
        other = small_wood(family, random, mode)
        piece = replace(other.pieces[0], price=random.randint(0, 9) * 7)
        copies = 2 if piece.is_straight and random.random() < 0.2 else 1
        pieces.append(replace(piece, id=f"P{number}", copies=copies))
    most = few_enough({p: random.randint(0, 3) for p in wood.need})
    wood = replace(wood, pieces=tuple(pieces), percent=0, need=most)
    wood = replace(wood, blanks=tuple(_known(wood, blank) for blank in wood.blanks))
    # What is made by the pieces but one can be needed.
    counted = Counted(wood)
    made = counted.none
    for piece in pieces[: random.randint(1, len(pieces))]:
        made = counted.both(made, makes(wood, piece, counted))
    way = random.choice(sorted(outdone(made)))
    return replace(wood, need=dict(zip(wood.need, way, strict=True)))


def small_wood(family: str, random: Random, mode: str) -> TinyWood:
    """A marked wood whose piece brute force is through with in a second or two."""
    while True:
        wood, _ = marked_wood(family, random, mode)
        (long, wide), (along, across) = wood.pieces[0].size, wood.step
        if long * wide <= MOST_CELLS * along * across:
            return wood


def few_enough(need: dict[str, int]) -> dict[str, int]:
    """Less of what is needed most, until brute force can keep every way to make it."""
    while prod(count + 1 for count in need.values()) > MOST_WAYS:
        most = max(need, key=lambda part: need[part])
        need[most] -= 1
    return need


def _known(wood: TinyWood, blank: TinyBlank) -> TinyBlank:
    """Every part comes singly, so that what is made too often can be left out."""
    return replace(blank, makes=dict.fromkeys(blank.makes, 1))


def rows_for(wood: TinyWood, random: Random) -> list[Document]:
    """Prices about the area of the parts, and lower ones for some pieces."""
    area = {next(iter(b.makes)): b.size[0] * b.size[1] for b in wood.blanks}
    rows = []
    for _ in range(random.randint(0, 3)):
        prices = {
            part: random.choice([0, 1, 1, 1])
            * (area[part] * 20 + random.randint(0, 40))
            for part in wood.need
        }
        limited = [
            {
                "stock": [piece.id],
                "prices": {
                    p: random.randint(price // 2, price) for p, price in prices.items()
                },
            }
            for piece in wood.pieces
            if random.random() < 0.5
        ]
        rows.append({"prices": prices, "limited": limited})
    return rows


def told(plan: Document, rows: list[Document], least: int) -> list[str]:
    """What is said against a floor by trying."""
    plan["woods"][0]["bound"]["tried"] = {"least": least, "rows": rows}
    read_, objections = read(plan)
    assert read_ is not None, objections
    wood = read_.woods[0]
    values = Values(read_, wood)
    assert wood.bound.tried is not None
    rich = floors.Rows(values)
    return list(
        nothing_cheaper_makes_everything(
            read_,
            wood,
            wood.bound.tried,
            [rich.richness(row) for row in wood.bound.tried.rows],
            values,
        )
    )


@pytest.mark.parametrize("family", "RCE")
@pytest.mark.parametrize("mode", MIXES)
def test_floor_by_trying_is_the_cheapest_choice_and_no_unit_more(
    family: str, mode: str
) -> None:
    for seed in range(NUMBER[family]):
        random = Random(f"{family} {mode} {seed}")
        wood = wood_to_try(family, random, mode)
        cheapest = cheapest_choice(wood, Counted(wood))
        assert cheapest is not None
        rows = rows_for(wood, random)
        plan = document(wood, [])
        assert told(plan, rows, cheapest) == [], seed
        more = told(plan, rows, cheapest + 1)
        assert any("would do" in each for each in more), seed


@pytest.mark.parametrize("family", "RCE")
@pytest.mark.parametrize("mode", MIXES)
def test_what_is_worth_enough_is_found_and_nothing_else(family: str, mode: str) -> None:
    for seed in range(NUMBER[family]):
        random = Random(f"near {family} {mode} {seed}")
        wood = wood_to_try(family, random, mode)
        wood = replace(
            wood, need=few_enough({part: random.randint(0, 3) for part in wood.need})
        )
        prices = [row["prices"] for row in rows_for(wood, random)]
        plan, _ = read(document(wood, []))
        assert plan is not None
        for piece in wood.pieces:
            ways = makes(wood, piece, Counted(wood))
            best = [max(worth(way, wood, each) for way in ways) for each in prices]
            least = [random.randint(most // 2, most) for most in best]
            wanted = {
                way
                for way in ways
                if all(
                    worth(way, wood, each) >= enough
                    for each, enough in zip(prices, least, strict=True)
                )
            }
            found = near(
                plan.woods[0], Values(plan, plan.woods[0]), piece, prices, least
            )
            assert {*found} == outdone(frozenset(wanted)), seed


def worth(way: tuple[int, ...], wood: TinyWood, prices: Mapping[str, int]) -> int:
    return sum(n * prices[part] for n, part in zip(way, wood.need, strict=True))


def near(
    wood: Wood,
    values: Values,
    piece: TinyPiece,
    prices: list[Mapping[str, int]],
    least: list[int],
) -> list[tuple[int, ...]]:
    """What the proof finds that a piece can make, in the order of the need."""
    wants = Wants(values, prices)
    grid, blanks = values.grids[piece.id], values.blanks[piece.id]
    fillings = fillings_for(values.plan, wood, blanks, [grid], wants)
    found = NearPiece(grid, wood.rules, fillings).near(wants.worths.pack(least))
    counts = (
        dict(zip(wants.parts, wants.counts.unpack(made.makes), strict=True))
        for made in found
    )
    return [tuple(count.get(part, 0) for part in wood.need) for count in counts]
