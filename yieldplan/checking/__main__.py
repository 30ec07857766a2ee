"""`python -m yieldplan.checking plan.json`: the verdict on a plan file, on bare Python."""

from __future__ import annotations

import io
import json
import sys
from pathlib import Path
from typing import Any

from yieldplan.checking.saying import say_length, say_money
from yieldplan.checking.verdict import check

HOLDS, REFUSED, MISTYPED, UNREADABLE = 0, 1, 2, 3
LARGEST_FILE = 200_000_000
"""[bytes]"""
MOST_PRINTED = 40
FAMILIES = {
    "R": "rip first",
    "C": "crosscut first",
    "E": "rip or crosscut first",
    "R+": "rip first, narrow parts beside marks",
    "C+": "crosscut first, narrow parts beside marks",
    "E+": "rip or crosscut first, narrow parts beside marks",
}
"""How a person says them."""


class DoubledKeyError(ValueError):
    """A plan file that says the same thing twice can be read two ways."""


def main(arguments: list[str]) -> int:
    """Prints the verdict on one plan file; gives the exit code."""
    if len(arguments) != 1 or arguments[0].startswith("-"):
        print("Say which plan to check: python -m yieldplan.checking plan.json")
        return 0 if arguments in (["-h"], ["--help"]) else MISTYPED
    path = Path(arguments[0])
    try:
        document = load(path)
    except DoubledKeyError as trouble:
        print(f"{path}: REFUSED.\n- {trouble}")
        return REFUSED
    except (OSError, ValueError, RecursionError) as trouble:
        print(f"{path} cannot be read: {trouble}")
        return UNREADABLE
    report = check(document)
    print("\n".join(_said(path, document, report)))
    return REFUSED if report["objections"] else HOLDS


def load(path: Path) -> Any:
    """The document in a file, refused when a key stands twice in one object."""
    with path.open("rb") as file:
        content = file.read(LARGEST_FILE + 1)
    if len(content) > LARGEST_FILE:
        raise ValueError(f"it is larger than {LARGEST_FILE // 10**6} MB")
    return json.loads(content.decode("utf-8"), object_pairs_hook=_once)


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    entries = dict(pairs)
    if len(entries) < len(pairs):
        keys = [key for key, _ in pairs]
        doubled = next(key for key in keys if keys.count(key) > 1)
        raise DoubledKeyError(f"The key {doubled[:60]!a} stands twice in one object.")
    return entries


def _said(path: Path, document: Any, report: dict[str, Any]) -> list[str]:
    objections: list[str] = report["objections"]
    if objections:
        lines = [f"{path}: REFUSED."]
        lines += [f"- {objection}" for objection in objections[:MOST_PRINTED]]
        if len(objections) > MOST_PRINTED:
            lines.append(f"- and {len(objections) - MOST_PRINTED} more like these.")
        return lines
    lines = [f"{path}: {document['title']} holds."]
    for wood in document["woods"]:
        name, family = wood["wood"], FAMILIES[wood["rules"]["family"]]
        cost, floor = report["costs"][name], report["floors"][name]
        step = say_length(wood["rules"]["step"][0], document["unit"])
        than = "" if cost == floor else f" than {say_money(floor)}"
        lines.append(
            f"  {name}: {say_money(cost)} {document['currency']}; {family}, marks every "
            f"{step}, no plan costs less{than}."
        )
    lines.append("Checked:")
    lines += [f"- {each}" for each in report["checked"]]
    if not document["complete"]:
        lines.append("INCOMPLETE: parts of the job are missing from this plan:")
        lines += [
            f"- {count} {part}"
            for wood in document["woods"]
            for part, count in wood["missing"].items()
            if count
        ]
    return lines


if __name__ == "__main__":
    if isinstance(sys.stdout, io.TextIOWrapper):
        # A title may hold letters that this terminal cannot show.
        sys.stdout.reconfigure(errors="backslashreplace")
    sys.exit(main(sys.argv[1:]))
