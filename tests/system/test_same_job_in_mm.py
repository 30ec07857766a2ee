"""Property 3: a job said in millimetres is the same job, to the tick, when every setting is given."""

from __future__ import annotations

from dataclasses import fields
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from yieldplan import assemblies, blanks, job
from yieldplan.faults import Faults
from yieldplan.job.shop_table import default_settings
from yieldplan.model.rounding import blank_in_ticks
from yieldplan.model.shop import Shop
from yieldplan.units import tape, to_ticks_up

JOB = """
title = "One drawer and a rail"
unit = "{unit}"
currency = "USD"
board_measure = "exact"
[shop]
{shop}
[shop.drawer]
side = {{ wood = "poplar", thickness = {half} }}
back = {{ wood = "poplar", thickness = {half}, joint = {{ kind = "dado" }} }}
bottom = {{ sheet = "bottom" }}
[wood.walnut]
species = "black walnut"
[wood.poplar]
species = "yellow-poplar"
[sheet.bottom]
product = "birch plywood"
thickness = "5.2 mm"
size = [{forty_eight}, {ninety_six}]
price = "38.00"
[[drawer]]
name = "upper"
opening = {{ width = {width}, height = {height}, depth = {depth} }}
runs = "on wooden runners"
front = {{ wood = "walnut", thickness = {three_quarters}, joint = {{ kind = "half-blind dovetail", lap = {quarter} }}, show_face = "clear" }}
[[part]]
name = "shelf"
wood = "poplar"
quantity = 2
length = {depth}
width = {height}
thickness = {three_quarters}
"""


def said(inches: Fraction, unit: str) -> str:
    """The length as that tape reads it, exactly: what no inch tape shows, in mm both times."""
    if unit == "in" and (inches * 64).denominator == 1:
        return f'"{tape(inches, grid=64, join="-")}"'
    millimetres = inches * Fraction(254, 10)
    return f'"{Decimal(millimetres.numerator) / Decimal(millimetres.denominator)} mm"'


NO_LENGTHS = frozenset({"shelf_load", "shelf_sag"})
"""A load and a share: settings that are no lengths and stay the unit's own."""


def job_text(unit: str, width: Fraction, height: Fraction, depth: Fraction) -> str:
    shop = default_settings("in")
    lines = []
    for setting in fields(Shop):
        value = shop[setting.name]
        if isinstance(value, tuple) or setting.name in NO_LENGTHS:
            continue
        if isinstance(value, Fraction) and "moisture" not in setting.name:
            written = said(value, unit)
        elif isinstance(value, bool):
            written = str(value).lower()
        else:
            written = f'"{value}"' if isinstance(value, str) else str(value)
        lines.append(f"{setting.name} = {written}")
    names = {
        "half": (1, 2),
        "quarter": (1, 4),
        "three_quarters": (3, 4),
        "forty_eight": (48, 1),
        "ninety_six": (96, 1),
    }
    return JOB.format(
        unit=unit,
        shop="\n".join(lines),
        width=said(width, unit),
        height=said(height, unit),
        depth=said(depth, unit),
        **{name: said(Fraction(*size), unit) for name, size in names.items()},
    )


def ticks_of(text: str, folder: Path) -> list[tuple[object, ...]]:
    file = folder / "job.toml"
    file.write_text(text, encoding="utf-8")
    faults = Faults()
    commission = job.read(file, faults)
    assert commission is not None
    built = assemblies.parts_of(commission, faults)
    cut = blanks.routes(built.parts, commission, faults)
    faults.stop_if_any()
    parts: list[tuple[object, ...]] = [
        (
            part.id,
            part.quantity,
            to_ticks_up(part.length.value),
            to_ticks_up(part.width.value),
            to_ticks_up(part.thickness.value),
        )
        for part in built.parts
    ]
    for blank in cut:
        size = blank_in_ticks(blank, commission.shop.kerf)
        thickness = to_ticks_up(blank.thickness.value)
        parts.append((blank.id, blank.route, size, thickness, dict(blank.makes)))
    return parts


sixteenths = st.integers(4 * 16, 30 * 16).map(lambda n: Fraction(n, 16))


@settings(max_examples=15, phases=[Phase.generate])
@given(width=sixteenths, height=sixteenths, depth=sixteenths)
def test_inches_and_millimetres_give_the_same_ticks(
    tmp_path_factory: object, width: Fraction, height: Fraction, depth: Fraction
) -> None:
    folder = tmp_path_factory.mktemp("job")  # type: ignore[attr-defined]
    inch = ticks_of(job_text("in", width + 8, height, depth + 8), folder)
    metric = ticks_of(job_text("mm", width + 8, height, depth + 8), folder)
    assert inch == metric
