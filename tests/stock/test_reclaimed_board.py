"""Reclaimed boards lose more at ends and edges than new ones. Figures are common practice, no source."""

from __future__ import annotations

from pathlib import Path

from tests.builders import inches, make_job, make_part, make_piece, make_shop
from tests.sources import tallies
from yieldplan.blanks import routes
from yieldplan.faults import Faults
from yieldplan.stock import fits, kinds
from yieldplan.stock.reclaimed_board import ReclaimedBoard


def test_it_loses_twice_the_end_trim_and_an_eighth_more_at_each_edge() -> None:
    shop = make_shop(end_trim="2", edge_pass="1/8")
    # 2 x 2 = 4 at each end; 1/8 + 1/8 = 1/4 at each edge.
    assert ReclaimedBoard().end_trim(shop) == 4
    assert ReclaimedBoard().edge_pass(shop) == inches("1/4")


def test_a_tally_offers_one_beside_a_new_board(tmp_path: Path) -> None:
    job = tallies.make_job()
    text = (
        "id,length,width,thickness,kind,price_per_foot,marks\n"
        "R1,96,7,4/4,reclaimed board,9,hole 20 to 20-1/4 x 3 to 3-1/4\n"
        "W1,96,7,4/4,,9,\n"
    )
    (old, new), faults = tallies.read_text(tmp_path, text, job)
    assert not faults
    assert (old.kind, new.kind) == ("reclaimed board", "rough board")
    assert old.line == new.line
    assert old.marks[0].kind == "hole"
    # Two end trims of the shop's more at each end.
    assert old.end_trims[0] - new.end_trims[0] == job.shop.end_trim


def test_it_is_planed_like_a_rough_board_and_shares_its_line() -> None:
    # 3/4 + 3/16 to plane = 15/16: 4/4 will do, 7/8 will not.
    (rail,) = routes([make_part("rail", "22", "4")], make_job(), Faults())
    old = make_piece("R1", kind="reclaimed board")
    thin = make_piece("R2", thickness="7/8", thick="7/8", kind="reclaimed board")
    assert fits([rail], [old, thin, make_piece("W1")]) == {"k1": ("walnut 4/4",)}
    assert "reclaimed board" in kinds()
