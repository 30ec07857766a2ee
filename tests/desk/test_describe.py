"""Every word a job file may use is listed and described, from the code that reads it."""

from __future__ import annotations

import tomllib
from dataclasses import fields

import pytest

from yieldplan.desk.describe import describe, names
from yieldplan.model.shop import Shop
from yieldplan.sources.columns import COLUMNS


def test_every_name_that_is_listed_can_be_described() -> None:
    groups = names()
    for group in ("assemblies", "joints", "stock", "sources", "tables", "species"):
        assert groups[group], group
    for known in groups.values():
        for name, _ in known:
            assert name in describe(name)


def test_a_joint_says_its_keys_and_how_it_is_written() -> None:
    page = describe("half-blind dovetail")
    assert "lap" in page
    assert 'joint = { kind = "half-blind dovetail", lap = "1/4" }' in page


def test_a_drawer_says_the_keys_of_the_tables_inside_it() -> None:
    page = describe("drawer")
    for key in ("opening.width", "front.joint", "bottom.in", "jig.spacing"):
        assert f"  {key} " in page
    example = page.partition("Example\n")[2]
    assert "drawer" in tomllib.loads(example)


def test_the_shop_and_the_tally_are_described_key_by_key() -> None:
    shop = describe("shop")
    assert all(f"  {field.name} " in shop for field in fields(Shop))
    tally = describe("tally")
    assert all(f"  {column} " in tally for column in COLUMNS)


def test_every_example_of_a_fixed_table_is_toml() -> None:
    for name in ("job", "shop", "wood", "sheet", "price", "grain match", "made"):
        example = describe(name).partition("Example\n")[2].partition("\n\n")[0]
        assert tomllib.loads(example)


def test_an_unknown_name_is_no_page() -> None:
    with pytest.raises(KeyError):
        describe("flying buttress")


def test_a_recipe_is_described_with_one_that_can_be_copied() -> None:
    page = describe("recipe")
    for key in ("sizes", "counts", "materials", "also", "part", "check"):
        assert f"  {key} " in page
    example = tomllib.loads(page.partition("Example\n")[2])
    assert list(example["recipe"]) == ["wall_shelf"]
    assert example["wall_shelf"][0]["width"] == "30"
