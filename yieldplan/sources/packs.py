"""Packs of a tally: boards the yard sells only together, and how a pack's price falls to its boards."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction

from yieldplan.faults import Faults, Where
from yieldplan.measure.money import from_units
from yieldplan.model.pieces import Piece
from yieldplan.sources.board_rows import BoardRow


def pack_shares(
    seen: Sequence[BoardRow], feet: Mapping[str, Fraction]
) -> dict[str, int]:
    """What each board of a pack with a price of its own costs, by its name.

    The pack's price is shared out by board feet, so that the shares add up to it
    exactly. Mistakes are told at the rows they stand in. [money/10,000]
    """
    packs: dict[str, list[BoardRow]] = {}
    for board in seen:
        if board.pack:
            packs.setdefault(board.pack, []).append(board)
        elif board.for_pack is not None:
            wrong = "this is the price of a pack, and the board is in none"
            board.row.wrong("price_for_pack", wrong, "Write its pack, or take it out")
    shares: dict[str, int] = {}
    for pack, rows in packs.items():
        _tell_mixed(pack, rows)
        priced = [board for board in rows if board.for_pack is not None]
        for board in priced[1:]:
            if board.for_pack != priced[0].for_pack:
                wrong = f"pack {pack} has another price in row {priced[0].row.number}"
                remedy = "Write its price on one of its rows only"
                board.row.wrong("price_for_pack", wrong, remedy)
        if priced and priced[0].for_pack is not None:
            names = [name for board in rows for name in board.names]
            price = from_units(priced[0].for_pack)
            shares |= _shared(price, {name: feet[name] for name in names})
    return shares


def _tell_mixed(pack: str, rows: Sequence[BoardRow]) -> None:
    first = rows[0]
    for board in rows[1:]:
        if board.line != first.line:
            board.row.wrong(
                "pack",
                f"pack {pack} holds {first.line} (row {first.row.number}) and {board.line}",
                "A pack is of one wood and one thickness: correct it, or give the packs "
                "names of their own",
            )


def _shared(price: int, feet: Mapping[str, Fraction]) -> dict[str, int]:
    """The price in whole shares by board feet; what rounding leaves goes to the first."""
    total = sum(feet.values(), Fraction(0))
    weights = feet if total else dict.fromkeys(feet, Fraction(1))
    total = total or Fraction(len(feet))
    shares = {name: int(price * weight / total) for name, weight in weights.items()}
    over = price - sum(shares.values())
    for name in list(shares)[:over]:
        shares[name] += 1
    return shares


def tell_in_two_files(pieces: Iterable[Piece], faults: Faults) -> None:
    """Note packs that stand in two files: nobody can say whether they are one."""
    first: dict[str, str] = {}
    told: set[str] = set()
    for piece in pieces:
        where = piece.where or Where(file="")
        if not piece.pack:
            continue
        other = first.setdefault(piece.pack, where.file)
        if other != where.file and piece.pack not in told:
            told.add(piece.pack)
            wrong = f"a pack of this name stands in {other} too"
            remedy = "List a pack in one file, or give the packs names of their own"
            faults.add(where, piece.pack, wrong, remedy)
