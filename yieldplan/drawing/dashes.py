"""Breaks a stroke into dashes, for painters that can only draw whole lines."""

from __future__ import annotations

from collections.abc import Iterator


def dashes(length: float, pattern: tuple[float, ...]) -> Iterator[tuple[float, float]]:
    """Start and end of each dash along a stroke, as shares of its length.

    Parameters
    ----------
    pattern
        Strokes and gaps in turn; empty for a whole line. [pt]
    """
    if length <= 0:
        return
    if not pattern:
        yield 0.0, 1.0
        return
    at, number = 0.0, 0
    while at < length:
        end = at + pattern[number % len(pattern)]
        if number % 2 == 0:
            yield at / length, min(end, length) / length
        at, number = end, number + 1
