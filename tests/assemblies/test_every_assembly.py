"""What holds for every assembly the registry finds: put back together, its parts fill what was asked."""

from __future__ import annotations

import dataclasses
import inspect
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from tests.assemblies.strategies import OF_EVERY_KIND
from tests.assemblies.worked import WORKED
from tests.builders import make_job, parts_by_id
from yieldplan import assemblies
from yieldplan.assemblies.assembly import Assembly
from yieldplan.assemblies.part import PlainPart
from yieldplan.faults import Faults
from yieldplan.model.sums import Sum
from yieldplan.registry import find
from yieldplan.units import tape

FOUND = find(assemblies, Assembly)  # type: ignore[type-abstract]
EVERY = pytest.mark.parametrize("name", FOUND)
MANY = settings(suppress_health_check=[HealthCheck.too_slow])


def test_every_assembly_has_a_strategy() -> None:
    assert set(FOUND) == set(OF_EVERY_KIND)


@EVERY
@MANY
@given(data=st.data())
def test_put_together_it_fills_what_was_asked_less_the_clearances(
    name: str, data: st.DataObject
) -> None:
    assembly = data.draw(OF_EVERY_KIND[name])
    job, faults = make_job(assembly), Faults()
    parts = {part.id: part for part in assemblies.parts_of(job, faults).parts}
    assume(not len(faults))
    fits = FOUND[name].put_together(assembly, parts, job)  # type: ignore[arg-type]
    # A part whose finished length is given has nothing it could be measured against;
    # whatever is worked out from something else has.
    by_its_length = isinstance(assembly, PlainPart) and assembly.between is None
    assert bool(fits) != by_its_length
    for fit in fits:
        assert fit.got == fit.asked, fit.words


@EVERY
@MANY
@given(data=st.data())
def test_a_part_of_a_wrong_length_or_width_shows_when_it_is_put_together(
    name: str, data: st.DataObject
) -> None:
    assembly = data.draw(OF_EVERY_KIND[name])
    job, faults = make_job(assembly), Faults()
    right = {part.id: part for part in assemblies.parts_of(job, faults).parts}
    assume(not len(faults))
    if isinstance(assembly, PlainPart):
        assume(assembly.between is not None)
    own = [part for part in right.values() if not part.set_up]
    part = data.draw(st.sampled_from(own))
    # The width of a plain part is as it is given.
    sizes = ["length"] if isinstance(assembly, PlainPart) else ["length", "width"]
    size = data.draw(st.sampled_from(sizes))
    off = getattr(part, size) + Sum.of(("off by", Fraction(1, 64)))
    wrong = {**right, part.id: dataclasses.replace(part, **{size: off})}
    fits = FOUND[name].put_together(assembly, wrong, job)  # type: ignore[arg-type]
    assert any(fit.got != fit.asked for fit in fits), f"{part.id}, {size}"


@EVERY
def test_it_is_worked_by_hand(name: str) -> None:
    assert WORKED.get(name), "add an example to tests/assemblies/worked.py"
    for worked in WORKED[name]:
        assert type(worked.assembly) is FOUND[name]
        built = parts_by_id(make_job(worked.assembly, shop=worked.shop))
        said = {
            part.id: f"{part.quantity}: "
            + " × ".join(
                tape(size.value, join="-")
                for size in (part.length, part.width, part.thickness)
            )
            for part in built.values()
            if not part.set_up
        }
        assert said == worked.parts


@EVERY
@MANY
@given(data=st.data())
def test_it_gives_parts_of_some_size_or_says_why_not(
    name: str, data: st.DataObject
) -> None:
    job, faults = make_job(data.draw(OF_EVERY_KIND[name])), Faults()
    built = assemblies.parts_of(job, faults)
    assert bool(built.parts) != bool(len(faults))
    for part in built.parts:
        assert min(part.length.value, part.width.value, part.thickness.value) > 0
        assert part.quantity > 0
    for fault in faults:
        assert fault.wrong
        assert fault.remedy


@EVERY
def test_its_keys_and_it_are_explained(name: str) -> None:
    own = [
        field
        for field in dataclasses.fields(FOUND[name])
        if field.name not in ("name", "where")
    ]
    assert own
    assert all(field.metadata["words"] for field in own)
    assert (inspect.getdoc(FOUND[name]) or "").splitlines()[0].endswith(".")
