"""What is wrong with a job or a tally, as data: where, what was said, why it will not do, what to do."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Iterator
from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Where:
    """A place in a file a person can find: its name, a line or row, a key or column."""

    file: str
    line: int | None = None
    row: int | None = None
    key: str = ""

    def __str__(self) -> str:
        place = [self.file]
        if self.line is not None:
            place.append(f"line {self.line}")
        if self.row is not None:
            place.append(f"row {self.row}")
        if self.key:
            place.append(self.key)
        return ", ".join(place)


@dataclass(frozen=True, kw_only=True)
class Fault:
    """One mistake, told to the person at the bench.

    Parameters
    ----------
    where
        File, line or row, and key.
    said
        The user's own text, or nothing where something is missing.
    wrong
        What is wrong, in one sentence without its full stop.
    remedy
        What to do about it, in one sentence without its full stop.
    """

    where: Where
    said: str
    wrong: str
    remedy: str

    def __str__(self) -> str:
        said = f', "{self.said}"' if self.said else ""
        stop = "" if self.remedy.endswith("?") else "."
        return f"{self.where}{said}: {self.wrong}.\n  {self.remedy}{stop}"


class FaultsFound(Exception):  # noqa: N818 - a list of findings, not one error
    """Raised once reading is over, with every fault found so far."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(faults)
        super().__init__("\n".join(str(fault) for fault in self.faults))


class Faults:
    """The list every reader adds to; nothing is raised until all files are read."""

    def __init__(self) -> None:
        self._faults: list[Fault] = []

    def add(self, where: Where, said: str, wrong: str, remedy: str) -> None:
        """Note one fault."""
        fault = Fault(where=where, said=said, wrong=wrong, remedy=remedy)
        if fault not in self._faults:
            self._faults.append(fault)

    def stop_if_any(self) -> None:
        """Raise `FaultsFound` with everything noted, if anything was."""
        if self._faults:
            raise FaultsFound(self._faults)

    def __iter__(self) -> Iterator[Fault]:
        return iter(self._faults)

    def __len__(self) -> int:
        return len(self._faults)


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """A remedy that names the nearest known word, or all of them."""
    words = sorted(known)
    near = difflib.get_close_matches(word, words, n=1, cutoff=0.6)
    if near:
        return f'Did you mean "{near[0]}"?'
    if not words:
        return "Leave it out"
    return "Known here: " + ", ".join(words)
