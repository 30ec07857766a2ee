"""What `start` writes is read without a mistake and has wood enough; nothing is written over."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from yieldplan import assemblies, job, sources
from yieldplan.desk.start import start
from yieldplan.faults import Faults
from yieldplan.units import UnitName


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_the_files_to_begin_with_fit_each_other(tmp_path: Path, unit: UnitName) -> None:
    files = start(tmp_path / "new", unit)
    assert all(file.stat().st_size for file in files)
    faults = Faults()
    commission = job.read(tmp_path / "new" / "job.toml", faults)
    assert commission is not None
    assert commission.unit == unit
    parts = assemblies.parts_of(commission, faults).parts
    boards = sources.read([tmp_path / "new" / "tally.csv"], commission, faults)
    assert not list(faults)
    for wood in commission.woods:
        wanted = sum(
            (p.length.value * p.width.value * p.needed for p in parts
             if p.wood == wood and not p.set_up), Fraction(0)
        )  # fmt: skip
        offered = sum(
            (b.length * b.width for b in boards if b.wood == wood), Fraction(0)
        )
        assert offered > 2 * wanted > 0


def test_nothing_is_written_over(tmp_path: Path) -> None:
    (tmp_path / "tally.csv").write_text("mine", encoding="utf-8")
    with pytest.raises(FileExistsError, match="stays as it is"):
        start(tmp_path, "in")
    assert [file.name for file in tmp_path.iterdir()] == ["tally.csv"]
    assert (tmp_path / "tally.csv").read_text(encoding="utf-8") == "mine"
