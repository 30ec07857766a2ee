"""Sheets and sticks of a quick bid: how many to buy, in the size that costs least."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import partial
from math import ceil

from yieldplan.measure.add_for_waste import waste_percent
from yieldplan.measure.money import from_units, to_the_cent
from yieldplan.measure.order import natural
from yieldplan.measure.takeoff import Taken
from yieldplan.model.bid import BidLine
from yieldplan.model.job import Job, SheetSize, StickLength
from yieldplan.model.shop import Shop
from yieldplan.units import Inches, feet_and_inches, tape

_FEW_ON_ONE = 4
"""Parts of which no more go on one piece leave much of it; small ones lie beside them."""


@dataclass(frozen=True, kw_only=True)
class _Size:
    """A size on offer.

    Parameters
    ----------
    holds
        How much of it there is: face of a sheet, length of a stick. [sq in or in]
    at_least
        So many it takes for the parts of which few go on one.
    """

    line: str
    holds: Fraction
    at_least: int
    fits: bool
    price: Decimal
    quantity: int | None


def by_the_piece(taken: Sequence[Taken], job: Job) -> tuple[BidLine, ...]:
    """A line for each sheet product, then one for each stick."""
    made_of: dict[str, list[Taken]] = {}
    for each in taken:
        if each.blank.is_sawn_to_size:
            made_of.setdefault(each.blank.wood, []).append(each)
    names = sorted(made_of, key=natural)
    return (
        *(_sheets(name, made_of[name], job) for name in names if name in job.sheets),
        *(_sticks(name, made_of[name], job) for name in names if name in job.sticks),
    )


def _sheets(name: str, taken: Sequence[Taken], job: Job) -> BidLine:
    sheet = job.sheets[name]
    area = sum((each.rough_face for each in taken), Fraction(0))
    sizes = []
    for size in sheet.sizes:
        sides = f"{tape(size.width, job.unit)} × {tape(size.length, job.unit)}"
        sizes.append(
            _Size(
                line=f"{sheet.product} {sides}" if sheet.more_sizes else sheet.product,
                holds=size.length * size.width,
                at_least=_for_the_large(taken, partial(_on_a_sheet, size, job.shop)),
                fits=_lie_on(taken, size.length, size.width),
                price=size.price,
                quantity=size.quantity,
            )
        )
    return _line(name, area, sizes, job, is_stick=False)


def _sticks(name: str, taken: Sequence[Taken], job: Job) -> BidLine:
    stick, shop = job.sticks[name], job.shop
    run = sum(
        ((each.blank.length.value + shop.kerf) * each.count for each in taken),
        Fraction(0),
    )
    longest = max(each.blank.length.value for each in taken)
    sizes = []
    for size in stick.lengths:
        usable = size.length - 2 * shop.stick_trim
        mm = " mm" if job.unit == "mm" else ""
        sizes.append(
            _Size(
                line=f"{stick.product} {feet_and_inches(size.length, job.unit)}{mm}",
                holds=max(usable, Fraction(1)),
                at_least=_for_the_large(taken, partial(_on_a_stick, size, job.shop)),
                fits=longest <= usable,
                price=size.price,
                quantity=size.quantity,
            )
        )
    return _line(name, run, sizes, job, is_stick=True)


def _lie_on(taken: Iterable[Taken], length: Inches, width: Inches) -> bool:
    blanks = [each.blank for each in taken]
    return all(b.length.value <= length and b.width.value <= width for b in blanks)


def _for_the_large(taken: Iterable[Taken], on_one: Callable[[Taken], int]) -> int:
    """How many pieces it takes for the parts of which few go on one; by area they would seem fewer."""
    shares = Fraction(0)
    for each in taken:
        number = on_one(each)
        if 0 < number <= _FEW_ON_ONE:
            shares += Fraction(each.count, number)
    return ceil(shares)


def _on_a_sheet(size: SheetSize, shop: Shop, taken: Taken) -> int:
    """How many of a blank go on a sheet in rows, across it only where it may turn."""
    kerf, trim = shop.kerf, 2 * shop.sheet_trim
    sides = (taken.blank.length.value, taken.blank.width.value)
    along, across = size.length - trim + kerf, size.width - trim + kerf
    ways = (sides, sides[::-1]) if taken.may_turn else (sides,)
    return max(int(along // (a + kerf)) * int(across // (b + kerf)) for a, b in ways)


def _on_a_stick(size: StickLength, shop: Shop, taken: Taken) -> int:
    run = size.length - 2 * shop.stick_trim + shop.kerf
    return int(run // (taken.blank.length.value + shop.kerf))


def _line(
    name: str, much: Fraction, sizes: Sequence[_Size], job: Job, *, is_stick: bool
) -> BidLine:
    add = job.shop.add_percent_sheets
    with_waste = much * (100 + add) / 100

    def by_size(size: _Size) -> int:
        return ceil(with_waste / size.holds)

    def number(size: _Size) -> int:
        return max(by_size(size), size.at_least)

    def is_short(size: _Size) -> bool:
        return size.quantity is not None and size.quantity < number(size)

    def cost(size: _Size) -> tuple[bool, bool, Fraction, Fraction]:
        # What every part fits on, and what there is enough of; then what costs least.
        price = number(size) * Fraction(size.price)
        return not size.fits, is_short(size), price, -size.holds

    best = min(sizes, key=cost)
    buy, per = number(best), from_units(best.price)
    notes = []
    if best.at_least > by_size(best):
        notes.append("as many as its large parts take")
    if is_short(best):
        notes.append(f"the job offers only {best.quantity}")
    return BidLine(
        wood=name,
        line=best.line,
        thickness="",
        grade="",
        is_sheet=not is_stick,
        is_stick=is_stick,
        net=None,
        rough=None,
        add_percent=add,
        waste_percent=waste_percent(add),
        buy=Fraction(buy),
        per=per,
        total=to_the_cent(buy * per),
        price_note="; ".join(notes),
    )
