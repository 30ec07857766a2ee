"""What to mind when a blank goes through the machines; the machine's own manual comes first."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from yieldplan.model.parts import Part
from yieldplan.model.shop import Shop
from yieldplan.model.sums import Sum
from yieldplan.units import Inches, UnitName, tape

THINNEST = Fraction(1, 4)
"""The least thickness planer and jointer manuals give for stock by itself. [in]"""


def cautions(
    *,
    length: Sum,
    width: Sum,
    finished_thickness: Inches,
    comes_to_size: bool,
    lent: bool,
    shop: Shop,
    unit: UnitName,
    is_crosscut_only: bool = False,
) -> Iterator[str]:
    """Sentences for the bench.

    Parameters
    ----------
    comes_to_size
        Whether the saw leaves it finished, as what comes from sheets and sticks.
    is_crosscut_only
        Whether it is cut to length and nothing else is done to it (sticks).
    lent
        Whether the blank is longer than its parts need, so that machines can take it.
    """
    if is_crosscut_only:
        return
    if length.value < shop.shortest_rip:
        yield f"Under {_say(shop.shortest_rip, unit)} long: do not rip it at the fence by itself."
    if width.value < shop.narrowest_rip:
        yield f"Under {_say(shop.narrowest_rip, unit)} wide: rip it off a wider piece, with a push block."
    if comes_to_size:
        return
    if lent:
        yield "Mill it at this length and cut the part off it afterwards."
    if width.value > shop.planer_width:
        yield (
            f"Wider than the planer ({_say(shop.planer_width, unit)}): flatten it by hand, or say strips in the job."
        )
    elif width.value > shop.jointer_width:
        yield (
            f"Wider than the jointer ({_say(shop.jointer_width, unit)}): flatten one face by hand or on a sled."
        )
    if finished_thickness < THINNEST:
        yield f"Under {_say(THINNEST, unit)} thick: plane it on a carrier board."


def panel_cautions(part: Part, shop: Shop, unit: UnitName) -> Iterator[str]:
    """What to do with a panel that the planer cannot take once it is glued up."""
    wide = part.width.value + shop.panel_width
    if wide > shop.planer_width:
        pieces = ceil(wide / shop.planer_width)
        yield (
            f"{part.id}, {_say(wide, unit)} before it is trimmed, is wider than the planer: glue its"
            f" strips into {pieces} narrower panels, none wider than {_say(shop.planer_width, unit)}, plane"
            " each, then join them."
        )


def _say(inches: Inches, unit: UnitName) -> str:
    return f"{tape(inches, unit)} {unit}"
