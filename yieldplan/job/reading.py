"""The one door of a job file: TOML in, a `Job` out, every mistake told in one run."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from decimal import Decimal
from pathlib import Path
from typing import Annotated, Any, get_args

from pydantic import TypeAdapter

import yieldplan.assemblies
import yieldplan.joints
from yieldplan import registry
from yieldplan.assemblies.assembly import Assembly
from yieldplan.assemblies.recipe import assembly_of
from yieldplan.faults import Faults, did_you_mean
from yieldplan.job import words
from yieldplan.job.around import (
    already_made,
    check_names_apart,
    grain_matches,
    prices,
    sheets,
    sticks,
    woods,
)
from yieldplan.job.assembly_tables import read_assemblies, table_key
from yieldplan.job.document import read_document
from yieldplan.job.recipes import read_recipes, recipe_names
from yieldplan.job.say import nearest
from yieldplan.job.shop_table import read_shop
from yieldplan.job.values import Values
from yieldplan.job.words import as_typed
from yieldplan.joints.joint import Joint
from yieldplan.model.job import BoardMeasure, Job
from yieldplan.units import UnitName

HEAD = ("title", "unit", "currency", "board_measure", "minimum_order", "minimum_feet")
TABLES = ("shop", "wood", "sheet", "stick", "price", "made", "grain_match", "recipe")
FIXED = (*HEAD, *TABLES)
LATER = ("prices",)
"""Words kept for what a job file will say one day."""

_NO_SIZES = ("price", "made", "minimum_order", "minimum_feet", "title")
_FRACTION = re.compile(r"\d\s*/\s*\d")
_LONG_IN_INCHES = 250

_TEXT: TypeAdapter[Any] = TypeAdapter(words.Text)
_CURRENCY: TypeAdapter[Any] = TypeAdapter(words.Currency)
_AMOUNT: TypeAdapter[Any] = TypeAdapter(words.Amount)
_UNIT: TypeAdapter[Any] = TypeAdapter(Annotated[str, words.choice(get_args(UnitName))])
_MEASURE: TypeAdapter[Any] = TypeAdapter(
    Annotated[str, words.choice(get_args(BoardMeasure))]
)


def read_job(
    path: Path,
    faults: Faults,
    *,
    kinds: Mapping[str, type[Assembly]] | None = None,
    joints: Mapping[str, type[Joint]] | None = None,
) -> Job | None:
    """The job as far as it can be read; None when the file is not TOML at all.

    With faults noted the job may lack what is wrong, so that its tally can still be
    read against it and everything is told in one run. Nothing may be planned from it.

    Parameters
    ----------
    kinds, joints
        What a job may ask for, by name; what the registry finds when left out.
    """
    if kinds is None:
        kinds = registry.find(yieldplan.assemblies, Assembly)  # type: ignore[type-abstract]
    if joints is None:
        joints = registry.find(yieldplan.joints, Joint)  # type: ignore[type-abstract]
    found = Faults()
    document = read_document(path, found)
    job = None
    if document is not None:
        job = _job_of(Values(document=document, faults=found), kinds, joints)
    faults.extend(sorted(found, key=lambda fault: fault.where.line or 0))
    return job


def _job_of(
    values: Values,
    kinds: Mapping[str, type[Assembly]],
    joints: Mapping[str, type[Joint]],
) -> Job:
    faults = values.faults
    keys = {table_key(name) for name in kinds}
    taken = {*FIXED, *LATER, *keys}
    keys |= recipe_names(values, taken)
    is_known = _check_top_level(values, keys)
    unit = _unit(values)
    values.unit = unit
    known_woods, known_sheets = woods(values), sheets(values)
    known_sticks = sticks(values)
    check_names_apart(values, known_woods, known_sheets, known_sticks)
    before = len(faults)
    recipes = read_recipes(values, joints, taken)
    kinds = {**kinds, **{key: assembly_of(each) for key, each in recipes.items()}}
    assemblies = read_assemblies(values, kinds, joints)
    if not assemblies and len(faults) == before:
        wanted = " or ".join(f"[[{key}]]" for key in sorted(keys))
        values.fault((), "", "the job asks for nothing", f"Add a table: {wanted}")
    # What is asked of a part is not held against it while its assembly cannot be read.
    all_read = is_known and len(faults) == before
    matches, made = grain_matches(values), already_made(values)
    return Job(
        file=values.document.file,
        title=_head(values, "title", _TEXT, "", 'Write title = "..."'),
        unit=unit,
        currency=_head(
            values, "currency", _CURRENCY, "", 'Write its three letters, such as "USD"'
        ),
        board_measure=_board_measure(values, unit),
        shop=read_shop(values, unit, keys),
        woods=known_woods,
        sheets=known_sheets,
        sticks=known_sticks,
        prices=prices(values, known_woods),
        assemblies=assemblies,
        grain_matches=matches if all_read else (),
        made=made if all_read else {},
        minimum_order=_amount(values, "minimum_order"),
        minimum_feet=_amount(values, "minimum_feet"),
    )


def _check_top_level(values: Values, keys: set[str]) -> bool:
    """Whether every top-level key is known; others are noted and read as what was meant."""
    is_known = True
    known = {*FIXED, *keys}
    for key in values.document.data:
        if key in known:
            continue
        is_known = False
        if key in LATER:
            wrong, remedy = "this word is kept for a later version", "Leave it out"
            values.fault((key,), key, wrong, remedy)
            continue
        wrong, remedy = "this key is not known here", did_you_mean(key, known)
        values.fault((key,), key, wrong, remedy)
        meant = nearest(
            key, known - {*values.document.data} | {"wood", "sheet", "stick", "shop"}
        )
        if meant is not None:
            values.document = values.document.as_meant(key, meant)
    return is_known


def _unit(values: Values) -> UnitName:
    """The unit; where it cannot be read, the one the sizes look like.

    Read in the wrong unit every size would seem a mistake of its own.
    """
    sizes = list(_sizes(values.document.data))
    has_fractions = any(_FRACTION.search(size) for size in sizes)
    bare = (int(size[:9]) for size in sizes if size.isascii() and size.isdigit())
    is_mm = not has_fractions and max(bare, default=0) > _LONG_IN_INCHES
    likely: UnitName = "mm" if is_mm else "in"
    unit: UnitName = _head(values, "unit", _UNIT, likely, 'Write unit = "in" or "mm"')
    return unit


def _sizes(data: object) -> Iterator[str]:
    """Texts that may be sizes; money and thicknesses in quarters are none."""
    if isinstance(data, dict):
        for key, inner in data.items():
            if key not in _NO_SIZES:
                yield from _sizes(inner)
    elif isinstance(data, list):
        for inner in data:
            yield from _sizes(inner)
    elif (text := as_typed(data)) is not None:
        yield text


def _head(
    values: Values, key: str, kind: TypeAdapter[Any], otherwise: Any, remedy: str
) -> Any:
    written = values.document.data
    if key in written:
        return values.read((key,), kind, otherwise=otherwise)
    values.fault((key,), "", f"the job has no {key}", remedy)
    return otherwise


def _amount(values: Values, key: str) -> Decimal | None:
    if key not in values.document.data:
        return None
    amount: Decimal | None = values.read((key,), _AMOUNT, otherwise=None)
    return amount


def _board_measure(values: Values, unit: UnitName) -> BoardMeasure:
    # The rule of whole feet and surface measure is one of inch yards.
    usual: BoardMeasure = "nhla" if unit == "in" else "exact"
    if "board_measure" not in values.document.data:
        return usual
    measure: BoardMeasure = values.read(("board_measure",), _MEASURE, otherwise=usual)
    return measure
