"""The same job in millimetres and in inches, every setting given: the same ticks of parts and blanks."""

from __future__ import annotations

import dataclasses
from fractions import Fraction

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.builders import HERE, make_drawer, make_job, make_plain, make_shop
from yieldplan import assemblies
from yieldplan.assemblies.drawer import Drawer
from yieldplan.assemblies.drawer.keys import Back, Bottom, Front, Jig, Opening, Side
from yieldplan.assemblies.part import Between, PlainPart
from yieldplan.blanks import routes
from yieldplan.faults import Faults
from yieldplan.joints.dado import Dado
from yieldplan.joints.half_blind_dovetail import HalfBlindDovetail
from yieldplan.model.job import GrainMatch
from yieldplan.model.rounding import blank_in_ticks
from yieldplan.model.shop import Shop
from yieldplan.units import UnitName, parse_length, to_ticks_up

TENTHS = st.integers(400, 9000).map(lambda n: f"{n // 10}.{n % 10}")
SMALL = st.integers(30, 150).map(lambda n: f"{n // 10}.{n % 10}")
METRIC = make_shop("mm")
INCH = make_shop("in")


def typed(millimetres: str, unit: UnitName) -> Fraction:
    """The size as a job in this unit has it typed: bare, or with its unit."""
    return parse_length(millimetres if unit == "mm" else f"{millimetres} mm", unit)


def drawer(size: dict[str, str], unit: UnitName, *, net: bool) -> Drawer:
    thick = typed(size["thick"], unit)
    return dataclasses.replace(
        make_drawer(),
        opening=Opening(
            width=typed(size["width"], unit),
            height=typed(size["height"], unit),
            depth=typed(size["depth"], unit),
        ),
        fit="net" if net else None,
        front=Front(
            wood="walnut",
            thickness=typed("19", unit),
            joint=HalfBlindDovetail(lap=typed("6.3", unit)),
        ),
        side=Side(wood="poplar", thickness=thick),
        back=Back(wood="poplar", thickness=thick, joint=Dado()),
        bottom=Bottom(wood="ash", thickness=typed("6", unit), strips=2),
        jig=Jig(spacing=typed("25", unit), remainder=typed("6.2", unit)),
    )


def rail(name: str, size: dict[str, str], unit: UnitName) -> PlainPart:
    return make_plain(
        name,
        length=None,
        width=typed(size["thick"], unit),
        thickness=typed("20", unit),
        quantity=3,
        between=Between(
            clear=typed(size["short"], unit), joint=Dado(), mate=typed("19", unit)
        ),
    )


def in_ticks(
    size: dict[str, str], unit: UnitName, shop: Shop, *, net: bool
) -> tuple[object, object]:
    both = GrainMatch(name="set", parts=("left rail", "right rail"), where=HERE)
    job = make_job(
        drawer(size, unit, net=net),
        *(rail(name, size, unit) for name in ("rail", "left rail", "right rail")),
        unit=unit,
        shop=shop,
        grain_matches=(both,),
    )
    faults = Faults()
    parts = assemblies.parts_of(job, faults).parts
    parts_in_ticks = [
        (
            part.id,
            to_ticks_up(part.length.value),
            to_ticks_up(part.width.value),
            to_ticks_up(part.thickness.value),
        )
        for part in parts
    ]
    blanks_in_ticks = [
        (blank.id, blank.makes, to_ticks_up(blank.thickness.value),
         blank_in_ticks(blank, shop.kerf))
        for blank in routes(parts, job, faults)
    ]  # fmt: skip
    faults.stop_if_any()
    return parts_in_ticks, blanks_in_ticks


@settings(suppress_health_check=[HealthCheck.too_slow], max_examples=60)
@given(
    size=st.fixed_dictionaries(
        {
            "width": TENTHS.filter(lambda text: float(text) > 120),
            "height": TENTHS.filter(lambda text: 60 < float(text) < 300),
            "depth": TENTHS.filter(lambda text: float(text) > 150),
            "thick": SMALL.filter(lambda text: float(text) > 8),
            "short": TENTHS,
        }
    ),
    net=st.booleans(),
    shop=st.sampled_from([METRIC, INCH]),
)
def test_unit_words_change_no_tick(size: dict[str, str], net: bool, shop: Shop) -> None:
    metric = in_ticks(size, "mm", shop, net=net)
    assert metric == in_ticks(size, "in", shop, net=net)
    assert metric[1]
