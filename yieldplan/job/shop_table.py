"""Reads `[shop]`: every setting may be given, the others keep the table's defaults."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from typing import Annotated, Any, get_args, get_origin

from pydantic import TypeAdapter

from yieldplan.faults import did_you_mean
from yieldplan.job import words
from yieldplan.job.extras import INSTALL_FAST, is_fast_installed
from yieldplan.job.tables import hints_of, is_length
from yieldplan.job.values import Values
from yieldplan.model.shop import Shop
from yieldplan.reference.tables import shop_defaults
from yieldplan.units import UnitName

_WIDEST_KERF = Fraction(1, 2)
"""Above this a point is lost (1.8 for 1/8): common practice, no source. [in]"""
_MUST_BE_MORE_THAN_0 = ("crosscut_step", "rip_step", "sheet_step", "stick_step")


def read_shop(values: Values, unit: UnitName, tables_in_shop: set[str]) -> Shop:
    """The shop's settings.

    Parameters
    ----------
    tables_in_shop
        Keys that are tables for all assemblies of a kind (`[shop.drawer]`).
    """
    settings = default_settings(unit)
    said = values.table("shop")
    for key in said:
        if key in settings:
            settings[key] = values.read(
                ("shop", key), _adapter(key), otherwise=settings[key]
            )
        elif key not in tables_in_shop:
            values.fault(
                ("shop", key),
                key,
                "the shop has no such setting",
                did_you_mean(key, {*settings, *tables_in_shop}),
            )
        elif not isinstance(said[key], dict):
            values.fault(
                ("shop", key),
                values.typed(("shop", key)),
                "a table is needed here",
                f"Write it under [shop.{key}]",
            )
    for key in _MUST_BE_MORE_THAN_0:
        if settings[key] <= 0:
            values.fault(
                ("shop", key),
                values.typed(("shop", key)),
                "a step of 0 has no marks",
                "Write the step, such as 1/8",
            )
            settings[key] = default_settings(unit)[key]
    if settings["kerf"] > _WIDEST_KERF:
        values.fault(
            ("shop", "kerf"),
            values.typed(("shop", "kerf")),
            "no saw of a small shop takes so much",
            "Write what one cut takes, such as 1/8",
        )
        settings["kerf"] = default_settings(unit)["kerf"]
    if settings["beside_marks"] and not is_fast_installed():
        values.fault(
            ("shop", "beside_marks"),
            values.typed(("shop", "beside_marks")),
            "laying narrow parts beside marks takes an extra that is not installed",
            f"Install it ({INSTALL_FAST}), or leave this key out",
        )
    if settings["moisture_wettest"] < settings["moisture_today"]:
        values.fault(
            ("shop", "moisture_wettest"),
            values.typed(("shop", "moisture_wettest")),
            f"the wettest season is drier than today's {settings['moisture_today']} per cent",
            "Write the higher figure here",
        )
    return Shop(**settings)


def default_settings(unit: UnitName) -> dict[str, Any]:
    """The table's settings for jobs in this unit."""
    return {
        key: ()
        if default.typed(unit) == "none"
        else _adapter(key).validate_python(
            _figure(default.typed(unit)), context={"unit": unit}
        )
        for key, default in shop_defaults().items()
    }


def default_shop(unit: UnitName) -> Shop:
    """A shop that changes nothing."""
    return Shop(**default_settings(unit))


@lru_cache
def _adapter(key: str) -> TypeAdapter[Any]:
    hint = hints_of(Shop)[key]
    if is_length(hint):
        return TypeAdapter(words.Length)
    if hint is Fraction:
        return TypeAdapter(words.Share)
    if hint is int:
        return TypeAdapter(Annotated[int, words.count(0)])
    if hint is bool:
        return TypeAdapter(words.Flag)
    if get_origin(hint) is tuple:
        return TypeAdapter(words.Names)
    return TypeAdapter(Annotated[str, words.choice(get_args(hint))])


def _figure(typed: str) -> object:
    if typed in ("true", "false"):
        return typed == "true"
    return int(typed) if typed.isdecimal() else typed
