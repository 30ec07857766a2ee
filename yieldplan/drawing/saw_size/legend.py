"""Writes the words into the pieces of a board, and keeps a list of those that have no room."""

from __future__ import annotations

from collections.abc import Collection
from itertools import chain

from yieldplan.drawing.labels import first_that_fits
from yieldplan.drawing.panels import Leaf
from yieldplan.drawing.saw_size import waste_words, words
from yieldplan.drawing.saw_size.words import Said, Way
from yieldplan.drawing.scene import Item, Rect, Text

_LETTERS = "abcdefghijklmnopqrstuvwxyz"


class Legend:
    """The letters given out on one board.

    Parameters
    ----------
    names
        Every name of the run, so that a name that is cut stays unlike the others.
    """

    def __init__(self, names: Collection[str]) -> None:
        self._names = names
        self._said: list[tuple[str, str]] = []
        self._letters: dict[str, str] = {}
        self.short_of = 0

    def lines(self) -> tuple[tuple[str, str], ...]:
        """Letter and words."""
        return tuple(self._said)

    def piece(
        self, said: Said, rect: Rect, avoid: list[Rect], leads: list[Rect]
    ) -> list[Item]:
        """The words of a piece that is kept, whole, else cut, else its letter.

        Parameters
        ----------
        avoid, leads
            Marks that are not to be hidden; lines to marks, which may be crossed.
        """
        room = rect.inset(2.0)
        whole = list(words.whole(said, room.width))
        done = None
        for marks, over in (([*avoid, *leads], []), (avoid, leads)):
            done = done or first_that_fits(
                whole, room, marks, over=over, may_hide=False, may_touch=False
            )
        done = done or first_that_fits(whole, room, avoid, over=leads)
        if done is not None:
            return done
        self.short_of += 1 if said.matters else 0
        done = first_that_fits(
            list(words.cut(said, room.width, self._names)), room, avoid, over=leads
        )
        if done is not None:
            return done
        self.short_of += 2 if said.matters else 0
        return self._letter(said.in_a_line(), rect)

    def waste(self, leaf: Leaf, avoid: list[Rect], leads: list[Rect]) -> list[Item]:
        """What becomes of wood that is not kept."""
        said = waste_words.say(leaf, avoid, leads)
        if said is not None:
            return said
        self.short_of += 1
        return self._letter(waste_words.in_a_line(leaf), leaf.rect)

    def _letter(self, said: str, rect: Rect) -> list[Item]:
        # Pieces of which the same is said share a letter.
        if said not in self._letters:
            number = len(self._letters)
            letter = _LETTERS[number % 26] * (1 + number // 26)
            self._letters[said] = letter
            self._said.append((letter, said))
        letter = self._letters[said]
        ways: list[Way] = [
            ((Text(x=0, y=0, text=letter, size=size, bold=True, condensed=narrow),),)
            for size, narrow in ((14.0, False), (12.0, False), (10.0, True))
        ]
        done = first_that_fits(ways, rect, [])
        if done is not None:
            return done
        return list(chain.from_iterable(_over(ways[-1], rect)))


def _over(way: Way, rect: Rect) -> list[list[Item]]:
    """A letter on a piece smaller than itself, over its middle."""
    (line,) = way
    (text,) = line
    wide = text.rect().width
    return [
        [
            Text(
                x=(rect.x0 + rect.x1 - wide) / 2, y=(rect.y0 + rect.y1) / 2 + 3.6,
                text=text.text, size=text.size, bold=True, condensed=True,
            )
        ]
    ]  # fmt: skip
