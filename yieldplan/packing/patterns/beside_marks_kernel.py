"""What a board is worth when narrow parts may lie beside its marks; compiled, as it asks for every strip of every section.

A strip from u to v over a section that begins at mark i is a row of blanks, each on cells of
its own. One pass along the strip gives its worth for every end of the section at once; a
stack of strips then gives the section's, and a pass along the board the best sections.
Three things keep this quick. More room never makes a section or a strip worth less, so that
both begin only where something has been gained since the place before. Below all marks and
above them a stack is clear, and clear stacks are one table for all boards. And a strip's
upper edge lies an item's width above its lower edge, or above a mark: nowhere else is
anything gained.
"""

from __future__ import annotations

import numpy as np

from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.patterns.beside_marks_tables import Shorts
from yieldplan.packing.patterns.compiled import compiled


@compiled
def fill_strip(
    begin: int,
    v: int,
    lengths: Ints,
    values: Ints,
    tops: Shorts,
    is_new: Shorts,
    row: Ints,
) -> int:
    """The worth of one strip for every end of its section; how many steps that took.

    Parameters
    ----------
    begin
        Mark the section begins at.
    tops, is_new
        Of the strip's lower edge.
    row
        Takes the worths, by mark.
    """
    end = len(row) - 1
    row[begin:] = 0
    steps = 0
    for x in range(begin, end):
        is_more = x == begin or is_new[x] == 1
        if x > begin:
            if row[x] < row[x - 1]:
                row[x] = row[x - 1]
            is_more |= row[x] > row[x - 1]
        if not is_more:
            continue
        for number in range(len(lengths)):
            j = x + lengths[number]
            if j > end:
                break
            steps += 1
            if tops[x, number] <= v and row[x] + values[number] > row[j]:
                row[j] = row[x] + values[number]
    if end > begin:
        row[end] = max(row[end], row[end - 1])
    return steps


@compiled
def fill_section(
    begin: int,
    up_to: int,
    least: Ints,
    lengths: Ints,
    values: Ints,
    is_width: Ints,
    tops: Shorts,
    is_new: Shorts,
    blocks: Ints,
    strips: Ints,
    stacks: Ints,
    stack: Ints,
) -> int:
    """The worth of strips beside each other from cell 0, for every end of their section.

    Parameters
    ----------
    up_to
        Cells across up to which each worth is wanted; the last one is in any case.
    least
        What the whole is worth in another way, by mark: stacks that cannot be worth more
        are left out. Below 0 for none.
    strips, stacks
        Worths without a mark.
    stack
        Takes the worths, by upper edge and mark.
    """
    across, end = stack.shape[0] - 1, stack.shape[1] - 1
    low, high = across, 0
    for place in range(len(blocks)):
        if blocks[place, 1] > begin:
            low, high = min(low, blocks[place, 2]), max(high, blocks[place, 3])
    gains = np.zeros(across + 1, np.bool_)
    gains[0] = True
    stack[0, begin:] = 0
    for v in range(1, low + 1):
        stack[v, begin:] = stacks[v, : end - begin + 1]
        gains[v] = stack[v, end] > stack[v - 1, end] or np.any(
            stack[v, begin:] != stack[v - 1, begin:]
        )
    row = np.zeros(end + 1, np.int64)
    steps = 1
    for v in range(low + 1, across + 1):
        stack[v, begin:] = stack[v - 1, begin:]
        is_gain = False
        for u in range(v):
            if not gains[u]:
                continue
            if u >= high:
                # Nothing but clear wood from here on, and once is enough for all of it.
                if v > up_to and v < across:
                    break
                found = stacks[v - u]
                for x in range(begin + 1, end + 1):
                    worth = stack[u, x] + found[x - begin]
                    if worth > stack[v, x]:
                        stack[v, x] = worth
                        is_gain = True
                continue
            is_edge = is_width[v - u] == 1
            is_met = False
            for place in range(len(blocks)):
                if (
                    blocks[place, 1] > begin
                    and u < blocks[place, 3]
                    and v > blocks[place, 2]
                ):
                    is_met = True
                    above = v - blocks[place, 3]
                    if above > 0 and is_width[above] == 1:
                        is_edge = True
            if not is_edge:
                continue
            steps += (end - begin) // 8
            if least[end] >= 0:
                # At best the strip is as good as clear, and so is all above it.
                is_hopeful = False
                for x in range(begin + 1, end + 1):
                    clear = strips[v - u, x - begin] + stacks[across - v, x - begin]
                    if stack[u, x] + clear > least[x]:
                        is_hopeful = True
                        break
                if not is_hopeful:
                    continue
            if not is_met:
                found = strips[v - u]
                for x in range(begin + 1, end + 1):
                    worth = stack[u, x] + found[x - begin]
                    if worth > stack[v, x]:
                        stack[v, x] = worth
                        is_gain = True
                continue
            steps += fill_strip(begin, v, lengths, values, tops[u], is_new[u], row)
            for x in range(begin + 1, end + 1):
                worth = stack[u, x] + row[x]
                if worth > stack[v, x]:
                    stack[v, x] = worth
                    is_gain = True
        gains[v] = is_gain
    return steps


@compiled
def best_sections(
    lengths: Ints,
    values: Ints,
    is_width: Ints,
    tops: Shorts,
    is_new: Shorts,
    blocks: Ints,
    strips: Ints,
    stacks: Ints,
    rooms: Ints,
    set_lengths: Ints,
    set_values: Ints,
    best: Ints,
    begins: Ints,
    stack: Ints,
) -> int:
    """The worth of the best sections that end at a mark or before it; how many steps that took.

    Parameters
    ----------
    rooms
        Cells across of each section, by length and start; empty for a straight board.
    set_lengths, set_values
        Cells along of each set in steps, and its worth by the mark it begins at (below
        0 where it may not begin).
    best, begins
        For each mark the worth, at first of some patterns that are known already, and
        where the last section begins: -1 where none ends there, -2 - n for the set n; what
        it is at first stays where nothing better is found.
    stack
        Room for the worth of stacks.
    """
    along, across = len(best) - 1, stack.shape[0] - 1
    steps = 0
    least = np.zeros(along + 1, np.int64)
    for i in range(along + 1):
        if i and best[i] < best[i - 1]:
            best[i], begins[i] = best[i - 1], -1
        for number in range(len(set_lengths)):
            end = i + set_lengths[number]
            if end <= along and set_values[number, i] >= 0:
                worth = best[i] + set_values[number, i]
                if worth > best[end]:
                    best[end], begins[end] = worth, -2 - number
        # More room is never worth less: begin where something was gained. A section of
        # a crooked board may be wider when it is shorter.
        if i == along or (i and best[i] == best[i - 1] and not len(rooms)):
            continue
        is_hopeful = False
        for j in range(i + 1, along + 1):
            least[j] = best[j] - best[i]
            is_hopeful |= stacks[across, j - i] > least[j]
        if not is_hopeful:
            continue
        steps += fill_section(
            i,
            0,
            least,
            lengths,
            values,
            is_width,
            tops,
            is_new,
            blocks,
            strips,
            stacks,
            stack,
        )
        for j in range(i + 1, along + 1):
            worth = stack[across, j]
            if len(rooms):
                worth = min(worth, stacks[rooms[j - i, i], j - i])
            if best[i] + worth > best[j]:
                best[j], begins[j] = best[i] + worth, i
    return steps
