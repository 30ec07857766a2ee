"""Figures for people: lengths as a tape says them, money, board feet."""

from __future__ import annotations


def say_length(ticks: int, unit: str) -> str:
    """A length in fractions of an inch or in millimetres, as near as a tape says it."""
    sign, ticks = ("-" if ticks < 0 else ""), abs(ticks)
    if unit == "mm":
        tenths = (ticks + 16) // 32
        about = "" if ticks == tenths * 32 else "about "
        return f"{about}{sign}{tenths // 10}.{tenths % 10} mm"
    sixty_fourths = (ticks * 2 + 127) // 254
    about = "" if ticks == sixty_fourths * 127 else "about "
    return f"{about}{sign}{_mixed(sixty_fourths)} in"


def _mixed(sixty_fourths: int) -> str:
    whole, top = divmod(sixty_fourths, 64)
    bottom = 64
    while top and top % 2 == 0:
        top, bottom = top // 2, bottom // 2
    if not top:
        return str(whole)
    return f"{whole}-{top}/{bottom}" if whole else f"{top}/{bottom}"


def say_money(units: int) -> str:
    """Money for a person, to the last 1/10,000 that is not zero, at least to the cent."""
    sign, units = ("-" if units < 0 else ""), abs(units)
    whole, part = divmod(units, 10_000)
    digits = f"{part:04d}"
    digits = digits[:2] + digits[2:].rstrip("0")
    return f"{sign}{whole}.{digits}"


def say_feet(hundredths: int) -> str:
    """Board feet for a person."""
    return f"{hundredths // 100}.{hundredths % 100:02d}"
