"""What a job file may say of a panel's glue-up, of routes left out, and of pairs."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from yieldplan.assemblies.glued import GluedUp
from yieldplan.assemblies.part import PlainPart
from yieldplan.faults import Fault, Faults
from yieldplan.job.reading import read_job
from yieldplan.model.job import Job

HEAD = """title = "Tops"
unit = "in"
currency = "USD"
[wood.walnut]
"""
TOP = """[[part]]
name = "top"
wood = "walnut"
length = "40"
width = "21"
thickness = "3/4"
"""


def read(folder: Path, text: str) -> tuple[Job, list[Fault]]:
    path = folder / "job.toml"
    path.write_text(text, encoding="utf-8")
    faults = Faults()
    job = read_job(path, faults)
    assert job is not None
    return job, list(faults)


def glue_up(folder: Path, said: str) -> GluedUp | None:
    job, faults = read(folder, HEAD + TOP + said)
    assert faults == []
    (part,) = job.assemblies
    assert isinstance(part, PlainPart)
    return part.glue_up


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("", None),
        ("glue_up = false", None),
        ("glue_up = true", GluedUp()),
        ("glue_up = {}", GluedUp()),
        (
            'glue_up = { least = "2-1/2", most = "4", colour = "one lot", one_piece = false }',
            GluedUp(
                least=Fraction(5, 2),
                most=Fraction(4),
                colour="one lot",
                one_piece=False,
            ),
        ),
    ],
)
def test_glue_up_is_yes_or_a_table(
    tmp_path: Path, said: str, meant: GluedUp | None
) -> None:
    assert glue_up(tmp_path, said) == meant


def test_a_part_overrules_what_the_shop_says_of_all(tmp_path: Path) -> None:
    shop = '[shop.part]\nglue_up = { most = "4" }\n'
    job, faults = read(
        tmp_path,
        HEAD + shop + TOP + TOP.replace('"top"', '"leaf"') + "glue_up = false\n",
    )
    assert faults == []
    top, leaf = job.assemblies
    assert isinstance(top, PlainPart)
    assert isinstance(leaf, PlainPart)
    assert (top.glue_up, leaf.glue_up) == (GluedUp(most=Fraction(4)), None)


@pytest.mark.parametrize(
    ("said", "wrong", "remedy"),
    [
        ("glue_up = 3", "a table is needed here", "Write it as"),
        ('glue_up = { color = "any" }', "this key is not known", '"colour"'),
        ('glue_up = { colour = "one tree" }', "this word is not known", '"one '),
    ],
)
def test_a_slip_in_it_is_told(
    tmp_path: Path, said: str, wrong: str, remedy: str
) -> None:
    _, faults = read(tmp_path, HEAD + TOP + said)
    (fault,) = faults
    assert wrong in fault.wrong
    assert remedy in fault.remedy


def test_routes_are_left_out_by_name(tmp_path: Path) -> None:
    job, faults = read(
        tmp_path, HEAD + '[shop]\nwithout = ["resaw", "glue up"]\n' + TOP
    )
    assert faults == []
    assert job.shop.without == ("resaw", "glue up")


@pytest.mark.parametrize("laid", ["book-matched", "slip matched", "Book-Matched"])
def test_a_pair_can_be_asked_for(tmp_path: Path, laid: str) -> None:
    match = f'[[grain_match]]\nname = "pair"\nparts = ["a", "b"]\nlaid = "{laid}"\n'
    job, faults = read(tmp_path, HEAD + TOP + match)
    assert faults == []
    assert job.grain_matches[0].laid == laid.lower().replace(" ", "-")
