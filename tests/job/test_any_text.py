"""However a job or its tally is damaged, there are messages or a job, never a traceback."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from yieldplan import assemblies, job, sources
from yieldplan.faults import Faults

EXAMPLES = Path(__file__).parents[2] / "example_jobs"
BITS = [
    *'"[]{}=,\n;|x\t0', "-1", "true", "1e400", "nan", '"5/4"', '" "', "[[]]", "{}",
    "2026-11-02", "07:32:00", "\\u202e", "é", "\x00", '"""', "'''", "9" * 30,
    "[shop]", "[[drawer]]", "[wood]", "name = []", "to",
]  # fmt: skip


def damaged(text: str, dice: random.Random) -> str:
    for _ in range(dice.randint(1, 4)):
        at = dice.randrange(len(text))
        if dice.random() < 0.6:
            text = text[:at] + dice.choice(BITS) + text[at:]
        else:
            text = text[:at] + text[at + dice.randint(1, 15) :]
    return text


@pytest.mark.parametrize("seed", range(16))
def test_damage_is_told_in_words(tmp_path: Path, seed: int) -> None:
    dice = random.Random(seed)
    folder = dice.choice(["bank_of_drawers", "blanket_chest"])
    for name in ("job.toml", "tally.csv"):
        text = (EXAMPLES / folder / name).read_text(encoding="utf-8")
        if dice.random() < 0.7:
            text = damaged(text, dice)
        (tmp_path / name).write_text(text, encoding="utf-8")
    faults = Faults()
    commission = job.read(tmp_path / "job.toml", faults)
    if commission is None:
        assert len(faults) == 1
        return
    assemblies.parts_of(commission, faults)
    sources.read([tmp_path / "tally.csv"], commission, faults)
    for fault in faults:
        assert fault.where.file in ("job.toml", "tally.csv")
        assert fault.wrong
        assert fault.remedy
