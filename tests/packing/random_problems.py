"""Small random problems for the packer: kerfs that are not one cell, marks with faces, copies, several routes."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from hypothesis import strategies as st

from yieldplan.model.plan import Family
from yieldplan.packing.problem import Bin, Block, Demand, Item, Problem

# What the two faces of an item may not bear, as bits of two kinds of mark: all alike,
# show face clear and back sound, nothing at all.
FACE_RULES = [
    ((3, 3), (3, 3)),
    ((3, 1), (1, 3)),
    ((1, 1), (1, 1)),
    ((0, 0), (0, 0)),
    ((3, 0), (0, 3)),
]
ZONES: list[dict[str, Any]] = [
    {},
    {},
    {"zones": (2, 3), "zone_bits": 1},
    {"zones": (0, 4), "zone_bits": 3},
    {"zones": (50, 50), "zone_bits": 2},
]
"""No joints, joints at both ends or one, a gang of jointed parts."""


@st.composite
def blocks(draw: st.DrawFn, length: int, width: int) -> Block:
    """A mark anywhere on a board, also where trims and edges are cut off."""
    x0 = draw(st.integers(0, length - 1))
    y0 = draw(st.integers(0, width - 1))
    kind = draw(st.sampled_from([1, 2]))
    face = draw(st.sampled_from(["A", "B", "through"]))
    return Block(
        box=(
            x0,
            y0,
            draw(st.integers(x0 + 1, min(length, x0 + 9))),
            draw(st.integers(y0 + 1, min(width, y0 + 7))),
        ),
        on_a=0 if face == "B" else kind,
        on_b=0 if face == "A" else kind,
    )


@st.composite
def problems(
    draw: st.DrawFn,
    family: Family | None = None,
    *,
    most_bins: int = 3,
    most_items: int = 4,
    most_need: int = 3,
    longest: int = 40,
    widest: int = 22,
) -> Problem:
    """A problem of a few bins and items, in small ticks."""
    num_demands = draw(st.integers(1, most_items))
    items = []
    for number in range(draw(st.integers(num_demands, most_items))):
        first = (
            number if number < num_demands else draw(st.integers(0, num_demands - 1))
        )
        makes = {first: 1}
        if number >= num_demands:
            # Another route: two of it at once, or one each of two parts.
            other = draw(st.integers(0, num_demands - 1))
            makes[other] = makes.get(other, 0) + 1
        items.append(
            Item(
                name=f"i{number}",
                length=draw(st.integers(3, longest // 2)),
                width=draw(st.integers(2, widest // 2)),
                makes=makes,
                layers=draw(st.sampled_from(FACE_RULES)),
                may_spare=number >= num_demands and draw(st.booleans()),
                **draw(st.sampled_from(ZONES)),
            )
        )
    sets: tuple[tuple[int, ...], ...] = ()
    num_kinds = num_demands
    if draw(st.booleans()):
        # Two more parts, made as a set in steps and in no other way.
        both = (num_demands, num_demands + 1)
        num_demands += 2
        sets = (tuple(range(len(items), len(items) + 2)),)
        layers = draw(st.sampled_from(FACE_RULES))
        items += [
            Item(
                name=f"s{demand}",
                length=draw(st.integers(3, longest // 2)),
                width=draw(st.integers(2, widest // 2)),
                makes={demand: 1},
                layers=layers,
                **draw(st.sampled_from(ZONES)),
            )
            for demand in both
        ]
    bins = []
    for number in range(draw(st.integers(1, most_bins))):
        length = draw(st.integers(12, longest))
        width = draw(st.integers(6, widest))
        copies = draw(st.sampled_from([1, 1, 2]))
        crooked: dict[str, Any] = {}
        if copies == 1:
            crooked = draw(
                st.sampled_from(
                    [
                        {},
                        {},
                        {"crook": draw(st.integers(1, 5))},
                        {"widths": (width, max(3, width - draw(st.integers(1, 9))))},
                        {"widths": (max(3, width - draw(st.integers(1, 9))), width)},
                        {"is_twisted": True, "crook": draw(st.integers(0, 3))},
                    ]
                )
            )
            if crooked.get("widths") == (width, width):
                crooked = {}
        bins.append(
            Bin(
                name=f"b{number}",
                length=length,
                width=width,
                trims=(draw(st.integers(0, 5)), draw(st.integers(0, 3))),
                edges=(draw(st.integers(0, 2)), draw(st.integers(0, 2))),
                blocks=tuple(draw(st.lists(blocks(length, width), max_size=3))),
                price=draw(st.integers(1, 60)) * 1000,
                copies=copies,
                holds=frozenset(
                    draw(
                        st.sampled_from(
                            [range(len(items)), range(max(1, len(items) - 1))]
                        )
                    )
                ),
                **crooked,
            )
        )
        bins[-1] = replace(bins[-1], found=tuple(b.box for b in bins[-1].blocks))
    of_sets = draw(st.integers(1, 2))
    return Problem(
        demands=tuple(
            Demand(
                name=f"d{number}",
                need=of_sets
                if number >= num_kinds
                else draw(st.integers(1, most_need)),
                rank=draw(st.integers(0, 1)),
                area=items[number].length * items[number].width,
            )
            for number in range(num_demands)
        ),
        items=tuple(items),
        bins=tuple(bins),
        family=family or draw(st.sampled_from(["R", "C", "E"])),
        kerf=draw(st.integers(1, 4)),
        step_along=draw(st.integers(1, 4)),
        step_across=draw(st.integers(1, 3)),
        marks_from=draw(st.sampled_from(["zero end", "trimmed end"])),
        crook_at_most=draw(st.sampled_from([None, 1, 2, 4])),
        twisted_at_most=draw(st.integers(5, 20)),
        sets=sets,
        offcut_percent=draw(st.sampled_from([0, 0, 25, 50])),
        offcut_sizes=((8, 5), (14, 3)),
    )
