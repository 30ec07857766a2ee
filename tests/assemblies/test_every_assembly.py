"""What holds for every assembly the registry finds: put back together, its parts fill what was asked."""

from __future__ import annotations

import inspect

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from tests.assemblies.strategies import OF_EVERY_KIND
from tests.builders import make_job
from yieldplan import assemblies
from yieldplan.assemblies.assembly import Assembly
from yieldplan.faults import Faults
from yieldplan.registry import find

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
    for fit in FOUND[name].put_together(assembly, parts, job):  # type: ignore[arg-type]
        assert fit.got == fit.asked, fit.words


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
        for field in FOUND[name].__dataclass_fields__.values()
        if field.name not in ("name", "where")
    ]
    assert own
    assert all(field.metadata["words"] for field in own)
    assert (inspect.getdoc(FOUND[name]) or "").splitlines()[0].endswith(".")
