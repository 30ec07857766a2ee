"""What holds for every source of stock the registry finds, so that a new one needs no test of its own for it."""

from __future__ import annotations

import inspect
from pathlib import Path
from typing import ClassVar

import pytest

from tests.sources.tallies import make_job
from yieldplan import sources
from yieldplan.faults import Fault, Faults
from yieldplan.model.pieces import Piece
from yieldplan.registry import find
from yieldplan.sources.offered import by_ending
from yieldplan.sources.source import Source
from yieldplan.sources.tally_csv import TallyCsv

FOUND = find(sources, Source)  # type: ignore[type-abstract]
EVERY = pytest.mark.parametrize("kind", FOUND.values(), ids=list(FOUND))
EVERY_ENDING = pytest.mark.parametrize(
    ("kind", "ending"),
    [(kind, ending) for kind in FOUND.values() for ending in kind.suffixes],
)


def read(file: Path) -> tuple[tuple[Piece, ...], list[Fault]]:
    faults = Faults()
    return sources.read([file], make_job(), faults), list(faults)


class AlsoCsv(TallyCsv):
    """A second source that claims an ending of the first."""

    suffixes: ClassVar[tuple[str, ...]] = (".tree", ".csv")


def test_two_sources_that_claim_one_ending_are_a_programmers_mistake() -> None:
    with pytest.raises(ValueError, match=r"ending in \.csv: TallyCsv and AlsoCsv"):
        by_ending([TallyCsv, AlsoCsv])


def test_no_two_sources_found_claim_one_ending() -> None:
    assert set(by_ending(FOUND.values())) == {
        ending for kind in FOUND.values() for ending in kind.suffixes
    }


@EVERY
def test_its_endings_are_lower_case_with_a_point(kind: type[Source]) -> None:
    assert kind.suffixes
    for ending in kind.suffixes:
        assert ending == ending.lower()
        # `Path.suffix` knows the last ending only: `.tar.gz` would never be asked for.
        assert Path(f"pile{ending}").suffix == ending


@EVERY
def test_it_says_in_one_line_what_it_reads(kind: type[Source]) -> None:
    first = (inspect.getdoc(kind) or "").splitlines()[0]
    assert first.endswith(".")
    assert len(first) < 90


@EVERY_ENDING
@pytest.mark.parametrize(
    "raw",
    [b"", b" \r\n\t\n", b"\xef\xbb\xbf", b"\0\0\0", b"PK\x03\x04", b"\x81\xff\x8d" * 9],
    ids=["empty", "blank", "a mark only", "zeros", "a zip file", "noise"],
)
def test_a_file_without_a_board_is_told_and_gives_none(
    kind: type[Source], ending: str, raw: bytes, tmp_path: Path
) -> None:
    file = tmp_path / f"pile{ending}"
    file.write_bytes(raw)
    pieces, faults = read(file)
    assert pieces == ()
    assert faults
    for fault in faults:
        assert fault.where.file == file.name
        assert fault.wrong
        assert fault.remedy


@EVERY_ENDING
@pytest.mark.parametrize("is_folder", [False, True])
def test_a_file_that_cannot_be_opened_is_told(
    kind: type[Source], ending: str, is_folder: bool, tmp_path: Path
) -> None:
    file = tmp_path / f"pile{ending}"
    if is_folder:
        file.mkdir()
    pieces, (fault,) = read(file)
    assert pieces == ()
    assert "cannot be read" in fault.wrong


@EVERY_ENDING
def test_a_file_too_large_for_a_tally_is_told(
    kind: type[Source], ending: str, tmp_path: Path
) -> None:
    file = tmp_path / f"pile{ending}"
    with file.open("wb") as opened:
        opened.truncate(2**25)  # 32 MB of nothing, which take no room on the disk
    pieces, faults = read(file)
    assert pieces == ()
    assert faults
