"""What holds for every joint the registry finds, so that a new one needs no test of its own for it."""

from __future__ import annotations

import dataclasses
import inspect
import re
from collections.abc import Mapping
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tests.builders import inches, make_shop
from tests.joints.worked import WORKED, Worked
from yieldplan import joints
from yieldplan.joints.joint import Joint, Role
from yieldplan.registry import find

FOUND = find(joints, Joint)  # type: ignore[type-abstract]
EVERY = pytest.mark.parametrize("kind", FOUND.values(), ids=list(FOUND))
THICK = st.integers(6, 64).map(lambda n: Fraction(n, 32))
SIZES = st.integers(1, 32).map(lambda n: Fraction(n, 32))
VALUES: Mapping[str, st.SearchStrategy[object]] = {
    "Inches": SIZES | st.just(Fraction(0)),
    "Inches | None": st.none() | SIZES,
    "Fraction": st.integers(1, 11).map(lambda n: Fraction(n, 12)),
    "bool": st.booleans(),
    "int": st.integers(1, 12),
}
"""What a field of a joint may be; a joint with another kind of field adds it here."""


def settled(kind: type[Joint]) -> Joint:
    return kind().settled(make_shop())


def test_the_joints_of_drawers_and_cases_are_there() -> None:
    assert set(FOUND) >= {
        "butt", "dado", "half-blind dovetail", "mortise and tenon", "rabbet",
        "through dovetail",
    }  # fmt: skip


def every(kind: type[Joint]) -> st.SearchStrategy[Joint]:
    """Joints of a kind, every one of its fields varied; figures a shop could have."""
    fields = {field.name: VALUES[str(field.type)] for field in dataclasses.fields(kind)}
    return st.fixed_dictionaries(fields).flatmap(lambda given: _made(kind, given))


def _made(kind: type[Joint], given: Mapping[str, object]) -> st.SearchStrategy[Joint]:
    try:
        return st.just(kind(**given).settled(make_shop()))
    except ValueError:  # what a joint refuses about its own keys
        return st.nothing()


@st.composite
def cut_joints(draw: st.DrawFn, kind: type[Joint]) -> tuple[Joint, Fraction]:
    """A joint and a mate it can be cut into."""
    joint, mate = draw(every(kind)), draw(THICK)
    assume(not joint.impossible(mate=mate))
    return joint, mate


def gain(joint: Joint, role: Role, own: Fraction, mate: Fraction) -> Fraction:
    return joint.allowance(role=role, own=own, mate=mate).value


def test_every_field_of_a_joint_has_values_to_try() -> None:
    for kind in FOUND.values():
        for field in dataclasses.fields(kind):
            assert str(field.type) in VALUES, f"{kind.__name__}.{field.name}"


@EVERY
def test_it_is_worked_by_hand(kind: type[Joint]) -> None:
    assert WORKED.get(kind().name), "add an example to tests/joints/worked.py"


def test_what_is_worked_by_hand_is_there() -> None:
    assert set(WORKED) == set(FOUND)


@EVERY
def test_every_field_is_worked_by_hand(kind: type[Joint]) -> None:
    joints_worked = [each.joint for each in WORKED.get(kind().name, ())]
    for field in dataclasses.fields(kind):
        values = {getattr(joint, field.name) for joint in joints_worked}
        assert values - {field.default}, f"no example says {field.name}"


@pytest.mark.parametrize(
    "worked", [each for one in WORKED.values() for each in one], ids=str
)
def test_its_figures_are_what_was_worked_by_hand(worked: Worked) -> None:
    joint, own, mate = worked.joint, inches(worked.own), inches(worked.mate)
    # Parts of one size could be taken for each other, and nothing would show it.
    assert own != mate
    assert not joint.impossible(mate=mate)
    assert joint.depth(mate=mate).value == inches(worked.depth)
    assert gain(joint, Role.HOUSED, own, mate) == inches(worked.housed)
    assert gain(joint, Role.HOUSING, mate, own) == inches(worked.housing)


@EVERY
@given(data=st.data(), own=THICK)
def test_it_never_shortens_a_part_from_its_base(
    kind: type[Joint], data: st.DataObject, own: Fraction
) -> None:
    joint, mate = data.draw(cut_joints(kind))
    for role in Role:
        assert gain(joint, role, own, mate) >= 0


@EVERY
@given(data=st.data(), own=THICK)
def test_from_the_shoulders_only_the_part_that_enters_gains(
    kind: type[Joint], data: st.DataObject, own: Fraction
) -> None:
    joint, mate = data.draw(cut_joints(kind))
    if joint.base == "shoulders":
        assert gain(joint, Role.HOUSING, own, mate) == 0


@EVERY
@given(data=st.data(), own=THICK, other=THICK)
def test_what_a_part_gains_never_hangs_on_its_own_thickness(
    kind: type[Joint], data: st.DataObject, own: Fraction, other: Fraction
) -> None:
    joint, mate = data.draw(cut_joints(kind))
    for role in Role:
        assert gain(joint, role, own, mate) == gain(joint, role, other, mate)


@EVERY
@given(data=st.data())
def test_it_says_what_every_role_gains(kind: type[Joint], data: st.DataObject) -> None:
    joint, mate = data.draw(cut_joints(kind))
    for role in Role:
        said = joint.allowance(role=role, own=Fraction(1, 2), mate=mate)
        assert said.terms
        assert all(term.words for term in said)


@EVERY
@given(data=st.data(), own=THICK)
def test_put_together_the_work_measures_what_it_should(
    kind: type[Joint], data: st.DataObject, own: Fraction
) -> None:
    joint, mate = data.draw(cut_joints(kind))
    gains = gain(joint, Role.HOUSED, own, mate)
    deep = joint.depth(mate=mate).value
    if joint.base == "shoulders":
        # 30 between two mates: the part is 30 + 2 gains, and goes in 2 depths.
        assert 30 + 2 * gains - 2 * deep == 30
    else:
        # 30 over all: less what stands beyond the mates' outsides, it is 30 again.
        assert 30 + 2 * gains - 2 * (deep - mate) == 30


@EVERY
@given(data=st.data(), mate=THICK, other=THICK)
def test_it_says_truly_whether_it_needs_its_mate(
    kind: type[Joint], data: st.DataObject, mate: Fraction, other: Fraction
) -> None:
    joint = data.draw(every(kind))
    if not joint.needs_mate:
        assert joint.depth(mate=mate).value == joint.depth(mate=other).value


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
