"""What a piece says at the saw: its name and place, its setting, and whether it lies face B up."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

from yieldplan.drawing.fonts import width, wrap
from yieldplan.drawing.panels import Setting
from yieldplan.drawing.scene import Text

TURN_OVER = "TURN OVER, FACE B UP"
_NAMES = ((12.0, False), (12.0, True), (11.0, True), (10.0, True))
_SETTINGS = (14.0, 12.0, 11.0)
_MOST_LINES = 3
_FEWEST_LETTERS = 8  # a name that is cut shorter says nothing
_HARD = "\u00a0"

Line = tuple[Text, ...]
Way = tuple[Line, ...]


@dataclass(frozen=True, kw_only=True)
class Said:
    """The words of one piece.

    Parameters
    ----------
    place
        `2 of 4`; never cut off.
    size
        What is written under the name of an offcut.
    settings
        What the saw is set to for it, in order; never left out.
    matters
        Whether the board is drawn larger for its sake; a test piece does not.
    """

    name: str
    place: str = ""
    size: str = ""
    settings: tuple[Setting, ...] = ()
    turned_over: bool = False
    strong: bool = False
    matters: bool = True

    def in_a_line(self) -> str:
        """All of it, for the list under the drawing."""
        named = f"{self.name} {self.place}".strip()
        turn = (TURN_OVER,) if self.turned_over else ()
        size = (self.size,) if self.size else ()
        return ", ".join((named, *size, *map(str, self.settings), *turn))


def whole(said: Said, room: float) -> Iterator[Way]:
    """Ways to write everything, the most legible first. Room in points."""
    named = list(_named(f"{said.name} {_hard(said.place)}".strip(), said.strong, room))
    for size in _SETTINGS if said.settings else _SETTINGS[:1]:
        for name in named:
            for below in _below(said, size):
                yield (*name, *below)
            if len(name) == 1 and said.settings and not said.turned_over:
                joined = _setting(_joined(said.settings), size)
                yield ((*name[0], joined), *_size(said))


def cut(said: Said, room: float, others: Collection[str]) -> Iterator[Way]:
    """Ways to write it with the name cut at a word, in two lines at most.

    Parameters
    ----------
    others
        Every other name of the run: what begins like one of them loses its beginning.
    """
    size, condensed = _NAMES[-1]
    half = said.name[: max(_FEWEST_LETTERS, len(said.name) // 2)]
    from_front = any(other.startswith(half) for other in others if other != said.name)
    for short in _shorter(said.name, from_front=from_front):
        text = f"{short} {_hard(said.place)}".strip()
        lines = _wrapped(text, room, size, bold=said.strong, condensed=condensed)
        if lines is not None and len(lines) <= 2:
            name = tuple(
                (_text(line, size, bold=said.strong, condensed=condensed),)
                for line in lines
            )
            for letters in _SETTINGS:
                for below in _below(said, letters):
                    yield (*name, *below)


def _named(text: str, strong: bool, room: float) -> Iterator[Way]:
    for lines_allowed in range(1, _MOST_LINES + 1):
        for size, condensed in _NAMES:
            lines = _wrapped(text, room, size, bold=strong, condensed=condensed)
            if lines is not None and len(lines) == lines_allowed:
                yield tuple(
                    (_text(line, size, bold=strong, condensed=condensed),)
                    for line in lines
                )


def _below(said: Said, size: float) -> Iterator[Way]:
    """What stands under the name: the size of an offcut, the turn, the settings."""
    turns: list[Way] = [()]
    if said.turned_over:
        one, two = TURN_OVER.split(", ")
        turns = [
            ((_text(TURN_OVER, 10.0, bold=True),),),
            ((_text(TURN_OVER, 10.0, bold=True, condensed=True),),),
            tuple((_text(t, 10.0, bold=True, condensed=True),) for t in (f"{one},", two)),
        ]  # fmt: skip
    settings: list[Way] = [()]
    if said.settings:
        settings = [((_setting(_joined(said.settings), size),),)]
        if len(said.settings) > 1:
            settings.append(tuple((_setting(str(s), size),) for s in said.settings))
    for setting in settings:
        for turn in turns:
            yield (*_size(said), *turn, *setting)


def _size(said: Said) -> Way:
    if not said.size:
        return ()
    return ((Text(x=0, y=0, text=said.size, size=11.0, figures=True),),)


def _joined(settings: Sequence[Setting]) -> str:
    return ", ".join(map(str, settings))


def _text(
    text: str, size: float, *, bold: bool = False, condensed: bool = False
) -> Text:
    said = text.replace(_HARD, " ")
    return Text(x=0, y=0, text=said, size=size, bold=bold, condensed=condensed)


def _setting(text: str, size: float) -> Text:
    return Text(x=0, y=0, text=text, size=size, bold=True, figures=True)


def _hard(words: str) -> str:
    return words.replace(" ", _HARD)


def _wrapped(
    text: str, room: float, size: float, *, bold: bool, condensed: bool
) -> list[str] | None:
    """The text in lines broken at spaces; None when a word is wider than the room."""
    if any(
        width(word, size, bold=bold, condensed=condensed) > room
        for word in text.split(" ")
    ):
        return None
    return wrap(text, room, size, bold=bold, condensed=condensed)


def _shorter(name: str, *, from_front: bool) -> Iterator[str]:
    parts = name.split(" ")
    for left in range(len(parts) - 1, 0, -1):
        short = " ".join(parts[-left:] if from_front else parts[:left])
        if len(short) >= _FEWEST_LETTERS:
            yield f"… {short}" if from_front else f"{short} …"
