"""The workbook: one Excel file to buy from, to saw from, and to keep with the job."""

from __future__ import annotations

from pathlib import Path

from yieldplan.measure.routes_taken import routes_of
from yieldplan.measure.sawn import sawn_by_plan, sawn_by_routes
from yieldplan.model.bid import Bid
from yieldplan.model.plan import Plan
from yieldplan.model.report import Report
from yieldplan.papers.paper import Paper
from yieldplan.papers.workbook import (
    assumptions,
    bid_sheets,
    boards_to_pull,
    cost,
    cut_diagrams,
    must_find,
    parts_list,
    purchase_list,
    where_it_goes,
)
from yieldplan.papers.workbook.book import Book
from yieldplan.papers.workbook.words import incomplete

FILE = "workbook.xlsx"


class Workbook(Paper):
    """What it costs, what to buy, which boards to pull, the parts and how to cut them."""

    def write(self, plan: Plan, report: Report, folder: Path) -> tuple[Path, ...]:
        """Write `workbook.xlsx` for a checked plan."""
        book = Book(
            job=plan.job.title,
            remark=f"plan {plan.mark}   {plan.job.currency}",
            incomplete=incomplete(plan),
            foot=f"plan {plan.mark}: sheets of two plans are never mixed",
        )
        first = cost.begin(book)
        cells = purchase_list.fill(book, plan)
        cost.fill(first, plan, cells)
        boards_to_pull.fill(book, plan)
        sawn = sawn_by_plan(plan)
        parts_list.fill(book, plan.job, plan.parts, sawn, routes_of(plan))
        cut_diagrams.fill(book, plan)
        where_it_goes.fill(book, plan)
        assumptions.fill(book, plan, report)
        return (book.save(folder / FILE),)

    def write_bid(self, bid: Bid, folder: Path) -> tuple[Path, ...]:
        """Write `workbook.xlsx` for a quick bid."""
        book = Book(
            job=bid.job.title,
            remark=f"bid, no boards yet   {bid.job.currency}",
            incomplete="",
            foot="a bid, before any board is known",
        )
        first = bid_sheets.begin(book)
        total = bid_sheets.fill_purchase(book, bid)
        bid_sheets.fill_cost(first, bid, total)
        must_find.fill(book, bid)
        sawn = sawn_by_routes(bid.blanks)
        parts_list.fill(book, bid.job, bid.parts, sawn)
        assumptions.fill_for_bid(book, bid.job, bid.cautions)
        return (book.save(folder / FILE),)
