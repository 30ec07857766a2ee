"""Fills in what a test does not care about: a shop, a job, a drawer, a plain part, a piece of stock."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from typing import Any

from yieldplan import assemblies
from yieldplan.assemblies.bookcase import Bookcase
from yieldplan.assemblies.bookcase import keys as case_keys
from yieldplan.assemblies.door import Door
from yieldplan.assemblies.door import keys as door_keys
from yieldplan.assemblies.drawer import Drawer
from yieldplan.assemblies.drawer.keys import (
    Back,
    Bottom,
    DrawerKeys,
    Front,
    Opening,
    Side,
)
from yieldplan.assemblies.drawer_bank import DrawerBank
from yieldplan.assemblies.part import PlainPart
from yieldplan.faults import Faults, Where
from yieldplan.joints.half_blind_dovetail import HalfBlindDovetail
from yieldplan.joints.rabbet import Rabbet
from yieldplan.model.job import Assembly, GrainMatch, Job, Sheet, Wood
from yieldplan.model.parts import Built, Part
from yieldplan.model.pieces import Piece
from yieldplan.model.shop import Shop
from yieldplan.model.sums import Sum
from yieldplan.reference.tables import shop_defaults
from yieldplan.units import Inches, UnitName, parse_length

HERE = Where(file="job.toml", line=1)
SPECIES = {
    "walnut": "black walnut",
    "poplar": "yellow-poplar",
    "cherry": "black cherry",
    "ash": "white ash",
}


def inches(text: str) -> Inches:
    """A length off a tape."""
    return parse_length(text)


def make_shop(unit: UnitName = "in", **over: Any) -> Shop:
    """A shop that keeps the table's defaults but for what is given (texts are lengths)."""
    kinds = {field.name: str(field.type) for field in dataclasses.fields(Shop)}
    settings: dict[str, Any] = {}
    for key, default in shop_defaults().items():
        value = over.get(key, default.typed(unit))
        settings[key] = _read(value, kinds[key], unit)
    unknown = set(over) - set(settings)
    if unknown:
        raise ValueError(f"the shop has no setting {sorted(unknown)}")
    return Shop(**settings)


def _read(value: object, kind: str, unit: UnitName) -> object:
    if not isinstance(value, str):
        return value
    if kind == "Inches":
        return parse_length(value, unit)
    if kind == "Fraction":
        return Fraction(value)
    if kind.startswith("tuple"):
        return () if value == "none" else (value,)
    return int(value) if kind == "int" else value


def make_job(
    *built: Assembly,
    shop: Shop | None = None,
    unit: UnitName = "in",
    made: Mapping[str, int] | None = None,
    grain_matches: tuple[GrainMatch, ...] = (),
    ply: str = "1/4",
    species: Mapping[str, str] = SPECIES,
) -> Job:
    """A job with four woods and one sheet, "ply"."""
    ply_thickness = parse_length(ply)
    return Job(
        file="job.toml",
        title="A job",
        unit=unit,
        currency="USD",
        board_measure="exact",
        shop=shop or make_shop(unit),
        woods={
            name: Wood(name=name, species=kind, where=HERE)
            for name, kind in species.items()
        },
        sheets={
            "ply": Sheet(
                name="ply",
                product="birch plywood",
                length=Fraction(96),
                width=Fraction(48),
                thickness=ply_thickness,
                price=Decimal("38.00"),
                where=HERE,
            )
        },
        prices=(),
        assemblies=built,
        grain_matches=grain_matches,
        made=made or {},
    )


def make_drawer(
    width: str = "22",
    height: str = "6",
    depth: str = "20",
    name: str = "upper",
    **over: Any,
) -> Drawer:
    """A drawer on wooden runners: walnut front, poplar box, plywood bottom."""
    settings: dict[str, Any] = {
        "front": Front(
            wood="walnut", thickness=inches("3/4"), joint=HalfBlindDovetail()
        ),
        "side": Side(wood="poplar", thickness=inches("1/2")),
        "back": Back(wood="poplar", thickness=inches("1/2"), joint=Rabbet()),
        "bottom": Bottom(sheet="ply"),
    }
    opening = Opening(width=inches(width), height=inches(height), depth=inches(depth))
    where = dataclasses.replace(HERE, key=f'drawer "{name}"')
    return Drawer(name=name, where=where, opening=opening, **settings | over)


def make_bank(
    width: str = "30",
    height: str = "30",
    depth: str = "20",
    name: str = "bank",
    **over: Any,
) -> DrawerBank:
    """A bank of drawers as `make_drawer` makes them; how many is for the test to say."""
    said = make_drawer(width, height, depth, **over.pop("as_drawer", {}))
    keys = {
        field.name: getattr(said, field.name)
        for field in dataclasses.fields(DrawerKeys)
    }
    where = dataclasses.replace(HERE, key=f'drawer_bank "{name}"')
    return DrawerBank(**keys | {"name": name, "where": where} | over)


def make_bookcase(
    width: str = "36",
    height: str = "72",
    depth: str = "12",
    name: str = "den",
    **over: Any,
) -> Bookcase:
    """A bookcase of 3/4 walnut, without shelves, back or toe kick."""
    settings: dict[str, Any] = {
        "side": case_keys.Side(wood="walnut", thickness=inches("3/4"))
    }
    return Bookcase(
        name=name,
        where=dataclasses.replace(HERE, key=f'bookcase "{name}"'),
        width=inches(width),
        height=inches(height),
        depth=inches(depth),
        **settings | over,
    )


def make_door(
    width: str = "18", height: str = "30", name: str = "hall", **over: Any
) -> Door:
    """A door leaf of that size: 2-1/4 stiles and rails of 3/4 walnut, a plywood panel."""
    settings: dict[str, Any] = {
        "leaf": door_keys.Leaf(width=inches(width), height=inches(height)),
        "stile": door_keys.Stile(
            wood="walnut", thickness=inches("3/4"), width=inches("2-1/4")
        ),
        "panel": door_keys.Panel(sheet="ply"),
    }
    where = dataclasses.replace(HERE, key=f'door "{name}"')
    return Door(name=name, where=where, **settings | over)


def make_plain(name: str = "shelf", **over: Any) -> PlainPart:
    """A plain part of walnut, 30 x 4 x 3/4 in; texts of sizes are read."""
    settings: dict[str, Any] = {
        "wood": "walnut",
        "length": "30",
        "width": "4",
        "thickness": "3/4",
    } | over
    for size in ("length", "width", "thickness"):
        if isinstance(settings.get(size), str):
            settings[size] = inches(settings[size])
    return PlainPart(name=name, where=HERE, **settings)


def build(job: Job) -> Built:
    """All parts of a job that has no mistakes."""
    faults = Faults()
    built = assemblies.parts_of(job, faults)
    faults.stop_if_any()
    return built


def parts_by_id(job: Job) -> dict[str, Part]:
    """The job's parts by id."""
    return {part.id: part for part in build(job).parts}


def make_part(
    id_: str = "shelf",
    length: str = "30",
    width: str = "4",
    thickness: str = "3/4",
    **over: Any,
) -> Part:
    """A finished part."""
    settings: dict[str, Any] = {
        "quantity": 1,
        "wood": "walnut",
        "length": Sum.of(("length", inches(length))),
        "width": Sum.of(("width", inches(width))),
        "thickness": Sum.of(("thickness", inches(thickness))),
        "where": HERE,
    } | over
    return Part(id=id_, **settings)


def make_piece(
    id_: str = "W1",
    wood: str = "walnut",
    thickness: str = "4/4",
    thick: str = "1",
    kind: str = "rough board",
    **over: Any,
) -> Piece:
    """A board 96 x 8 in without marks."""
    settings: dict[str, Any] = {
        "line": f"{wood} {thickness}",
        "length": Fraction(96),
        "width": Fraction(8),
        "board_feet": Fraction(16, 3),
        "per_foot": 100_000,
        "price": 533_000,
        "end_trims": (Fraction(2), Fraction(2)),
        "edge_passes": (Fraction(1, 8), Fraction(1, 8)),
    } | over
    return Piece(
        id=id_,
        wood=wood,
        thickness=thickness,
        thick=inches(thick),
        kind=kind,
        **settings,
    )
