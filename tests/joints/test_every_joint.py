"""What holds for every joint the registry finds, so that a new one needs no test of its own for it."""

from __future__ import annotations

import dataclasses
import inspect
import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.builders import make_shop
from yieldplan import joints
from yieldplan.joints.joint import Edge, Joint, Role
from yieldplan.registry import find

FOUND = find(joints, Joint)  # type: ignore[type-abstract]
EVERY = pytest.mark.parametrize("kind", FOUND.values(), ids=list(FOUND))
THICK = st.integers(6, 64).map(lambda n: Fraction(n, 32))


def settled(kind: type[Joint]) -> Joint:
    return kind().settled(make_shop())


def test_the_six_joints_of_the_issue_are_there() -> None:
    assert set(FOUND) >= {
        "butt", "dado", "half-blind dovetail", "mortise and tenon", "rabbet",
        "through dovetail",
    }  # fmt: skip


@EVERY
@given(own=THICK, mate=THICK)
def test_it_never_shortens_a_part_from_its_base(
    kind: type[Joint], own: Fraction, mate: Fraction
) -> None:
    joint = settled(kind)
    if joint.impossible(mate=mate):
        return
    for role in Role:
        for edge in Edge:
            assert joint.allowance(role=role, edge=edge, own=own, mate=mate).value >= 0


@EVERY
def test_it_says_what_every_role_gains(kind: type[Joint]) -> None:
    joint = settled(kind)
    for role in Role:
        for edge in Edge:
            gain = joint.allowance(
                role=role, edge=edge, own=Fraction(1, 2), mate=Fraction(3, 4)
            )
            assert gain.terms
            assert all(term.words for term in gain)


@EVERY
@given(own=THICK, mate=THICK)
def test_put_together_the_work_measures_what_it_should(
    kind: type[Joint], own: Fraction, mate: Fraction
) -> None:
    joint = settled(kind)
    if joint.impossible(mate=mate):
        return
    gain = joint.allowance(role=Role.HOUSED, edge=Edge.END, own=own, mate=mate).value
    deep = joint.depth(mate=mate).value
    if joint.base == "shoulders":
        # 30 between two mates: the part is 30 + 2 gains, and goes in 2 depths.
        assert 30 + 2 * gain - 2 * deep == 30
    else:
        # 30 over all: less what stands beyond the mates' outsides, it is 30 again.
        assert 30 + 2 * gain - 2 * (deep - mate) == 30


@EVERY
def test_a_mate_too_thin_is_refused_and_a_thick_one_taken(kind: type[Joint]) -> None:
    joint = settled(kind)
    assert joint.impossible(mate=Fraction(3)) == ""
    if not joint.needs_mate and joint.depth(mate=Fraction(3)).value > 0:
        assert joint.impossible(mate=Fraction(1, 16)) != ""


@EVERY
def test_it_has_a_docstring_a_woodworker_can_read(kind: type[Joint]) -> None:
    first = (inspect.getdoc(kind) or "").splitlines()[0]
    assert first.endswith(".")
    assert len(first) < 90
    module = inspect.getdoc(inspect.getmodule(kind)) or ""
    assert module.lower().startswith(kind().name)


@EVERY
def test_every_key_of_a_job_file_is_explained(kind: type[Joint]) -> None:
    for field in dataclasses.fields(kind):
        assert field.metadata["words"]


@EVERY
def test_cautions_are_whole_sentences(kind: type[Joint]) -> None:
    assert all(caution.endswith(".") for caution in settled(kind).cautions)


@EVERY
@given(own=THICK, mate=THICK)
def test_in_millimetres_its_warnings_name_no_inches(
    kind: type[Joint], own: Fraction, mate: Fraction
) -> None:
    joint = settled(kind)
    said = (
        *joint.limits(own=own, mate=mate, unit="mm"),
        joint.impossible(mate=mate, unit="mm"),
    )
    assert not any(re.search(r"\d in\b", warning) for warning in said)
