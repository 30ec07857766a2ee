"""Turns the rows of a tally into boards: what each measures, costs and shows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from yieldplan.measure.board_feet import Measured, board_feet
from yieldplan.model.job import Job
from yieldplan.model.pieces import Piece
from yieldplan.sources import price_list
from yieldplan.sources.board_rows import MOST_BOARDS, BoardRow, read_row
from yieldplan.sources.columns import Row
from yieldplan.sources.packs import pack_shares


@dataclass(kw_only=True)
class _Unpriced:
    """Boards that lack the same price: told once, at the first of them."""

    first: BoardRow
    rows: list[int] = field(default_factory=list)


def boards(rows: Sequence[Row], job: Job, *, is_list_whole: bool) -> tuple[Piece, ...]:
    """Every board of a tally; a row with a mistake gives none.

    Parameters
    ----------
    is_list_whole
        Whether the job's price list was read without a mistake: if not, a board without
        a price says nothing new.
    """
    seen = []
    for number, row in enumerate(rows, start=1):
        board = read_row(row, number, job)
        if board is not None:
            seen.append(board)
    if sum(board.quantity for board in seen) > MOST_BOARDS:
        rows[0].wrong("", f"over {MOST_BOARDS:,} boards", "Offer fewer", "")
        return ()
    return _pieces(seen, job, is_list_whole=is_list_whole)


def _pieces(
    seen: Sequence[BoardRow], job: Job, *, is_list_whole: bool
) -> tuple[Piece, ...]:
    feet = _feet(seen, job)
    shares = pack_shares(seen, feet)
    unpriced: dict[tuple[str, str], _Unpriced] = {}
    found = []
    for board in seen:
        kind = board.kind
        trim, edge = kind.end_trim(job.shop), kind.edge_pass(job.shop)
        for name in board.names:
            cost = (
                price_list.Cost(per_foot=None, price=shares[name])
                if name in shares
                else _cost(board, feet[name], job)
            )
            if cost is None:
                lack = unpriced.setdefault(
                    (board.line, board.grade), _Unpriced(first=board)
                )
                if board.row.number not in lack.rows:
                    lack.rows.append(board.row.number)
                continue
            found.append(
                Piece(
                    id=name,
                    wood=board.wood,
                    line=board.line,
                    kind=kind.name,
                    is_planed=kind.is_planed,
                    thickness=board.thickness.name,
                    thick=board.thickness.thick,
                    grade=board.grade,
                    lot=board.lot,
                    pack=board.pack,
                    length=board.length,
                    width=board.width,
                    board_feet=feet[name],
                    per_foot=cost.per_foot,
                    price=cost.price,
                    end_trims=(trim, trim),
                    edge_passes=(edge, edge),
                    marks=board.marks,
                    width_far=board.off.width_far,
                    crook=board.off.crook,
                    bow=board.off.bow,
                    twist=board.off.twist,
                    where=board.row.where(),
                )
            )
    if is_list_whole:
        _tell_unpriced(unpriced, job)
    return tuple(found)


def _feet(seen: Sequence[BoardRow], job: Job) -> dict[str, Fraction]:
    """Board feet by board: the yard's own figure, else by the job's rule."""
    by_rule = board_feet(
        {
            name: Measured(
                group=board.line,
                thickness=board.thickness.measured,
                length=board.length,
                width=board.tally_width,
            )
            for board in seen
            if board.feet is None
            for name in board.names
        },
        job.board_measure,
    )
    given = {
        name: board.feet
        for board in seen
        if board.feet is not None
        for name in board.names
    }
    return {**by_rule, **given}


def _cost(board: BoardRow, feet: Fraction, job: Job) -> price_list.Cost | None:
    per_foot = board.per_foot
    if board.for_piece is None and per_foot is None:
        price = price_list.listed(
            job.prices, board.wood, board.thickness.name, board.grade
        )
        per_foot = price.per_foot if price is not None else None
    if board.for_piece is None and per_foot is not None and feet == 0:
        board.row.wrong(
            "length",
            "by the rule of whole feet this board measures 0 board feet",
            "Give it a price_for_piece, or the yard's board_feet",
        )
    return price_list.cost(
        for_piece=board.for_piece, per_foot=per_foot, board_feet=feet
    )


def _tell_unpriced(unpriced: dict[tuple[str, str], _Unpriced], job: Job) -> None:
    for (line, grade), lack in unpriced.items():
        others = ", ".join(str(number) for number in lack.rows[1:])
        also = f" (rows {others} too)" if others else ""
        lack.first.row.wrong(
            "grade" if grade else "",
            f"there is no price for {f'{line} {grade}'.strip()}{also}",
            price_list.remedy(
                job.prices, lack.first.wood, lack.first.thickness.name, grade
            ),
            None if grade else "",
        )
