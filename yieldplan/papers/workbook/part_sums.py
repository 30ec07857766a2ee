"""The lines under a part: the sum of each size, the rough size to saw, and what else the bench should know."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from yieldplan.measure.sawn import Sawn
from yieldplan.model.blanks import Blank
from yieldplan.model.parts import Part
from yieldplan.model.sums import Sum
from yieldplan.papers.workbook.words import size
from yieldplan.units import UnitName

GRID = 32
"""Finished sizes are read to 1/32 in, and so are the sums behind them."""


def lines_under(
    part: Part, sawn: Sawn, unit: UnitName, written: dict[str, str], route: str = ""
) -> list[str]:
    """What is written under a part, one thought a line.

    Parameters
    ----------
    route
        How it was made and what the next best would have cost; nothing in a bid.
    written
        Sums that stand further up, and the part they stand under; grows.
    """
    said: list[str] = []
    as_above: dict[str, list[str]] = {}
    for name, text in [*_sums(part, unit), *_rough(sawn, unit)]:
        above = written.setdefault(text, part.id)
        if above == part.id:
            said.append(text)
        else:
            as_above.setdefault(above, []).append(name)
    said += [f"{', '.join(names)}: as {above}" for above, names in as_above.items()]
    if route and not any(blank.is_sawn_to_size for blank in sawn.blanks):
        said.append(f"route: {route}")
    notes = (_glued(part), _from_sheet(sawn), part.note, _no_room(sawn))
    if any(notes):
        said.append("; ".join(dict.fromkeys(note for note in notes if note)))
    return [*said, *_missing(sawn)]


def _sums(part: Part, unit: UnitName) -> Iterator[tuple[str, str]]:
    sizes = (
        ("length", part.length),
        ("width", part.width),
        ("thickness", part.thickness),
    )
    for name, total in sizes:
        if not _says_nothing(name, total):
            yield name, f"{name}: {total.say(unit, grid=GRID)}"


def _says_nothing(name: str, total: Sum) -> bool:
    """Whether a sum is the finished size over again."""
    return len(total.terms) == 1 and total.terms[0].words in (
        "", "as drawn", "stick", name,
    )  # fmt: skip


def _rough(sawn: Sawn, unit: UnitName) -> Iterator[tuple[str, str]]:
    solid = [blank for blank in sawn.blanks if not blank.is_sawn_to_size]
    strips = [blank for blank in solid if _is_strip(blank)]
    lines = [_rough_line(blank, unit) for blank in solid if not _is_strip(blank)]
    if strips:
        lines.append(_rough_strips(strips, unit))
    for line in dict.fromkeys(lines):
        yield "rough size", line


def _rough_line(blank: Blank, unit: UnitName) -> str:
    whole = size((blank.thickness.value, blank.width.value, blank.length.value), unit)
    others = "" if len(blank.inside) < 2 else f" for {blank.words}"
    why = "; ".join(
        f"{name} {total.say(unit, grid=GRID)}"
        for name, total in (
            ("length", blank.length),
            ("width", blank.width),
            ("thickness", blank.thickness),
        )
    )
    return f"rough{others}: {whole}   ({why})"


def _is_strip(blank: Blank) -> bool:
    """Whether it is a strip of free width: one size says as much as all of them."""
    return blank.route == "glue up" and len(blank.inside) == 1


def _rough_strips(strips: Sequence[Blank], unit: UnitName) -> str:
    first = strips[0]
    widths = sorted({strip.width.value for strip in strips})
    wide = [size((width,), unit) for width in widths]
    wide = [wide[0], wide[-1]] if len(wide) > 1 else wide
    thick = size((first.thickness.value,), unit)
    long = size((first.length.value,), unit)
    why = "; ".join(
        f"{name} {total.say(unit, grid=GRID)}"
        for name, total in (("length", first.length), ("thickness", first.thickness))
    )
    joint = size((first.width.terms[-1].inches,), unit)
    return (
        f"rough strips: {thick} × {' to '.join(wide)} × {long}   ({why};"
        f" width {joint} over what the strip brings)"
    )


def _glued(part: Part) -> str:
    return f"glued up from {part.strips} equal strips" if part.strips > 1 else ""


def _from_sheet(sawn: Sawn) -> str:
    if any(blank.is_stick for blank in sawn.blanks):
        return "cut to length from the stick"
    if sawn.boards and any(blank.turned for blank in sawn.blanks):
        ways = {blank.turned for blank in sawn.blanks}
        turned = "some of them turned" if len(ways) > 1 else "turned"
        return f"sawn to size from the sheet, {turned} across it"
    is_sheet = any(blank.is_sheet for blank in sawn.blanks)
    return "sawn to size from the sheet" if is_sheet else ""


def _no_room(sawn: Sawn) -> str:
    count = sawn.left_out
    return f"no waste was large enough for {count} of them" if count else ""


def _missing(sawn: Sawn) -> list[str]:
    if sawn.missing is None:
        return []
    missing = sawn.missing
    count = missing.count if missing.parts is None else missing.parts
    return [f"MISSING {count}: {missing.reason}; {missing.remedy}"]
