"""Several parts in one blank: end to end along the grain, or one above the other across it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction

from yieldplan.blanks import allowances
from yieldplan.blanks.cautions import cautions
from yieldplan.model.blanks import Blank, Inside
from yieldplan.model.faces import FORBIDS, FaceWord
from yieldplan.model.job import Job
from yieldplan.model.parts import Part
from yieldplan.model.sums import Sum, Term
from yieldplan.units import Inches


def end_to_end(
    parts: Sequence[Part],
    route: str,
    words: str,
    job: Job,
    *,
    by_whole_run: bool = False,
) -> Blank:
    """One blank along the grain, first part at zero, a kerf between; as wide as the widest.

    Parameters
    ----------
    by_whole_run
        Whether the length of all of it decides what is jointed and planed away, not that
        of its longest part.
    """
    shop = job.shop
    widest = max(part.width.value for part in parts)
    run = sum((part.length.value for part in parts), Fraction(0))
    run += shop.kerf * (len(parts) - 1)
    milled = run if by_whole_run else None
    on_length = allowances.on_length(parts, shop)
    on_width = allowances.on_width(parts, widest, shop, run=milled)
    x, y = allowances.half(on_length), allowances.half(on_width)
    inside = []
    for part in parts:
        inside.append(_at(part, x, y))
        x += part.length.value + shop.kerf
    along = Sum(tuple(_terms([(_name(part), part.length.value) for part in parts])))
    along += Sum.of(("kerf", shop.kerf, len(parts) - 1)) + on_length
    across = Sum.of(("widest part", widest)) + on_width
    return _blank(parts, route, words, along, across, widest, inside, job, milled)


def one_above_the_other(
    parts: Sequence[Part], route: str, words: str, job: Job
) -> Blank:
    """One blank across the grain, the first part uppermost (far from you), a kerf between."""
    shop = job.shop
    high = sum((p.width.value for p in parts), Fraction(0))
    high += shop.kerf * (len(parts) - 1)
    longest = max(part.length.value for part in parts)
    on_length = allowances.on_length(parts, shop)
    on_width = allowances.on_width(parts, high, shop)
    x, y = allowances.half(on_length), allowances.half(on_width)
    inside = []
    for part in reversed(parts):
        inside.append(_at(part, x, y))
        y += part.width.value + shop.kerf
    across = Sum(tuple(_terms([(part.id, part.width.value) for part in parts])))
    across += Sum.of(("kerf", shop.kerf, len(parts) - 1)) + on_width
    along = Sum.of(("longest part", longest)) + on_length
    return _blank(parts, route, words, along, across, high, inside[::-1], job)


def _blank(
    parts: Sequence[Part],
    route: str,
    words: str,
    length: Sum,
    width: Sum,
    finished_width: Inches,
    inside: Sequence[Inside],
    job: Job,
    run: Inches | None = None,
) -> Blank:
    shop, first = job.shop, parts[0]
    lent = allowances.up_to_machine(length, parts, shop)
    planing = allowances.on_thickness(parts, finished_width, shop, run=run)
    finished = Sum.of(("finished thickness", first.thickness.value))
    return Blank(
        id="",
        route=route,
        wood=first.wood,
        is_sheet=first.is_sheet,
        is_stick=first.is_stick,
        length=length + lent,
        width=width,
        thickness=finished + planing,
        finished_thickness=finished.value,
        makes=dict(Counter(part.demand for part in parts)),
        inside=tuple(inside),
        show_face=strictest([part.show_face for part in parts]),
        back_face=strictest([part.back_face for part in parts]),
        set_up=all(part.set_up for part in parts),
        words=words,
        cautions=tuple(
            cautions(
                length=length + lent,
                width=width,
                finished_thickness=finished.value,
                comes_to_size=first.is_sawn_to_size,
                lent=bool(lent.terms),
                shop=shop,
                unit=job.unit,
            )
        ),
    )


def strictest(words: Sequence[FaceWord]) -> FaceWord:
    """The face word that forbids most: parts of one board show one face."""
    return max(words, key=lambda word: len(FORBIDS[word]))


def _terms(sizes: Sequence[tuple[str, Inches]]) -> list[Term]:
    """A term a part, the same part twice in a row as `2 ×`."""
    terms: list[Term] = []
    for words, inches in sizes:
        if terms and terms[-1].words == words:
            terms[-1] = Term(words, inches, terms[-1].times + 1)
        else:
            terms.append(Term(words, inches))
    return terms


def _name(part: Part) -> str:
    return "test piece" if part.set_up else part.id


def _at(part: Part, x: Inches, y: Inches) -> Inside:
    return Inside(
        demand=part.demand,
        x=x,
        y=y,
        length=part.length.value,
        width=part.width.value,
    )
