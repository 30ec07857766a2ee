"""What becomes of wood that is not kept, written on it: no blank leftover on a board."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from yieldplan.drawing.labels import first_that_fits
from yieldplan.drawing.panels import Leaf
from yieldplan.drawing.saw_size.words import Way
from yieldplan.drawing.scene import Box, Item, Rect, Text

_SIZES = ((11.0, False), (11.0, True), (10.0, True))


def must_be_said(leaf: Leaf) -> bool:
    """Whether the saw is set to something for it, which has to be read."""
    is_sliver = leaf.node.fate == "edge"
    return not is_sliver and any(each.word != "rest" for each in leaf.settings)


def in_a_line(leaf: Leaf) -> str:
    """`rip 1 3/4, burn`; of an edge, `take 1/2 off`."""
    said = [
        f"take {each.figure} off" if each.word == "off" else str(each)
        for each in leaf.settings
    ]
    return ", ".join([*said, leaf.node.fate or ""])


def say(leaf: Leaf, avoid: list[Rect], leads: list[Rect]) -> list[Item] | None:
    """The words on a white patch; None when something that must be said does not fit."""
    room = leaf.rect.inset(1.0)
    if leaf.node.fate == "edge":
        return []
    hides = must_be_said(leaf)
    words = first_that_fits(list(_ways(leaf)), room, avoid, may_hide=hides, over=leads)
    if words is None:
        return None if hides else []
    texts = [item for item in words if isinstance(item, Text)]
    return [
        item for text in texts for item in (Box(rect=text.rect(), fill="white"), text)
    ]


def _ways(leaf: Leaf) -> Iterator[Way]:
    bold = must_be_said(leaf)
    said = in_a_line(leaf)
    for size, condensed in _SIZES:
        whole = Text(
            x=0, y=0, text=said, size=size, bold=bold, condensed=condensed, figures=True
        )  # fmt: skip
        yield ((whole,),)
        if not bold:
            yield ((replace(whole, text=leaf.node.fate or ""),),)
            continue
        lines = said.split(", ")
        yield tuple((replace(whole, text=line),) for line in lines)
        if leaf.settings[-1].word == "off":
            yield ((replace(whole, text=lines[0]),),)  # an edge is never kept
