"""Marks on a board and the words that say which of them a face may show."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from yieldplan.units import Inches

MarkKind = Literal[
    "knot", "split", "check", "wane", "sap", "pith", "stain", "worm", "hole", "shake"
]
MARK_KINDS: tuple[MarkKind, ...] = (
    "knot", "split", "check", "wane", "sap", "pith", "stain", "worm", "hole", "shake",
)  # fmt: skip
MarkFace = Literal["A", "B", "through"]
FaceWord = Literal["clear", "sap allowed", "sound", "any"]

_ALL = frozenset(MARK_KINDS)
FORBIDS: dict[FaceWord, frozenset[MarkKind]] = {
    "clear": _ALL,
    "sap allowed": _ALL - {"sap", "stain"},
    "sound": _ALL - {"knot", "sap", "stain"},
    # A test piece may look like anything, but a cracked one lets go in the machine.
    "any": frozenset({"split", "check", "shake"}),
}
"""Which kinds of mark each face word forbids."""

_COLOUR = frozenset({"sap", "stain"})


def forbidden_by(word: FaceWord, *, bridge_pith: bool) -> frozenset[MarkKind]:
    """Which kinds of mark a face word forbids in a shop.

    Parameters
    ----------
    bridge_pith
        Whether a part whose face need only be sound may have the pith in it.
    """
    if bridge_pith and word in ("sound", "any"):
        return FORBIDS[word] - {"pith"}
    return FORBIDS[word]


def forbidden_in_joints(*, bridge_pith: bool) -> frozenset[MarkKind]:
    """Which kinds of mark may not lie where a joint is cut; colour does no harm there."""
    kept_out = _ALL - _COLOUR
    return kept_out - {"pith"} if bridge_pith else kept_out


@dataclass(frozen=True, kw_only=True)
class Mark:
    """A defect, in the frame of its board: x from the numbered end, y from the near edge.

    Parameters
    ----------
    x0, x1
        Stretch of length. [in]
    y0, y1
        Stretch of width. [in]
    """

    kind: MarkKind
    face: MarkFace
    x0: Inches
    x1: Inches
    y0: Inches
    y1: Inches
