"""The last sheet of a wood."""

from __future__ import annotations

from yieldplan.drawing.scene import Scene
from yieldplan.papers.cutting_sheets.runs import Run


def fence_pages(run: Run) -> list[Scene]:
    """The pages."""
    return []
