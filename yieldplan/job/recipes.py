"""Reads the recipes of a job file: a shop's own pieces, each then used like any assembly."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Collection, Iterator, Mapping
from typing import Annotated, Any

from pydantic import TypeAdapter

from yieldplan.assemblies.recipe.keys import (
    SIZES_OF_A_PART,
    Recipe,
    RecipeCheck,
    RecipePart,
    as_in_a_formula,
)
from yieldplan.faults import Where, did_you_mean
from yieldplan.job import words
from yieldplan.job.formula_names import FormulaNames
from yieldplan.job.formulas import (
    CheckTable,
    FormulaTables,
    LengthFormula,
    draft_of,
    formulas_in,
)
from yieldplan.job.lines import KeyPath
from yieldplan.job.say import nearest
from yieldplan.job.values import Values
from yieldplan.joints.joint import Joint
from yieldplan.model.arithmetic.kinds import COUNT, LENGTH
from yieldplan.model.arithmetic.reading import KEPT_WORDS
from yieldplan.model.arithmetic.tree import Formula
from yieldplan.model.names import LONGEST_NAME, tidy_name

MOST_RECIPES = 200
MOST_NAMES = 100
MOST_PARTS_OF_ONE = 50

NAMES = ("sizes", "counts", "materials", "also")
KEYS = ("words", *NAMES, "part", "check")

_LETTERS = re.compile(r"[^\W\d]\w*")
MUST_BE_SAID = "ask"
"""Stands for a size that each job must say."""


_TEXT: TypeAdapter[Any] = TypeAdapter(words.Text)
_READ: Mapping[str, TypeAdapter[Any]] = {
    "sizes": TypeAdapter(words.Length),
    "counts": TypeAdapter(Annotated[int, words.count(0)]),
    "materials": TypeAdapter(words.Name),
    "also": TypeAdapter(LengthFormula),
}
"""How the value of each name is read."""


def recipe_names(values: Values, taken: Collection[str]) -> set[str]:
    """The names of the job's recipes, readable or not: each is the key of a table.

    Parameters
    ----------
    taken
        Top-level keys that are something else; one of them is `recipe`, which may be
        misspelt: that is one mistake, and not one more for each piece that is asked for.
    """
    found: set[str] = set()
    for key, table in values.document.data.items():
        is_meant = key == "recipe" or (
            key not in taken and nearest(key, taken) == "recipe"
        )
        if is_meant and isinstance(table, dict):
            found |= set(table)
    return found - set(taken)


def read_recipes(
    values: Values, joints: Mapping[str, type[Joint]], taken: Collection[str]
) -> dict[str, Recipe]:
    """The recipes without a mistake, by the key of their tables.

    Parameters
    ----------
    taken
        Top-level keys that are something else.
    """
    table = values.table("recipe")
    if len(table) > MOST_RECIPES:
        wrong = f"a job has {MOST_RECIPES} recipes at the most"
        values.fault(("recipe",), "", wrong, "Keep those the job uses")
        return {}
    tables = FormulaTables(joints)
    found = {}
    for name, said in table.items():
        before = len(values.faults)
        at: KeyPath = ("recipe", name)
        if trouble := _trouble(name, taken):
            values.fault(at, name, *trouble)
        if not isinstance(said, dict):
            remedy = f"Write it below [recipe.{name}]"
            values.fault(at, values.typed(at), "a table is needed here", remedy)
            continue
        recipe = _Reader(values, tables, at).read(said)
        if len(values.faults) == before:
            found[name] = recipe
    return found


def _trouble(name: str, taken: Collection[str]) -> tuple[str, str] | None:
    """What is wrong with a name people choose for a recipe or a size of it."""
    if name in taken:
        wrong = "this word stands for something else already"
        return wrong, "Choose another name"
    is_word = _LETTERS.fullmatch(name) and name.isidentifier()
    if not is_word or unicodedata.normalize("NFKC", name) != name:
        wrong = "a name here is of letters, digits and underlines, a letter first"
        return wrong, "Write it like top_rail"
    if len(name) > LONGEST_NAME:
        return f"it is over {LONGEST_NAME} characters long", "Shorten it"
    return None


class _Reader:
    """Reads one recipe, every mistake in one run."""

    def __init__(self, values: Values, tables: FormulaTables, at: KeyPath) -> None:
        self.values = values
        self.tables = tables
        self.at = at

    def read(self, said: Mapping[str, Any]) -> Recipe:
        for key in said:
            if key not in KEYS:
                wrong = "a recipe has no such key"
                self.values.fault((*self.at, key), key, wrong, did_you_mean(key, KEYS))
        text = ""
        if "words" in said:
            text = self.values.read((*self.at, "words"), _TEXT, otherwise="")
        named = self._named(said)
        formulas = FormulaNames(
            values=self.values,
            kinds={
                **dict.fromkeys(named["sizes"], LENGTH),
                **dict.fromkeys(named["counts"], COUNT),
            },
        )
        also = formulas.settle(named["also"], (*self.at, "also"))
        return Recipe(
            name=str(self.at[-1]).replace("_", " "),
            words=text,
            sizes=named["sizes"],
            counts=named["counts"],
            materials=named["materials"],
            also=also,
            parts=tuple(self._parts(said, formulas)),
            checks=tuple(self._checks(said, formulas)),
        )

    def _named(self, said: Mapping[str, Any]) -> dict[str, dict[str, Any]]:
        """What each of its names is; a name stands for one thing only."""
        found: dict[str, dict[str, Any]] = {}
        first_of: dict[str, str] = {}
        for group in NAMES:
            found[group] = {}
            for name, value in self._table(said, group).items():
                path = (*self.at, group, name)
                trouble = _trouble(name, {"name", *KEPT_WORDS})
                if trouble is None and name in first_of:
                    wrong = f"this name stands under {first_of[name]} already"
                    trouble = wrong, "Give each its own"
                if trouble is not None:
                    self.values.fault(path, name, *trouble)
                first_of.setdefault(name, group)
                if group == "sizes" and value == MUST_BE_SAID:
                    found[group][name] = None
                    continue
                spare = None if group == "also" else "1"
                read = self.values.read(path, _READ[group], otherwise=spare)
                found[group][name] = read
        if len(first_of) > MOST_NAMES:
            wrong = f"a recipe has {MOST_NAMES} names at the most"
            self.values.fault(self.at, "", wrong, "Make two recipes of it")
            return {group: {} for group in NAMES}
        return found

    def _table(self, said: Mapping[str, Any], key: str) -> Mapping[str, Any]:
        table = said.get(key, {})
        if isinstance(table, dict):
            return table
        path = (*self.at, key)
        remedy = f"Write {key} = {{ name = ..., ... }}"
        self.values.fault(
            path, self.values.typed(path), "a table is needed here", remedy
        )
        return {}

    def _tables(
        self, said: Mapping[str, Any], key: str
    ) -> Iterator[tuple[KeyPath, object]]:
        tables = said.get(key, [])
        path = (*self.at, key)
        head = f"[[{'.'.join(str(word) for word in path)}]]"
        if not isinstance(tables, list):
            wrong, remedy = "a list of tables is needed here", f"Write {head}"
            self.values.fault(path, self.values.typed(path), wrong, remedy)
            return
        if len(tables) > MOST_PARTS_OF_ONE:
            wrong = f"over {MOST_PARTS_OF_ONE} of them are more than a recipe has"
            self.values.fault(path, "", wrong, "Make two recipes of it")
            return
        for number, each in enumerate(tables):
            yield (*path, number), each

    def _parts(
        self, said: Mapping[str, Any], formulas: FormulaNames
    ) -> Iterator[RecipePart]:
        if not said.get("part"):
            name = ".".join(str(word) for word in self.at)
            wrong = "the recipe has no part"
            self.values.fault(self.at, "", wrong, f"Add a table [[{name}.part]]")
        first_of: dict[str, int | None] = {}
        for path, each in self._tables(said, "part"):
            table = self.values.read_table(self.tables.part(), each, path)
            if table is None:
                continue
            for place, formula in formulas_in(table, path):
                formulas.check(formula, place)
            name = table.name  # type: ignore[attr-defined]
            where = self._where(path, f'part "{name}"')
            called = as_in_a_formula(name)
            if called in first_of:
                line = first_of[called]
                wrong = f"a part of this name stands on line {line} already"
                remedy = "Give each its own; spaces and hyphens count as alike"
                self.values.fault((*path, "name"), name, wrong, remedy)
            first_of.setdefault(called, where.line)
            draft = draft_of(table)
            quantity = draft.given.get("quantity")
            yield RecipePart(
                name=name,
                quantity=quantity if isinstance(quantity, Formula) else None,
                draft=draft,
                where=where,
            )

    def _checks(
        self, said: Mapping[str, Any], formulas: FormulaNames
    ) -> Iterator[RecipeCheck]:
        sizes = _sizes_of_parts(said)
        for path, each in self._tables(said, "check"):
            table = self.values.read_table(CheckTable, each, path)
            if table is None:
                continue
            if sizes is not None:
                formulas.check(table.measured, (*path, "measured"), sizes)
                formulas.check(table.should_be, (*path, "should_be"), sizes)
            yield RecipeCheck(
                words=table.words,
                measured=table.measured,
                should_be=table.should_be,
                where=self._where(path, "check"),
            )

    def _where(self, path: KeyPath, what: str) -> Where:
        place = self.values.document.where(*path)
        return Where(file=place.file, line=place.line, key=f"{self.at[-1]}, {what}")


def _sizes_of_parts(said: Mapping[str, Any]) -> list[str] | None:
    """The sizes a check may measure; None where the names of the parts are not in order.

    A part with a slip elsewhere is there all the same: its slip is the one mistake.
    """
    parts = said.get("part")
    names = [
        each.get("name") if isinstance(each, dict) else None
        for each in (parts if isinstance(parts, list) else [None])
    ]
    called = {
        as_in_a_formula(tidy_name(name))
        for name in names
        if isinstance(name, str) and "/" not in name
    }
    if len(called) < len(names):
        return None
    return [f"{name}.{size}" for name in sorted(called) for size in SIZES_OF_A_PART]
