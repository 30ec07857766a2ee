"""Twelve mistakes spread over a job and its tally give twelve messages in one run."""

from __future__ import annotations

from pathlib import Path

import pytest

from yieldplan import assemblies, job, sources
from yieldplan.faults import Faults, FaultsFound

EXAMPLE = Path(__file__).parents[2] / "example_jobs" / "bank_of_drawers"

IN_THE_JOB = [
    # what is right, what is written instead, the person's own text, in the remedy
    ('kerf = "1/8"', 'kref = "1/8"', "kref", '"kerf"'),
    ('fit = "plane to fit"', 'fit = "plain to fit"', "plain to fit", '"plane to fit"'),
    ('species = "yellow-poplar"', 'species = "yelow poplar"', "yelow poplar", '"yellow-poplar"'),
    ('per_foot = "10.75"', 'per_foot = "10,75"', "10,75", "without thousands"),
    ('height = "5-1/2"', 'height = "5-4"', "5-4", "5' 4\""),
    ('name = "front rail"', 'name = "leg"', "leg", "its own name"),
    ("quantity = 12", "quantity = 0", "0", "Correct it"),
]  # fmt: skip
IN_THE_TALLY = [
    ("W03,walnut,4/4", "W03,walnut,4-May", "4-May", "as text"),
    ("W05,walnut", "W05,wallnut", "wallnut", '"walnut"'),
    ("split 91 to 97", "splt 91 to 97", "splt 91 to 97", '"split"'),
    ("knot A 31-1/2 to 32-1/2", "knot A 32-1/2 to 31-1/2", "knot A 32-1/2 to 31-1/2 x 2 to 3-1/2", "lesser first"),
    ("P06,poplar", "P04,poplar", "P04", "its own"),
]  # fmt: skip


def spoilt(name: str, changes: list[tuple[str, str, str, str]], folder: Path) -> Path:
    text = (EXAMPLE / name).read_text(encoding="utf-8")
    for right, wrong, *_ in changes:
        assert text.count(right) == 1, right
        text = text.replace(right, wrong)
    file = folder / name
    file.write_text(text, encoding="utf-8")
    return file


def read_both(job_file: Path, tally: Path) -> Faults:
    """As far as planning goes before it stops for mistakes."""
    faults = Faults()
    commission = job.read(job_file, faults)
    assert commission is not None
    assemblies.parts_of(commission, faults)
    sources.read([tally], commission, faults)
    return faults


def test_the_example_is_right() -> None:
    assert not list(read_both(EXAMPLE / "job.toml", EXAMPLE / "tally.csv"))


def test_twelve_mistakes_give_twelve_messages(tmp_path: Path) -> None:
    faults = read_both(
        spoilt("job.toml", IN_THE_JOB, tmp_path),
        spoilt("tally.csv", IN_THE_TALLY, tmp_path),
    )
    told = list(faults)
    assert len(told) == 12
    for file, place, planted in (
        ("job.toml", "line", IN_THE_JOB),
        ("tally.csv", "row", IN_THE_TALLY),
    ):
        here = {fault.said: fault for fault in told if fault.where.file == file}
        assert set(here) == {said for _, _, said, _ in planted}
        for _, _, said, remedy in planted:
            fault = here[said]
            assert getattr(fault.where, place) is not None
            assert fault.wrong
            assert remedy in fault.remedy
    with pytest.raises(FaultsFound) as stopped:
        faults.stop_if_any()
    assert len(stopped.value.faults) == 12
    assert str(stopped.value).count("\n") == 23  # two lines each
