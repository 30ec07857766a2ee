"""Many sums side by side in one long number, so that bare Python adds and compares them all at once.

A lane holds one sum. Its highest bit, the guard, is free: set before a subtraction it
tells afterwards which of the two was greater, lane by lane, and no lane ever borrows
from the next. (How words of a machine are added in parts is old practice; here the word
is as long as need be.)
"""

from __future__ import annotations

from collections.abc import Sequence


class Lanes:
    """Lanes wide enough for sums up to `largest`, and up to `number` of them.

    Parameters
    ----------
    largest
        The largest sum there will be. [money/10,000]
    """

    def __init__(self, largest: int, number: int) -> None:
        self.size = largest.bit_length() // 8 + 1
        """[bytes]"""
        self.shift = 8 * self.size - 1
        """How far the guard stands above the lowest bit."""
        self.ones = [0]
        """A one in each of the first n lanes, by n."""
        for _ in range(number):
            self.ones.append(self.ones[-1] << 8 * self.size | 1)

    def guards(self, number: int) -> int:
        """The guards of the first lanes."""
        return self.ones[number] << self.shift

    def many_guards(self, number: int) -> int:
        """The guards of more lanes than `ones` knows."""
        return int.from_bytes((b"\0" * (self.size - 1) + b"\x80") * number, "little")

    def greater(self, guarded: int, other: int, guards: int) -> int:
        """Lane by lane the greater of two; the first comes with its guards set."""
        more = guarded - other
        won = more & guards
        # A guard less itself shifted down its lane leaves ones in all the rest of it.
        return other + (more & (won - (won >> self.shift)))

    def first(self, sums: int, number: int) -> bytes:
        """The first lanes alone, to be joined with others."""
        if not number:
            return b""
        kept = sums & (self.ones[number] << self.shift + 1) - self.ones[number]
        return kept.to_bytes(self.size * number, "little")

    def apart(self, sums: int, number: int) -> Sequence[int]:
        """What the first lanes hold, one by one."""
        size, joined = self.size, sums.to_bytes(self.size * number, "little")
        return [
            int.from_bytes(joined[at : at + size], "little")
            for at in range(0, size * number, size)
        ]
