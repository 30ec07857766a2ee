"""LibreOffice works every formula out again, and comes to the values the program stored."""

from __future__ import annotations

import dataclasses
import io
import os
import re
import shutil
import subprocess
import zipfile
from collections.abc import Mapping
from decimal import Decimal
from functools import lru_cache
from pathlib import Path

import pytest
from openpyxl import load_workbook

from tests.builders_plan import full_plan, passed, short_plan, stress_plan
from yieldplan import papers
from yieldplan.measure.bid import bid

pytestmark = pytest.mark.office

Cells = Mapping[tuple[str, str], object]


def _programs_or_skip() -> str:
    soffice = shutil.which("soffice")
    if soffice is None:
        if os.environ.get("YIELDPLAN_OFFICE") == "required":
            pytest.fail("LibreOffice is required here and was not found")
        pytest.skip("LibreOffice is not installed")
    return soffice


def without_values(file: bytes) -> bytes:
    """The workbook with every formula's value dropped, so that it must be worked out."""
    source, target = zipfile.ZipFile(io.BytesIO(file)), io.BytesIO()
    with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as out:
        for member in source.namelist():
            content = source.read(member)
            if member.startswith("xl/worksheets/"):
                content = re.sub(rb"(</f>)<v>[^<]*</v>", rb"\1", content)
            out.writestr(member, content)
    return target.getvalue()


@lru_cache
def stored(path: Path) -> dict[tuple[str, str], object]:
    """Every formula cell of a workbook with the value that stands in it."""
    values = load_workbook(path, data_only=True)
    return {
        (sheet.title, cell.coordinate): values[sheet.title][cell.coordinate].value
        for sheet in load_workbook(path)
        for row in sheet.iter_rows()
        for cell in row
        if cell.data_type == "f"
    }


def differences(ours: Cells, theirs: Cells) -> list[tuple[str, str]]:
    """Cells that do not agree to a millionth."""
    return [at for at, value in ours.items() if not _same(value, theirs.get(at))]


def _same(ours: object, theirs: object) -> bool:
    if isinstance(ours, str) or isinstance(theirs, str) or theirs is None:
        return ours == theirs
    return abs(Decimal(str(ours)) - Decimal(str(theirs))) < Decimal("0.000001")


@dataclasses.dataclass(frozen=True)
class Converted:
    """Our files, and what LibreOffice made of them without our values."""

    ours: Path
    theirs: Path

    def pair(self, name: str) -> tuple[Path, Path]:
        """Ours and theirs of one name."""
        return self.ours / f"{name}.xlsx", self.theirs / f"{name}.xlsx"


@pytest.fixture(scope="session")
def converted(tmp_path_factory: pytest.TempPathFactory) -> Converted:
    """All workbooks of this file in one batch: starting the office takes the time."""
    soffice = _programs_or_skip()
    folder = tmp_path_factory.mktemp("office")
    ours, bare, theirs = (folder / name for name in ("ours", "bare", "theirs"))
    for each in (ours, bare, theirs):
        each.mkdir()
    full = full_plan()
    metric = dataclasses.replace(full, job=dataclasses.replace(full.job, unit="mm"))
    unpriced = dataclasses.replace(full.job, prices=full.job.prices[:1])
    for name, plan in (("full", full), ("short", short_plan()), ("stress", stress_plan()), ("metric", metric)):  # fmt: skip
        (path,) = papers.write_all(plan, passed(plan), ours, ["workbook"])
        path.rename(ours / f"{name}.xlsx")
    for name, job in (("bid", full.job), ("unpriced", unpriced)):
        (path,) = papers.write_all_bid(bid(job, full.parts, full.blanks), ours)
        path.rename(ours / f"{name}.xlsx")
    for path in ours.iterdir():
        (bare / path.name).write_bytes(without_values(path.read_bytes()))
    dearer = load_workbook(bare / "full.xlsx")
    _double_the_price_of_poplar(dearer)
    dearer.save(bare / "dearer.xlsx")
    command = [
        soffice, f"-env:UserInstallation={(folder / 'profile').as_uri()}", "--headless",
        "--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", str(theirs),
        *sorted(str(path) for path in bare.iterdir()),
    ]  # fmt: skip
    subprocess.run(command, check=True, capture_output=True, timeout=240)
    return Converted(ours=ours, theirs=theirs)


def _double_the_price_of_poplar(book: object) -> None:
    sheet = book["Purchase list"]  # type: ignore[index]
    row = next(r for r in range(1, 20) if str(sheet.cell(r, 1).value).startswith("poplar"))  # fmt: skip
    sheet.cell(row, 9).value *= 2


@pytest.mark.parametrize(
    "name", ["full", "short", "stress", "metric", "bid", "unpriced"]
)
def test_libreoffice_comes_to_the_stored_value_of_every_formula(
    name: str, converted: Converted
) -> None:
    ours, theirs = converted.pair(name)
    assert len(stored(ours)) >= 5
    values = load_workbook(theirs, data_only=True)
    worked_out = {at: values[at[0]][at[1]].value for at in stored(ours)}
    assert differences(stored(ours), worked_out) == []


def test_a_planted_wrong_value_is_caught(converted: Converted) -> None:
    ours, theirs = converted.pair("full")
    values = load_workbook(theirs, data_only=True)
    worked_out = {at: values[at[0]][at[1]].value for at in stored(ours)}
    planted = dict(stored(ours))
    at = next(at for at, value in planted.items() if value == 76.77)
    planted[at] = 76.78
    assert differences(planted, worked_out) == [at]


def test_the_office_had_no_value_of_ours_to_copy(converted: Converted) -> None:
    bare = without_values(converted.pair("full")[0].read_bytes())
    values = load_workbook(io.BytesIO(bare), data_only=True)
    assert values["Cost"]["A3"].value is None


def test_another_price_moves_the_costs(converted: Converted) -> None:
    _, theirs = converted.pair("dearer")
    book = load_workbook(theirs, data_only=True)
    figures = [c.value for row in book["Purchase list"].iter_rows() for c in row]
    # 16.69 bf x 9.20 = 153.548, 153.55; with 38.00 + 40.00 + 89.76 it is 321.31.
    assert 153.55 in figures
    assert 321.31 in figures
    assert book["Cost"]["A3"].value == 321.31


def test_what_a_person_typed_is_still_text_in_the_office(converted: Converted) -> None:
    _, theirs = converted.pair("full")
    found = [
        cell.data_type
        for sheet in load_workbook(theirs)
        for row in sheet.iter_rows()
        for cell in row
        if cell.value in ("=1+1", "=HYPERLINK(1)")
    ]
    assert len(found) >= 3
    assert set(found) == {"s"}
