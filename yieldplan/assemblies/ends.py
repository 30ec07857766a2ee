"""What a joint at the end of a part makes of its length, written the way a maker would write it."""

from __future__ import annotations

from yieldplan.joints.joint import MATE, Joint, Role
from yieldplan.model.sums import Sum, Term
from yieldplan.units import Inches


def from_outside(
    joint: Joint, role: Role, *, own: Inches, mate: Inches, mate_words: str
) -> Sum:
    """From the outside of the work to the end of the part: what to add, or take off.

    Parameters
    ----------
    own, mate
        Thickness of the part, and of its mate in the direction of the joint. [in]
    mate_words
        What to call the mate's thickness: `front`.
    """
    added = joint.allowance(role=role, own=own, mate=mate)
    if role is Role.HOUSING:
        # A part that runs to the outside with nothing added has nothing to say.
        return added if added.value else Sum(())
    if joint.base == "outside":
        return _named(added, mate_words)
    return Sum.of((mate_words, -mate)) + _named(added, mate_words)


def from_inside(joint: Joint, *, own: Inches, mate: Inches, mate_words: str) -> Sum:
    """From the face its mate shows inside to the end of a part that enters the mate."""
    added = joint.allowance(role=Role.HOUSED, own=own, mate=mate)
    if joint.base == "shoulders":
        return _named(added, mate_words)
    return Sum.of((mate_words, mate)) + _named(added, mate_words)


def folded(total: Sum) -> Sum:
    """The sum with terms that cancel left out and equal terms taken together.

    `20 opening depth − 3/4 front + 3/4 front − 3/8 lap` is `20 opening depth − 3/8 lap`.
    """
    return total.folded()


def _named(total: Sum, mate_words: str) -> Sum:
    return Sum(
        tuple(
            Term(mate_words if t.words == MATE else t.words, t.inches, t.times)
            for t in total
        )
    )
