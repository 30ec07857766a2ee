"""Sizes no board comes in: a lost point or another unit, said before anything is bought."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from yieldplan.model.parts import Part
from yieldplan.units import UnitName, tape

_LONGEST = Fraction(16 * 12)
"""Longest length hardwood is graded in (from memory: 4 to 16 ft). [in]"""
_WIDEST = Fraction(48)
"""Wider panels are rare: common practice, no source. [in]"""
_NAMED = 3


def too_large(parts: Iterable[Part], unit: UnitName) -> Iterator[str]:
    """One caution for all parts that are larger than wood comes."""
    found = [
        f"{part.id}, {tape(part.length.value, unit)} × {tape(part.width.value, unit)} {unit}"
        for part in parts
        if not part.is_sheet
        and not part.is_stick
        and (part.length.value > _LONGEST or part.width.value > _WIDEST)
    ]
    if found:
        more = f" and {len(found) - _NAMED} more" if len(found) > _NAMED else ""
        yield (
            f"Hardly any wood is so large: {'; '.join(found[:_NAMED])}{more}. Look for a"
            " lost point or another unit in the job."
        )
