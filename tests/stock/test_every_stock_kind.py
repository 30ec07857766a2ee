"""What holds for every kind of stock, and which stock a blank may be cut from."""

from __future__ import annotations

import inspect
from pathlib import Path

import pytest

from tests.builders import inches, make_job, make_part, make_piece, make_shop
from tests.sources import tallies
from yieldplan import stock
from yieldplan.blanks import routes
from yieldplan.faults import Faults
from yieldplan.model.blanks import Blank
from yieldplan.stock import StockKind, fits, kinds
from yieldplan.units import to_ticks_down, to_ticks_up

EVERY = pytest.mark.parametrize("kind", kinds().values(), ids=list(kinds()))


def blank(thickness: str = "3/4", **over: object) -> Blank:
    part = make_part("rail", "22", "4", thickness, **over)
    (only,) = routes([part], make_job(), Faults())
    return only


def test_the_kinds_of_the_issue_are_there() -> None:
    assert set(kinds()) >= {"rough board", "surfaced board", "sheet", "stick"}


@EVERY
def test_trims_and_steps_come_from_the_shop(kind: StockKind) -> None:
    shop = make_shop()
    wider = make_shop(
        end_trim="3", surfaced_end_trim="1", edge_pass="1/4", sheet_trim="1",
        crosscut_step="1", rip_step="1/4", sheet_step="1/8",
        stick_trim="1", stick_step="1/8",
    )  # fmt: skip
    assert kind.end_trim(wider) > kind.end_trim(shop) >= 0
    if kind.is_stick:  # nothing is ripped off a stick
        assert kind.edge_pass(wider) == 0
    else:
        assert kind.edge_pass(wider) > kind.edge_pass(shop) >= 0
    for one, other in zip(kind.steps(shop), kind.steps(wider), strict=True):
        assert 0 < one < other


@EVERY
def test_a_kind_states_facts_a_yard_can_read(kind: StockKind) -> None:
    assert kind.marks_from in ("zero end", "trimmed end")
    assert (inspect.getdoc(type(kind)) or "").splitlines()[0].endswith(".")


BOARDS = [name for name, kind in kinds().items() if kind.is_board]


@pytest.mark.parametrize("name", BOARDS)
def test_a_tally_can_reach_every_kind_of_board(name: str, tmp_path: Path) -> None:
    kind, job = kinds()[name], tallies.make_job()
    state = "surfaced" if kind.is_planed else "rough"
    text = f"length,width,thickness,kind,price_per_foot\n96,7,4/4 {state},{name},9\n"
    (board,), faults = tallies.read_text(tmp_path, text, job)
    assert not faults
    assert (board.kind, board.is_planed, board.is_sheet) == (
        name,
        kind.is_planed,
        False,
    )
    assert board.end_trims == (kind.end_trim(job.shop),) * 2
    assert board.edge_passes == (kind.edge_pass(job.shop),) * 2


@EVERY
def test_planed_stock_need_be_no_thicker_than_what_it_ends_at(kind: StockKind) -> None:
    # A part of 3/4 asks for 3/4 + 3/16 = 15/16 of rough stock.
    part: dict[str, object] = {}
    if not kind.is_board:
        part = {"wood": "ply", "is_sheet": kind.is_sheet, "is_stick": kind.is_stick}
    wood = "walnut" if kind.is_board else "ply"
    assert kind.serves(blank("3/4", **part), make_piece(wood=wood, thick="15/16"))
    thin = kind.serves(blank("3/4", **part), make_piece(wood=wood, thick="3/4"))
    assert thin == kind.is_planed


@EVERY
def test_another_wood_never_serves(kind: StockKind) -> None:
    piece = make_piece(wood="cherry", thick="4")
    assert not kind.serves(blank(), piece)


def test_marks_are_read_from_the_numbered_end_of_a_board_and_the_trimmed_edge_of_a_sheet() -> (
    None
):
    assert kinds()["rough board"].marks_from == "zero end"
    assert kinds()["surfaced board"].marks_from == "zero end"
    assert kinds()["sheet"].marks_from == "trimmed end"


def test_rough_stock_must_leave_wood_to_plane() -> None:
    # 3/4 + 3/16 = 15/16: 4/4 will do, and 5/4; 7/8 rough will not.
    rough = kinds()["rough board"]
    assert rough.serves(blank(), make_piece(thick="1"))
    assert rough.serves(blank(), make_piece(thick="1-1/4"))
    assert not rough.serves(blank(), make_piece(thick="7/8"))


def test_surfaced_stock_need_be_no_thicker_than_the_part() -> None:
    surfaced = kinds()["surfaced board"]
    assert surfaced.serves(blank(), make_piece(thick="3/4"))
    assert not surfaced.serves(blank(), make_piece(thick="23/32"))


def test_a_sheet_serves_its_own_product_only() -> None:
    part = make_part("bottom", "20", "16", "1/4", wood="ply", is_sheet=True)
    (bottom,) = routes([part], make_job(), Faults())
    sheet = kinds()["sheet"]
    assert sheet.serves(bottom, make_piece(wood="ply", kind="sheet"))
    assert not sheet.serves(bottom, make_piece(wood="mdf", kind="sheet"))
    assert not sheet.serves(blank(), make_piece(wood="walnut", kind="sheet"))
    assert not kinds()["rough board"].serves(bottom, make_piece(wood="ply"))


def test_a_stick_serves_its_own_parts_only_and_no_board_serves_them() -> None:
    part = make_part("edge", "20", "3/4", "1/8", wood="edging", is_stick=True)
    (edge,) = routes([part], make_job(), Faults())
    assert kinds()["stick"].serves(edge, make_piece(wood="edging", kind="stick"))
    assert not kinds()["stick"].serves(edge, make_piece(wood="bead", kind="stick"))
    for other in ("rough board", "surfaced board", "sheet"):
        assert not kinds()[other].serves(edge, make_piece(wood="edging", thick="4"))


@pytest.mark.parametrize(
    ("width", "kerf"), [("3/4", "1/8"), ("17.3 mm", "3/32"), ("2-1/2", "0.1"), ("1", "0")]
)  # fmt: skip
def test_across_a_stick_is_exactly_one_cell_and_nothing_is_ripped(
    width: str, kerf: str
) -> None:
    shop = make_shop(kerf=kerf, breakdown="crosscut first")
    stick, piece = kinds()["stick"], make_piece(width=inches(width))
    _, across = stick.steps_on([piece], shop)
    wide, sawdust = to_ticks_down(inches(width)), to_ticks_up(shop.kerf)
    step = to_ticks_up(across)
    # Cells of the stick, floor((W + k) / s), and of what is cut from it, rounded up.
    assert (wide + sawdust) // step == -(-(wide + sawdust) // step) == 1
    assert stick.family(shop) == "R"


def test_a_blank_is_told_every_line_it_fits_in_order() -> None:
    pieces = [
        make_piece("W1", thickness="5/4", thick="1-1/4"),
        make_piece("W2"),
        make_piece("W3", thickness="8/4", thick="2"),
        make_piece("C1", wood="cherry"),
        make_piece(
            "W4", thickness="13/16 surfaced", thick="13/16", kind="surfaced board"
        ),
    ]
    thin, thick = blank("3/4"), blank("1")
    both = [thin, Blank(**{**vars(thick), "id": "k2"})]
    assert fits(both, pieces) == {
        "k1": ("walnut 13/16 surfaced", "walnut 4/4", "walnut 5/4", "walnut 8/4"),
        # 1 + 3/16 = 1-3/16.
        "k2": ("walnut 5/4", "walnut 8/4"),
    }


def test_a_line_with_a_piece_that_is_too_thin_is_not_listed() -> None:
    pieces = [make_piece("W1"), make_piece("W2", thick="7/8")]
    assert fits([blank()], pieces) == {"k1": ()}


def test_with_nothing_offered_nothing_fits() -> None:
    assert fits([blank()], []) == {"k1": ()}


def test_the_package_holds_one_kind_a_file() -> None:
    names = {type(kind).__module__ for kind in kinds().values()}
    assert len(names) == len(kinds())
    assert all(name.startswith(f"{stock.__name__}.") for name in names)


def test_a_surfaced_boards_ends_lose_less_than_a_rough_ones() -> None:
    shop = make_shop()
    assert kinds()["rough board"].end_trim(shop) == 2
    assert kinds()["surfaced board"].end_trim(shop) == inches("1/2")
