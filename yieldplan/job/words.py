"""The words of a job file: sizes, names, counts, amounts, choices, as pydantic is to read them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction
from typing import Annotated

from pydantic import PlainValidator, ValidationInfo
from pydantic_core import PydanticCustomError

from yieldplan.faults import did_you_mean
from yieldplan.measure.amounts import AmountError, parse_amount
from yieldplan.measure.thickness import parse_thickness
from yieldplan.model.names import LONGEST_NAME, tidy_name, trouble_with_name
from yieldplan.units import TapeError, UnitName, parse_length

LONGEST_TEXT = 200
LONGEST_SIZE = 40
MOST_OF_ONE = 10_000
LONGEST = Fraction(1200)
"""No length in a job is over 100 ft. [in]"""


@dataclass(frozen=True)
class TypedDecimal:
    """A decimal number of a job file, kept as it was typed."""

    text: str

    def __str__(self) -> str:
        return self.text


def mistake(wrong: str, remedy: str) -> PydanticCustomError:
    """What a reader raises: what is wrong with a value and what to do about it."""
    return PydanticCustomError("mistake", "{wrong}", {"wrong": wrong, "remedy": remedy})


def as_typed(value: object) -> str | None:
    """A text or number of the file as the person typed it; None for anything else."""
    if isinstance(value, bool):
        return None
    if isinstance(value, (str, int, TypedDecimal)):
        return str(value)
    return None


def _printable(value: object, longest: int) -> str:
    if not isinstance(value, str):
        raise mistake("this is not a text", "Write it in quotes")
    tidy = tidy_name(value)
    trouble = trouble_with_name(tidy, longest)
    if trouble is not None:
        raise mistake(*trouble)
    return tidy


def _unit(info: ValidationInfo) -> UnitName:
    return "mm" if info.context and info.context["unit"] == "mm" else "in"


def _length(value: object, info: ValidationInfo) -> Fraction:
    text = as_typed(value)
    if text is None:
        raise mistake(
            "this is not a size", 'Write it in quotes, such as "17-3/8" or "441 mm"'
        )
    if len(text) > LONGEST_SIZE:
        raise mistake("no size is written that long", "Shorten it")
    try:
        size = parse_length(text, _unit(info))
    except TapeError as error:
        raise mistake(error.wrong, error.remedy) from error
    if size > LONGEST:
        raise mistake("this is over 100 ft", "Look for a slipped decimal point or unit")
    return size


def _size(value: object, info: ValidationInfo) -> Fraction:
    size = _length(value, info)
    if size <= 0:
        raise mistake("a size of 0 leaves nothing to make", "Write the real size")
    return size


def _share(value: object) -> Fraction:
    text = as_typed(value)
    try:
        share = Fraction((text or "")[:LONGEST_SIZE].replace(" ", "x"))
    except (ValueError, ZeroDivisionError):
        share = Fraction(-1)
    if share < 0 or "e" in (text or "").lower():
        raise mistake("this is not a number", 'Write it like "1/3" or "0.5"')
    if share > 1000:
        raise mistake("this is over 1,000", "Look for a slipped decimal point")
    return share


def _flag(value: object) -> bool:
    if not isinstance(value, bool):
        raise mistake("this is neither yes nor no", "Write true or false, no quotes")
    return value


def _name(value: object) -> str:
    return _printable(value, LONGEST_NAME)


def _text(value: object) -> str:
    return _printable(value, LONGEST_TEXT)


def _names(value: object) -> tuple[str, ...]:
    if not isinstance(value, list):
        return (_assembly_name(value),)
    if not value:
        raise mistake("no name is given", 'Write one name, or several: ["a", "b"]')
    if len(value) > MOST_OF_ONE:
        raise mistake(f"these are more than {MOST_OF_ONE:,}", "Split the job")
    return tuple(_assembly_name(name) for name in value)


def _assembly_name(value: object) -> str:
    name = _name(value)
    if "/" in name:
        raise mistake(
            'a name holds no "/": parts are called by it (upper/front)',
            "Write it with a hyphen or a space",
        )
    return name


def _amount(value: object) -> Decimal:
    text = as_typed(value)
    if text is None:
        raise mistake("this is not an amount of money", 'Write it like "14.50"')
    try:
        return parse_amount(text[:LONGEST_SIZE])
    except AmountError as error:
        raise mistake(error.wrong, error.remedy) from error


def _currency(value: object) -> str:
    if isinstance(value, str) and len(value) == 3 and value.isascii():
        if value.isupper() and value.isalpha():
            return value
        if value.isalpha():
            raise mistake(
                "a currency is three capitals", f'Did you mean "{value.upper()}"?'
            )
    raise mistake("this is not a currency", 'Write its three letters, such as "USD"')


def _day(value: object) -> date:
    if isinstance(value, date):
        return date(value.year, value.month, value.day)
    try:
        return date.fromisoformat(str(value))
    except ValueError as error:
        raise mistake(
            "this is not a date", "Write year-month-day, such as 2026-11-02"
        ) from error


def _thickness(value: object, info: ValidationInfo) -> str:
    if not isinstance(value, str):
        raise mistake("this is not a thickness", 'Write it like "4/4"')
    try:
        return parse_thickness(value[:LONGEST_SIZE], _unit(info)).name
    except TapeError as error:
        raise mistake(error.wrong, error.remedy) from error


def count(least: int, most: int = MOST_OF_ONE) -> PlainValidator:
    """A whole number from `least` to `most`."""

    def read(value: object) -> int:
        if not isinstance(value, int) or isinstance(value, bool):
            raise mistake(
                "this is not a whole number", "Write it in figures, no quotes"
            )
        if not least <= value <= most:
            raise mistake(
                f"it must be from {least} to {most:,}", "Correct it, or split the job"
            )
        return value

    return PlainValidator(read)


def choice(words: Iterable[object]) -> PlainValidator:
    """One of a few words."""
    known = {loosely(str(word)): str(word) for word in words}

    def read(value: object) -> str:
        if not isinstance(value, str):
            raise mistake("this is not one of the words known here", _one_of(known))
        if loosely(value) not in known:
            raise mistake(
                "this word is not known here", did_you_mean(value, known.values())
            )
        return known[loosely(value)]

    return PlainValidator(read)


def _one_of(known: dict[str, str]) -> str:
    return "Write " + " or ".join(f'"{word}"' for word in sorted(known.values()))


def loosely(word: str) -> str:
    """A word without what people write differently: capitals, hyphens, underlines."""
    return " ".join(word.lower().replace("-", " ").replace("_", " ").split())


Length = Annotated[Fraction, PlainValidator(_length)]
Size = Annotated[Fraction, PlainValidator(_size)]
Share = Annotated[Fraction, PlainValidator(_share)]
Flag = Annotated[bool, PlainValidator(_flag)]
Name = Annotated[str, PlainValidator(_name)]
PartName = Annotated[str, PlainValidator(_assembly_name)]
Text = Annotated[str, PlainValidator(_text)]
Names = Annotated[tuple[str, ...], PlainValidator(_names)]
Amount = Annotated[Decimal, PlainValidator(_amount)]
AmountOrNone = Annotated[Decimal | None, PlainValidator(_amount)]
Currency = Annotated[str, PlainValidator(_currency)]
DayOrNone = Annotated[date | None, PlainValidator(_day)]
ThicknessName = Annotated[str, PlainValidator(_thickness)]
