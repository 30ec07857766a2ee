"""Property 3: a job written in inches or in millimetres, every setting given, is the same job."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from tempfile import TemporaryDirectory

from hypothesis import given, settings
from hypothesis import strategies as st

from yieldplan import assemblies, blanks, job
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.model.parts import Part
from yieldplan.model.rounding import blank_in_ticks
from yieldplan.reference.tables import shop_defaults
from yieldplan.units import UnitName, parse_length, tape, to_ticks_up

NOT_SIZES = {"breakdown", "gang_at_most", "set_up_pieces", "moisture_today"}
NOT_SIZES |= {"moisture_wettest"} | {k for k in shop_defaults() if k.startswith("add_")}

JOB = """title = "Case"
unit = "{unit}"
currency = "USD"
[shop]
{shop}
[shop.drawer]
side = {{ wood = "poplar", thickness = {half} }}
back = {{ wood = "poplar", thickness = {half}, joint = "rabbet" }}
bottom = {{ sheet = "bottom" }}
[wood.walnut]
[wood.poplar]
[sheet.bottom]
product = "birch plywood"
thickness = "5.2 mm"
size = ["48 in", "96 in"]
price = 38
[[drawer]]
name = ["upper", "lower"]
opening = {{ width = {width}, height = {height}, depth = {depth} }}
front = {{ wood = "walnut", thickness = {three_quarters}, joint = {{ kind = "half-blind dovetail", lap = {lap} }} }}
[[grain_match]]
name = "fronts"
parts = ["upper/front", "lower/front"]
[[part]]
name = "top"
wood = "walnut"
length = {width}
width = {depth}
thickness = {three_quarters}
strips = 4
[[part]]
name = "rail"
wood = "walnut"
between = {{ clear = {width}, joint = "mortise and tenon" }}
width = {half}
thickness = {half}
"""


def written(size: Fraction, unit: UnitName) -> str:
    """A size as a tape in this unit says it, to the last decimal."""
    if unit == "in":
        return f'"{tape(size, join="-")}"'
    mm = Decimal((size * 254).numerator) / Decimal((size * 254).denominator) / 10
    return f'"{mm}"'


def job_text(unit: UnitName, sizes: dict[str, Fraction]) -> str:
    lines = []
    for key, default in shop_defaults().items():
        figure = default.inch
        if key == "breakdown":
            figure = f'"{figure}"'
        elif key not in NOT_SIZES:
            size = parse_length(figure)
            # 42 mm stands on no inch tape; it is written as it is in both.
            on_tape = (size * 32).denominator == 1
            figure = written(size, unit) if on_tape else f'"{figure}"'
        lines.append(f"{key} = {figure}")
    figures = {name: written(size, unit) for name, size in sizes.items()}
    return JOB.format(unit=unit, shop="\n".join(lines), **figures)


def made_from(text: str) -> tuple[tuple[Part, ...], tuple[Blank, ...], Fraction]:
    with TemporaryDirectory() as folder:
        file = Path(folder) / "job.toml"
        file.write_text(text, encoding="utf-8")
        faults = Faults()
        commission = job.read(file, faults)
    assert commission is not None
    parts = assemblies.parts_of(commission, faults).parts
    routes = blanks.routes(parts, commission, faults)
    assert [str(fault) for fault in faults] == []
    return parts, routes, commission.shop.kerf


def in_ticks(text: str) -> list[object]:
    parts, routes, kerf = made_from(text)
    of_parts = [
        (p.id, p.quantity, *(to_ticks_up(s.value) for s in (p.length, p.width, p.thickness)))
        for p in parts
    ]  # fmt: skip
    of_blanks = [
        (b.id, b.words, dict(b.makes), blank_in_ticks(b, kerf), to_ticks_up(b.thickness.value))
        for b in routes
    ]  # fmt: skip
    return [*of_parts, *of_blanks]


def eighths(least: int, most: int) -> st.SearchStrategy[Fraction]:
    return st.integers(8 * least, 8 * most).map(lambda n: Fraction(n, 8))


@given(width=eighths(12, 30), height=eighths(4, 9), depth=eighths(14, 22))
@settings(max_examples=15)
def test_inches_and_millimetres_give_the_same_ticks(
    width: Fraction, height: Fraction, depth: Fraction
) -> None:
    sizes = {
        "width": width,
        "height": height,
        "depth": depth,
        "half": Fraction(1, 2),
        "three_quarters": Fraction(3, 4),
        "lap": Fraction(1, 4),
    }
    inch = in_ticks(job_text("in", sizes))
    assert len(inch) > 10
    assert inch == in_ticks(job_text("mm", sizes))
