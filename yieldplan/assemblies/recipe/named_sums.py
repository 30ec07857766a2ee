"""Gives a recipe's part the sums behind its sizes, every term under the recipe's own name."""

from __future__ import annotations

import dataclasses

from yieldplan.assemblies.recipe.keys import SIZES_OF_A_PART, Draft
from yieldplan.model.arithmetic.working import Known
from yieldplan.model.parts import Part
from yieldplan.model.sums import Sum, Term
from yieldplan.units import Inches


def with_named_sums(part: Part, draft: Draft, known: Known) -> Part:
    """The part as built, `30 width − 2 × 3/4 board` standing where it had `28-1/2 length`.

    The figures stay; only the reasons become the recipe's.
    """
    sums = {
        size: named
        for size in SIZES_OF_A_PART
        if (named := draft.sum_of(size, known)) is not None
    }
    between = draft.given.get("between")
    if isinstance(between, Draft):
        sums["length"] = _spanning(part.length, between, known)
    return dataclasses.replace(part, **sums)  # type: ignore[arg-type]


def _spanning(total: Sum, between: Draft, known: Known) -> Sum:
    """The length of a part that spans a distance: the distance's own terms, then the joints'.

    A mate that is one size of the recipe goes by its name, so that what was taken off
    for it cancels: `30 width − 2 × 3/4 board + 2 × 3/4 board − 2 × 3/8 lap`.
    """
    clear = between.sum_of("clear", known) or Sum(())
    mates: dict[Inches, str] = {}
    for key in ("far_mate", "mate"):
        mate = between.sum_of(key, known)
        if mate is not None and len(mate.terms) == 1 and mate.terms[0].times == 1:
            mates[mate.value] = mate.terms[0].words
    terms: list[Term] = []
    for term in total:
        if term.words == "between shoulders":
            terms += clear.terms
        elif term.words == "mate" and abs(term.inches) in mates:
            terms.append(dataclasses.replace(term, words=mates[abs(term.inches)]))
        else:
            terms.append(term)
    return Sum(tuple(terms)).folded()
