"""Weeding of vectors of counts, held against comparing each with each."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.listing.allowance import Allowance, TooMany
from yieldplan.packing.listing.counts import Counts, first_of_each
from yieldplan.packing.listing.weeding import Ranked, is_covered, undominated

# Of the first kind of need one word of 62 bits is enough, of the second two.
NEEDS = st.sampled_from([(3, 4, 1), (7,) * 20])


def _drawn(seed: int, need: tuple[int, ...], most: int) -> tuple[Ints, Ints]:
    rng = np.random.default_rng(seed)
    # Few of them, so that some cover others.
    rows = rng.integers(0, np.array(need) + 1, (most, len(need)))
    rows[:, 3:] = rows[:, :1].clip(max=1)
    return rows.astype(np.int64), rng.integers(0, 3, most).astype(np.int64)


def _covers(one: Ints, label: int, other: Ints, other_label: int) -> bool:
    return bool((one >= other).all()) and label <= other_label


@settings(deadline=None)
@given(need=NEEDS, seed=st.integers(0, 10**6), most=st.integers(1, 200))
def test_what_is_covered_is_what_a_look_at_each_finds(
    need: tuple[int, ...], seed: int, most: int
) -> None:
    """Exact, whatever blocks and ranks leave out."""
    counts = Counts(need)
    ones, label = _drawn(seed, need, most)
    by, by_label = _drawn(seed + 1, need, max(1, most // 2))
    prices = np.random.default_rng(seed).integers(0, 50, len(need))
    found = is_covered(
        counts,
        Ranked(counts.pack(ones), label, ones @ prices),
        Ranked(counts.pack(by), by_label, by @ prices),
        Allowance(10**9),
    )
    expected = [
        any(_covers(by[b], by_label[b], ones[a], label[a]) for b in range(len(by)))
        for a in range(len(ones))
    ]
    assert found.tolist() == expected


@settings(deadline=None)
@given(need=NEEDS, seed=st.integers(0, 10**6), most=st.integers(1, 300))
def test_what_is_undominated_is_what_a_look_at_each_finds(
    need: tuple[int, ...], seed: int, most: int
) -> None:
    """Exact, whatever order they are looked at in."""
    counts = Counts(need)
    rows, label = _drawn(seed, need, most)
    places = first_of_each(counts.pack(rows), label)
    rows, label = rows[places], label[places]
    kept = undominated(counts, counts.pack(rows), label, Allowance(10**9))
    expected = [
        a
        for a in range(len(rows))
        if not any(
            a != b and _covers(rows[b], label[b], rows[a], label[a])
            for b in range(len(rows))
        )
    ]
    assert kept.tolist() == expected


def test_weeding_stops_when_it_is_asked_to() -> None:
    """By the clock or a person, in the middle."""
    counts = Counts((50,) * 6)
    rng = np.random.default_rng(1)
    made = np.unique(counts.pack(rng.integers(0, 51, (2000, 6))), axis=0)
    label = np.zeros(len(made), np.int64)
    with pytest.raises(TooMany, match="no time"):
        undominated(counts, made, label, Allowance(10**9, lambda: True))
    with pytest.raises(TooMany, match="too many"):
        undominated(counts, made, label, Allowance(10))
