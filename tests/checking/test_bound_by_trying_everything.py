"""The greatest worth of a piece equals what trying every pattern gives, to the last unit."""

from __future__ import annotations

from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.checking import brute
from tests.checking.tiny import FACES, TinyBlank, TinyPiece, TinyWood, document
from yieldplan.checking import check
from yieldplan.checking.bound import price_out
from yieldplan.checking.reading import read


@st.composite
def off_straight(draw: st.DrawFn, width: int) -> dict[str, Any]:
    """Nothing, or a board's crook, twist, bow and taper."""
    if draw(st.booleans()):
        return {}
    taper = draw(st.sampled_from([None, (1, width), (width, 1)]))
    return {
        "crook": draw(st.integers(0, 6)),
        "bow": draw(st.sampled_from([0, 0, 9])),
        "twist": draw(st.sampled_from([0, 0, 1])),
        "widths": taper if width > 1 else None,
    }


@st.composite
def tiny_woods(
    draw: st.DrawFn,
    most_cells: tuple[int, int] = (9, 6),
    *,
    most_blanks: int = 4,
    most_needed: int = 3,
) -> TinyWood:
    """Woods of a few cells, mostly with a kerf that is not one cell, marks and faces."""
    kerf = draw(st.integers(0, 5))
    sx, sy = draw(st.integers(1, 5)), draw(st.integers(1, 5))
    along, across = most_cells
    pieces = []
    for number in range(draw(st.integers(1, 2))):
        length, width = (
            draw(st.integers(2, along * sx)),
            draw(st.integers(2, across * sy)),
        )
        marks = []
        for _ in range(draw(st.integers(0, 4))):
            x0, y0 = draw(st.integers(-1, length)), draw(st.integers(-1, width))
            box = (x0, y0, x0 + draw(st.integers(1, 6)), y0 + draw(st.integers(1, 6)))
            kind = draw(st.sampled_from(["knot", "sap", "split"]))
            marks.append((kind, draw(st.sampled_from(["A", "B", "through"])), box))
        copies = draw(st.integers(1, 3))
        pieces.append(
            TinyPiece(
                id=f"P{number}",
                size=(length, width),
                price=draw(st.integers(0, 30)) * 100,
                copies=copies,
                trims=(draw(st.integers(0, 3)), draw(st.integers(0, 3))),
                edges=(draw(st.integers(0, 2)), draw(st.integers(0, 2))),
                marks=tuple(marks),
                line=draw(st.sampled_from(["oak 4/4", "oak 8/4"])),
                # Of several copies none is crooked.
                **(draw(off_straight(width)) if copies == 1 else {}),
            )
        )
    words = st.sampled_from(sorted(FACES))
    blanks = []
    num_steps = draw(st.sampled_from([0, 0, 1, 2]))
    of_steps = draw(words), draw(words)
    num_blanks = draw(st.integers(1, most_blanks))
    num_steps = min(num_steps, num_blanks)
    for number in range(num_blanks):
        part = f"part {number}"
        count = draw(st.integers(1, 2))
        least = count + (count - 1) * kerf
        step = ("set", number + 1, num_steps) if number < num_steps else None
        blanks.append(
            TinyBlank(
                id=f"k{number}",
                size=(
                    draw(st.integers(least, max(least, 4 * sx))),
                    draw(st.integers(1, 3 * sy)),
                ),
                makes={part: count},
                faces=of_steps if step else (draw(words), draw(words)),
                lines=("oak 4/4",)
                if step
                else draw(st.sampled_from([("oak 4/4",), ("oak 4/4", "oak 8/4")])),
                step=step,
                at=draw(st.integers(0, 2)),
            )
        )
    return TinyWood(
        family=draw(st.sampled_from("RCE")),
        kerf=kerf,
        step=(sx, sy),
        blanks=tuple(blanks),
        pieces=tuple(pieces),
        need={
            f"part {n}": draw(st.integers(0, most_needed)) for n in range(len(blanks))
        },
        marks_from=draw(st.sampled_from(["zero end", "trimmed end"])),
        zones={
            f"part {n}": draw(st.sampled_from([0, 0, 1, 3])) for n in range(len(blanks))
        },
        crook_at_most=draw(st.sampled_from([None, 0, 2])),
        twisted_at_most=draw(st.integers(0, along * sx)),
        around_knots=draw(st.sampled_from([0, 0, 1, 3])),
        short_of_checks=draw(st.sampled_from([0, 0, 2])),
        percent=draw(st.sampled_from([0, 0, 20, 50])),
        sizes=((draw(st.integers(1, 8)), draw(st.integers(1, 8))),),
    )


@settings(max_examples=100, deadline=None)
@given(st.data(), tiny_woods())
def test_priced_floor_is_what_trying_everything_gives(
    data: st.DataObject, wood: TinyWood
) -> None:
    prices = {part: data.draw(st.integers(0, 900)) for part in wood.need}
    plan, objections = read(document(wood, [], prices=prices))
    assert plan is not None, objections
    assert price_out(plan, plan.woods[0]) == brute.priced(wood, prices)


@settings(max_examples=30, deadline=None)
@given(st.data(), tiny_woods())
def test_floor_is_refused_when_it_is_not_what_the_prices_prove(
    data: st.DataObject, wood: TinyWood
) -> None:
    prices = {part: data.draw(st.integers(0, 900)) for part in wood.need}
    true = brute.priced(wood, prices)
    off = data.draw(st.sampled_from([-1, 1]))
    told = check(document(wood, [], prices=prices, priced=true + off))["objections"]
    assert any("the prices prove a floor" in objection for objection in told)
    told = check(document(wood, [], prices=prices, priced=true))["objections"]
    assert not any("the prices prove a floor" in objection for objection in told)
