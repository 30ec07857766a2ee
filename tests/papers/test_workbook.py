"""What stands in the workbook, read back with openpyxl and added up again with Decimal."""

from __future__ import annotations

import dataclasses
from decimal import ROUND_HALF_UP, Decimal
from pathlib import Path

import pytest
from openpyxl import load_workbook
from openpyxl.workbook import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from tests.builders_plan import full_plan, passed, short_plan, stress_plan
from yieldplan import papers
from yieldplan.measure.bid import bid
from yieldplan.model.plan import Plan
from yieldplan.papers.workbook.words import floor_in_print, incomplete

SHEETS = [
    "Cost",
    "Purchase list",
    "Boards to pull",
    "Parts",
    "Cut diagrams",
    "Where it goes",
    "Assumptions and cautions",
]


def _write(plan: Plan, folder: Path) -> Path:
    folder.mkdir(exist_ok=True)
    (path,) = papers.write_all(plan, passed(plan), folder, ["workbook"])
    return path


@pytest.fixture(scope="module")
def file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return _write(full_plan(), tmp_path_factory.mktemp("full"))


@pytest.fixture(scope="module")
def values(file: Path) -> Workbook:
    return load_workbook(file, data_only=True)


@pytest.fixture(scope="module")
def formulas(file: Path) -> Workbook:
    return load_workbook(file)


def words(sheet: Worksheet) -> list[str]:
    """Every text of a sheet, top to bottom."""
    return [
        c.value for row in sheet.iter_rows() for c in row if isinstance(c.value, str)
    ]


def test_the_sheets_stand_in_the_order_they_are_used(values: Workbook) -> None:
    assert values.sheetnames == SHEETS


def test_every_formula_shows_a_value(values: Workbook, formulas: Workbook) -> None:
    count = 0
    for sheet in formulas:
        for row in sheet.iter_rows():
            for cell in row:
                if cell.data_type == "f":
                    count += 1
                    assert values[sheet.title][cell.coordinate].value is not None
    assert count > 40


def test_the_costs_are_feet_times_a_named_price_added_with_decimal(
    values: Workbook, formulas: Workbook
) -> None:
    sheet, live = values["Purchase list"], formulas["Purchase list"]
    total = Decimal(0)
    for row in range(1, sheet.max_row + 1):
        formula = str(live.cell(row, 10).value)
        if not formula.startswith("=ROUND("):
            continue
        amount, price_name = formula.removeprefix("=ROUND(").split(",")[0].split("*")
        where = formulas.defined_names[price_name].attr_text
        assert where == f"'Purchase list'!$I${row}"
        price = Decimal(str(sheet.cell(row, 9).value))
        bought = Decimal(str(sheet[amount].value))
        cost = (bought * price).quantize(Decimal("0.01"), ROUND_HALF_UP)
        assert Decimal(str(sheet.cell(row, 10).value)) == cost
        total += cost
    # P1 10.65 bf + P2 6.04 bf = 16.69 x 4.60 = 76.774, 76.77; W1 6.19 x 14.50 =
    # 89.755, 89.76; W2 by the piece 40.00; one sheet 38.00: 244.53 together.
    assert total == Decimal("244.53")
    assert total == Decimal(full_plan().total).scaleb(-4)
    cell = values["Cost"]["A4"] if values["Cost"]["A4"].value else values["Cost"]["A3"]
    assert Decimal(str(cell.value)) == total


def test_the_first_sheet_says_cost_floor_and_gap_in_words(values: Workbook) -> None:
    said = " ".join(words(values["Cost"]))
    # Each wood's floor is 3.1234 below its cost: 9.3702 in all, and costs are 244.53:
    # floor 244.529 - 9.3702 = 235.15 rounded down, so 9.38.
    assert "No plan of this kind is more than 9.38 cheaper" in said
    assert "less than one board foot" in said
    assert "A separate program worked it out again" in said


def test_a_proved_floor_is_printed_as_the_cost_and_never_above_what_is_paid() -> None:
    wood = full_plan().woods[2]
    proved = dataclasses.replace(
        wood, bound=dataclasses.replace(wood.bound, value=wood.cost)
    )
    assert floor_in_print(proved, 1_297_600) == 1_297_600
    near = dataclasses.replace(
        wood, bound=dataclasses.replace(wood.bound, value=wood.cost - 1)
    )
    assert floor_in_print(near, 1_297_000) == 1_297_000
    assert floor_in_print(wood, 2_000_000) == (wood.bound.value // 100) * 100


def test_what_a_person_typed_stays_text(formulas: Workbook) -> None:
    typed = [
        cell
        for sheet in formulas
        for row in sheet.iter_rows()
        for cell in row
        if isinstance(cell.value, str) and cell.value in ("=1+1", "=HYPERLINK(1)")
    ]
    assert {cell.value for cell in typed} == {"=1+1", "=HYPERLINK(1)"}
    for cell in typed:
        assert cell.data_type == "s"
        assert cell.quotePrefix


@pytest.mark.parametrize("name", ["=cmd|' /C calc'!A0", "+1", "-2", "@SUM(A1)", "_x0041_", "a\x07b"])  # fmt: skip
def test_no_name_becomes_a_formula_or_another_name(name: str, tmp_path: Path) -> None:
    plan = full_plan()
    parts = [
        dataclasses.replace(plan.parts[5], id=name),
        *plan.parts[:5],
        *plan.parts[6:],
    ]
    job = dataclasses.replace(plan.job, title=name)
    path = _write(dataclasses.replace(plan, parts=tuple(parts), job=job), tmp_path)
    sheet = load_workbook(path)["Parts"]
    shown = name.replace("\x07", "�").replace("_x0041_", "_x005F_x0041_")
    found = [c for row in sheet.iter_rows() for c in row if c.value == shown]
    assert found
    assert all(cell.data_type == "s" for cell in found)


def test_the_same_plan_gives_the_same_bytes(tmp_path: Path) -> None:
    first = _write(full_plan(), tmp_path / "a")
    second = _write(full_plan(), tmp_path / "b")
    assert first.read_bytes() == second.read_bytes()


def test_every_sheet_of_an_incomplete_plan_says_so_at_its_head(tmp_path: Path) -> None:
    plan = short_plan()
    assert incomplete(full_plan()) == ""
    book = load_workbook(_write(plan, tmp_path))
    for sheet in book:
        said = str(sheet["A2"].value)
        assert said.startswith("INCOMPLETE. Missing:\n1 of case top: needs 14 in clear")
        assert sheet["A2"].border.left.style == "thick"
        # It stands in the rows that are printed again on every page.
        assert int(sheet.print_title_rows.replace("$", "").split(":")[1]) >= 2
    said = words(book["Parts"])
    assert any(word.startswith("MISSING 1: needs 14 in") for word in said)


@pytest.mark.parametrize("plan", [full_plan(), stress_plan()], ids=["full", "stress"])
def test_every_sheet_fits_the_width_of_letter_and_a4(
    plan: Plan, tmp_path: Path
) -> None:
    for sheet in load_workbook(_write(plan, tmp_path)):
        assert sheet.page_setup.fitToWidth == 1
        assert sheet.page_setup.fitToHeight == 0
        assert sheet.sheet_properties.pageSetUpPr.fitToPage
        inches = sum(d.width * 7 for d in sheet.column_dimensions.values()) / 96
        # A4 is 8.27 x 11.69, letter 8.5 x 11; margins of 0.38 leave 7.51 and 10.24.
        assert inches <= (
            10.24 if sheet.page_setup.orientation == "landscape" else 7.52
        )
        assert sheet.page_setup.blackAndWhite


@pytest.mark.parametrize("plan", [full_plan(), stress_plan()], ids=["full", "stress"])
def test_pages_break_before_they_overflow_the_shorter_paper(
    plan: Plan, tmp_path: Path
) -> None:
    book = load_workbook(_write(plan, tmp_path))
    for sheet in book:
        landscape = sheet.page_setup.orientation == "landscape"
        # Landscape A4 is 8.27 high, portrait letter 11; margins of 0.35 and 0.5.
        most = ((8.27 if landscape else 11.0) - 0.85) * 72
        head = int(sheet.print_title_rows.replace("$", "").split(":")[1])
        repeated = sum(sheet.row_dimensions[row].height for row in range(1, head + 1))
        ends = [b.id for b in sheet.row_breaks.brk] + [sheet.max_row]
        start = head + 1
        for end in ends:
            rows = [sheet.row_dimensions[row].height for row in range(start, end + 1)]
            blocks_whole = sum(rows) + repeated <= most
            # Only a board whose picture and words fill more than a page runs over.
            assert blocks_whole or (sheet.title == "Cut diagrams" and plan.mark)
            start = end + 1


def test_every_board_has_its_picture_and_its_list_under_it(values: Workbook) -> None:
    sheet = values["Cut diagrams"]
    said = words(sheet)
    plan = full_plan()
    boards = [cut.piece.id for wood in plan.woods for cut in wood.cuttings]
    for board in boards:
        assert any(word == board or word.startswith(f"{board}, no.") for word in said)
    assert (
        "1. Crosscut at 2, 24 1/2, 47, 118 from the zero end, blade right of every mark. 0 to 2 is trim, 118 to the end is trim."
        in said
    )


def test_pictures_are_as_many_as_boards_and_wide_as_the_page(file: Path) -> None:
    sheet = load_workbook(file)["Cut diagrams"]
    assert len(sheet._images) == 5
    for image in sheet._images:
        assert image.anchor.ext.width == 691 * 12700  # 9.6 in


def test_boards_to_pull_are_known_by_their_marks(values: Workbook) -> None:
    said = words(values["Boards to pull"])
    assert any(w.startswith("lot north stack. split 0 to 5 × 3 1/2 to 4 1/2, through") for w in said)  # fmt: skip
    assert "no marks noted" in said
    assert "Leave: W3." in said


def test_parts_show_their_sums_and_rough_sizes(values: Workbook) -> None:
    said = words(values["Parts"])
    # Opening 20 - 3/8 lap = 19-5/8; rough 19-5/8 + 1/2 = 20-1/8, 1/2 + 3/16 = 11/16.
    assert "1/2 × 5 1/4 × 19 5/8" in said
    assert "length: 20 opening − 3/8 lap = 19 5/8" in said
    assert any(w.startswith("rough: 11/16 × 5 1/2 × 20 1/8") for w in said)
    # The two fronts are alike, and stand together.
    assert "upper/front, lower/front" in said
    # The panel's note is kept beside what its strips say.
    assert "glued up from 3 equal strips; Glued up from strips." in said


def test_shares_of_a_wood_add_up_to_a_hundred(values: Workbook) -> None:
    sheet = values["Where it goes"]
    totals = [
        sheet.cell(cell.row, 3).value
        for row in sheet.iter_rows()
        for cell in row
        if cell.value == "bought"
    ]
    assert totals == [100, 100, 100]


def test_cautions_name_the_manual_first_and_the_shops_own_sizes(
    values: Workbook,
) -> None:
    said = " ".join(words(values["Assumptions and cautions"]))
    assert said.index("machine's manual, local codes and licensed practice") < said.index("Short stock")  # fmt: skip
    assert "nothing under 14 in goes over the jointer" in said
    assert "rip nothing shorter than 12 in and no strip narrower than 3/4 in" in said
    for word in ("Kickback", "Routers", "Dust", "Thin stock"):
        assert word in said


def test_settings_are_said_in_words_of_the_shop(values: Workbook) -> None:
    rows = values["Assumptions and cautions"].iter_rows(values_only=True)
    said = {str(row[-1] or row[2]): row[1] for row in rows if len(row) > 2 and row[1]}
    assert said["[shop] beside_marks"] == "no"
    assert said["[shop] without"] == "none"
    assert said["[shop] shelf_sag"] == "1/384"
    assert str(said["[shop] moisture_driest"]).endswith(" %")


def test_a_job_in_mm_shows_cubic_metres_and_their_price(tmp_path: Path) -> None:
    plan = full_plan()
    metric = dataclasses.replace(plan, job=dataclasses.replace(plan.job, unit="mm"))
    sheet = load_workbook(_write(metric, tmp_path), data_only=True)["Purchase list"]
    said = words(sheet)
    assert "In metric measure" in said
    figures = [c.value for row in sheet.iter_rows() for c in row]
    # A board foot is 144 x 0.0254^3 = 0.002359737216 m3: 16.69 bf are 0.0394 m3,
    # and 4.60 a foot is 4.60 / 0.002359737216 = 1949.37 a cubic metre.
    assert 0.0394 in figures
    assert 1949.37 in figures
    assert "25.4" in said


def test_a_plan_that_buys_nothing_is_still_a_workbook(tmp_path: Path) -> None:
    plan = dataclasses.replace(full_plan(), woods=(), purchase=())
    book = load_workbook(_write(plan, tmp_path), data_only=True)
    assert "nothing is bought" in " ".join(words(book["Cost"]))


def test_a_bid_says_what_to_add_and_what_waste_that_is(tmp_path: Path) -> None:
    plan = full_plan()
    (path,) = papers.write_all_bid(bid(plan.job, plan.parts, plan.blanks), tmp_path)
    book = load_workbook(path, data_only=True)
    assert book.sheetnames == ["Cost", "Purchase list", "Must find", "Parts", "Assumptions and cautions"]  # fmt: skip
    said = " ".join(words(book["Cost"]))
    # Adding 45 to 100 buys 145, of which 45 are 31 %.
    assert "add 45 %, which is 31 % waste" in said
    assert "fronts (2 matched)" in words(book["Must find"])


def test_a_bid_without_a_price_waits_for_one(tmp_path: Path) -> None:
    plan = full_plan()
    job = dataclasses.replace(plan.job, prices=plan.job.prices[:1])
    (path,) = papers.write_all_bid(bid(job, plan.parts, plan.blanks), tmp_path)
    book = load_workbook(path, data_only=True)
    assert "There is no price for poplar 4/4" in " ".join(words(book["Cost"]))
    assert book["Purchase list"]["J4"].value == "no price"


def test_papers_are_found_by_their_names_and_others_are_refused(tmp_path: Path) -> None:
    plan = full_plan()
    with pytest.raises(ValueError, match="no paper is called yard book"):
        papers.write_all(plan, passed(plan), tmp_path, ["yard book"])
    assert papers.write_all(plan, passed(plan), tmp_path, []) == ()
