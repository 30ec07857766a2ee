"""What can go wrong for a person, in words, and the exit code that goes with it."""

from __future__ import annotations

from yieldplan.cli import terminal

PLANNED, NEEDS_WORK, MISTYPED, CANNOT_READ_OR_WRITE, STOPPED = 0, 1, 2, 3, 130


def known() -> tuple[type[BaseException], ...]:
    """The troubles that have words; looked up only when something was raised."""
    from yieldplan.desk.output import FolderKept
    from yieldplan.desk.plan_job import PlanRefused
    from yieldplan.faults import FaultsFound
    from yieldplan.plan_file import NotAPlan

    return (FaultsFound, FolderKept, NotAPlan, PlanRefused, OSError)


def tell(trouble: BaseException) -> int:
    """Say what went wrong on the error stream; gives the exit code."""
    from yieldplan.desk.plan_job import PlanRefused
    from yieldplan.faults import FaultsFound

    if isinstance(trouble, FaultsFound):
        terminal.say((str(fault) for fault in trouble.faults), to_errors=True)
        if len(trouble.faults) > 1:
            terminal.say(f"{len(trouble.faults)} things to put right.", to_errors=True)
        return NEEDS_WORK
    if isinstance(trouble, PlanRefused):
        terminal.say(
            "The plan did not pass its own proof, so nothing is shown or written. "
            "This is a mistake in yieldplan, not in your job; what the proof found:",
            to_errors=True,
        )
        terminal.say((f"  {line}" for line in str(trouble).split("\n")), to_errors=True)
        return NEEDS_WORK
    terminal.say(_of_the_disk(trouble), to_errors=True)
    return CANNOT_READ_OR_WRITE


def _of_the_disk(trouble: BaseException) -> str:
    if isinstance(trouble, OSError) and trouble.strerror:
        file = f"{trouble.filename}: " if trouble.filename else ""
        return f"{file}{trouble.strerror}."
    return str(trouble)
