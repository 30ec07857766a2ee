"""Looks up what a part is to be made of, and tells the person when the job has no such wood, sheet or stick."""

from __future__ import annotations

from collections.abc import Collection

from yieldplan.faults import Faults, Where, did_you_mean
from yieldplan.model.job import Job, Sheet, Stick


def known_wood(
    wood: str, what: str, job: Job, where: Where, faults: Faults
) -> str | None:
    """The wood's key, if the job has it.

    Parameters
    ----------
    what
        What is to be made of it, for the message: `the front`.
    """
    if wood in job.woods:
        return wood
    if wood in job.sheets:
        faults.add(
            where,
            wood,
            f"{what} is asked for in solid wood, and this is a sheet",
            f'Write a wood of the job, or sheet = "{wood}" where a sheet will do',
        )
        return None
    if wood in job.sticks:
        faults.add(
            where,
            wood,
            f"{what} is asked for in a wood of boards, and this is a stick",
            f'Write a wood of the job, or stick = "{wood}" where a part may say so',
        )
        return None
    faults.add(
        where,
        wood,
        f"{what} is of a wood the job does not have",
        _one_of(wood, job.woods, "[wood.NAME]"),
    )
    return None


def known_sheet(
    sheet: str, what: str, job: Job, where: Where, faults: Faults
) -> Sheet | None:
    """The sheet product, if the job has it."""
    if sheet in job.sheets:
        return job.sheets[sheet]
    if sheet in job.woods:
        faults.add(
            where,
            sheet,
            f"{what} is asked for of a sheet, and this is a wood",
            f'Write wood = "{sheet}" and a thickness',
        )
        return None
    faults.add(
        where,
        sheet,
        f"{what} is of a sheet the job does not have",
        _one_of(sheet, job.sheets, "[sheet.NAME]"),
    )
    return None


def known_stick(
    stick: str, what: str, job: Job, where: Where, faults: Faults
) -> Stick | None:
    """The stick, if the job has it."""
    if stick in job.sticks:
        return job.sticks[stick]
    for known, kind in ((job.woods, "wood"), (job.sheets, "sheet")):
        if stick in known:
            faults.add(
                where,
                stick,
                f"{what} is asked for of a stick, and this is a {kind}",
                f'Write {kind} = "{stick}"',
            )
            return None
    faults.add(
        where,
        stick,
        f"{what} is of a stick the job does not have",
        _one_of(stick, job.sticks, "[stick.NAME]"),
    )
    return None


def _one_of(said: str, known: Collection[str], table: str) -> str:
    if not known:
        return f"Add a table {table} to the job"
    return did_you_mean(said, known)
