"""Reads the trade's tables: the shop's defaults, species, how they move and how stiff they are, quarters, grades."""

from __future__ import annotations

import csv
import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from importlib import resources
from types import MappingProxyType
from typing import Literal


@dataclass(frozen=True, kw_only=True)
class Default:
    """One of the shop's settings before the shop says otherwise.

    Parameters
    ----------
    inch, mm
        The figure as it is typed in a job in inches and in one in millimetres.
    words
        What it is, in one line.
    source
        Where the figure comes from.
    """

    key: str
    inch: str
    mm: str
    words: str
    source: str

    def typed(self, unit: Literal["in", "mm"]) -> str:
        """The figure as a job in this unit would type it."""
        return self.mm if unit == "mm" else self.inch


@dataclass(frozen=True, kw_only=True)
class Species:
    """A wood the trade knows, and how much it moves.

    Parameters
    ----------
    also
        Other names people use.
    radial, tangential
        Change of width for each per cent of moisture, as a share of the width, in
        quartersawn and in flatsawn boards. [1/per cent]
    source
        Where the figures come from.
    """

    name: str
    also: tuple[str, ...]
    radial: Fraction
    tangential: Fraction
    source: str


@dataclass(frozen=True, kw_only=True)
class Stiffness:
    """How stiff a wood or a kind of sheet is.

    Parameters
    ----------
    of
        A species of the table, or a word that stands in a sheet's product.
    also
        Other such words.
    modulus
        Modulus of elasticity, along the grain of a wood. [lb/in²]
    source
        Where the figure comes from.
    """

    of: str
    also: tuple[str, ...]
    modulus: Fraction
    source: str


@dataclass(frozen=True, kw_only=True)
class Quarter:
    """A thickness hardwood is sold by.

    Parameters
    ----------
    name
        4/4, 5/4 and so on.
    rough
        What it is sold and measured as. [in]
    surfaced
        What it measures planed on two sides. [in]
    """

    name: str
    rough: Fraction
    surfaced: Fraction
    source: str


@dataclass(frozen=True, kw_only=True)
class Grade:
    """A grade of hardwood lumber and how people write it."""

    name: str
    spellings: tuple[str, ...]
    source: str


@lru_cache
def shop_defaults() -> Mapping[str, Default]:
    """The shop's settings by key, in the order of the table."""
    rows = _rows("shop_defaults.csv")
    return MappingProxyType({row["key"]: Default(**row) for row in rows})


@lru_cache
def species() -> Mapping[str, Species]:
    """Every wood of the table by name."""
    return MappingProxyType(
        {
            row["species"]: Species(
                name=row["species"],
                also=_list(row["also"]),
                radial=Fraction(row["radial"]),
                tangential=Fraction(row["tangential"]),
                source=row["source"],
            )
            for row in _rows("wood_species.csv")
        }
    )


@lru_cache
def stiffness() -> Mapping[str, Stiffness]:
    """Every row of the table of stiffness by what it is of."""
    return MappingProxyType(
        {
            row["of"]: Stiffness(
                of=row["of"],
                also=_list(row["also"]),
                modulus=Fraction(row["modulus"]),
                source=row["source"],
            )
            for row in _rows("wood_stiffness.csv")
        }
    )


@lru_cache
def quarters() -> Mapping[str, Quarter]:
    """Every thickness of the table by name, thinnest first."""
    return MappingProxyType(
        {
            row["quarter"]: Quarter(
                name=row["quarter"],
                rough=Fraction(row["rough"]),
                surfaced=Fraction(row["surfaced"]),
                source=row["source"],
            )
            for row in _rows("hardwood_thickness.csv")
        }
    )


@lru_cache
def grades() -> Mapping[str, Grade]:
    """Every grade of the table by name, best first."""
    return MappingProxyType(
        {
            row["grade"]: Grade(
                name=row["grade"],
                spellings=_list(row["spellings"]),
                source=row["source"],
            )
            for row in _rows("hardwood_grades.csv")
        }
    )


def find_species(written: str) -> Species | None:
    """The species a person means, by any of its names; None when the table lacks it."""
    return _species_by_spelling().get(_plain(written))


def find_stiffness(written: str) -> Stiffness | None:
    """How stiff a species, or a sheet by its product's words, is; None when unknown."""
    kind = find_species(written)
    if kind is not None:
        return stiffness().get(kind.name)
    said = _plain(written)
    for row in stiffness().values():
        if row.of not in species() and any(
            _plain(word) in said for word in (row.of, *row.also)
        ):
            return row
    return None


def grade_name(written: str) -> str:
    """The grade's one name for any common spelling; a yard's own grade stays as written.

    "fas", "#1C" and "No. 1 common" become "FAS", "No. 1 Common" and "No. 1 Common".
    """
    tidy = " ".join(written.split())
    return _grade_by_spelling().get(_plain(tidy), tidy)


@lru_cache
def _species_by_spelling() -> Mapping[str, Species]:
    return {
        _plain(spelling): kind
        for kind in species().values()
        for spelling in (kind.name, *kind.also)
    }


@lru_cache
def _grade_by_spelling() -> Mapping[str, str]:
    return {
        _plain(spelling): grade.name
        for grade in grades().values()
        for spelling in (grade.name, *grade.spellings)
    }


def _plain(written: str) -> str:
    # People differ in capitals, hyphens, points and number signs, never in the letters.
    return re.sub(r"[^a-z0-9]", "", written.lower())


def _list(cell: str) -> tuple[str, ...]:
    return tuple(word for word in cell.split(";") if word)


def _rows(table: str) -> list[dict[str, str]]:
    file = resources.files("yieldplan.reference").joinpath(table)
    with file.open(encoding="utf-8") as lines:
        return list(csv.DictReader(lines))
