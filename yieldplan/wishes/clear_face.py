"""Clear face: a face free of every mark; without it a back need only be sound, a front may have sap."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from typing import Any

from yieldplan.model.faces import FaceWord
from yieldplan.model.job import Job
from yieldplan.wishes.wish import Stated, Wish, named, named_by

_INSTEAD: tuple[tuple[str, FaceWord, str], ...] = (
    ("back_face", "sound", "clear backs"),
    ("show_face", "sap allowed", "no sap on the show face"),
)
"""The key that says clear, what it says instead, and the wish in words."""


class ClearFace(Wish):
    """One wish for the backs, and one for the show faces, of each kind of part that asks for it.

    Parts of one kind are those said by the same key of one kind of assembly: the fronts
    of all drawers, say.
    """

    def stated(self, job: Job) -> Iterator[Stated]:
        for key, instead, words in _INSTEAD:
            asked: dict[tuple[str, str], dict[int, Any]] = {}
            for place, assembly in enumerate(job.assemblies):
                for part, without in _without(assembly, key, instead):
                    alike = asked.setdefault((type(assembly).__name__, part), {})
                    alike[place] = without
            for (_, part), changed in asked.items():
                names = [named_by(job.assemblies[place]) for place in changed]
                whose = f"{part} of {named(names)}" if part else named(names)
                yield Stated(
                    words=f"{words}: {whose}",
                    without=dataclasses.replace(
                        job,
                        assemblies=tuple(
                            changed.get(place, assembly)
                            for place, assembly in enumerate(job.assemblies)
                        ),
                    ),
                )


def _without(assembly: Any, key: str, instead: FaceWord) -> Iterator[tuple[str, Any]]:
    """The assembly with one of its parts asking for less, part by part."""
    if getattr(assembly, key, None) == "clear":
        yield "", dataclasses.replace(assembly, **{key: instead})
    for field in dataclasses.fields(assembly):
        value = getattr(assembly, field.name)
        is_table = dataclasses.is_dataclass(value) and not isinstance(value, type)
        if is_table and getattr(value, key, None) == "clear":
            lowered: Any = dataclasses.replace(value, **{key: instead})
            words = field.name.replace("_", " ")
            yield words, dataclasses.replace(assembly, **{field.name: lowered})
