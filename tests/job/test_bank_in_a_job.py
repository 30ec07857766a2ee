"""A bank of drawers takes what the shop says of drawers, and its own words come first."""

from __future__ import annotations

from pathlib import Path

from yieldplan.assemblies.drawer_bank import DrawerBank
from yieldplan.faults import Fault, Faults
from yieldplan.job.reading import read_job
from yieldplan.joints.rabbet import Rabbet
from yieldplan.model.job import Job

SHOP = """title = "Bank"
unit = "in"
currency = "USD"
[wood.walnut]
species = "black walnut"
[wood.ash]
species = "white ash"
[sheet.ply]
product = "birch plywood"
thickness = "1/4"
size = ["48", "96"]
price = "38"
[shop.drawer]
front = { wood = "walnut", thickness = "3/4" }
side = { wood = "ash", thickness = "1/2" }
back = { wood = "ash", thickness = "1/2", joint = "rabbet" }
bottom = { sheet = "ply" }
"""
BANK = """[[drawer_bank]]
name = "bank"
opening = { width = "30", height = "30", depth = "20" }
drawers = 3
"""


def read(folder: Path, text: str) -> tuple[Job | None, list[Fault]]:
    file = folder / "job.toml"
    file.write_text(text, encoding="utf-8")
    faults = Faults()
    return read_job(file, faults), list(faults)


def bank_of(job: Job | None) -> DrawerBank:
    assert job is not None
    (bank,) = job.assemblies
    assert isinstance(bank, DrawerBank)
    return bank


def test_it_takes_what_the_shop_says_of_drawers(tmp_path: Path) -> None:
    job, faults = read(tmp_path, SHOP + BANK)
    assert faults == []
    bank = bank_of(job)
    assert (bank.front.wood, bank.side.wood) == ("walnut", "ash")
    assert isinstance(bank.back.joint, Rabbet)


def test_what_it_or_the_shop_says_of_banks_comes_first(tmp_path: Path) -> None:
    of_banks = '[shop.drawer_bank]\nside.thickness = "5/8"\nfront.wood = "ash"\n'
    own = BANK + 'front.thickness = "7/8"\n'
    job, faults = read(tmp_path, SHOP + of_banks + own)
    assert faults == []
    bank = bank_of(job)
    assert str(bank.side.thickness) == "5/8"
    assert (bank.front.wood, str(bank.front.thickness)) == ("ash", "7/8")


def test_a_slip_in_the_shops_words_is_told_once_on_its_own_line(tmp_path: Path) -> None:
    text = (SHOP + BANK).replace('side = { wood = "ash", thickness = "1/2" }',
                                 'side = { wood = "ash", thickness = "1/2x" }')  # fmt: skip
    _, (fault,) = read(tmp_path, text)
    assert fault.said == "1/2x"
    assert (
        fault.where.line
        == text.split("\n").index('side = { wood = "ash", thickness = "1/2x" }') + 1
    )


def test_a_bank_of_drawers_nobody_described_says_what_is_missing(
    tmp_path: Path,
) -> None:
    text = SHOP[: SHOP.index("[shop.drawer]")] + BANK
    _, faults = read(tmp_path, text)
    assert {fault.wrong for fault in faults} == {
        f'"{key}" is missing' for key in ("front", "side", "back", "bottom")
    }
