"""Property 11: plan.json, the workbook and a plain Decimal re-addition agree to the cent.

That LibreOffice comes to the workbook's stored values is `tests/papers/test_office.py`.
"""

from __future__ import annotations

import copy
from decimal import ROUND_HALF_UP, Decimal
from pathlib import Path
from typing import Any

import pytest
from openpyxl import load_workbook

from tests.system.runs import example_folders, outcome_of
from yieldplan import papers
from yieldplan.desk.plan_job import Outcome

CENT = Decimal("0.01")


def added_up(document: dict[str, Any]) -> Decimal:
    """What the pieces cut cost, from board feet and prices alone, rounded as a bill is."""
    stock = {piece["id"]: piece for piece in document["stock"]}
    by_foot: dict[tuple[str, str, int], Decimal] = {}
    total = Decimal(0)
    for wood in document["woods"]:
        for cutting in wood["cuttings"]:
            piece = stock[cutting["stock"]]
            if piece["per_foot"] is None:
                total += Decimal(piece["price"]) / 10_000
                continue
            line = (piece["line"], piece["grade"], piece["per_foot"])
            by_foot[line] = by_foot.get(line, Decimal(0)) + Decimal(piece["board_feet"])
    for (_, _, per_foot), feet in by_foot.items():
        exact = feet * Decimal(per_foot) / 10_000
        total += exact.quantize(CENT, ROUND_HALF_UP)
    return total


def outcome(folder: Path) -> Outcome:
    return outcome_of(folder / "job.toml", folder / "tally.csv")


@pytest.mark.parametrize("folder", example_folders(), ids=lambda folder: folder.name)
def test_plan_file_workbook_and_plain_addition_agree(
    folder: Path, tmp_path: Path
) -> None:
    made = outcome(folder)
    total = Decimal(made.document["money"]["total"]) / 10_000
    assert total == added_up(made.document)
    (file,) = papers.write_all(made.plan, made.report, tmp_path, ["workbook"])
    sheet = load_workbook(file, data_only=True)["Purchase list"]
    costs = {
        Decimal(str(cell.value)).quantize(CENT)
        for row in sheet.iter_rows()
        for cell in row
        if isinstance(cell.value, int | float)
    }
    assert total in costs
    for line in made.document["money"]["lines"]:
        assert Decimal(line["total"]) / 10_000 in costs


def test_a_planted_wrong_amount_does_not_agree() -> None:
    document = copy.deepcopy(outcome(example_folders()[0]).document)
    wood = next(wood for wood in document["woods"] if wood["cuttings"])
    name = wood["cuttings"][0]["stock"]
    piece = next(piece for piece in document["stock"] if piece["id"] == name)
    piece["price"] += 100
    if piece["per_foot"] is not None:
        piece["per_foot"] += 100
    assert added_up(document) != Decimal(document["money"]["total"]) / 10_000
