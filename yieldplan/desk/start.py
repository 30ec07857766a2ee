"""Gives a newcomer a job file, a tally that fits it, and a blank tally page for the yard."""

from __future__ import annotations

import errno
from importlib import resources
from pathlib import Path

from yieldplan.units import UnitName

FILES = {"job.toml": "job_{unit}.toml", "tally.csv": "tally_{unit}.csv"}
BLANK_PAGE = "tally_page.xlsx"


def start(folder: Path, unit: UnitName) -> tuple[Path, ...]:
    """Write the files a job begins with; they plan as they are.

    Parameters
    ----------
    folder
        Made if it is not there.
    unit
        The unit people read: inches or millimetres.

    Raises
    ------
    FileExistsError
        When one of the files is there already: nothing is written over.
    """
    from yieldplan.papers.tally_page import write_tally_page

    targets = [folder / name for name in (*FILES, BLANK_PAGE)]
    for target in targets:
        if target.exists():
            raise FileExistsError(
                errno.EEXIST,
                "this file is here already and stays as it is; name another folder",
                str(target),
            )
    folder.mkdir(parents=True, exist_ok=True)
    for name, template in FILES.items():
        text = template_text(template.format(unit=unit))
        # "x" fails rather than write over what came in the meantime.
        with (folder / name).open("x", encoding="utf-8", newline="\n") as file:
            file.write(text)
    write_tally_page(folder / BLANK_PAGE, unit)
    return tuple(targets)


def template_text(name: str) -> str:
    """A file to begin with, as it ships."""
    shipped = resources.files("yieldplan.desk") / "templates" / name
    return shipped.read_text(encoding="utf-8")
