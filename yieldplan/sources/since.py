"""What happened at the saw since a plan was made: a short line each, `W07 cut`, `W07.2 knot A 3 to 5`."""

from __future__ import annotations

import dataclasses
import re
from collections import Counter
from collections.abc import Collection
from dataclasses import dataclass, field
from pathlib import Path

from yieldplan.faults import Faults, Where, did_you_mean
from yieldplan.model.faces import MARK_KINDS, Mark
from yieldplan.sources.marks import OUTSIDE_CLEAR, Board, parse_marks
from yieldplan.sources.saved_pieces import SavedPieces, Spot
from yieldplan.sources.text_file import read_text
from yieldplan.units import UnitName, from_ticks

_WORDS = ("cut", "all cut", "spoiled", "gone", "bought")
_EXAMPLE = "Write what happened: W07 cut | W07 all cut | W07.2 spoiled | W07.2 knot 3 to 5 | W07 bought"
_COMMENT = re.compile(r"(?:^|\s)#.*")


@dataclass(kw_only=True)
class Since:
    """What was noted, by the names of the plan.

    Parameters
    ----------
    cut
        What lies on the bench sawn: nodes whose own cuts are made, and leaves sawn out.
    gone
        What there is no more, with everything in it.
    bought
        Boards that are paid for.
    marks
        Marks that were found, in the frame of the stock.
    lost
        Part to how many of those delivered are spoiled.
    """

    cut: set[str] = field(default_factory=set)
    gone: set[str] = field(default_factory=set)
    bought: set[str] = field(default_factory=set)
    marks: dict[str, list[Mark]] = field(default_factory=dict)
    lost: Counter[str] = field(default_factory=Counter)


def read_since(
    file: Path,
    pieces: SavedPieces,
    parts: Collection[str],
    unit: UnitName,
    faults: Faults,
) -> Since:
    """The notes of a file, one a line; every mistake is told with its line.

    `W07 cut`: the first cuts of W07 are made, and what they part lies on the bench.
    `W07 all cut`: all of its cuts. `W07.2 spoiled`: there is no more of it;
    `W07.2 spoiled 3 to 6`: only of that stretch. `W07.2 knot A 3 to 5 x 1 to 2`: a mark
    that was found, measured in that piece from its own zero end and near edge.
    `W09 bought`: it is paid for, cut or not. `all cut` and `all bought` speak of the
    whole plan. `upper/side spoiled`: one of that part, whichever piece it came from.

    Parameters
    ----------
    parts
        What may lie on the bench: the parts of this plan, and of those before it.
    """
    noted = Since()
    lines: list[_Line] = []
    text = read_text(file, faults, fill="Write a line for each board that was cut")
    for number, line in enumerate((text or "").splitlines(), start=1):
        said = " ".join(_COMMENT.sub("", line).replace("\u00a0", " ").split())
        if said:
            where = Where(file=file.name, line=number)
            lines.append(_Line(where, said, pieces, parts, unit, faults, noted))
            lines[-1].read()
    for noted_line in lines:
        noted_line.ensure_it_is_there()
    return noted


class _Line:
    def __init__(
        self,
        where: Where,
        said: str,
        pieces: SavedPieces,
        parts: Collection[str],
        unit: UnitName,
        faults: Faults,
        noted: Since,
    ) -> None:
        self.where, self.said, self.pieces = where, said, pieces
        self.parts = parts
        self.unit, self.faults, self.noted = unit, faults, noted
        self._marked: Spot | None = None

    def ensure_it_is_there(self) -> None:
        """A mark is measured in a sawn piece: then its board has been begun, one would think."""
        spot = self._marked
        if spot is None or not spot.above:
            return
        board = spot.above[0]
        if board not in self.noted.cut:
            wrong = f"it is measured in {spot.name}, and {board} is not cut"
            remedy = f"Write {board} cut as well, or where in {board} the mark is"
            self._wrong(self.said, wrong, remedy)

    def read(self) -> None:
        if self.said.lower() in ("all cut", "all bought"):
            for board in self.pieces.spots.values():
                if not board.above:
                    self._happened(board, self.said.lower())
            return
        if self._is_part():
            return
        spot, rest = self._spot()
        if spot is None:
            return
        words = rest.lower().removeprefix("is ").removeprefix("was ").rstrip(".")
        first = words.partition(" ")[0]
        if words in _WORDS:
            self._happened(spot, words)
        elif first == "spoiled":
            # Nothing may be made of that stretch, not even a test piece.
            stretch = words.removeprefix("spoiled ")
            self._found(spot, f"{OUTSIDE_CLEAR} {stretch}")
        elif first in MARK_KINDS:
            self._found(spot, rest)
        else:
            near = did_you_mean(first, [*_WORDS, *MARK_KINDS]) if first else ""
            remedy = near if near.endswith("?") else _EXAMPLE
            self._wrong(rest or self.said, "nobody can say what happened to it", remedy)

    def _is_part(self) -> bool:
        """Whether the line says that a part was spoiled, which is noted."""
        name, _, word = self.said.rpartition(" ")
        known = {part.lower(): part for part in self.parts}
        part = known.get(name.removesuffix(" is").lower())
        if part is None or word.lower() not in ("spoiled", "gone"):
            return False
        self.noted.lost[part] += 1
        return True

    def _spot(self) -> tuple[Spot | None, str]:
        """The piece that is meant, its longest name first, and what follows."""
        spots, also = self.pieces.spots, self.pieces.also
        words = self.said.split(" ")
        named = {name.lower(): name for name in (*spots, *also)}
        for count in range(len(words), 0, -1):
            name = named.get(" ".join(words[:count]).rstrip(":,").lower())
            if name is not None:
                return spots[also.get(name, name)], " ".join(words[count:])
        remedy = did_you_mean(words[0], named.values())
        if not remedy.endswith("?"):
            remedy = "Write the number that stands on it in the cut diagrams, such as "
            remedy += next(iter(spots), "W07")
        self._wrong(words[0], "the plan has no such piece", remedy)
        return None, ""

    def _happened(self, spot: Spot, word: str) -> None:
        noted = self.noted
        if word in ("spoiled", "gone"):
            noted.gone.add(spot.name)
            noted.cut.update(spot.above)
        elif word.endswith("bought"):
            if spot.above:
                wrong = "only a whole board is bought, and this is sawn from one"
                self._wrong(self.said, wrong, f"Write {spot.above[0]} bought")
            noted.bought.add(spot.name)
        elif word == "all cut":
            noted.cut.update(spot.above)
            noted.cut.update(each.name for each in self.pieces.below(spot.name))
        elif spot.node is None:
            wrong = "the plan does not cut this board"
            remedy = "Write what is left of it into a tally, and here: gone"
            self._wrong(self.said, wrong, remedy)
        else:
            noted.cut.update((*spot.above, spot.name))

    def _found(self, spot: Spot, marks: str) -> None:
        self._marked = spot
        x0, y0, x1, y1 = (from_ticks(tick) for tick in spot.box)
        frame = Board(
            length=x1 - x0, width=y1 - y0, unit=self.unit, decimal_comma=False
        )
        for mark in parse_marks(marks, frame, self._wrong):
            in_stock = dataclasses.replace(
                mark,
                x0=mark.x0 + x0,
                x1=mark.x1 + x0,
                y0=mark.y0 + y0,
                y1=mark.y1 + y0,
            )
            self.noted.marks.setdefault(spot.name, []).append(in_stock)

    def _wrong(self, said: str, wrong: str, remedy: str) -> None:
        self.faults.add(self.where, said[:80], wrong, remedy)
