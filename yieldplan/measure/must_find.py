"""The pieces that are hard to find: what to look for first at the yard."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import ceil

from yieldplan.measure.order import natural
from yieldplan.measure.quarters import quarter_for
from yieldplan.measure.takeoff import Taken
from yieldplan.model.bid import MustFind
from yieldplan.model.blanks import Blank
from yieldplan.model.job import Job
from yieldplan.model.shop import Shop
from yieldplan.units import Inches, parse_length

MOST = 6
"""Nobody looks for more than this at once."""

_NAMED = 3
"""Names of pieces alike that are written out."""

_Rank = tuple[Inches, Inches, object]


def must_find(taken: Sequence[Taken], job: Job) -> tuple[MustFind, ...]:
    """Hardest first: matched sets, then the widest and the longest of each thickness.

    A piece that is neither matched nor the widest or longest of its wood and thickness
    comes out of the same boards and is not named.
    """
    boards = [each for each in taken if not each.blank.is_sawn_to_size]
    found = sorted((t for t in boards if is_matched(t.blank)), key=_by_area)
    for rank in (_by_width, _by_length):
        first: dict[str, Taken] = {}
        for each in sorted(boards, key=rank):
            if not is_matched(each.blank):
                first.setdefault(_line(each.blank, job), each)
        found += [each for each in first.values() if each not in found]
    return tuple(_said(_each_size_once(found, job)[:MOST], boards, job))


def _size(each: Taken, job: Job) -> tuple[object, ...]:
    """What makes two blanks the same piece to look for."""
    blank = each.blank
    sizes = blank.length.value, blank.width.value
    return (*sizes, _line(blank, job), blank.show_face, is_matched(blank))


def _each_size_once(found: Sequence[Taken], job: Job) -> list[Taken]:
    first: dict[object, Taken] = {}
    for each in found:
        first.setdefault(_size(each, job), each)
    return list(first.values())


def least_board(blank: Blank, shop: Shop) -> tuple[Inches, Inches]:
    """Length and width of the least rough board that gives the blank. [in]

    By the rules a plan is made by: the first crosscut on the shop's step past the end
    trim, the blank and its kerf up to the next step, then the other end trim; across
    the same, between the edge passes, where the last kerf runs off.
    """
    along, across, kerf = shop.crosscut_step, shop.rip_step, shop.kerf
    first = ceil(shop.end_trim / along) * along
    length = first + ceil((blank.length.value + kerf) / along) * along + shop.end_trim
    width = ceil((blank.width.value + kerf) / across) * across - kerf
    return length, width + 2 * shop.edge_pass


def is_matched(blank: Blank) -> bool:
    """Whether the blank is a set whose grain must run through its parts."""
    return blank.route == "match"


def _said(
    found: Sequence[Taken], boards: Sequence[Taken], job: Job
) -> Iterator[MustFind]:
    # What a tape shows at the yard, never less than will do.
    mark = parse_length("1 mm") if job.unit == "mm" else Fraction(1, 8)
    for each in found:
        length, width = (
            ceil(size / mark) * mark for size in least_board(each.blank, job.shop)
        )
        alike = [other for other in boards if _size(other, job) == _size(each, job)]
        names = [other.blank.words for other in alike]
        more = f" and {len(names) - _NAMED} more" if len(names) > _NAMED else ""
        yield MustFind(
            count=sum(other.count for other in alike),
            line=_line(each.blank, job),
            width=width,
            length=length,
            face=each.blank.show_face,
            what_for=", ".join(names[:_NAMED]) + more,
        )


def _line(blank: Blank, job: Job) -> str:
    return f"{blank.wood} {quarter_for(blank, job).name}"


def _by_area(each: Taken) -> _Rank:
    length, width = each.blank.length.value, each.blank.width.value
    return -width * length, -width, natural(each.blank.id)


def _by_width(each: Taken) -> _Rank:
    length, width = each.blank.length.value, each.blank.width.value
    return -width, -length, natural(each.blank.id)


def _by_length(each: Taken) -> _Rank:
    length, width = each.blank.length.value, each.blank.width.value
    return -length, -width, natural(each.blank.id)
