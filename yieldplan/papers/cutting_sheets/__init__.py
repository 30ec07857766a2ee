"""Cutting sheets: a PDF to print and carry to the saw, one wood and thickness after another."""

from __future__ import annotations

from pathlib import Path

from yieldplan.drawing import pdf
from yieldplan.drawing.scene import Scene
from yieldplan.model.plan import Plan
from yieldplan.model.report import Report
from yieldplan.papers.cutting_sheets.fence_and_stops import fence_pages
from yieldplan.papers.cutting_sheets.page import numbered
from yieldplan.papers.cutting_sheets.pages import board_pages
from yieldplan.papers.cutting_sheets.runs import runs_of
from yieldplan.papers.paper import Paper

FILE = "cutting_sheets.pdf"


class CuttingSheets(Paper):
    """Every board large enough to saw from, then the fence and stop settings."""

    def write(self, plan: Plan, report: Report, folder: Path) -> tuple[Path, ...]:
        """Write `cutting_sheets.pdf`; nothing when no board is cut."""
        pages = sheets(plan)
        if not pages:
            return ()
        page: pdf.PageName = "A4" if plan.job.unit == "mm" else "letter"
        path = folder / FILE
        path.write_bytes(pdf.paint(pages, page, f"{plan.job.title}: cutting sheets"))
        return (path,)


def sheets(plan: Plan) -> list[Scene]:
    """Every page, wood by wood."""
    pages: list[Scene] = []
    for run in runs_of(plan):
        boards, fence = board_pages(run), fence_pages(run)
        pages.extend(numbered(run, boards, fence))
    return pages
