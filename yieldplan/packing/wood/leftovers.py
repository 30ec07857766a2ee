"""What is left of a board: end trims, edges, offcuts worth keeping with a name, and firewood."""

from __future__ import annotations

from dataclasses import dataclass, replace

from yieldplan.model.plan import Box, Node
from yieldplan.model.shop import Shop
from yieldplan.packing.problem import Bin
from yieldplan.units import Inches, to_ticks_down, to_ticks_up


@dataclass(frozen=True)
class KeepSizes:
    """Least (length, width) of an offcut worth keeping; any of them will do. [ticks]"""

    sizes: tuple[tuple[int, int], ...]

    @staticmethod
    def of(shop: Shop, *, show: bool, stick: Inches | None = None) -> KeepSizes:
        """The shop's sizes, for show wood or for secondary wood.

        Parameters
        ----------
        stick
            Width of the stick, where sticks are cut: whatever is long enough is kept.
            [in]
        """
        if stick is not None:
            return KeepSizes(
                ((to_ticks_up(shop.keep_stick_length), to_ticks_down(stick)),)
            )
        sizes = (
            (
                (shop.keep_show_length, shop.keep_show_width),
                (shop.keep_narrow_length, shop.keep_narrow_width),
            )
            if show
            else ((shop.keep_other_length, shop.keep_other_width),)
        )
        return KeepSizes(
            tuple((to_ticks_up(length), to_ticks_up(width)) for length, width in sizes)
        )

    def is_worth(self, length: int, width: int) -> bool:
        """Whether an offcut of this size is kept. [ticks]"""
        return any(
            length >= least_length and width >= least_width
            for least_length, least_width in self.sizes
        )


def usable(box: Box, piece: Bin) -> Box:
    """The part of a box that lies inside end trims and edge passes; may be empty."""
    return (
        max(box[0], piece.trims[0]),
        max(box[1], piece.edges[0]),
        min(box[2], piece.length - piece.trims[1]),
        min(box[3], piece.width - piece.edges[1]),
    )


def with_fates(node: Node, piece: Bin, keep: KeepSizes) -> Node:
    """The tree with the fate of every leaf that is no blank decided."""
    if node.into:
        into = tuple(with_fates(child, piece, keep) for child in node.into)
        if node.cut == "rip":
            into = (_edge_off(into[0], piece), *into[1:])
        return replace(node, into=into)
    if node.fate is None:
        return node
    x0, y0, x1, y1 = usable(node.box, piece)
    if x1 <= x0:
        return replace(node, fate="trim")
    if y1 <= y0:
        return replace(node, fate="edge")
    # How wide a leftover of a crooked or tapered board is, only its own two ends can
    # tell: none is promised.
    is_kept = piece.is_straight and _has_worth((x0, y0, x1, y1), piece, keep)
    return replace(node, fate="keep" if is_kept else "burn")


def _edge_off(first: Node, piece: Bin) -> Node:
    """A strip kept from the near edge, without what straightens that: it must run on the fence."""
    x0, y0, x1, y1 = first.box
    fresh = piece.edges[0]
    return (
        replace(first, box=(x0, max(y0, fresh), x1, y1))
        if first.fate == "keep"
        else first
    )


def with_worth(tree: Node, worth: int) -> Node:
    """The tree with what is left beyond its last cut kept for so much. [money/10,000]"""
    if not worth:
        return tree
    last = max(
        place
        for place, child in enumerate(tree.into)
        if any(leaf.blank for leaf in child.leaves())
    )
    if last + 1 == len(tree.into) and tree.into[last].cut == tree.cut:
        # A second pass of the blade: the row goes on inside its last node.
        rest = with_worth(tree.into[last], worth)
        return replace(tree, into=(*tree.into[:last], rest))
    left = replace(tree.into[last + 1], fate="keep", worth=worth)
    return replace(tree, into=(*tree.into[: last + 1], left, *tree.into[last + 2 :]))


_MANY_MARKS = 8


def _has_worth(box: Box, piece: Bin, keep: KeepSizes) -> bool:
    """Whether a place between the marks of an offcut is worth keeping it for."""
    x0, y0, x1, y1 = box
    if not keep.is_worth(x1 - x0, y1 - y0):
        return False
    marks = [
        mark.box
        for mark in piece.blocks
        if mark.box[0] < x1 and mark.box[2] > x0 and mark.box[1] < y1 and mark.box[3] > y0
    ]  # fmt: skip
    if len(marks) > _MANY_MARKS:
        return False
    # The largest clear places end at marks or at the offcut's own edges.
    lefts = sorted({x0, *(mark[2] for mark in marks if mark[2] < x1)})
    rights = sorted({x1, *(mark[0] for mark in marks if mark[0] > x0)})
    lows = sorted({y0, *(mark[3] for mark in marks if mark[3] < y1)})
    highs = sorted({y1, *(mark[1] for mark in marks if mark[1] > y0)})
    return any(
        keep.is_worth(right - left, high - low)
        and not any(
            mark[0] < right and mark[2] > left and mark[1] < high and mark[3] > low
            for mark in marks
        )
        for left in lefts
        for right in rights
        for low in lows
        for high in highs
        if left < right and low < high
    )


def with_names(tree: Node) -> Node:
    """The tree with its offcuts named after their board: W07-A, W07-B."""
    names = (f"{tree.id}-{_letters(number)}" for number in range(10**6))

    def named(node: Node) -> Node:
        if node.fate == "keep":
            return replace(node, name=next(names))
        return replace(node, into=tuple(named(child) for child in node.into))

    return named(tree)


def _letters(number: int) -> str:
    first, last = divmod(number, 26)
    letter = chr(ord("A") + last)
    return (_letters(first - 1) if first else "") + letter
