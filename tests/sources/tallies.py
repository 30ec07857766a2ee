"""A job of two woods and a way to read a tally against it."""

from __future__ import annotations

import dataclasses
from decimal import Decimal
from pathlib import Path

from yieldplan import sources
from yieldplan.faults import Fault, Faults, Where
from yieldplan.job.shop_table import default_shop
from yieldplan.model.job import Job, Price, Sheet, Wood
from yieldplan.model.pieces import Piece
from yieldplan.units import UnitName, parse_length

HERE = Where(file="job.toml")


def make_job(unit: UnitName = "in", woods: tuple[str, ...] = ("walnut",)) -> Job:
    """A job that prices walnut 4/4 FAS at 14.50 a foot and knows one sheet."""
    price = Price(
        wood="walnut",
        thickness="4/4",
        grade="FAS",
        per_foot=Decimal("14.50"),
        where=HERE,
    )
    sheet = Sheet(
        name="bottom",
        product="birch plywood",
        length=parse_length("96"),
        width=parse_length("48"),
        thickness=parse_length("5.2 mm"),
        price=Decimal("38.00"),
        where=HERE,
    )
    return Job(
        file="job.toml",
        title="Frames",
        unit=unit,
        currency="USD",
        board_measure="nhla" if unit == "in" else "exact",
        shop=default_shop(unit),
        woods={name: Wood(name=name, species="", where=HERE) for name in woods},
        sheets={"bottom": sheet},
        prices=(price,),
        assemblies=(),
    )


def with_prices(job: Job, *prices: tuple[str, str, str, str]) -> Job:
    """The job with this price list: wood, thickness, grade, per foot."""
    return dataclasses.replace(
        job,
        prices=tuple(
            Price(wood=w, thickness=t, grade=g, per_foot=Decimal(p), where=HERE)
            for w, t, g, p in prices
        ),
    )


def read_raw(
    folder: Path, raw: bytes, job: Job | None = None, name: str = "tally.csv"
) -> tuple[tuple[Piece, ...], list[Fault]]:
    """The pieces of a file's bytes, and what is wrong with it."""
    file = folder / name
    file.write_bytes(raw)
    faults = Faults()
    return sources.read([file], job or make_job(), faults), list(faults)


def read_text(
    folder: Path, text: str, job: Job | None = None
) -> tuple[tuple[Piece, ...], list[Fault]]:
    """The pieces of a text, and what is wrong with it."""
    return read_raw(folder, text.encode("utf-8"), job)
