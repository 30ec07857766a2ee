"""The greatest worth of a piece equals what trying every pattern gives, to the last unit."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.checking import brute
from tests.checking.tiny import FACES, TinyBlank, TinyPiece, TinyWood, document
from yieldplan.checking import check
from yieldplan.checking.bound import price_out
from yieldplan.checking.reading import read


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
        pieces.append(
            TinyPiece(
                id=f"P{number}",
                size=(length, width),
                price=draw(st.integers(0, 30)) * 100,
                copies=draw(st.integers(1, 3)),
                trims=(draw(st.integers(0, 3)), draw(st.integers(0, 3))),
                edges=(draw(st.integers(0, 2)), draw(st.integers(0, 2))),
                marks=tuple(marks),
                line=draw(st.sampled_from(["oak 4/4", "oak 8/4"])),
            )
        )
    words = st.sampled_from(sorted(FACES))
    blanks = []
    for number in range(draw(st.integers(1, most_blanks))):
        part = f"part {number}"
        count = draw(st.integers(1, 2))
        least = count + (count - 1) * kerf
        blanks.append(
            TinyBlank(
                id=f"k{number}",
                size=(
                    draw(st.integers(least, max(least, 4 * sx))),
                    draw(st.integers(1, 3 * sy)),
                ),
                makes={part: count},
                faces=(draw(words), draw(words)),
                lines=draw(st.sampled_from([("oak 4/4",), ("oak 4/4", "oak 8/4")])),
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
    )


@settings(max_examples=250, deadline=None)
@given(st.data(), tiny_woods())
def test_priced_floor_is_what_trying_everything_gives(
    data: st.DataObject, wood: TinyWood
) -> None:
    prices = {part: data.draw(st.integers(0, 900)) for part in wood.need}
    plan, objections = read(document(wood, [], prices=prices))
    assert plan is not None, objections
    assert price_out(plan, plan.woods[0]) == brute.priced(wood, prices)


@settings(max_examples=60, deadline=None)
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
