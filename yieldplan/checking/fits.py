"""What fits what: which blanks may come from which piece, by line, thickness, twist and bow."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.checking.facts import Piece, Plan, Rules
from yieldplan.checking.wanted import Blank

ROUNDED = 1
"""A size off the grid was rounded up for the part and down for the stock. [ticks]"""


def may_come_from(plan: Plan, rules: Rules, blank: Blank, piece: Piece) -> bool:
    """Whether a blank may be cut from a piece at all, its marks aside."""
    return is_listed(blank, piece) and not any(
        hindrances_of_shape(plan, rules, blank, piece)
    )


def is_listed(blank: Blank, piece: Piece) -> bool:
    """Whether a blank is of the piece's wood and lists its line."""
    return piece.wood == blank.wood and piece.line in blank.lines


def hindrances_of_shape(
    plan: Plan, rules: Rules, blank: Blank, piece: Piece
) -> Iterator[str]:
    """Why a piece is too twisted, too bowed or too crooked for a blank, in words."""
    if piece.twist and blank.length > rules.twisted_at_most:
        yield (
            f"{piece.id} is twisted, and {plan.say(rules.twisted_at_most)} is the most "
            f"that comes from it; blank {blank.id} is {plan.say(blank.length)}"
        )
    if piece.bow:
        lost = lost_over(piece.bow, blank.length, piece.length)
        for least, slack in thicknesses(plan, rules, blank, piece):
            if piece.thick - lost + slack < least:
                yield (
                    f"flattening {plan.say(blank.length)} of {piece.id}, which is bowed, "
                    f"takes {plan.say(lost)} of its {plan.say(piece.thick)}; blank "
                    f"{blank.id} needs {plan.say(least)}"
                )
    if blank.step is not None and not piece.is_straight:
        yield f"{piece.id} is not straight, and blank {blank.id} is a step of a set"


def thicknesses(
    plan: Plan, rules: Rules, blank: Blank, piece: Piece
) -> Iterator[tuple[int, int]]:
    """What a blank asks of a piece's thickness, and what rounding may have made of it. [ticks]"""
    finished = max((plan.part_of[part].size[2] for part in blank.makes), default=0)
    # What is planed already need only be as thick as the part ends at.
    yield max(finished, 0 if piece.planed else blank.thickness), ROUNDED
    if blank.num_slices > 1:
        yield sliced(plan, rules, blank)


def sliced(plan: Plan, rules: Rules, blank: Blank) -> tuple[int, int]:
    """What a blank's slices and the kerfs between them take, and a tick for each. [ticks]"""
    thickest: dict[int, int] = {}
    for inside in blank.inside:
        thick = plan.part_of[inside.part].size[2]
        thickest[inside.slice] = max(thick, thickest.get(inside.slice, 0))
    num_kerfs = blank.num_slices - 1
    total = sum(thickest.values()) + num_kerfs * rules.resaw_kerf
    return total, len(thickest) + num_kerfs


def lost_over(off: int, length: int, whole: int) -> int:
    """What crook or bow of a whole piece comes to over a part of its length. [ticks]

    ``ceil(off * length**2 / whole**2)``: an arc's rise goes with the square of its chord.
    """
    return -(-off * length * length // (whole * whole))
