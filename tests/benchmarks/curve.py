"""Draws how cost grows with the size of a job, from JSON lines: `python -m tests.benchmarks.curve rows.jsonl > curve.svg`.

Three panels over the number of boards offered, both axes by powers of ten: seconds to a
plan within 3 % and within 2 % of its floor, seconds of that for each part, and memory. A
dot is a job, the line joins the medians; jobs that never came so near are counted under
the size they are of.
"""

from __future__ import annotations

import json
import math
import statistics
import sys
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

Row = dict[str, Any]


@dataclass(frozen=True)
class Line:
    """One quantity of a panel, and how it is drawn (dashes, not colours, tell lines apart)."""

    words: str
    of: Callable[[Row], float | None]
    dashes: str


@dataclass(frozen=True)
class Panel:
    """One quantity over the number of boards."""

    words: str
    lines: tuple[Line, ...]


def _at(gap: str, *, per_part: bool = False) -> Callable[[Row], float | None]:
    def seconds(row: Row) -> float | None:
        at = row["gap_at"][gap]
        if at is None:
            return None
        return float(at) / (row["parts"] if per_part else 1)

    return seconds


PANELS = (
    Panel("seconds", (Line("to 3 %", _at("3"), ""), Line("to 2 %", _at("2"), "6 4"))),
    Panel(
        "seconds a part",
        (
            Line("to 3 %", _at("3", per_part=True), ""),
            Line("to 2 %", _at("2", per_part=True), "6 4"),
        ),
    ),
    Panel("memory, MB", (Line("", lambda row: float(row["memory_mb"]), ""),)),
)
WIDE, HIGH, MARGIN = 360, 260, 64


def svg(rows: Sequence[Row]) -> str:
    """The picture."""
    fills = sorted({row["fill"] for row in rows})
    families = sorted({row["family"] for row in rows})
    inside = [
        "\n".join(_panel(panel, rows, place * WIDE))
        for place, panel in enumerate(PANELS)
    ]
    title = (
        f"From {min(row['boards'] for row in rows)} to {max(row['boards'] for row in rows)} "
        f"boards: {len(rows)} jobs, fill {' and '.join(fills)}, family {' and '.join(families)}"
    )
    return "\n".join(
        [
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{WIDE * len(PANELS)}" height="{HIGH + 60}"'
            ' font-family="sans-serif" font-size="11">',
            '<rect width="100%" height="100%" fill="white"/>',
            f'<text x="{MARGIN}" y="18" font-size="13">{title}</text>',
            *inside,
            "</svg>",
        ]
    )


@dataclass(frozen=True)
class _Axis:
    """Powers of ten along a stretch of paper."""

    low: float
    high: float
    start: float
    end: float

    @staticmethod
    def over(values: Iterable[float], start: float, end: float) -> _Axis:
        logs = [math.log10(max(value, 1e-9)) for value in values] or [0.0]
        low, high = math.floor(min(logs)), math.ceil(max(logs))
        return _Axis(low, max(high, low + 1), start, end)

    def at(self, value: float) -> float:
        share = (math.log10(max(value, 1e-9)) - self.low) / (self.high - self.low)
        return self.start + share * (self.end - self.start)

    def marks(self) -> Iterator[tuple[float, str]]:
        for power in range(int(self.low), int(self.high) + 1):
            yield self.at(10.0**power), f"{10.0**power:,.6f}".rstrip("0").rstrip(".")


def _panel(panel: Panel, rows: Sequence[Row], left: float) -> Iterator[str]:
    boards = sorted({row["boards"] for row in rows})
    seen = [
        value
        for line in panel.lines
        for row in rows
        if (value := line.of(row)) is not None
    ]
    across = _Axis.over(boards, left + MARGIN, left + WIDE - 20)
    up = _Axis.over(seen, HIGH, 40)
    yield f'<text x="{left + MARGIN}" y="36">{panel.words}</text>'
    for y, words in up.marks():
        yield f'<line x1="{across.start}" y1="{y:.1f}" x2="{across.end}" y2="{y:.1f}" stroke="#ccc"/>'
        yield f'<text x="{across.start - 6}" y="{y + 4:.1f}" text-anchor="end">{words}</text>'
    for count in boards:
        x = across.at(count)
        yield f'<line x1="{x:.1f}" y1="{up.start}" x2="{x:.1f}" y2="{up.end}" stroke="#eee"/>'
        yield f'<text x="{x:.1f}" y="{HIGH + 16}" text-anchor="middle">{count:,}</text>'
    yield f'<text x="{across.end}" y="{HIGH + 32}" text-anchor="end">boards offered</text>'
    for place, line in enumerate(panel.lines):
        yield from _line(line, rows, boards, across, up, HIGH + 32 + 12 * place)


def _line(
    line: Line,
    rows: Sequence[Row],
    boards: list[int],
    across: _Axis,
    up: _Axis,
    y: float,
) -> Iterator[str]:
    points, never = [], []
    for count in boards:
        values = [line.of(row) for row in rows if row["boards"] == count]
        reached = [value for value in values if value is not None]
        for value in reached:
            yield f'<circle cx="{across.at(count):.1f}" cy="{up.at(value):.1f}" r="2" fill="none" stroke="black"/>'
        # The median of all: those that never came so near are longer than any.
        middle = statistics.median(
            math.inf if value is None else value for value in values
        )
        if middle < math.inf:
            points.append(f"{across.at(count):.1f},{up.at(middle):.1f}")
        if len(reached) < len(values):
            never.append(
                f"{len(values) - len(reached)} of {len(values)} with {count:,}"
            )
    yield (
        f'<polyline points="{" ".join(points)}" fill="none" stroke="black" '
        f'stroke-dasharray="{line.dashes}"/>'
    )
    words = line.words + (f"; never: {', '.join(never)}" if never else "")
    if words:
        dashes = f'stroke-dasharray="{line.dashes}"'
        yield f'<line x1="{across.start}" y1="{y - 4}" x2="{across.start + 24}" y2="{y - 4}" stroke="black" {dashes}/>'
        yield f'<text x="{across.start + 30}" y="{y}">{words}</text>'


def main(arguments: list[str]) -> int:
    """Print the picture of the rows in these files, or in what is piped in."""
    texts = [Path(name).read_text(encoding="utf-8") for name in arguments]
    lines = "".join(texts or [sys.stdin.read()]).splitlines()
    rows = [json.loads(line) for line in lines if line.strip()]
    if not rows:
        print(
            "No jobs to draw: pipe in lines of `python -m tests.benchmarks L --json`."
        )
        return 1
    print(svg(rows))
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
