"""Opens a file, and text of any encoding a shop's machine writes; for every source."""

from __future__ import annotations

import codecs
from pathlib import Path

from yieldplan.faults import Faults, Where

MOST_BYTES = 1_000_000


def read_text(
    path: Path,
    faults: Faults,
    *,
    save: str = "Save it as plain text, UTF-8",
    fill: str = "Write a row a board",
) -> str | None:
    """The text of a file; None, and a fault, when it cannot be read or holds none.

    Parameters
    ----------
    save
        What to do about a file that is not text.
    fill
        What to write into one that is empty.
    """
    whole = Where(file=path.name)
    raw = read_bytes(path, faults)
    if raw is None:
        return None
    text = _decoded(raw)
    if text is None or "\0" in text or raw.startswith(b"PK"):
        faults.add(whole, "", "this is not a text file", save)
        return None
    if not text.strip():
        faults.add(whole, "", "the file is empty", fill)
        return None
    return text


def read_bytes(path: Path, faults: Faults) -> bytes | None:
    """What is in a file of at most 1 MB; None, and a fault, when it cannot be read."""
    whole = Where(file=path.name)
    try:
        with path.open("rb") as opened:
            raw = opened.read(MOST_BYTES + 1)
    except OSError as error:
        reason = error.strerror or "it cannot be opened"
        faults.add(whole, "", f"it cannot be read: {reason}", "Check name and rights")
        return None
    if len(raw) > MOST_BYTES:
        faults.add(whole, "", "a tally is at most 1 MB", "Split it, or drop columns")
        return None
    return raw


def _decoded(raw: bytes) -> str | None:
    if raw.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        encodings = ["utf-16"]
    else:
        # Older spreadsheets write the Windows code page and do not say so.
        encodings = ["utf-8-sig", "cp1252"]
    for encoding in encodings:
        try:
            return raw.decode(encoding)
        except UnicodeDecodeError:
            continue
    return None
