"""Reads single values and tables of a job file and notes what is wrong with each."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, TypeVar

from pydantic import TypeAdapter, ValidationError

from yieldplan.faults import Faults
from yieldplan.job.document import Document, typed_at
from yieldplan.job.lines import KeyPath
from yieldplan.job.say import tell
from yieldplan.job.tables import Table
from yieldplan.units import UnitName

AnyTable = TypeVar("AnyTable", bound=Table)


@dataclass(kw_only=True)
class Values:
    """A job file on its way to a job, and the list of what is wrong with it.

    Parameters
    ----------
    unit
        The unit of a bare number, once it is known.
    """

    document: Document
    faults: Faults
    unit: UnitName = "in"

    def fault(self, path: KeyPath, said: str, wrong: str, remedy: str) -> None:
        """Note a fault at a key."""
        self.faults.add(self.document.where(*path), said, wrong, remedy)

    def typed(self, path: KeyPath) -> str:
        """A value as it was typed."""
        return typed_at(self.document.data, path)

    def table(self, key: str) -> Mapping[str, Any]:
        """A top-level table, empty where it is left out."""
        found = self.document.data.get(key, {})
        if isinstance(found, dict):
            return found
        remedy = f"Write [{key}] with single brackets, its keys below"
        self.fault((key,), self.typed((key,)), "a table is needed here", remedy)
        return {}

    def tables(self, key: str) -> Iterator[tuple[KeyPath, dict[str, Any]]]:
        """Every table of a list of tables, with its path."""
        found = self.document.data.get(key, [])
        if not isinstance(found, list):
            remedy = f"Write [[{key}]] with double brackets, its keys below"
            self.fault(
                (key,), self.typed((key,)), "a list of tables is needed here", remedy
            )
            return
        for number, each in enumerate(found):
            path: KeyPath = (key, number)
            if isinstance(each, dict):
                yield path, each
            else:
                remedy = f"Write [[{key}]], its keys below"
                self.fault(path, self.typed(path), "a table is needed here", remedy)

    def read(self, path: KeyPath, kind: TypeAdapter[Any], *, otherwise: Any) -> Any:
        """One value; `otherwise` where it is wrong, so that reading can go on."""
        data: Any = self.document.data
        for word in path:
            data = data[word]
        try:
            return kind.validate_python(data, context={"unit": self.unit})
        except ValidationError as found:
            tell(
                found,
                data=data,
                table=None,
                document=self.document,
                at=path,
                shared=(),
                faults=self.faults,
            )
            return otherwise

    def read_key(self, path: KeyPath, kind: TypeAdapter[Any]) -> None:
        """Note what is wrong with a key itself, where people choose it."""
        try:
            kind.validate_python(path[-1])
        except ValidationError as found:
            tell(
                found,
                data=path[-1],
                table=None,
                document=self.document,
                at=path,
                shared=(),
                faults=self.faults,
            )

    def read_table(
        self,
        table: type[AnyTable],
        data: object,
        at: KeyPath,
        *,
        shared: tuple[KeyPath, ...] = (),
        may_lack: bool = False,
    ) -> AnyTable | None:
        """A table; None, with a fault for each mistake, where something is wrong.

        Parameters
        ----------
        shared
            Where keys may stand that were said once for all tables of the kind.
        may_lack
            Whether keys may be missing (what is said for all is only a part).
        """
        try:
            return table.model_validate(data, context={"unit": self.unit})
        except ValidationError as found:
            tell(
                found,
                data=data,
                table=table,
                document=self.document,
                at=at,
                shared=shared,
                faults=self.faults,
                may_lack=may_lack,
            )
            return None
