"""What clear wood is worth, and how low each item lies beside a board's marks; compiled tables for narrow parts beside marks."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.patterns.compiled import compiled

Shorts = npt.NDArray[np.int16]

_NOWHERE = 30_000
"""Stands for a cell across that no board has."""


@compiled
def clear_strips(
    lengths: Ints, widths: Ints, values: Ints, widest: int, longest: int
) -> Ints:
    """The worth of a strip without a mark, by width and length in cells."""
    table = np.zeros((widest + 1, longest + 1), np.int64)
    for wide in range(1, widest + 1):
        row = table[wide]
        for x in range(longest + 1):
            if x and row[x] < row[x - 1]:
                row[x] = row[x - 1]
            elif x and row[x] == row[x - 1]:
                continue
            for number in range(len(lengths)):
                end = x + lengths[number]
                if end > longest:
                    break
                if widths[number] <= wide:
                    row[end] = max(row[end], row[x] + values[number])
    return table


@compiled
def clear_stacks(strips: Ints, is_width: Ints) -> Ints:
    """The worth of strips beside each other without a mark, by height and length."""
    table = np.zeros_like(strips)
    for top in range(1, strips.shape[0]):
        table[top] = table[top - 1]
        for wide in range(1, top + 1):
            if is_width[wide]:
                table[top] = np.maximum(table[top], table[top - wide] + strips[wide])
    return table


@compiled
def lowest_tops(
    lengths: Ints,
    widths: Ints,
    zones: Ints,
    forbidden: Ints,
    in_zones: Ints,
    blocks: Ints,
    along: int,
    across: int,
) -> tuple[Shorts, Shorts]:
    """Where the upper edge of each item lies when it is laid as low as marks allow.

    Parameters
    ----------
    zones
        For each item, cells at its zero end and at its far end.
    forbidden
        For each item, way up and block, whether it may not bear it.
    in_zones
        For each item and block, whether its zones may not bear it.
    blocks
        i0, i1, u0, u1 of each. [cells]

    Returns
    -------
    tops
        By lower edge of the strip, mark the item begins at, and item.
    is_new
        By lower edge and mark: whether an item finds a place there that it has not one
        cell before.
    """
    num = len(lengths)
    tops = np.full((across + 1, along + 1, num), _NOWHERE, np.int16)
    for number in range(num):
        long, wide = lengths[number], widths[number]
        if long > along or wide > across:
            continue
        starts, bottoms = along - long + 1, across - wide + 1
        may = np.zeros((starts, bottoms), np.bool_)
        for way in range(2):
            here = np.ones((starts, bottoms), np.bool_)
            for place in range(len(blocks)):
                i0, i1, u0, u1 = blocks[place]
                low, high = max(0, u0 - wide + 1), min(bottoms, u1)
                if forbidden[number, way, place]:
                    here[max(0, i0 - long + 1) : min(starts, i1), low:high] = False
                elif in_zones[number, place]:
                    near, far = zones[number]
                    if near:
                        here[max(0, i0 - near + 1) : min(starts, i1), low:high] = False
                    if far:
                        end = max(0, min(starts, i1 - long + far))
                        here[max(0, i0 - long + 1) : end, low:high] = False
            may |= here
        for x in range(starts):
            top = _NOWHERE
            for u in range(bottoms - 1, -1, -1):
                if may[x, u]:
                    top = u + wide
                tops[u, x, number] = top
    is_new = np.zeros((across + 1, along + 1), np.int16)
    for u in range(across + 1):
        for x in range(1, along + 1):
            for number in range(num):
                if tops[u, x, number] < tops[u, x - 1, number]:
                    is_new[u, x] = 1
                    break
    return tops, is_new
