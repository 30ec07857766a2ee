"""The tables every job file has beside its assemblies: woods, sheets, prices, grain matches."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from math import floor
from typing import Annotated, get_args

from pydantic import Field, PlainValidator

from yieldplan.faults import Where, did_you_mean
from yieldplan.job import words
from yieldplan.job.tables import Table
from yieldplan.model.job import (
    GrainMatch,
    Laid,
    Price,
    Sheet,
    SheetSize,
    Stick,
    StickLength,
    Wood,
)
from yieldplan.reference.tables import find_species, grade_name, species
from yieldplan.units import (
    cubic_metres_per_board_foot,
    from_ticks,
    to_ticks_down,
)


def _species(value: object) -> str:
    if not isinstance(value, str):
        raise words.mistake("this is not a text", "Write it in quotes")
    found = find_species(value)
    if found is None:
        names = {
            name for kind in species().values() for name in (kind.name, *kind.also)
        }
        raise words.mistake(
            "the table of woods has no such species",
            did_you_mean(value, names).removesuffix("?")
            + ", or leave species out: then no solid panel of it can be figured",
        )
    return found.name


Species = Annotated[str, PlainValidator(_species)]


class WoodTable(Table):
    """`[wood.walnut]`"""

    species: Species = ""
    show_wood: words.Flag = False
    minimum_order: words.AmountOrNone = None
    minimum_feet: words.AmountOrNone = None

    def wood(self, name: str, where: Where) -> Wood:
        """The wood of this name."""
        return Wood(
            name=name,
            species=self.species,
            is_show_wood=self.show_wood,
            minimum_order=self.minimum_order,
            minimum_feet=self.minimum_feet,
            where=where,
        )


SizeOfSheet = tuple[words.Size, words.Size]
"""Across and along the face grain, `["48", "96"]`."""


class SheetSizeTable(Table):
    """One of the sizes of a sheet."""

    size: SizeOfSheet
    price: words.Amount
    quantity: Annotated[int | None, words.count(1)] = None

    def made(self) -> SheetSize:
        """The size, its length along the face grain."""
        across, along = self.size
        return SheetSize(
            length=along, width=across, price=self.price, quantity=self.quantity
        )


class SheetTable(Table):
    """`[sheet.bottom]`; one `size` with its `price`, or `sizes`."""

    product: words.Text
    thickness: words.Size
    size: SizeOfSheet | None = None
    price: words.AmountOrNone = None
    quantity: Annotated[int | None, words.count(1)] = None
    sizes: Annotated[tuple[SheetSizeTable, ...], Field(min_length=1)] | None = None
    grain: words.Flag = True

    def all_sizes(self) -> tuple[SheetSize, ...]:
        """Every size with its price, as far as they are given."""
        if self.sizes is not None:
            return tuple(each.made() for each in self.sizes)
        if self.size is None or self.price is None:
            return ()
        one = SheetSizeTable.model_construct(
            size=self.size, price=self.price, quantity=self.quantity
        )
        return (one.made(),)

    def sheet(self, name: str, where: Where) -> Sheet:
        """The sheet product of this name; it has a size."""
        first, *more = self.all_sizes()
        return Sheet(
            name=name,
            product=self.product,
            length=first.length,
            width=first.width,
            thickness=self.thickness,
            price=first.price,
            quantity=first.quantity,
            has_grain=self.grain,
            more_sizes=tuple(more),
            where=where,
        )


class StickLengthTable(Table):
    """One of the lengths of a stick."""

    length: words.Size
    price: words.Amount
    quantity: Annotated[int | None, words.count(1)] = None


class StickTable(Table):
    """`[stick.edging]`; its lengths are a list, each with its price."""

    product: words.Text
    width: words.Size
    thickness: words.Size
    lengths: Annotated[tuple[StickLengthTable, ...], Field(min_length=1)]

    def stick(self, name: str, where: Where) -> Stick:
        """The stick of this name."""
        return Stick(
            name=name,
            product=self.product,
            # A stick is planned as wide as whole ticks, so that its parts are no wider.
            width=from_ticks(to_ticks_down(self.width)),
            thickness=self.thickness,
            lengths=tuple(
                StickLength(
                    length=each.length, price=each.price, quantity=each.quantity
                )
                for each in self.lengths
            ),
            where=where,
        )


class PriceTable(Table):
    """`[[price]]`"""

    wood: words.Name
    thickness: words.ThicknessName
    grade: words.Name = ""
    per_foot: words.AmountOrNone = None
    per_cubic_metre: words.AmountOrNone = None
    as_of: words.DayOrNone = None

    def price(self, where: Where) -> Price:
        """The price a board foot; one a cubic metre is turned into it, to the cent.

        A board foot of 144 cubic inches is 0.002359737216 m3, so 1,850.00 a cubic
        metre is 4.37 a foot.
        """
        per_foot = self.per_foot
        if per_foot is None:
            exact = Fraction(self.per_cubic_metre or 0) * cubic_metres_per_board_foot()
            per_foot = Decimal(floor(exact * 100 + Fraction(1, 2))) / 100
        return Price(
            wood=self.wood,
            thickness=self.thickness,
            grade=grade_name(self.grade),
            per_foot=per_foot,
            per_cubic_metre=self.per_cubic_metre,
            as_of=self.as_of,
            where=where,
        )


class GrainMatchTable(Table):
    """`[[grain_match]]`"""

    name: words.Name
    parts: Annotated[tuple[words.Name, ...], Field(min_length=2)]
    laid: Annotated[Laid, words.choice(get_args(Laid))] = "end to end"

    def match(self, where: Where) -> GrainMatch:
        """The set of parts in their order."""
        return GrainMatch(
            name=self.name,
            parts=self.parts,
            laid=self.laid,
            where=where,
        )
