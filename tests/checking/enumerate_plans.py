"""Every plan of a tiny wood: all patterns of its family, on all pieces, as plan files."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from tests.checking.brute import Cells, sets
from tests.checking.tiny import TinyBlank, TinyPiece, TinyWood

Made = tuple[int, ...]
"""How often a plan makes each part, in the order of `need`."""
Placed = tuple[TinyBlank, str, int, int]
"""A blank, the face it has up, and the cells it takes along."""
Strip = tuple[int, int, tuple[Placed, ...]]
"""Cells across, and what is in them."""
Section = tuple[int, int, tuple[Strip, ...]]
"""Cells along, and the strips in them."""
Pattern = tuple[Made, dict[str, Any], int]
"""What a piece gives, how it is cut, and what its offcut counts for."""


def plans(wood: TinyWood) -> Iterator[tuple[int, list[dict[str, Any]]]]:
    """Every plan that makes just what is needed: its cost, and its cuttings."""
    copies = [(piece, n) for piece in wood.pieces for n in range(1, piece.copies + 1)]
    patterns = {piece.id: list(_trees(wood, piece)) for piece in wood.pieces}
    yield from _choose(wood, copies, patterns, tuple(wood.need.values()))


def cheapest(wood: TinyWood) -> tuple[int, list[dict[str, Any]]] | None:
    """The cheapest of all plans, found piece by piece; None when no plan makes the need."""
    need = tuple(wood.need.values())
    found: dict[Made, tuple[int, list[dict[str, Any]]]] = {(0,) * len(need): (0, [])}
    for piece in wood.pieces:
        ways = _best_of_each(_trees(wood, piece))
        for copy in range(1, piece.copies + 1):
            for made, (cost, cuttings) in list(found.items()):
                for way, (tree, worth) in ways.items():
                    total = tuple(a + b for a, b in zip(made, way, strict=True))
                    if any(a > b for a, b in zip(total, need, strict=True)):
                        continue
                    paid = cost + piece.price - worth
                    if total not in found or paid < found[total][0]:
                        cutting = _cutting(piece, copy, tree)
                        found[total] = paid, [*cuttings, cutting]
    return found.get(need)


def _choose(
    wood: TinyWood,
    copies: Sequence[tuple[TinyPiece, int]],
    patterns: Mapping[str, list[Pattern]],
    left: Made,
) -> Iterator[tuple[int, list[dict[str, Any]]]]:
    if not copies:
        if not any(left):
            yield 0, []
        return
    (piece, copy), *others = copies
    yield from _choose(wood, others, patterns, left)
    for made, tree, worth in patterns[piece.id]:
        rest = tuple(a - b for a, b in zip(left, made, strict=True))
        if min(rest) >= 0:
            cutting = _cutting(piece, copy, tree)
            for cost, more in _choose(wood, others, patterns, rest):
                yield cost + piece.price - worth, [cutting, *more]


def _best_of_each(
    patterns: Iterator[Pattern],
) -> dict[Made, tuple[dict[str, Any], int]]:
    """The pattern with the best offcut of all that give the same."""
    best: dict[Made, tuple[dict[str, Any], int]] = {}
    for made, tree, worth in patterns:
        if made not in best or worth > best[made][1]:
            best[made] = tree, worth
    return best


def _cutting(piece: TinyPiece, copy: int, tree: Mapping[str, Any]) -> dict[str, Any]:
    named = _named(tree, f"{piece.id}/{copy}")
    return {"stock": piece.id, "copy": copy, "tree": named}


def _trees(wood: TinyWood, piece: TinyPiece) -> Iterator[Pattern]:
    """Every pattern of a piece that makes no more than is needed, as a tree of cuts."""
    cells = Cells(wood, piece)
    cut = {"R": _ripped, "C": _crosscut}
    for family in "RC" if wood.family == "E" else wood.family:
        yield from cut[family](cells)


def _ripped(cells: Cells) -> Iterator[Pattern]:
    need = cells.wood.need
    whole = cells.whole()
    if whole is None:
        return
    across, lost = whole

    def strips(u: int, left: Mapping[str, int]) -> Iterator[tuple[Strip, ...]]:
        yield ()
        for start in range(u, across):
            for end in range(start + 1, across + 1):
                for row in along(0, start, end, left):
                    if row:
                        rest = _less(left, row)
                        for more in strips(end, rest):
                            yield ((start, end, row), *more)

    def along(
        i: int, u: int, v: int, left: Mapping[str, int]
    ) -> Iterator[tuple[Placed, ...]]:
        yield ()
        for start in range(i, cells.along):
            for blank in _still(cells, v - u, left):
                stop = start + cells.cells(blank)[0]
                if stop <= cells.along:
                    rect = (start, stop, u, v)
                    if not cells.zones_clear(blank, rect, lost):
                        continue
                    for face_up in cells.ways(blank, rect, lost):
                        placed = (blank, face_up, start, stop)
                        rest = _less(left, (placed,))
                        for more in along(stop, u, v, rest):
                            yield (placed, *more)

    box = (0, 0, *cells.piece.size)
    for pattern in strips(0, need):
        if pattern:
            children = []
            for u, v, row in pattern:
                _, y0, _, y1 = cells.wood_of(0, 1, u, v)
                children.append(_row(cells, (box[0], y0, box[2], y1), u, v, row))
            made = _made(need, [row for _, _, row in pattern])
            yield made, _node(box, "rip", children, cells.wood.kerf), 0
            for v in range(pattern[-1][1], cells.across):
                y0 = cells.wood_of(0, 1, v, v + 1)[1]
                kept = _kept((0, y0, box[2], box[3]), cells, cells.keep_beside(v))
                if kept:
                    tree = _node(box, "rip", [*children, kept], cells.wood.kerf)
                    yield made, tree, kept["worth"]


def _crosscut(cells: Cells) -> Iterator[Pattern]:
    need = cells.wood.need

    def sections(i: int, left: Mapping[str, int]) -> Iterator[tuple[Section, ...]]:
        yield ()
        for start in range(i, cells.along):
            for stop in range(start + 1, cells.along + 1):
                for strips in stack(0, start, stop, left):
                    if strips:
                        rest = _less(left, [p for _, _, row in strips for p in row])
                        for more in sections(stop, rest):
                            yield ((start, stop, strips), *more)
            for each in sets(cells.wood):
                for face_up in "AB":
                    for row in in_steps(each, face_up, start, left):
                        rest = _less(
                            left, [p for _, _, s in row for _, _, r in s for p in r]
                        )
                        for more in sections(row[-1][1], rest):
                            yield (*row, *more)

    def in_steps(
        steps: Sequence[TinyBlank], face_up: str, start: int, left: Mapping[str, int]
    ) -> Iterator[tuple[Section, ...]]:
        if not steps:
            yield ()
            return
        step, *others = steps
        long, wide = cells.cells(step)
        stop, rect = start + long, (start, start + long, 0, wide)
        placed = (step, face_up, start, stop)
        rest = _less(left, (placed,))
        if (
            stop <= cells.along
            and wide <= cells.across
            and face_up in cells.ways(step, rect)
            and cells.strip_clear(step, rect)
            and min(rest.values()) >= 0
        ):
            for beside in stack(wide, start, stop, rest):
                strips = ((0, wide, (placed,)), *beside)
                still = _less(rest, [p for _, _, row in beside for p in row])
                for more in in_steps(others, face_up, stop, still):
                    yield ((start, stop, strips), *more)

    def stack(
        u: int, i: int, j: int, left: Mapping[str, int]
    ) -> Iterator[tuple[Strip, ...]]:
        yield ()
        across, _ = cells.section(i, j) or (0, 0)
        for start in range(u, across):
            for end in range(start + 1, across + 1):
                for row in fill(i, (i, j, start, end), left):
                    if row:
                        for more in stack(end, i, j, _less(left, row)):
                            yield ((start, end, row), *more)

    def fill(
        i: int, strip: tuple[int, int, int, int], left: Mapping[str, int]
    ) -> Iterator[tuple[Placed, ...]]:
        yield ()
        start, j, u, v = strip
        _, lost = cells.section(start, j) or (0, 0)
        for blank in _still(cells, v - u, left):
            stop = i + cells.cells(blank)[0]
            if stop <= j:
                # Allowed on the whole strip over the whole section, not only here.
                if not cells.strip_clear(blank, strip, lost):
                    continue
                for face_up in cells.ways(blank, strip, lost):
                    placed = (blank, face_up, i, stop)
                    for more in fill(stop, strip, _less(left, (placed,))):
                        yield (placed, *more)

    box = (0, 0, *cells.piece.size)
    for pattern in sections(0, need):
        if pattern:
            parts = []
            for i, j, strips in pattern:
                x0, _, x1, _ = cells.wood_of(i, j, 0, 1)
                rows = []
                for u, v, row in strips:
                    _, y0, _, y1 = cells.wood_of(i, j, u, v)
                    rows.append(_row(cells, (x0, y0, x1, y1), u, v, row))
                section = (x0, box[1], x1, box[3])
                parts.append(_node(section, "rip", rows, cells.wood.kerf))
            made = _made(
                need, [row for _, _, strips in pattern for _, _, row in strips]
            )
            yield made, _node(box, "crosscut", parts, cells.wood.kerf), 0
            for j in range(pattern[-1][1], cells.along):
                x0, _, x1, _ = cells.wood_of(j, cells.along, 0, 1)
                kept = _kept((x0, 0, x1, box[3]), cells, cells.keep_beyond(j))
                if kept:
                    tree = _node(box, "crosscut", [*parts, kept], cells.wood.kerf)
                    yield made, tree, kept["worth"]


def _kept(
    box: tuple[int, int, int, int], cells: Cells, worth: int
) -> dict[str, Any] | None:
    """An offcut with a worth; none where a mark lies beyond the last cell."""
    (length, width), piece = cells.piece.size, cells.piece
    x0, x1 = max(box[0], piece.trims[0]), min(box[2], length - piece.trims[1])
    y0, y1 = max(box[1], piece.edges[0]), min(box[3], width - piece.edges[1])
    if not worth or any(
        mark[0] < x1 and mark[2] > x0 and mark[1] < y1 and mark[3] > y0
        for _, _, mark in piece.marks
    ):
        return None
    return {"box": list(box), "fate": "keep", "worth": worth}


def _row(
    cells: Cells,
    box: tuple[int, int, int, int],
    u: int,
    v: int,
    row: Sequence[Placed],
) -> dict[str, Any]:
    leaves = [
        {
            "box": list(cells.wood_of(i, j, u, v)),
            "blank": blank.id,
            "face_up": face_up,
        }
        for blank, face_up, i, j in row
    ]
    return _node(box, "crosscut", leaves, cells.wood.kerf)


def _node(
    box: Sequence[int], cut: str, wanted: Sequence[dict[str, Any]], kerf: int
) -> dict[str, Any]:
    """A cut that leaves the wanted children where they are, and waste in between."""
    low = 0 if cut == "crosscut" else 1
    end = box[low + 2]
    at = box[low]
    into: list[dict[str, Any]] = []
    for number, child in enumerate(wanted):
        start, stop = child["box"][low], child["box"][low + 2]
        if start - at > kerf or (into and start - at > 0):
            into.append({"box": _part(box, low, at, start - kerf), "fate": "burn"})
        follower = wanted[number + 1]["box"][low] if number + 1 < len(wanted) else None
        # Less than a kerf of wood would be left before the neighbour: two passes of the
        # blade take it, and the second is a cut of its own.
        if follower is not None and stop + kerf < follower <= stop + 2 * kerf:
            outer = _part(box, low, start, follower - kerf)
            child = {"box": outer, "cut": cut, "into": [child]}
            stop = follower - kerf
        into.append(child)
        at = stop + kerf
    if end - at > 0:
        into.append({"box": _part(box, low, at, end), "fate": "keep", "worth": 0})
    return {"box": list(box), "cut": cut, "into": into}


def _part(box: Sequence[int], low: int, start: int, stop: int) -> list[int]:
    part = list(box)
    part[low], part[low + 2] = start, stop
    return part


def _named(node: Mapping[str, Any], node_id: str) -> dict[str, Any]:
    """The node with ids all the way down, and names for what is kept."""
    named = {"id": node_id, **node}
    if "into" in node:
        named["into"] = [
            _named(child, f"{node_id}.{number}")
            for number, child in enumerate(node["into"], 1)
        ]
    if node.get("fate") == "keep":
        named["name"] = f"offcut {node_id}"
    return named


def _still(cells: Cells, wide: int, left: Mapping[str, int]) -> list[TinyBlank]:
    """The blanks that are still needed and narrow enough."""
    return [
        blank
        for blank in cells.wood.blanks
        if not blank.step
        and cells.cells(blank)[1] <= wide
        and all(left.get(part, 0) >= n for part, n in blank.makes.items())
    ]


def _less(left: Mapping[str, int], row: Sequence[Placed]) -> Mapping[str, int]:
    made = Counter(left)
    for blank, _, _, _ in row:
        made.subtract(blank.makes)
    return made


def _made(need: Mapping[str, int], rows: Sequence[Sequence[Placed]]) -> Made:
    made: Counter[str] = Counter()
    for row in rows:
        for blank, _, _, _ in row:
            made.update(blank.makes)
    return tuple(made[part] for part in need)
