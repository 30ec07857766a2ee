"""Tells a part's whole story: why it is this size, and out of which board it comes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from yieldplan.desk.in_the_plan import Sawn, find_part, sawn_blanks
from yieldplan.desk.routes_in_the_plan import routes_in
from yieldplan.plan_file import Document
from yieldplan.units import UnitName, from_ticks, tape

_SIZES = ("length", "width", "thickness")


@dataclass(frozen=True)
class _Rule:
    """How this plan's sizes are written: with a hyphen, as a person would type them."""

    unit: UnitName

    def say(self, ticks: int) -> str:
        return tape(from_ticks(ticks), self.unit, join="-")

    def times(self, *ticks: int) -> str:
        return " × ".join(self.say(each) for each in ticks)


def explain(document: Document, part: str) -> str:
    """Why a part is this size, how many there are, its blank, and where each one lies.

    Parameters
    ----------
    document
        A plan file that has passed its check.
    part
        Id of the part: `upper/front`; the end of it will do where only one has it.

    Raises
    ------
    FaultsFound
        When the plan has no such part.
    """
    found = find_part(document, part)
    rule = _Rule(document["unit"])
    return "\n".join(
        [
            *_what(found, document, rule),
            "",
            "Why it is this size",
            *_why(found, rule),
            "",
            *_where(found, document, rule),
        ]
    )


def _what(part: Document, document: Document, rule: _Rule) -> Iterator[str]:
    length, width, thickness = part["size"]
    unit = "millimetres" if rule.unit == "mm" else "inches"
    yield (
        f"{part['id']}: {part['quantity']} of {rule.times(thickness, width, length)} "
        f"finished (thickness × width × length, {unit})"
    )
    yield f"Show face {part['show_face']}, back {part['back_face']}."
    if part["strips"] > 1:
        yield f"Glued up from {part['strips']} equal strips."
    if part["glue_up"] is not None:
        yield _glue_up(part["glue_up"], rule)
    if part["set_up"]:
        yield "A set-up piece to try a joint on: made from waste, or not at all."
    demand = _demand(part)
    for wood in document["woods"]:
        missing = wood["missing"].get(demand, 0)
        if missing:
            what = "strips" if part["strips"] > 1 else "of them"
            what = "steps of its width" if part["glue_up"] is not None else what
            yield (
                f"INCOMPLETE: {missing} {what} could not be had from the "
                f"{wood['wood']} offered."
            )


def _glue_up(said: Document, rule: _Rule) -> str:
    colour = {
        "any": "from any boards",
        "one lot": "all of one lot",
        "one board": "all of one board",
    }[said["colour"]]
    return (
        f"May be glued up from strips {rule.say(said['least'])} to {rule.say(said['most'])} "
        f"wide, {colour}; with the trim they come to {rule.say(said['units'] * said['step'])}."
    )


def _why(part: Document, rule: _Rule) -> Iterator[str]:
    for name, size in zip(_SIZES, part["size"], strict=True):
        terms: Sequence[Sequence[Any]] = part["why"][name]
        yield f"  {name:<10} {_sum(terms, size, rule)}"


def _sum(terms: Sequence[Sequence[Any]], size: int, rule: _Rule) -> str:
    said: list[str] = []
    for number, (words, ticks) in enumerate(terms):
        sign = "− " if ticks < 0 else "+ " if number else ""
        comma = "," if ticks == 0 and number else ""
        said.append(f"{sign}{_figure(words, ticks, rule)}{comma} {_reason(words)}")
    total = f" = {rule.say(size)}" if len(terms) > 1 else ""
    return " ".join(said) + total


def _figure(words: str, ticks: int, rule: _Rule) -> str:
    count = _count(words)
    if count > 1 and ticks % count == 0:
        return f"{count} × {rule.say(abs(ticks) // count)}"
    return rule.say(abs(ticks))


def _count(words: str) -> int:
    # The plan file writes a term that is taken twice as "2 × side".
    count, times, _ = words.partition(" × ")
    return int(count) if times and count.isascii() and count.isdecimal() else 1


def _reason(words: str) -> str:
    return words.partition(" × ")[2] if _count(words) > 1 else words


def _where(part: Document, document: Document, rule: _Rule) -> Iterator[str]:
    demand = _demand(part)
    sawn = list(sawn_blanks(document, demand))
    if not sawn:
        yield "No board of this plan is cut for it."
        return
    route = routes_in(document).of([demand])
    if route.taken:
        yield "How it is made"
        yield f"  {route.taken}"
        if route.next_best:
            yield f"  next best: {route.next_best}"
        yield ""
    yield "Where it comes from"
    for blank in document["blanks"]:
        here = [each for each in sawn if each.blank["id"] == blank["id"]]
        if not here:
            continue
        yield f"  {_blank(blank, part, demand, rule)}"
        for each in here:
            yield from (f"    {line}" for line in _place(each, demand, rule))


def _blank(blank: Document, part: Document, demand: str, rule: _Rule) -> str:
    length, width = blank["size"]
    made = "makes " + " and ".join(f"{n} {name}" for name, n in blank["makes"].items())
    if part["glue_up"] is not None:
        brought = blank["makes"][demand] * part["glue_up"]["step"]
        made = f"brings {rule.say(brought)} of the width of {part['id']}"
    inside = [box for box in blank["inside"] if box["part"] == demand]
    over = ""
    if blank["route"] == "saw":
        across = ", turned across the sheet" if blank["turned"] else ""
        return (
            f"Blank {blank['id']} (saw){across}, {rule.times(width, length)} "
            f"(width × length) as it lies, {made}, nothing to mill away."
        )
    if len(blank["inside"]) == 1:
        part_length, part_width = inside[0]["size"]
        over = (
            f"; {rule.say(length - part_length)} over in length and "
            f"{rule.say(width - part_width)} in width to mill away"
        )
    return (
        f"Blank {blank['id']} ({blank['route']}), rough {rule.times(width, length)} "
        f"(width × length) of stock at least {rule.say(blank['thickness'])} thick, "
        f"{made}{over}."
    )


def _place(sawn: Sawn, demand: str, rule: _Rule) -> Iterator[str]:
    stock, node = sawn.stock, sawn.node
    x0, y0, x1, y1 = node["box"]
    length, width = stock["size"]
    grade = f" {stock['grade']}" if stock["grade"] else ""
    copy = f", {stock['kind']} {sawn.copy} of its kind" if stock["copies"] > 1 else ""
    yield (
        f"{stock['id']} ({stock['line']}{grade}, {rule.times(width, length)}){copy}: "
        f"{_stretch(x0, x1, sawn.kerf, rule)}, {rule.say(y0)} to {rule.say(y1)} from the "
        f"near edge, face {node['face_up']} up; piece {node['id']}."
    )
    for box in sawn.blank["inside"]:
        if box["part"] == demand and len(sawn.blank["inside"]) > 1:
            at = box["at"]
            number, count = (
                sawn.blank["inside"].index(box) + 1,
                len(sawn.blank["inside"]),
            )
            which = f"In it {_ordinal(number)} of {count}"
            if any(each["slice"] for each in sawn.blank["inside"]):
                which = f"Slice {box['slice'] + 1} of it, from the face that is up"
            yield (
                f"  {which}, from {rule.say(at[0])} along and {rule.say(at[1])} across."
            )


def _stretch(x0: int, x1: int, kerf: int, rule: _Rule) -> str:
    if x0 == 0:
        return f"from the zero end to mark {rule.say(x1)}"
    return f"from mark {rule.say(x0 - kerf)} to mark {rule.say(x1)}, blade right of the mark"


def _ordinal(number: int) -> str:
    words = ("first", "second", "third", "fourth")
    return words[number - 1] if number <= len(words) else f"number {number}"


def _demand(part: Document) -> str:
    if part["glue_up"] is not None:
        return f"{part['id']} width"
    return f"{part['id']} strip" if part["strips"] > 1 else str(part["id"])
