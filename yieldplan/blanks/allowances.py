"""What a blank is larger by than the parts in it: one allowance a reason, decided by its largest part."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from yieldplan.model.parts import Part
from yieldplan.model.shop import Shop
from yieldplan.model.sums import Sum
from yieldplan.units import Inches

NOTHING = Sum(())


def on_length(parts: Sequence[Part], shop: Shop) -> Sum:
    """Added once to the length of a blank that holds these parts."""
    if _is_cut_to_size(parts):
        return NOTHING
    if any(part.strips > 1 for part in parts):
        # The panel is squared up after the glue has set; its strips need no more.
        return Sum.of(("to square the panel", shop.panel_length))
    if any(part.leg for part in parts):
        return Sum.of(("rough length of a leg", shop.rough_length_leg))
    longest = max(part.length.value for part in parts)
    is_long = longest > shop.long_over
    return Sum.of(
        ("rough length", shop.rough_length_long if is_long else shop.rough_length_short)
    )


def on_width(
    parts: Sequence[Part], width: Inches, shop: Shop, *, run: Inches | None = None
) -> Sum:
    """Added once to the width of a blank of unglued parts.

    Parameters
    ----------
    width
        Finished width of all that lies side by side in the blank. [in]
    run
        Length that goes over the machines in one, where it is not the longest part's.
        [in]
    """
    if _is_cut_to_size(parts):
        return NOTHING
    longest = max(part.length.value for part in parts) if run is None else run
    if longest > shop.very_long_over:
        return Sum.of(("rough width", shop.rough_width_long))
    is_small = width <= shop.small_up_to_width and longest <= shop.small_up_to_length
    return Sum.of(
        ("rough width", shop.rough_width_small if is_small else shop.rough_width)
    )


def on_strip_width(part: Part, shop: Shop) -> Sum:
    """Added to the width of each strip: its share of the panel's, and its own joints."""
    share = shop.panel_width / part.strips
    return Sum.of((f"to trim the panel, 1 of {part.strips} shares", share)) + Sum.of(
        ("to joint the strip", shop.strip_width)
    )


def on_thickness(
    parts: Sequence[Part], width: Inches, shop: Shop, *, run: Inches | None = None
) -> Sum:
    """Planed away from rough stock, and from the panel after glue-up; `run` as for the width."""
    if any(part.is_sawn_to_size for part in parts):
        return NOTHING
    longest = max(part.length.value for part in parts) if run is None else run
    planing = shop.planing
    if all(part.flat for part in parts) and longest <= shop.planing_flat_up_to:
        planing = shop.planing_flat
    elif (
        longest > shop.planing_large_over_length
        or width > shop.planing_large_over_width
    ):
        planing = shop.planing_large
    return on_panel(parts, shop) + Sum.of(("planing", planing))


def on_panel(parts: Sequence[Part], shop: Shop) -> Sum:
    """What strips are thicker by than the panel they are glued up to."""
    if any(part.strips > 1 for part in parts):
        return Sum.of(("to flatten the panel", shop.panel_thickness))
    return NOTHING


def up_to_machine(length: Sum, parts: Sequence[Part], shop: Shop) -> Sum:
    """What brings a blank up to the shortest the machines may take.

    The parts are cut to length after milling, so the wood is only lent.
    """
    short = shop.machine_length - length.value
    if short <= 0 or any(part.is_sawn_to_size for part in parts):
        return NOTHING
    return Sum.of(("to the machines' shortest", short))


def _is_cut_to_size(parts: Sequence[Part]) -> bool:
    # A sheet's parts come off the saw finished; of a test piece any end will do.
    return all(part.is_sawn_to_size or part.set_up for part in parts)


def half(allowance: Sum) -> Inches:
    """Where the part begins in its blank: the same is left on both sides of it. [in]"""
    return allowance.value / Fraction(2)
