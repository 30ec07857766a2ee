"""A job file and a tally to name, in a folder of their own."""

from __future__ import annotations

from pathlib import Path

import pytest


@pytest.fixture
def job(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A job file; its content is for whoever reads it."""
    monkeypatch.setenv("COLUMNS", "100")
    file = tmp_path / "hall_case.toml"
    file.write_text('title = "Hall case"\n', encoding="utf-8")
    return file


@pytest.fixture
def tally(tmp_path: Path) -> Path:
    """A tally; its content is for whoever reads it."""
    file = tmp_path / "tally.csv"
    file.write_text("id,length,width\n", encoding="utf-8")
    return file
