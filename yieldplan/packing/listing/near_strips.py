"""Strips without regard to where they lie: what each length and width can hold at best, and every good filling."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.listing.allowance import PAIRS_OF_A_ROW, Allowance
from yieldplan.packing.listing.counts import Counts
from yieldplan.packing.patterns.group import Group, Shape
from yieldplan.packing.patterns.values import LOW
from yieldplan.packing.problem import Problem


@dataclass(frozen=True)
class Pieces:
    """The items of a group that make something needed; one place for each.

    Parameters
    ----------
    shapes
        By place, its shape.
    made
        What it makes, packed.
    length, width, rule
        By place; `width` is the place of its width in `widths`. [cells]
    makes
        By item, in the whole problem.
    """

    items: tuple[int, ...]
    shapes: tuple[Shape, ...]
    made: Ints
    length: Ints
    width: Ints
    rule: Ints
    widths: Ints
    makes: Sequence[Mapping[int, int]]
    length_of: Mapping[int, int]

    @staticmethod
    def of(group: Group, problem: Problem, counts: Counts) -> Pieces:
        """The group's items that can be cut by themselves."""
        found = [
            (number, shape)
            for shape in group.shapes
            for number in shape.items
            if counts.of(problem.items[number].makes).any()
        ]
        none = np.zeros((0, counts.words), np.int64)
        return Pieces(
            items=tuple(number for number, _ in found),
            shapes=tuple(shape for _, shape in found),
            made=np.concatenate(
                [none, *(counts.of(problem.items[number].makes) for number, _ in found)]
            ),
            length=np.array([shape.length for _, shape in found], np.int64),
            width=np.array([shape.width_index for _, shape in found], np.int64),
            rule=np.array([shape.face_class for _, shape in found], np.int64),
            widths=group.widths,
            makes=[item.makes for item in problem.items],
            length_of={number: shape.length for number, shape in found},
        )


class NearStrips:
    """Strips of one board at rows of prices.

    Attributes
    ----------
    value
        By mask, row, width and length, what a strip can hold at best. [money/10,000]
    """

    def __init__(
        self,
        pieces: Pieces,
        counts: Counts,
        prices: Ints,
        longest: int,
        masks: Ints,
    ) -> None:
        self._pieces = pieces
        self._counts = counts
        self._prices = prices
        self._worth = counts.unpack(pieces.made) @ prices.T
        num_rules = int(pieces.rule.max(initial=0)) + 1
        single = [1 << rule for rule in range(num_rules)]
        # Mask 0 comes first: there nothing fits.
        self._masks = np.array(sorted({0, *single, *masks.tolist()}), np.int64)
        self._of_rule = [int(self.index_of(np.array([m]))[0]) for m in single]
        self.value = self._values(longest)

    def index_of(self, masks: Ints) -> Ints:
        """Places of masks in `value`."""
        return np.searchsorted(self._masks, masks).astype(np.int64)

    def _values(self, longest: int) -> Ints:
        pieces = self._pieces
        num_widths = len(pieces.widths)
        is_shut = (self._masks[:, None] >> pieces.rule[None, :] & 1) == 0
        is_narrow = np.arange(num_widths)[:, None] < pieces.width[None, :]
        gain = np.where(
            is_shut[:, None, None, :] | is_narrow[None, None, :, :],
            LOW,
            self._worth.T[None, :, None, :],
        )
        gain = np.ascontiguousarray(gain.transpose(3, 0, 1, 2))
        best = np.zeros((longest + 1, *gain.shape[1:]), np.int64)
        order = np.argsort(pieces.length, kind="stable")
        gain, length = gain[order], pieces.length[order]
        for at in range(1, longest + 1):
            fit = int(np.searchsorted(length, at, side="right"))
            np.copyto(best[at], best[at - 1])
            if fit:
                found = (best[at - length[:fit]] + gain[:fit]).max(axis=0)
                np.maximum(best[at], found, out=best[at])
        return np.ascontiguousarray(best.transpose(1, 2, 3, 0))

    def list(self, slack: Ints, longest: int, allowance: Allowance) -> None:
        """Every strip up to a length that loses no more than the slack at any row.

        What a strip loses only grows with each further item, so it is built item by item.

        Raises
        ------
        TooMany
            When the allowance is used up.
        """
        pieces, counts = self._pieces, self._counts
        rows = len(self._prices)
        self.made = np.zeros((1, counts.words), np.int64)
        self.length = np.zeros(1, np.int64)
        self.width = np.zeros(1, np.int64)
        self.rules = np.zeros(1, np.int64)
        self.worth = np.zeros((1, rows), np.int64)
        self._parent = np.full(1, -1, np.int64)
        self._item = np.full(1, -1, np.int64)
        for place, item in enumerate(pieces.items):
            base = np.arange(len(self.made))
            while len(base):
                allowance.take(PAIRS_OF_A_ROW * len(base))
                length = self.length[base] + pieces.length[place]
                base, length = base[length <= longest], length[length <= longest]
                made, over = counts.add(self.made[base], pieces.made[[place]])
                width = np.maximum(self.width[base], pieces.width[place])
                rules = self.rules[base] | 1 << int(pieces.rule[place])
                worth = self.worth[base] + self._worth[place]
                if len(over) and rows:
                    worth[over] = counts.unpack(made[over]) @ self._prices.T
                keep = (made != self.made[base]).any(axis=1)
                for rule, which in enumerate(self._of_rule):
                    has = (rules >> rule & 1) == 1
                    for row in range(rows):
                        value = self.value[which, row, width, length]
                        keep &= ~has | (value - worth[:, row] <= slack[row])
                first = len(self.made)
                self.made = np.concatenate([self.made, made[keep]])
                self.length = np.concatenate([self.length, length[keep]])
                self.width = np.concatenate([self.width, width[keep]])
                self.rules = np.concatenate([self.rules, rules[keep]])
                self.worth = np.concatenate([self.worth, worth[keep]])
                self._parent = np.concatenate([self._parent, base[keep]])
                self._item = np.concatenate(
                    [self._item, np.full(int(keep.sum()), item, np.int64)]
                )
                base = np.arange(first, len(self.made))
        # The empty strip is none.
        self.length[0] = 1 << 40

    def items(self, strip: int) -> Sequence[int]:
        """The items of a strip, longest first."""
        found = []
        while self._parent[strip] >= 0:
            found.append(int(self._item[strip]))
            strip = int(self._parent[strip])
        return sorted(found, key=lambda item: (-self._pieces.length_of[item], item))
