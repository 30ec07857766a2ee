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
from yieldplan.model.job import GrainMatch, Laid, Price, Sheet, Wood
from yieldplan.reference.tables import find_species, grade_name, species
from yieldplan.units import cubic_metres_per_board_foot


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

    def wood(self, name: str, where: Where) -> Wood:
        """The wood of this name."""
        return Wood(
            name=name, species=self.species, is_show_wood=self.show_wood, where=where
        )


class SheetTable(Table):
    """`[sheet.bottom]`; its size is across and along the face grain, `["48", "96"]`."""

    product: words.Text
    thickness: words.Size
    size: tuple[words.Size, words.Size]
    price: words.Amount
    quantity: Annotated[int | None, words.count(1)] = None

    def sheet(self, name: str, where: Where) -> Sheet:
        """The sheet product of this name."""
        across, along = self.size
        return Sheet(
            name=name,
            product=self.product,
            length=along,
            width=across,
            thickness=self.thickness,
            price=self.price,
            quantity=self.quantity,
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
