"""Checks the names of a recipe's formulas before anything is built: unknown ones, circles, lengths mixed with counts."""

from __future__ import annotations

import dataclasses
from collections.abc import Collection, Mapping
from dataclasses import dataclass

from yieldplan.faults import did_you_mean
from yieldplan.job.lines import KeyPath
from yieldplan.job.values import Values
from yieldplan.model.arithmetic.kinds import (
    COUNT,
    EITHER,
    LENGTH,
    Kinds,
    kinds_of,
    needs,
)
from yieldplan.model.arithmetic.tree import Formula, FormulaError, Kind, names_in


@dataclass(kw_only=True)
class FormulaNames:
    """The names a recipe's formulas may use, and the list their mistakes go to.

    Parameters
    ----------
    kinds
        What each name can be; one with a slip of its own can be either.
    """

    values: Values
    kinds: dict[str, Kinds]

    def settle(
        self, also: Mapping[str, Formula | None], at: KeyPath
    ) -> dict[str, Formula]:
        """What is worked out from other sizes, each after those it needs.

        Parameters
        ----------
        also
            The formulas by name; None for one that could not be read.
        """
        waiting = dict(also)
        settled: dict[str, Formula] = {}
        while waiting:
            ready = [
                name for name in waiting if not _names(waiting[name]) & waiting.keys()
            ]
            if not ready:
                ready = self._circle(waiting, at)
                waiting |= dict.fromkeys(ready)
            for name in ready:
                formula = waiting.pop(name)
                kinds = self._kinds(formula, (*at, name)) if formula else EITHER
                # A figure alone could be either; what a drawing names is a size.
                self.kinds[name] = LENGTH if formula and kinds == EITHER else kinds
                if formula is not None:
                    kind: Kind = "count" if kinds == COUNT else "length"
                    settled[name] = dataclasses.replace(formula, kind=kind)
        return settled

    def check(self, formula: Formula, at: KeyPath, parts: Collection[str] = ()) -> None:
        """Note what is wrong with a formula's names, or that it is of the wrong kind.

        Parameters
        ----------
        parts
            Sizes of parts it may name too: `shelf.length`.
        """
        kinds = {**self.kinds, **dict.fromkeys(parts, LENGTH)}
        if not self._unknown(formula, at, kinds):
            try:
                needs(formula.tree, formula.kind, kinds)
            except FormulaError as error:
                self.values.fault(at, formula.typed, error.wrong, error.remedy)

    def _kinds(self, formula: Formula, at: KeyPath) -> Kinds:
        if self._unknown(formula, at, self.kinds):
            return EITHER
        try:
            kinds = kinds_of(formula.tree, self.kinds)
            if not kinds:  # a fraction of a millimetre and a count at once
                needs(formula.tree, "length", self.kinds)
        except FormulaError as error:
            self.values.fault(at, formula.typed, error.wrong, error.remedy)
            return EITHER
        return kinds

    def _unknown(
        self, formula: Formula, at: KeyPath, known: Mapping[str, Kinds]
    ) -> bool:
        unknown = [
            name for name in dict.fromkeys(names_in(formula.tree)) if name not in known
        ]
        for name in unknown:
            if "." in name and not any("." in each for each in known):
                wrong = "the size of a part is known to checks only"
                remedy = "Give the size a name under also, and use it for both"
            else:
                wrong = "the recipe has no size or count of this name"
                remedy = did_you_mean(name, known)
            self.values.fault(at, name, wrong, remedy)
        return bool(unknown)

    def _circle(self, waiting: Mapping[str, Formula | None], at: KeyPath) -> list[str]:
        """The names of one circle, once it is told."""
        way = [next(iter(waiting))]
        while True:
            needed = _names(waiting[way[-1]]) & waiting.keys()
            following = min(needed)
            if following in way:
                break
            way.append(following)
        circle = way[way.index(following) :]
        self.values.fault(
            (*at, circle[0]),
            " → ".join([*circle, circle[0]]),
            "these are worked out from one another, in a circle",
            "Give one of them a size of its own",
        )
        return circle


def _names(formula: Formula | None) -> set[str]:
    return set(names_in(formula.tree)) if formula is not None else set()
