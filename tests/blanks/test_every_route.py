"""What holds for the blanks of every route, and for all of them together."""

from __future__ import annotations

import inspect
from collections import Counter
from fractions import Fraction
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.builders import HERE, make_job, make_part, make_shop
from yieldplan import blanks
from yieldplan.blanks import Route, routes
from yieldplan.faults import Faults
from yieldplan.model.blanks import Inside
from yieldplan.model.job import GrainMatch, Job, Laid
from yieldplan.model.parts import GlueUp, Part
from yieldplan.model.rounding import blank_in_ticks
from yieldplan.registry import find
from yieldplan.units import to_ticks_up

FOUND = find(blanks, Route)  # type: ignore[type-abstract]


def sizes(low: int, high: int) -> st.SearchStrategy[str]:
    """Thirds and seventh parts too: nothing on the tick grid is taken for granted."""
    whole = st.integers(low, high)
    return st.builds(
        lambda n, part: f"{n} {part}", whole, st.sampled_from(["1/7", "2/3", "5/16"])
    )


def glue_ups() -> st.SearchStrategy[GlueUp]:
    """A panel of 9-2/3 and 1/2 to trim: 41 quarter inches."""
    return st.builds(
        lambda least, colour: GlueUp(
            step=Fraction(1, 4), units=41, least=least, most=Fraction(5), colour=colour
        ),
        st.sampled_from([Fraction(2), Fraction(7, 3)]),
        st.sampled_from(["any", "one board"]),
    )


@st.composite
def jobs(draw: st.DrawFn) -> tuple[Job, tuple[Part, ...]]:
    """Up to six kinds of part, two of them perhaps matched."""
    count = draw(st.integers(1, 6))
    parts = []
    for number in range(count):
        is_sheet = draw(st.booleans()) and draw(st.booleans())
        strips = 1 if is_sheet else draw(st.sampled_from([1, 1, 1, 3]))
        glue_up = None
        if not is_sheet and strips == 1 and draw(st.booleans()):
            glue_up = draw(glue_ups())
        parts.append(
            make_part(
                f"p{number}",
                draw(sizes(2, 40)),
                "9 2/3" if glue_up else draw(st.sampled_from(["1-7/16", "5 2/3"])),
                "1/4" if is_sheet else draw(st.sampled_from(["3/4", "1"])),
                wood="ply" if is_sheet else "walnut",
                is_sheet=is_sheet,
                quantity=1 if glue_up else draw(st.integers(1, 5)),
                strips=strips,
                glue_up=glue_up,
                show_face=draw(st.sampled_from(["clear", "sound"])),
                leg=draw(st.booleans()),
            )
        )
    matches = ()
    if draw(st.booleans()):
        names = ("p0", f"p{count - 1}")
        laid = draw(st.sampled_from(get_args(Laid)))
        matches = (GrainMatch(name="set", parts=names, laid=laid, where=HERE),)
    kerf = draw(st.sampled_from(["1/8", "3/32", "0.1"]))
    return make_job(shop=make_shop(kerf=kerf), grain_matches=matches), tuple(parts)


def steps_brought(inside: Inside, part: Part) -> int:
    """What a place brings: one part or strip, or as many steps of a panel as it is wide."""
    if part.glue_up is None:
        return 1
    if inside.width >= part.width.value:
        return part.glue_up.units
    return int(inside.width // part.glue_up.step)


def test_the_routes_of_the_issue_are_there() -> None:
    assert set(FOUND) >= {
        "plane",
        "gang",
        "match",
        "saw",
        "resaw",
        "mill together",
        "glue up",
    }


@pytest.mark.parametrize("kind", FOUND.values(), ids=list(FOUND))
def test_every_route_is_explained(kind: type[Route]) -> None:
    assert (inspect.getdoc(kind) or "").splitlines()[0].endswith(".")


@given(jobs())
def test_every_blank_holds_its_parts_a_kerf_apart(
    asked: tuple[Job, tuple[Part, ...]],
) -> None:
    job, parts = asked
    size = {part.demand: part for part in parts}
    for blank in routes(parts, job, Faults()):
        brought = Counter[str]()
        for inside in blank.inside:
            brought[inside.demand] += steps_brought(inside, size[inside.demand])
        assert brought == blank.makes
        for inside in blank.inside:
            part = size[inside.demand]
            assert inside.length >= part.length.value
            if part.glue_up is None:
                assert inside.width * part.strips >= part.width.value
            elif inside.width < part.width.value:
                assert part.glue_up.least <= inside.width <= part.glue_up.most
        ticks, kerf = blank_in_ticks(blank, job.shop.kerf), to_ticks_up(job.shop.kerf)
        for number, (x0, y0, x1, y1) in enumerate(ticks.inside):
            assert x0 >= 0 <= y0
            assert x1 <= ticks.length
            assert y1 <= ticks.width
            for other, (u0, v0, u1, v1) in enumerate(ticks.inside[:number]):
                if blank.inside[other].slice == blank.inside[number].slice:
                    assert max(x0 - u1, u0 - x1, y0 - v1, v0 - y1) >= kerf


@given(jobs())
def test_every_part_can_be_made_without_a_spare(
    asked: tuple[Job, tuple[Part, ...]],
) -> None:
    job, parts = asked
    faults = Faults()
    found = routes(parts, job, faults)
    if len(faults):
        return
    for part in parts:
        makers = [blank for blank in found if part.demand in blank.makes]
        least = min(blank.makes[part.demand] for blank in makers)
        # Strips of a panel come to its width by steps of one, and what is over is trimmed.
        assert part.glue_up or part.needed % least == 0
        for blank in makers:
            assert blank.makes[part.demand] <= part.needed


@given(jobs())
def test_no_solid_blank_is_shorter_than_machines_may_take(
    asked: tuple[Job, tuple[Part, ...]],
) -> None:
    job, parts = asked
    for blank in routes(parts, job, Faults()):
        assert blank.is_sheet or blank.length.value >= job.shop.machine_length


@given(jobs())
def test_allowances_are_one_a_reason(asked: tuple[Job, tuple[Part, ...]]) -> None:
    job, parts = asked
    names = {part.id for part in parts}
    for blank in routes(parts, job, Faults()):
        for size in (blank.length, blank.width, blank.thickness):
            reasons = [term.words for term in size if term.words not in names]
            assert len(set(reasons)) == len(reasons)


@given(jobs())
def test_numbers_follow_the_job_alone(asked: tuple[Job, tuple[Part, ...]]) -> None:
    job, parts = asked
    once, again = routes(parts, job, Faults()), routes(parts, job, Faults())
    assert once == again
    assert [blank.id for blank in once] == [f"k{n}" for n in range(1, len(once) + 1)]


def test_a_face_is_never_milder_than_the_parts() -> None:
    parts = [make_part("a", show_face="sound"), make_part("b", show_face="clear")]
    both = GrainMatch(name="set", parts=("a", "b"), where=HERE)
    (blank,) = routes(parts, make_job(grain_matches=(both,)), Faults())
    assert blank.show_face == "clear"


def test_halves_of_an_allowance_are_exact() -> None:
    (blank,) = routes([make_part("a", "20", "2")], make_job(), Faults())
    assert blank.inside[0].y == Fraction(1, 16)
