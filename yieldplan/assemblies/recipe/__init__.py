"""Recipe: a piece a shop often makes, said once in its own words and built of plain parts in any size."""

from __future__ import annotations

import dataclasses
from abc import abstractmethod
from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Any, cast

from yieldplan.assemblies.assembly import Assembly, Fit
from yieldplan.assemblies.part import PlainPart
from yieldplan.assemblies.recipe.keys import (
    SIZES_OF_A_PART,
    Recipe,
    RecipeCheck,
    RecipePart,
    as_in_a_formula,
    whole,
)
from yieldplan.assemblies.recipe.named_sums import with_named_sums
from yieldplan.faults import Faults
from yieldplan.model.arithmetic.tree import FormulaError, names_in, plain
from yieldplan.model.arithmetic.working import Known, count_of, length_of
from yieldplan.model.job import Job
from yieldplan.model.parts import Built, Part
from yieldplan.model.sums import Sum
from yieldplan.units import Inches, tape

_MATERIALS = ("wood", "sheet", "stick")
"""The keys by which a plain part says what it is made of."""


@dataclasses.dataclass(frozen=True, kw_only=True)
class FromRecipe(Assembly):
    """A piece of the shop's own; `assembly_of` gives each recipe its class."""

    @property
    @abstractmethod
    def recipe(self) -> Recipe:
        """What it is built by."""

    def build(self, job: Job, faults: Faults) -> Built:
        found = Faults()
        known = self._known(found)
        if known is None:
            faults.extend(found)
            return Built(parts=())
        each = [self._built(part, known, job, found) for part in self.recipe.parts]
        parts = tuple(part for built in each for part in built.parts)
        if not len(found):
            self._check(parts, known, job, found)
        if not len(found) and not parts:
            wrong = "with these counts it has no part"
            found.add(self.where, "", wrong, "Ask for one of its parts at least")
        faults.extend(found)
        if len(found):
            return Built(parts=())
        return Built(
            parts=parts,
            meetings=tuple(meeting for built in each for meeting in built.meetings),
            cautions=tuple(caution for built in each for caution in built.cautions),
        )

    def put_together(self, parts: Mapping[str, Part], job: Job) -> tuple[Fit, ...]:
        known = self._known(Faults())
        if known is None:
            return ()
        own = [part for part in parts.values() if part.id.startswith(f"{self.name}/")]
        return tuple(fit for _, fit in self._fits(own, known, Faults()))

    def _said(self, name: object) -> Any:
        return getattr(self, _field(str(name)))

    def _known(self, found: Faults) -> Known | None:
        """Every size and count of this one piece; None where one cannot be worked."""
        lengths: dict[str, Sum] = {
            name: Sum.of((plain(name), self._said(name))) for name in self.recipe.sizes
        }
        counts = {name: Fraction(self._said(name)) for name in self.recipe.counts}
        known = Known(lengths=lengths, counts=counts)
        for name, formula in self.recipe.also.items():
            try:
                if formula.kind == "count":
                    counts[name] = count_of(formula.tree, known)
                else:
                    lengths[name] = length_of(formula.tree, known)
            except FormulaError as error:
                wrong = f"{plain(name)}: {error.wrong}"
                found.add(self.where, formula.typed, wrong, error.remedy)
                return None
        return known

    def _built(self, part: RecipePart, known: Known, job: Job, found: Faults) -> Built:
        """One of its parts; nothing where none is asked for or something is wrong."""
        quantity = 1
        try:
            if part.quantity is not None:
                quantity = whole("quantity", part.quantity, known, least=0)
            if quantity == 0:
                return Built(parts=())
            drafted: PlainPart = part.draft.worked(
                known,
                job.unit,
                name=f"{self.name}/{part.name}",
                quantity=quantity,
                where=part.where,
            )
        except FormulaError as error:
            wrong = f"{part.name}: {error.wrong}"
            found.add(self.where, "", wrong, error.remedy)
            return Built(parts=())
        asked = dataclasses.replace(drafted, **self._materials(drafted))
        built = asked.build(job, found)
        # A part that will not come out of the boards is mended where it was asked for.
        named = [
            with_named_sums(
                dataclasses.replace(each, where=self.where), part.draft, known
            )
            for each in built.parts
        ]
        return dataclasses.replace(built, parts=tuple(named))

    def _materials(self, part: PlainPart) -> dict[str, Any]:
        """What the part is made of, where the recipe has a name of its own for it."""
        return {
            key: self._said(name)
            for key in _MATERIALS
            if (name := getattr(part, key, None)) in self.recipe.materials
        }

    def _check(
        self, parts: tuple[Part, ...], known: Known, job: Job, found: Faults
    ) -> None:
        for check, fit in self._fits(parts, known, found):
            if fit.got != fit.asked:
                got, asked = (tape(each, job.unit) for each in (fit.got, fit.asked))
                found.add(
                    self.where,
                    check.measured.typed,
                    f"{fit.words}: the parts make {got}, and it should be {asked}",
                    f"Correct the parts of the recipe, or its check on line {check.where.line}",
                )

    def _fits(
        self, parts: list[Part] | tuple[Part, ...], known: Known, found: Faults
    ) -> Iterator[tuple[RecipeCheck, Fit]]:
        """What each check measures; one of a part that is not asked for says nothing."""
        finished = {
            f"{as_in_a_formula(part.id.partition('/')[2])}.{size}": Sum.of(
                (part.id, getattr(part, size).value)
            )
            for part in parts
            for size in SIZES_OF_A_PART
        }
        both = Known(lengths={**known.lengths, **finished}, counts=known.counts)
        for check in self.recipe.checks:
            formulas = (check.measured, check.should_be)
            used = {name for each in formulas for name in names_in(each.tree)}
            if not used <= both.kinds.keys():
                continue
            try:
                got, asked = (length_of(each.tree, both).value for each in formulas)
            except FormulaError as error:
                wrong = f"{check.words}: {error.wrong}"
                found.add(self.where, check.measured.typed, wrong, error.remedy)
                continue
            yield check, Fit(words=check.words, got=got, asked=asked)


def assembly_of(recipe: Recipe) -> type[Assembly]:
    """The assembly a recipe makes: its names are the keys of its table in a job file."""
    fields: list[Any] = [
        _key(name, "Inches", size, "a size of it")
        for name, size in recipe.sizes.items()
    ]
    fields += [
        _key(name, int, count, "how many", least=0)
        for name, count in recipe.counts.items()
    ]
    fields += [
        _key(name, str, usual, "what it is made of")
        for name, usual in recipe.materials.items()
    ]
    made = dataclasses.make_dataclass(
        "Made",
        fields,
        bases=(FromRecipe,),
        namespace={
            "recipe": recipe,
            "words": recipe.name,
            "__doc__": recipe.words or f"A piece by the shop's recipe: {recipe.name}.",
            "__module__": __name__,
        },
        frozen=True,
        kw_only=True,
    )
    return cast("type[Assembly]", made)


def _key(
    name: str,
    kind: object,
    usual: Inches | int | str | None,
    words: str,
    **more: object,
) -> tuple[str, object, Any]:
    metadata = {"key": name, "words": words, **more}
    if usual is None:
        return _field(name), kind, dataclasses.field(metadata=metadata)
    return _field(name), kind, dataclasses.field(default=usual, metadata=metadata)


def _field(name: str) -> str:
    # Apart from what every assembly has: a recipe may well call a size "build".
    return f"of_{name}"
