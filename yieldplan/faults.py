"""What is wrong with a job or a tally, as data: where, what was said, why it will not do, what to do."""

from __future__ import annotations

import dataclasses
import difflib
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

_SEVERAL = 3
"""Names that hold a word somebody wrote are all offered, up to so many."""


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

    def extend(self, faults: Iterable[Fault]) -> None:
        """Note every fault of another list."""
        for fault in faults:
            self.add(fault.where, fault.said, fault.wrong, fault.remedy)

    def told_once(self) -> Iterator[Fault]:
        """The faults by row; the same slip in many places is told at the first of them.

        In a table slips are the same when the same column says the same; elsewhere
        (something said once for all drawers) wherever the same is said.
        """
        alike: dict[tuple[str, ...], list[Fault]] = {}
        for fault in sorted(self._faults, key=lambda fault: fault.where.row or 0):
            column = fault.where.key if fault.where.row is not None else ""
            key = (column, fault.said, fault.wrong, fault.remedy)
            alike.setdefault(key, []).append(fault)
        for first, *others in alike.values():
            also = _also([fault.where for fault in others])
            yield dataclasses.replace(first, wrong=first.wrong + also)

    def stop_if_any(self) -> None:
        """Raise `FaultsFound` with everything noted, if anything was."""
        if self._faults:
            raise FaultsFound(self._faults)

    def __iter__(self) -> Iterator[Fault]:
        return iter(self._faults)

    def __len__(self) -> int:
        return len(self._faults)


def _also(others: list[Where]) -> str:
    """Where else the same slip stands."""
    rows = dict.fromkeys(str(where.row) for where in others if where.row is not None)
    if rows:
        return f" (rows {', '.join(rows)} too)"
    if len(others) == 1:
        return f" (so it is with {others[0].key or others[0]})"
    return f" (so it is with {len(others)} others)" if others else ""


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """A remedy that names the nearest known word, or all of them."""
    words = sorted(known)
    near = difflib.get_close_matches(word, words, n=1, cutoff=0.6)
    if near:
        return f'Did you mean "{near[0]}"?'
    holding = [each for each in words if word.casefold() in each.casefold().split()]
    if word and 0 < len(holding) <= _SEVERAL:
        return "Did you mean " + " or ".join(f'"{each}"' for each in holding) + "?"
    if not words:
        return "Leave it out"
    return "Known here: " + ", ".join(words)
