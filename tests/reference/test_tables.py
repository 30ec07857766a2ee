"""The trade's tables: every setting has a default, every row a source."""

from __future__ import annotations

from dataclasses import fields
from fractions import Fraction

import pytest

from yieldplan.job.shop_table import default_shop
from yieldplan.model.shop import Shop
from yieldplan.reference.tables import (
    find_species,
    grade_name,
    grades,
    quarters,
    shop_defaults,
    species,
)
from yieldplan.units import UnitName

HANDBOOK = "USDA Forest Products Laboratory, Wood Handbook, FPL-GTR-190, 2010"


def test_the_table_and_the_shop_have_the_same_settings_in_the_same_order() -> None:
    assert list(shop_defaults()) == [field.name for field in fields(Shop)]


def test_every_row_of_every_table_names_its_source() -> None:
    rows = [
        *shop_defaults().values(),
        *species().values(),
        *quarters().values(),
        *grades().values(),
    ]
    assert all(row.source.strip() for row in rows)


@pytest.mark.parametrize(
    ("key", "inch", "mm"),
    [
        # common practice, no source
        ("kerf", "1/8", "30/254"),
        ("crosscut_step", "1/2", "100/254"),
        ("rip_step", "1/8", "30/254"),
        ("sheet_step", "1/16", "10/254"),
        ("end_trim", "2", "500/254"),
        ("planing", "3/16", "50/254"),
        # 42 mm in both: the slide is made in millimetres
        ("undermount_width_less", "420/254", "420/254"),
        ("gang_at_most", "4", "4"),
        ("moisture_today", "7", "7"),
    ],
)
def test_a_metric_shop_has_round_figures_of_its_own(
    key: str, inch: str, mm: str
) -> None:
    assert getattr(default_shop("in"), key) == Fraction(inch)
    assert getattr(default_shop("mm"), key) == Fraction(mm)


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_default_steps_hold_the_kerf_a_blade_leaves(unit: UnitName) -> None:
    shop = default_shop(unit)
    assert 0 < shop.kerf <= shop.end_trim
    assert shop.moisture_today < shop.moisture_wettest


@pytest.mark.parametrize(
    ("written", "name", "tangential", "source"),
    [
        ("black walnut", "black walnut", "0.00274", f"{HANDBOOK}, table 13-5"),
        ("Walnut", "black walnut", "0.00274", f"{HANDBOOK}, table 13-5"),
        ("cherry", "black cherry", "0.00248", f"{HANDBOOK}, table 13-5"),
        ("white ash", "white ash", "0.00274", f"{HANDBOOK}, table 13-5"),
    ],
)
def test_a_wood_is_found_by_any_of_its_names(
    written: str, name: str, tangential: str, source: str
) -> None:
    found = find_species(written)
    assert found is not None
    assert (found.name, found.tangential) == (name, Fraction(tangential))
    assert found.source == source


def test_poplar_is_worked_out_from_its_shrinkage() -> None:
    # DERIVED: 8.2 per cent over 30 points of moisture, at 10 per cent:
    # C = (0.082 / 30) / (1 - 0.082 x 20 / 30) = 0.0028914...
    share = Fraction(82, 1000)
    exact = (share / 30) / (1 - share * 20 / 30)
    poplar = find_species("yellow poplar")
    assert poplar is not None
    assert abs(poplar.tangential - exact) < Fraction(1, 200_000)


def test_no_spelling_stands_for_two_woods_or_two_grades() -> None:
    for kind in species().values():
        for spelling in (kind.name, *kind.also):
            assert find_species(spelling) == kind
    for grade in grades().values():
        for spelling in (grade.name, *grade.spellings):
            assert grade_name(spelling) == grade.name


@pytest.mark.parametrize("written", ["#1C", "1 Common", "No. 1 Common", "no 1 common"])
def test_a_grade_is_one_grade_however_it_is_written(written: str) -> None:
    assert grade_name(written) == "No. 1 Common"


def test_a_yard_may_have_grades_of_its_own() -> None:
    assert grade_name(" Rustic  Select Plus ") == "Rustic Select Plus"
