"""The table of stiffness: every species of the shop's list, and sheets by their product's words."""

from __future__ import annotations

import pytest

from yieldplan.reference.tables import find_stiffness, species, stiffness


def test_it_has_every_species_and_says_where_each_figure_comes_from() -> None:
    assert set(species()) <= set(stiffness())
    for row in stiffness().values():
        assert row.source
        # lb/in²; a wood below half a million or above three has lost or gained a nought.
        assert 300_000 <= row.modulus <= 3_000_000


@pytest.mark.parametrize(
    ("written", "of"),
    [
        ("walnut", "black walnut"),
        ("birch plywood", "plywood"),
        ("Baltic Birch 18 mm", "plywood"),
        ("melamine particleboard", "particleboard"),
        ("MDF 19", "MDF"),
    ],
)
def test_a_wood_or_a_sheet_is_found_as_people_write_it(written: str, of: str) -> None:
    found = find_stiffness(written)
    assert found is not None
    assert found.of == of


def test_what_it_lacks_is_not_guessed() -> None:
    assert find_stiffness("bog oak") is None
    assert find_stiffness("steel sheet") is None
