"""The quick bid: what to buy of each wood and quarter before any board is known."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import ceil

from yieldplan.measure.add_for_waste import add_for_boards, waste_percent
from yieldplan.measure.by_the_piece import by_the_piece
from yieldplan.measure.list_price import Listed, list_price
from yieldplan.measure.money import to_the_cent
from yieldplan.measure.must_find import must_find
from yieldplan.measure.order import natural
from yieldplan.measure.purchase import CUBIC_INCHES_PER_BOARD_FOOT
from yieldplan.measure.quarters import Quarter, quarter_for
from yieldplan.measure.takeoff import Taken, takeoff
from yieldplan.model.bid import Bid, BidLine
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.parts import Part


def bid(
    job: Job,
    parts: Sequence[Part],
    blanks: Sequence[Blank],
    cautions: Sequence[str] = (),
) -> Bid:
    """The purchase list from net and rough board feet and the shop's planning waste.

    Rough board feet times (100 + add) / 100, up to the next whole board foot; sheets
    by area and sticks by length the same way, up to the next whole one, and as many as
    the large parts take of which only a few go on one.
    """
    taken = takeoff(parts, blanks)
    counted_on = {each.blank.id for each in taken}
    return Bid(
        job=job,
        parts=tuple(parts),
        blanks=tuple(
            blank for blank in blanks if blank.set_up or blank.id in counted_on
        ),
        lines=(*_boards(taken, job), *by_the_piece(taken, job)),
        must_find=must_find(taken, job),
        cautions=tuple(dict.fromkeys((*cautions, *_cautions(taken)))),
    )


def _boards(taken: Sequence[Taken], job: Job) -> tuple[BidLine, ...]:
    lines: dict[tuple[str, Quarter], list[Taken]] = {}
    for each in taken:
        if not each.blank.is_sawn_to_size:
            quarter = quarter_for(each.blank, job)
            lines.setdefault((each.blank.wood, quarter), []).append(each)
    ordered = sorted(lines, key=lambda k: (natural(k[0]), k[1].measured, k[1].name))
    return tuple(_board_line(wood, q, lines[wood, q], job) for wood, q in ordered)


def _board_line(
    wood: str, quarter: Quarter, taken: Sequence[Taken], job: Job
) -> BidLine:
    faces = [each.blank.show_face for each in taken]
    price = list_price(wood, quarter.name, job, is_clear="clear" in faces)
    per_inch = quarter.measured / CUBIC_INCHES_PER_BOARD_FOOT
    net = sum((each.face for each in taken), Fraction(0)) * per_inch
    rough = sum((each.rough_face for each in taken), Fraction(0)) * per_inch
    add = add_for_boards(taken, price.grade, job.shop)
    buy = Fraction(ceil(rough * (100 + add.percent) / 100))
    return BidLine(
        wood=wood,
        line=f"{wood} {quarter.name}",
        thickness=quarter.name,
        grade=price.grade,
        is_sheet=False,
        net=net,
        rough=rough,
        add_percent=add.percent,
        waste_percent=waste_percent(add.percent),
        buy=buy,
        per=price.per_foot,
        total=None if price.per_foot is None else to_the_cent(buy * price.per_foot),
        price_note=_note(quarter, price, add.words),
    )


def _note(quarter: Quarter, price: Listed, added: str) -> str:
    notes = [price.note, added]
    if not quarter.is_sold:
        notes.insert(0, "thicker than any quarter sold: glue it up, or ask the yard")
    return "; ".join(note for note in notes if note)


def _cautions(taken: Sequence[Taken]) -> list[str]:
    return [caution for each in taken for caution in each.blank.cautions]
