"""Reads the table of a recipe's part: the keys of a plain part, every size and count a formula."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import Field
from typing import Annotated, Any

from pydantic import PlainValidator, ValidationInfo, create_model

from yieldplan.assemblies.part import PlainPart
from yieldplan.assemblies.recipe.keys import Draft
from yieldplan.job import words
from yieldplan.job.lines import KeyPath
from yieldplan.job.tables import Table, Tables, is_length
from yieldplan.model.arithmetic.reading import read_formula
from yieldplan.model.arithmetic.tree import Formula, FormulaError, Kind
from yieldplan.units import UnitName


def _reader(kind: Kind) -> PlainValidator:
    def read(value: object, info: ValidationInfo) -> Formula:
        text = words.as_typed(value)
        if text is None:
            raise words.mistake(
                "this is no formula", 'Write it in quotes, such as "width - 2 * board"'
            )
        unit: UnitName = "mm" if (info.context or {}).get("unit") == "mm" else "in"
        try:
            return read_formula(text, unit, kind=kind)
        except FormulaError as error:
            raise words.mistake(error.wrong, error.remedy) from error

    return PlainValidator(read)


LengthFormula = Annotated[Formula, _reader("length")]
CountFormula = Annotated[Formula, _reader("count")]


class CheckTable(Table):
    """`[[recipe.wall_shelf.check]]`"""

    words: words.Text
    measured: LengthFormula
    should_be: LengthFormula


class FormulaTables(Tables):
    """Makes the same tables as a job has elsewhere, with formulas for sizes and counts."""

    def part(self) -> type[Table]:
        """The table of a recipe's part."""
        name = (words.PartName, ...)
        plain = self.of(PlainPart)
        return create_model("RecipePart", __base__=plain, name=name)

    def _type(self, hint: Any, field: Field[Any], *, required: bool) -> Any:
        if is_length(hint):
            return LengthFormula
        if hint is int:
            return CountFormula
        return super()._type(hint, field, required=required)


def draft_of(table: Table) -> Draft:
    """What a table says, its formulas not worked out yet."""
    return Draft(
        makes=table.makes,
        given={
            name.removeprefix("key_"): draft_of(value)
            if isinstance(value, Table)
            else value
            for name, value in _given(table)
        },
    )


def formulas_in(table: Table, at: KeyPath) -> Iterator[tuple[KeyPath, Formula]]:
    """Every formula of a table and of the tables inside it, with its place."""
    for name, value in _given(table):
        path = (*at, type(table).model_fields[name].alias or name)
        if isinstance(value, Table):
            yield from formulas_in(value, path)
        elif isinstance(value, Formula):
            yield path, value


def _given(table: Table) -> Iterator[tuple[str, object]]:
    for name in sorted(table.model_fields_set):
        if name.startswith("key_"):
            yield name, getattr(table, name)
