"""The price of a foot from the job's price list, and the grade it is the price of."""

from __future__ import annotations

from dataclasses import dataclass

from yieldplan.measure.money import from_units
from yieldplan.model.job import Job, Price
from yieldplan.reference import tables


@dataclass(frozen=True, kw_only=True)
class Listed:
    """A grade to ask for and its price.

    Parameters
    ----------
    per_foot
        None when the list has no price. [money/10,000]
    note
        What a reader of the line must know about it.
    """

    grade: str
    per_foot: int | None
    note: str = ""


def list_price(wood: str, thickness: str, job: Job, *, is_clear: bool) -> Listed:
    """The listed grade to bid on: the best where a face must be clear, else the cheapest."""
    prices = [p for p in job.prices if (p.wood, p.thickness) == (wood, thickness)]
    if not prices:
        note = f"no price for {wood} {thickness}: add it to the job file's [[price]] tables"
        return Listed(grade="", per_foot=None, note=note)
    best = min(prices, key=_best_first if is_clear else _cheapest_first)
    note = f"price of {best.as_of.isoformat()}" if best.as_of else ""
    if len({price.grade for price in prices}) > 1:
        why = "a face must be clear" if is_clear else "the cheapest listed will do"
        note = "; ".join(filter(None, (f"{best.grade}, as {why}", note)))
    return Listed(grade=best.grade, per_foot=from_units(best.per_foot), note=note)


def _best_first(price: Price) -> tuple[int, int]:
    grades = list(tables.grades())
    # A yard's own grade is of unknown rank; its price then says how good it is.
    place = grades.index(price.grade) if price.grade in grades else len(grades)
    return place, -from_units(price.per_foot)


def _cheapest_first(price: Price) -> tuple[int, int]:
    place, _ = _best_first(price)
    return from_units(price.per_foot), place
