"""Finds what can be added by writing one file: joints, assemblies, routes, stock kinds, sources, papers."""

from __future__ import annotations

import importlib
import inspect
import pkgutil
from types import ModuleType
from typing import TypeVar

Base = TypeVar("Base")


def name_in_words(cls: type) -> str:
    """The name people write: the file's name in words, its underlines as spaces.

    A hyphen in a trade term (`half-blind dovetail`) is stated by the class as `words`.
    """
    stated = cls.__dict__.get("words")
    if isinstance(stated, str):
        return stated
    return cls.__module__.rpartition(".")[2].replace("_", " ")


def find(package: ModuleType, base: type[Base]) -> dict[str, type[Base]]:
    """Every concrete subclass of `base` defined in a module of `package`, by its name in words.

    The package is handed over, so that this module imports nothing from above.

    Raises
    ------
    ValueError
        When two files claim the same name.
    """
    found: dict[str, type[Base]] = {}
    for info in sorted(pkgutil.iter_modules(package.__path__), key=lambda i: i.name):
        module = importlib.import_module(f"{package.__name__}.{info.name}")
        for _, cls in inspect.getmembers(module, inspect.isclass):
            if cls.__module__ != module.__name__ or not issubclass(cls, base):
                continue
            if cls is base or inspect.isabstract(cls):
                continue
            name = name_in_words(cls)
            if name in found:
                raise ValueError(f"two files of {package.__name__} are called {name!r}")
            found[name] = cls
    return found
