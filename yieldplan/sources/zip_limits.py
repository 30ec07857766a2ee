"""Looks into a zipped file, as spreadsheets are, before anything in it expands."""

from __future__ import annotations

import io
import zipfile
import zlib
from pathlib import Path
from xml.parsers import expat

from yieldplan.faults import Faults, Where
from yieldplan.sources.text_file import read_bytes

MOST_EXPANDED = 50_000_000
MOST_TIMES = 100
MOST_MEMBERS = 200
_OLD_OFFICE = b"\xd0\xcf\x11\xe0"
_FIRST = 65_536
"""A document type stands before the first element, so in the first bytes. [bytes]"""

BROKEN = (
    zipfile.BadZipFile,
    zipfile.LargeZipFile,
    zlib.error,
    EOFError,
    OSError,
    RuntimeError,  # a locked member; a way of packing that Python does not know
    OverflowError,
    ValueError,
)
"""What Python says to a damaged zip file."""


def open_within_limits(path: Path, faults: Faults) -> zipfile.ZipFile | None:
    """The zipped file, in memory, once it is known to be small and plain; else a fault.

    Refused are more than 1 MB on the disk, 50 MB or 100 times as much unpacked, 200
    files, locked ones, and XML with a document type, which could name other files.
    """
    whole = Where(file=path.name)
    raw = read_bytes(path, faults)
    if raw is None:
        return None
    trouble = _of_another_kind(raw)
    if trouble is None:
        try:
            zipped = zipfile.ZipFile(io.BytesIO(raw))
            trouble = _beyond_limits(zipped, len(raw)) or _with_a_doctype(zipped)
            if trouble is None:
                return zipped
        except BROKEN:
            trouble = (
                "this is not a whole spreadsheet file",
                "Save it again from the spreadsheet",
            )
    faults.add(whole, "", *trouble)
    return None


def _of_another_kind(raw: bytes) -> tuple[str, str] | None:
    if not raw.strip():
        return "the file is empty", "Write a header and a row a board"
    if raw.startswith(_OLD_OFFICE):
        return (
            "it is locked with a password, or of the old kind .xls",
            "Save it without a password",
        )
    if not raw.startswith(b"PK"):
        return (
            "this is not a spreadsheet file",
            "Save it again from the spreadsheet, or let its name end in .csv if it is text",
        )
    return None


def _beyond_limits(zipped: zipfile.ZipFile, packed: int) -> tuple[str, str] | None:
    members = zipped.infolist()
    expanded = sum(member.file_size for member in members)
    remedy = "Copy the tally alone into a new spreadsheet and save that"
    if len(members) > MOST_MEMBERS:
        return f"more than {MOST_MEMBERS} files are packed in it", remedy
    if expanded > MOST_EXPANDED or expanded > MOST_TIMES * packed:
        return (
            f"unpacked it is {_megabytes(expanded)} MB; {_megabytes(MOST_EXPANDED)} MB and "
            f"{MOST_TIMES} times its own size are allowed",
            remedy,
        )
    if len({member.filename for member in members}) < len(members):
        return "it holds two files of one name", remedy
    if any(member.flag_bits & 1 for member in members):
        return "it is locked with a password", "Save it without one"
    return None


def _megabytes(size: int) -> int:
    return -(-size // 1_000_000)


class _HasDoctypeError(Exception):
    pass


class _BeyondProlog(Exception):  # noqa: N818 - it says where the reader is
    pass


def _with_a_doctype(zipped: zipfile.ZipFile) -> tuple[str, str] | None:
    """A fault where any file in it declares a document type; no spreadsheet does."""
    for member in zipped.infolist():
        with zipped.open(member) as opened:
            start = opened.read(_FIRST)
        try:
            _read_prolog(start)
        except _HasDoctypeError:
            return (
                "a file in it names other files to read in",
                "Save it from a spreadsheet program again",
            )
    return None


def _read_prolog(start: bytes) -> None:
    reader = expat.ParserCreate()
    reader.StartDoctypeDeclHandler = _doctype
    reader.StartElementHandler = _element
    try:
        reader.Parse(start, False)
    except (_BeyondProlog, expat.ExpatError):
        # What is no XML at all (a picture) cannot name anything.
        return
    if len(start) == _FIRST:
        # No element in so many bytes: something is being hidden.
        raise _HasDoctypeError


def _doctype(*_: object) -> None:
    raise _HasDoctypeError


def _element(*_: object) -> None:
    raise _BeyondProlog
