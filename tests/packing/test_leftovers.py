"""An offcut is kept for the clear place in it, not for its outline."""

from __future__ import annotations

import pytest

from yieldplan.model.plan import Node
from yieldplan.packing.problem import Bin, Block
from yieldplan.packing.wood.leftovers import KeepSizes, with_fates

KEEP = KeepSizes(sizes=((18, 3),))


@pytest.mark.parametrize(
    ("mark", "fate"),
    [
        # 30 x 4 with a mark from 10 to 12: the 18 right of it are clear and 4 wide.
        ((10, 0, 12, 4), "keep"),
        # From 14 to 16 neither 14 nor 14 is 18 long.
        ((14, 0, 16, 4), "burn"),
        # Along one edge, 1 wide: 30 x 3 are left beside it.
        ((0, 0, 30, 1), "keep"),
        # 2 wide: 30 x 2 are too narrow.
        ((0, 0, 30, 2), "burn"),
    ],
)
def test_marks_count_against_an_offcut(
    mark: tuple[int, int, int, int], fate: str
) -> None:
    board = Bin(
        name="W7", length=30, width=4, trims=(0, 0), edges=(0, 0), price=1, copies=1,
        blocks=(Block(box=mark, on_a=1, on_b=1),), holds=frozenset(),
    )  # fmt: skip
    rest = Node(id="W7.1", box=(0, 0, 30, 4), fate="burn")
    assert with_fates(rest, board, KEEP).fate == fate
