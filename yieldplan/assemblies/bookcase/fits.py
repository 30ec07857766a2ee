"""A bookcase put together again from its finished parts, to see that it has the size that was asked."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from yieldplan.assemblies.assembly import Fit
from yieldplan.assemblies.bookcase.case import Across, Case
from yieldplan.joints.joint import Joint, Role
from yieldplan.model.parts import Part
from yieldplan.units import Inches

if TYPE_CHECKING:
    from yieldplan.assemblies.bookcase import Bookcase


def fits(bookcase: Bookcase, case: Case, parts: Mapping[str, Part]) -> Iterator[Fit]:
    """Sizes of the finished bookcase beside those the job asks for.

    Of `case` only what the job and the shop say is taken, never a size it works out.

    Parameters
    ----------
    parts
        By what they are in the case: `side`, `top`.
    """
    side, top, bottom = parts["side"], parts["top"], parts["bottom"]
    behind = parts["back"].thickness.value if "back" in parts else Fraction(0)
    if "back board" in parts:
        behind = parts["back board"].thickness.value
    proud = _proud(case.top, side, top) + _proud(case.bottom, side, bottom)
    high = side.length.value - proud
    yield Fit(words="height of the sides", got=high, asked=bookcase.height)
    yield Fit(words="depth", got=side.width.value, asked=bookcase.depth)
    for part, joint in _across(case, parts):
        got = part.length.value + 2 * _left(joint, side.thickness.value)
        yield Fit(words=f"width over {part.id}", got=got, asked=bookcase.width)
    deep = top.width.value + (0 if case.top_is_rabbeted else behind)
    yield Fit(words="depth at the top", got=deep, asked=bookcase.depth)
    deep = bottom.width.value + behind
    yield Fit(words="depth at the bottom", got=deep, asked=bookcase.depth)
    if "shelf" in parts:
        got = parts["shelf"].width.value + bookcase.shelf.set_back + behind
        yield Fit(words="depth at a shelf", got=got, asked=bookcase.depth)
    clear = bookcase.width - 2 * side.thickness.value
    if bookcase.loose is not None:
        loose = parts["loose shelf"]
        got = loose.length.value + 2 * case.loose_clearance
        yield Fit(words="between the sides", got=got, asked=clear)
        got = loose.width.value + bookcase.loose.set_back + behind
        yield Fit(words="depth at a loose shelf", got=got, asked=bookcase.depth)
    yield from _heights(bookcase, case, parts)
    if bookcase.back is not None:
        yield from _back(bookcase, case, parts, clear)


def _heights(
    bookcase: Bookcase, case: Case, parts: Mapping[str, Part]
) -> Iterator[Fit]:
    """From the floor to the top of the case, through every opening."""
    shelves = len(case.openings) - 1
    up = parts["toe kick"].width.value if "toe kick" in parts else case.bottom.set_in
    if "toe kick" in parts and bookcase.toe_kick is not None:
        yield Fit(words="toe kick", got=up, asked=bookcase.toe_kick.height)
    up += parts["bottom"].thickness.value + sum(case.openings)
    up += shelves * (parts["shelf"].thickness.value if shelves else 0)
    up += parts["top"].thickness.value + case.top.set_in
    yield Fit(words="height through the openings", got=up, asked=bookcase.height)


def _back(
    bookcase: Bookcase, case: Case, parts: Mapping[str, Part], clear: Inches
) -> Iterator[Fit]:
    back = case.back
    if back is None:
        return
    rabbets = 2 * back.joint.depth(mate=parts["side"].thickness.value).value
    boards = [
        parts[each]
        for each in ("back", "back board", "last back board")
        if each in parts
    ]
    wide = sum((each.quantity * each.width.value for each in boards), case.play)
    if back.boards is not None:
        wide -= (back.boards - 1) * (case.tongue - case.gap)
    yield Fit(words="back, across", got=wide, asked=clear + rabbets)
    asked = bookcase.height - case.bottom.set_in - case.top.set_in
    if case.top_is_rabbeted:
        top = parts["top"].thickness.value
        asked -= _left(back.joint, top) + case.play
    for each in boards:
        yield Fit(words=f"height of {each.id}", got=each.length.value, asked=asked)


def _across(case: Case, parts: Mapping[str, Part]) -> Iterator[tuple[Part, Joint]]:
    for words, joint in (
        ("top", case.top.joint),
        ("bottom", case.bottom.joint),
        ("shelf", case.shelf.joint),
        ("toe kick", case.kick_joint),
    ):
        if words in parts:
            yield parts[words], joint


def _left(joint: Joint, mate: Inches) -> Inches:
    """What stays of the mate beyond the end of the part that enters it. [in]"""
    return mate - joint.depth(mate=mate).value


def _proud(end: Across, side: Part, part: Part) -> Inches:
    """What stands out of the side's end until it is planed flush. [in]"""
    if end.set_in or not end.joint.makes_box_corner:
        return Fraction(0)
    return end.joint.allowance(
        role=Role.HOUSING, own=side.thickness.value, mate=part.thickness.value
    ).value
