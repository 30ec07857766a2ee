"""Many whole numbers in one: counts of parts, or values by every row, added and compared at once."""

from __future__ import annotations

from collections.abc import Iterable


class Fields:
    """Numbers side by side in one large one, each with a guard bit above it.

    Python adds a number of a thousand digits nearly as fast as one of ten.

    Parameters
    ----------
    number
        How many.
    most
        The greatest that any of them, or a sum of them, comes to.
    """

    def __init__(self, number: int, most: int) -> None:
        self.bits = most.bit_length()
        self.apart = self.bits + 1
        self.number = number
        self.guards = sum(1 << n * self.apart + self.bits for n in range(number))

    def pack(self, values: Iterable[int]) -> int:
        """The numbers in one, the first in the lowest bits."""
        return sum(value << n * self.apart for n, value in enumerate(values))

    def unpack(self, packed: int) -> list[int]:
        """The numbers of one."""
        within = (1 << self.bits) - 1
        return [packed >> n * self.apart & within for n in range(self.number)]

    def hold(self, many: int, few: int) -> bool:
        """Whether every number of the first is at least that of the second."""
        guards = self.guards
        return ((many | guards) - few) & guards == guards

    def greater(self, one: int, other: int) -> int:
        """The greater of each two."""
        kept = ((one | self.guards) - other) & self.guards
        return other ^ ((one ^ other) & (kept - (kept >> self.bits)))

    def lesser(self, one: int, other: int) -> int:
        """The lesser of each two."""
        kept = ((one | self.guards) - other) & self.guards
        return one ^ ((one ^ other) & (kept - (kept >> self.bits)))

    def less(self, one: int, other: int) -> int:
        """What is left of each, nothing where the other is as large."""
        left = (one | self.guards) - other
        kept = left & self.guards
        return left & (kept - (kept >> self.bits))
