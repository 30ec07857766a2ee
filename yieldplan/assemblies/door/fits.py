"""A door put together again from its finished parts, to see that it fills its opening less the gaps."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from yieldplan.assemblies.assembly import Fit
from yieldplan.assemblies.door.frame import Frame
from yieldplan.assemblies.movement import coefficient_of, growth
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.model.shop import Shop
from yieldplan.units import Inches

if TYPE_CHECKING:
    from yieldplan.assemblies.door import Door


def fits(
    door: Door, frame: Frame, parts: Mapping[str, Part], job: Job
) -> Iterator[Fit]:
    """Sizes of the finished door beside those its opening allows.

    Of `frame` only the joint, the groove and where middle rails sit are taken, never a
    size it works out; gaps and room to move are restated here, so that a wrong rule
    there cannot agree with itself.

    Parameters
    ----------
    parts
        By what they are in the door: `top rail`, `left panel`.
    """
    stile = parts["stile"]
    reach = frame.joint.depth(mate=stile.width.value).value
    middles = [parts[each.name] for each in frame.middles]
    rails = [parts["top rail"], *middles, parts["bottom rail"]]
    for rail in rails:
        over = rail.length.value - 2 * reach + 2 * stile.width.value
        yield _across(door, rail, over, job.shop)
    tall = stile.length.value - 2 * door.stile.horns
    yield _up(door, tall, job.shop)

    between = rails[0].length.value - 2 * reach
    heights = list(_row_heights(frame, tall, [rail.width.value for rail in rails]))
    for leaf in ("left ", "right ") if door.leaves == 2 else ("",):
        panels = [
            part
            for name, part in parts.items()
            if name.startswith(leaf) and "panel" in name
        ]
        for panel, height in zip(panels, heights, strict=True):
            yield from _panel(
                door,
                panel,
                wide=between + 2 * frame.groove,
                high=height + 2 * frame.groove,
                job=job,
            )


def _row_heights(
    frame: Frame, tall: Inches, rails: Sequence[Inches]
) -> Iterator[Inches]:
    """What shows between each two rails, from the top down. [in]"""
    if any(middle.up is None for middle in frame.middles):
        rows = len(rails) - 1
        yield from [(tall - sum(rails)) / rows] * rows
        return
    at = tall - rails[0]
    for middle, width in zip(frame.middles, rails[1:], strict=False):
        up = middle.up or Fraction(0)
        yield at - up - width
        at = up
    yield at - rails[-1]


def _across(door: Door, rail: Part, over: Inches, shop: Shop) -> Fit:
    """Both leaves and the gaps over this rail, beside the opening."""
    words = f"across the {rail.id}"
    if door.opening is None:
        asked = door.leaf.width if door.leaf else Fraction(0)
        return Fit(words=words, got=over, asked=asked)
    gap = shop.door_gap if door.gap is None else door.gap
    got = door.leaves * over
    if door.leaves == 2:
        got += gap if door.gap_between is None else door.gap_between
    got += -2 * (door.overlay or 0) if door.is_overlaid else 2 * gap
    return Fit(words=words, got=got, asked=door.opening.width)


def _up(door: Door, tall: Inches, shop: Shop) -> Fit:
    """The leaf and the gaps above and below it, beside the opening."""
    if door.opening is None:
        asked = door.leaf.height if door.leaf else Fraction(0)
        return Fit(words="high", got=tall, asked=asked)
    gap = shop.door_gap if door.gap is None else door.gap
    above, below = door.gap_top, door.gap_bottom
    sign = 1
    if door.is_overlaid:
        sign, gap = -1, door.overlay or Fraction(0)
        above, below = door.overlay_top, door.overlay_bottom
    free = (gap if above is None else above) + (gap if below is None else below)
    return Fit(words="high", got=tall + sign * free, asked=door.opening.height)


def _panel(
    door: Door, panel: Part, *, wide: Inches, high: Inches, job: Job
) -> Iterator[Fit]:
    """The panel and what it leaves free in its grooves.

    Parameters
    ----------
    wide, high
        From groove bottom to groove bottom. [in]
    """
    own, shop = door.panel, job.shop
    along, across = (high, wide) if own.grain == "upright" else (wide, high)
    play = free = shop.panel_play if own.play is None else own.play
    if own.wood is not None:
        moves = coefficient_of(own.wood, job, own.cut) or Fraction(0)
        points = max(Fraction(0), shop.moisture_wettest - shop.moisture_today)
        free = growth(across, coefficient=moves, points=points, step=shop.movement_step)
        free = free if own.room_to_move is None else own.room_to_move
    words = f"{panel.id}, groove to groove"
    yield Fit(words=f"{words} along", got=panel.length.value + play, asked=along)
    yield Fit(words=f"{words} across", got=panel.width.value + free, asked=across)
