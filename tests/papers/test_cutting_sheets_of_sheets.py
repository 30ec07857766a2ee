"""Cutting sheets of plywood that once could not be drawn: a trim alone in a folded row, no room for words."""

from __future__ import annotations

from pathlib import Path

from yieldplan.desk.plan_job import plan_job
from yieldplan.drawing.fonts import wrap
from yieldplan.packing import Stop
from yieldplan.papers.cutting_sheets import CuttingSheets

JOB = """
title = "Two backs"
unit = "in"
currency = "USD"
[sheet.ply]
product = "birch plywood"
thickness = "1/4"
size = ["48", "96"]
price = "36.00"
[[part]]
name = "upper back"
sheet = "ply"
length = "36"
width = "41-3/16"
[[part]]
name = "case back"
sheet = "ply"
length = "28-1/8"
width = "42-3/8"
"""


def test_two_backs_from_one_sheet_are_drawn(tmp_path: Path) -> None:
    job = tmp_path / "job.toml"
    job.write_text(JOB, encoding="utf-8")
    outcome = plan_job(job, [], stop=Stop(), hear=lambda _: None)
    (file,) = CuttingSheets().write(outcome.plan, outcome.report, tmp_path)
    assert file.read_bytes().startswith(b"%PDF")


def test_words_without_any_room_still_come_to_an_end() -> None:
    assert "".join(wrap("Chalk marks", -20.0, 10.0)) == "Chalkmarks"
