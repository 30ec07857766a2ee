"""The items and marks of boards as plain tables, for the compiled loops that lay narrow parts beside marks."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from yieldplan.packing.grid.crossings import Ints
from yieldplan.packing.patterns.beside_marks_tables import Shorts, lowest_tops
from yieldplan.packing.patterns.bin_faces import BinFaces
from yieldplan.packing.patterns.group import Group
from yieldplan.packing.patterns.values import ShapeValues


@dataclass(frozen=True)
class Items:
    """The shapes worth cutting at the prices, the shortest first."""

    item: tuple[int, ...]
    lengths: Ints
    widths: Ints
    values: Ints
    zones: Ints
    rules: tuple[int, ...]
    is_width: Ints


@dataclass(frozen=True)
class Marks:
    """A board's marks, and how low each item lies beside them."""

    blocks: Ints
    tops: Shorts
    is_new: Shorts


def items_of(group: Group, values: ShapeValues) -> Items:
    """The shapes of a group that are worth something."""
    shapes: list[tuple[int, int, int]] = []
    kept: dict[int, list[tuple[int, int]]] = {}
    for number, shape in sorted(
        enumerate(group.shapes), key=lambda each: (each[1].length, each[1].width)
    ):
        worth = int(values.value[number])
        known = kept.setdefault(shape.face_class, [])
        # A smaller one that is worth as much lies wherever this one may.
        if worth <= 0 or any(
            wide <= shape.width and value >= worth for wide, value in known
        ):
            continue
        if not any(shape.zones):
            known.append((shape.width, worth))
        shapes.append((shape.length, shape.width, number))
    chosen = [group.shapes[number] for _, _, number in shapes]
    numbers = [number for _, _, number in shapes]
    is_width = np.zeros(group.widest + 1, np.int64)
    is_width[[shape.width for shape in chosen]] = 1
    return Items(
        tuple(values.item[number] for number in numbers),
        np.array([shape.length for shape in chosen], np.int64),
        np.array([shape.width for shape in chosen], np.int64),
        values.value[numbers].astype(np.int64),
        np.array([shape.zones for shape in chosen], np.int64).reshape(-1, 2),
        tuple(shape.face_class for shape in chosen),
        is_width,
    )


def marks_of(faces: BinFaces, items: Items) -> Marks:
    """A board's marks, and where each item may lie beside them."""
    blocks = np.array(
        [(b.i0, b.i1, b.u0, b.u1) for b in faces.blocks], np.int64
    ).reshape(-1, 4)
    bits = np.arange(len(faces.blocks))
    forbidden = np.array(
        [[side >> bits & 1 for side in faces.forbidden[r]] for r in items.rules],
        np.int64,
    ).reshape(len(items.rules), 2, len(bits))
    in_zones = np.array(
        [faces.in_zones[rule] >> bits & 1 for rule in items.rules], np.int64
    ).reshape(len(items.rules), len(bits))
    tops, is_new = lowest_tops(
        items.lengths,
        items.widths,
        items.zones,
        forbidden,
        in_zones,
        blocks,
        faces.grid.along,
        faces.grid.across,
    )
    return Marks(blocks, tops, is_new)
