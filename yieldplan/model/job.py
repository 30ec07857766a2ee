"""A job as read: title, woods, sheets, prices, assemblies, what must match, what is made already."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from typing import TYPE_CHECKING, Literal, Protocol

from yieldplan.faults import Where
from yieldplan.model.shop import Shop
from yieldplan.units import Inches, UnitName

if TYPE_CHECKING:
    from yieldplan.faults import Faults
    from yieldplan.model.parts import Built

BoardMeasure = Literal["nhla", "exact"]
Laid = Literal["end to end", "one above the other", "book-matched", "slip-matched"]


@dataclass(frozen=True, kw_only=True)
class Wood:
    """A species of lumber the job uses, all thicknesses together.

    Parameters
    ----------
    minimum_order
        What an order of it must come to, in the job's currency; None where any will do.
    minimum_feet
        The same in board feet. [bf]
    """

    name: str
    species: str
    is_show_wood: bool = False
    minimum_order: Decimal | None = None
    minimum_feet: Decimal | None = None
    where: Where


@dataclass(frozen=True, kw_only=True)
class SheetSize:
    """One size a sheet product is sold in.

    Parameters
    ----------
    length, width
        Length runs with the face grain. [in]
    price
        Of one whole sheet, in the job's currency, to the cent.
    quantity
        How many are to be had; None is as many as it takes.
    """

    length: Inches
    width: Inches
    price: Decimal
    quantity: int | None = None


@dataclass(frozen=True, kw_only=True)
class Sheet:
    """A sheet product that can be bought.

    Parameters
    ----------
    length, width, thickness
        Length runs with the face grain. Thickness as measured. [in]
    price
        Of one whole sheet, in the job's currency, to the cent.
    quantity
        How many are to be had; None is as many as it takes.
    has_grain
        Whether its face shows which way the grain runs; parts of one without may lie
        across it.
    more_sizes
        Other sizes it is sold in, beside the one above.
    """

    name: str
    product: str
    length: Inches
    width: Inches
    thickness: Inches
    price: Decimal
    quantity: int | None = None
    has_grain: bool = True
    more_sizes: tuple[SheetSize, ...] = ()
    where: Where

    @property
    def sizes(self) -> tuple[SheetSize, ...]:
        """Every size it is sold in."""
        first = SheetSize(
            length=self.length,
            width=self.width,
            price=self.price,
            quantity=self.quantity,
        )
        return (first, *self.more_sizes)


@dataclass(frozen=True, kw_only=True)
class StickLength:
    """One length a stick is sold in.

    Parameters
    ----------
    length
        [in]
    price
        Of one stick, in the job's currency, to the cent.
    quantity
        How many are to be had; None is as many as it takes.
    """

    length: Inches
    price: Decimal
    quantity: int | None = None


@dataclass(frozen=True, kw_only=True)
class Stick:
    """Stock of one cross-section, sold in fixed lengths: moulding, dowel, edging, S4S.

    Parameters
    ----------
    width, thickness
        As measured. What is cut from it keeps both. [in]
    """

    name: str
    product: str
    width: Inches
    thickness: Inches
    lengths: tuple[StickLength, ...]
    where: Where


@dataclass(frozen=True, kw_only=True)
class Price:
    """A price per board foot from a price list, with its date.

    `per_cubic_metre` is what the list says where it sells by the cubic metre; then
    `per_foot` is the same to the cent.
    """

    wood: str
    thickness: str
    grade: str
    per_foot: Decimal
    per_cubic_metre: Decimal | None = None
    as_of: date | None = None
    where: Where


@dataclass(frozen=True, kw_only=True)
class GrainMatch:
    """Parts cut from one board in order, so that the grain runs through them."""

    name: str
    parts: tuple[str, ...]
    laid: Laid = "end to end"
    where: Where


class Assembly(Protocol):
    """Anything the job asks to be built; the classes live in `assemblies/`."""

    def build(self, job: Job, faults: Faults) -> Built: ...


@dataclass(frozen=True, kw_only=True)
class Job:
    """One commission, exactly as its file says it."""

    file: str
    title: str
    unit: UnitName
    currency: str
    board_measure: BoardMeasure
    shop: Shop
    woods: Mapping[str, Wood]
    sheets: Mapping[str, Sheet]
    prices: tuple[Price, ...]
    assemblies: tuple[Assembly, ...]
    grain_matches: tuple[GrainMatch, ...] = ()
    made: Mapping[str, int] = field(default_factory=dict)
    sticks: Mapping[str, Stick] = field(default_factory=dict)
    minimum_order: Decimal | None = None
    """What all that is bought must come to, in the currency; None where any will do."""
    minimum_feet: Decimal | None = None
    """The same in board feet; sheets have none. [bf]"""
