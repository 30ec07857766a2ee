"""What a name may look like: one line that can be printed on a label."""

from __future__ import annotations

import unicodedata

LONGEST_NAME = 60


def tidy_name(name: str) -> str:
    """The name with single spaces and none at its ends."""
    return " ".join(name.split())


def trouble_with_name(name: str, longest: int = LONGEST_NAME) -> tuple[str, str] | None:
    """What is wrong with a tidied name and what to do; None when nothing is.

    Control and direction characters could hide or turn round what stands on a sheet.
    """
    if any(unicodedata.category(letter).startswith("C") for letter in name):
        return (
            "a control or direction character stands in it",
            "Type it again with plain letters",
        )
    if not name:
        return "a name is missing", "Write one"
    if len(name) > longest:
        wrong = f"it is {len(name)} characters long; {longest} fit on paper"
        return wrong, "Shorten it"
    return None
