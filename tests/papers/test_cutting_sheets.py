"""The cutting sheets: every figure follows from the cuts, nothing collides, all of it can be read."""

from __future__ import annotations

import dataclasses
import re
from collections import Counter
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path

import pytest

from tests.builders_plan import (
    Content,
    Strip,
    crosscut_first,
    full_job,
    full_plan,
    make_piece,
    make_wood,
    passed,
    plain_blank,
    plain_part,
    short_plan,
    stress_plan,
    ticks,
)
from tests.papers.pdf_text import text_in_pdf
from yieldplan.drawing.cut_text import cutting_list
from yieldplan.drawing.scene import Line, Scene, Text
from yieldplan.model.blanks import Step
from yieldplan.model.plan import Cutting, Node, Plan
from yieldplan.papers.cutting_sheets import CuttingSheets, sheets
from yieldplan.papers.cutting_sheets.block import block, name_of
from yieldplan.papers.cutting_sheets.finals import final_sizes
from yieldplan.papers.cutting_sheets.runs import Run, runs_of
from yieldplan.papers.cutting_sheets.settings import fence_settings
from yieldplan.units import from_ticks, tape


def metric_plan() -> Plan:
    """The same boards, read in millimetres."""
    return full_plan(job=full_job(unit="mm"))


def two_thicknesses() -> Plan:
    """Legs from 8/4 beside rails from 4/4, of one wood."""
    leg = plain_part("leg", "walnut", ("30", "1 3/4", "1 3/4"), quantity=2)
    rail = plain_part("rail", "walnut", ("22", "2 1/2", "3/4"))
    thick = make_piece("W8", "66", "5", line="walnut 8/4", thickness="8/4", thick=2)
    thin = make_piece("W4", "26", "3")
    cuttings = (
        crosscut_first(thick, [("0", "2", "trim"), ("2", "33", [Strip("2", "k1")]), ("33", "64", [Strip("2", "k1")]), ("64", "66", "trim")]),
        crosscut_first(thin, [("0", "1", "trim"), ("1", "24", [Strip("2 3/4", "k2")]), ("24", "26", "trim")]),
    )  # fmt: skip
    blanks = (plain_blank("k1", leg), plain_blank("k2", rail))
    return full_plan(
        woods=(make_wood("walnut", cuttings, {"leg": 2, "rail": 1}),),
        parts=(leg, rail),
        blanks=blanks,
        pieces=(thick, thin),
        fits={"k1": ("walnut 8/4",), "k2": ("walnut 4/4",)},
    )


def stick_plan() -> Plan:
    """A stick of one section: crosscut to length, never ripped."""
    bead = plain_part(
        "bead", "beading", ("20", "3/4", "1/2"), quantity=3, is_stick=True
    )
    stick = make_piece(
        "beading", "96", "3/4", wood="beading", line="beading", kind="stick", grade="",
        is_planed=True, is_stick=True, board_feet=None, per_foot=None, price=90_000,
    )  # fmt: skip
    cutting = crosscut_first(
        stick,
        [("0", "1/2", "trim"), ("1/2", "20 5/8", "k1"), ("20 5/8", "40 3/4", "k1"), ("40 3/4", "60 7/8", "k1"), ("60 7/8", "96", "keep")],
    )  # fmt: skip
    blank = plain_blank("k1", bead, over="0", is_stick=True, length=bead.length, width=bead.width)  # fmt: skip
    return full_plan(
        woods=(make_wood("beading", (cutting,), {"bead": 3}, is_stick=True),),
        parts=(bead,), blanks=(blank,), pieces=(stick,), fits={"k1": ("beading",)},
    )  # fmt: skip


PLANS = {
    "inches": full_plan,
    "a part missing": short_plan,
    "long names": stress_plan,
    "millimetres": metric_plan,
    "two thicknesses": two_thicknesses,
    "a stick": stick_plan,
}
EVERY_PLAN = pytest.mark.parametrize("which", PLANS)


@lru_cache
def pages_of(which: str) -> tuple[Scene, ...]:
    return tuple(sheets(PLANS[which]()))


def said_on(page: Scene) -> list[str]:
    return [text.text for text in page.texts()]


def boards(plan: Plan) -> Iterator[tuple[Run, Cutting]]:
    for run in runs_of(plan):
        for cutting in run.cuttings:
            yield run, cutting


def large(scene: Scene, size: float) -> list[str]:
    return [text.text for text in scene.texts() if text.size == size and text.bold]


# ---- What can be read.


@EVERY_PLAN
def test_no_words_touch_and_none_leave_the_page(which: str) -> None:
    for page in pages_of(which):
        assert (page.width, page.height) == (540, 727)  # prints on letter and on A4
        assert page.collisions() == []


@EVERY_PLAN
def test_nothing_is_drawn_off_the_page(which: str) -> None:
    for page in pages_of(which):
        for item in page.items:
            if isinstance(item, Line):
                assert min(item.x0, item.x1) >= 0
                assert max(item.x0, item.x1) <= page.width + 0.01
                assert min(item.y0, item.y1) >= 0
                assert max(item.y0, item.y1) <= page.height


@EVERY_PLAN
def test_nothing_at_the_saw_is_smaller_than_10_points(which: str) -> None:
    for page in pages_of(which):
        assert min(text.size for text in page.texts()) >= 10


def test_every_sheet_says_what_it_is_and_which_of_how_many() -> None:
    for run in runs_of(full_plan()):
        heads = [p for p in pages_of("inches") if f"Cutting sheet: {run.name}" in said_on(p)]  # fmt: skip
        fence = [p for p in pages_of("inches") if f"Fence and stops: {run.name}" in said_on(p)]  # fmt: skip
        assert heads
        assert len(fence) == 1
        for number, page in enumerate([*heads, *fence], start=1):
            whole = " ".join(said_on(page))
            assert f"plan BCDF    sheet {number} of {len(heads) + 1}" in whole
            assert "Two drawers for the hall" in whole


def test_a_defect_that_is_not_drawn_stops_the_work_on_every_board_sheet() -> None:
    for page in pages_of("inches"):
        if not said_on(page)[0].startswith("Fence"):
            warning = "A defect that is not drawn? Mark it, stop, plan again."
            assert warning in large(page, 10) or "Fence and stops" in " ".join(said_on(page))  # fmt: skip


def test_incomplete_stands_boxed_at_the_head_of_every_sheet() -> None:
    for page in pages_of("a part missing"):
        said = " ".join(said_on(page))
        assert "INCOMPLETE. Missing:" in said
        assert "case top: needs 14 in clear width" in said
    assert not any("INCOMPLETE" in " ".join(said_on(p)) for p in pages_of("inches"))


def test_two_thicknesses_of_a_wood_are_never_on_one_sheet() -> None:
    titles = [t for p in pages_of("two thicknesses") for t in said_on(p) if ": walnut" in t]  # fmt: skip
    assert titles == [
        "Cutting sheet: walnut 4/4", "Fence and stops: walnut 4/4",
        "Cutting sheet: walnut 8/4", "Fence and stops: walnut 8/4",
    ]  # fmt: skip


# ---- Figures against the cut tree, worked out here once more.


def _rows(tree: Node) -> list[Node]:
    """The board, or its strips: what is crosscut at chalked marks."""
    return [c for c in tree.into if c.cut == "crosscut"] if tree.cut == "rip" else [tree]  # fmt: skip


def _marks(row: Node, *, from_fresh_end: bool) -> list[int]:
    ends = [child.box[2] for child in row.into if child.box[2] < row.box[2]]
    if from_fresh_end:  # the sheet's first piece is squared off, zero is behind it
        zero = row.into[1].box[0]
        return [end - zero for end in ends[1:]]
    return ends


@EVERY_PLAN
def test_the_marks_of_every_board_are_its_cuts_from_one_zero(which: str) -> None:
    plan = PLANS[which]()
    for run, cutting in boards(plan):
        fresh = run.saw.rules.marks_from == "trimmed end"
        marks = Counter(
            tape(from_ticks(mark), plan.job.unit)
            for row in _rows(cutting.tree)
            for mark in _marks(row, from_fresh_end=fresh)
        )
        for folds in (1, 2):
            drawn = block(cutting, run, 640.0, folds).scene
            figures = Counter(large(drawn, 18))
            figures -= Counter([name_of(cutting.piece, cutting.copy)])
            if cutting.tree.cut == "rip":  # the strips' own widths may be as large
                assert marks <= figures
            else:
                assert marks == figures


@EVERY_PLAN
def test_every_strip_off_the_fence_has_its_setting_on_the_sheet(which: str) -> None:
    plan = PLANS[which]()
    for run, cutting in boards(plan):
        said = [t.text for t in block(cutting, run, 640.0, 1).scene.texts()]
        whole = " | ".join(said)
        for node in _all(cutting.tree):
            if node.cut != "rip" or node is cutting.tree:
                continue
            # The last strip needs no setting where it reaches the far edge.
            for strip in node.into:
                width = tape(from_ticks(strip.width), plan.job.unit)
                if strip.box[3] < node.box[3] and strip.fate != "edge":
                    assert f"rip {width}" in whole


def _all(node: Node) -> Iterator[Node]:
    yield node
    for child in node.into:
        yield from _all(child)


@pytest.mark.parametrize("which", ["inches", "long names", "millimetres", "a stick"])
def test_every_2_of_3_has_its_1_and_3(which: str) -> None:
    plan = PLANS[which]()
    for run in runs_of(plan):
        places: dict[str, list[str]] = {}
        for named in run.names.values():
            places.setdefault(named.name, []).append(named.place)
        cut = Counter(
            run.saw.blanks[leaf.blank].words
            for cutting in run.cuttings
            for leaf in cutting.tree.leaves()
            if leaf.blank
        )
        for name, many in cut.items():
            wanted = [f"{n} of {many}" for n in range(1, many + 1)]
            assert sorted(places[name]) == (sorted(wanted) if many > 1 else [""])


@EVERY_PLAN
def test_every_blank_is_named_on_its_board(which: str) -> None:
    plan = PLANS[which]()
    for run, cutting in boards(plan):
        whole = " ".join(t.text for t in block(cutting, run, 640.0, 3).scene.texts())
        for leaf in cutting.tree.leaves():
            if leaf.blank and run.saw.blanks[leaf.blank].route != "match":
                named = run.names[leaf.id]
                if len(named.name) < 30:
                    assert named.name in whole
                assert named.place in whole
            if leaf.fate == "keep":
                assert f"KEEP {leaf.name}" in whole


@EVERY_PLAN
def test_the_last_line_adds_up_to_the_board(which: str) -> None:
    plan = PLANS[which]()
    unit = plan.job.unit
    for run, cutting in boards(plan):
        texts = [t.text for t in block(cutting, run, 640.0, 1).scene.texts()]
        start = next(n for n, t in enumerate(texts) if t.startswith(("Along,", "Across:")))  # fmt: skip
        line = " ".join(texts[start:]).partition(": ")[2].rstrip(".")
        total, whole = (side.strip() for side in line.split(" = "))
        sums = sum(_value(term, unit) for term in total.split(" + "))
        # What is not on the tape's grid is said to the nearest 0.1 mm, so may its sum be.
        off = line.count("about")
        assert abs(sums - _value(whole.partition(" (")[0], unit)) <= off


def _value(term: str, unit: str) -> int:
    """A term such as `2 × 40 1/2` or `1/8 kerf`, in sixty-fourths or tenths."""
    times, _, size = term.rpartition(" × ")
    size = re.sub(r"( kerf| edge| rest)$", "", size)
    each = 0
    for word in size.removeprefix("about ").split():
        top, _, bottom = word.partition("/")
        each += int(float(top) * 10) if unit == "mm" else 64 * int(top) // int(bottom or 1)  # fmt: skip
    return each * int(times or 1)


def test_the_full_board_by_hand() -> None:
    # W1, 9 ft: cut at 6, 50, 54, 77, 106; a kerf of 1/8 goes off every piece:
    # 44 - 1/8, 23 - 1/8, 29 - 1/8.
    ((run, cutting),) = [(r, c) for r, c in boards(full_plan()) if c.piece.id == "W1"]
    scene = block(cutting, run, 320.0, 1).scene
    said = [t.text for t in scene.texts()]
    assert large(scene, 18) == ["6", "50", "54", "77", "106"]
    assert [t for t in said if t in ("43 7/8", "22 7/8", "28 7/8")] == ["43 7/8", "22 7/8", "28 7/8"]  # fmt: skip
    assert large(scene, 44) == ["W1"]
    assert {"CROSSCUT FIRST", "FACE A UP"} <= set(large(scene, 12))
    assert "rip 5 1/2" in said
    # Found on it: the figures as they were measured.
    for found in ("split 0 to 5, through", "3 1/2 to 4 1/2 from near edge", "knot 50 to 53", "wane underneath, 80 to 108", "7 1/2 to far edge", "near edge to 1"):  # fmt: skip
        assert found in said
    # The divider lies face B up.
    assert "TURN OVER," in " ".join(said)
    assert "FACE B UP" in " ".join(said)
    assert "8 1/4 × 28 7/8" in said  # the offcut that is kept
    strokes = [i for i in scene.items if isinstance(i, Line) and i.weight == 2.4]
    assert len(strokes) == 1  # one across the first joint of the matched fronts
    assert "Along, mark to mark: 6 + 44 + 4 + 23 + 29 + 2 = 108." in said
    assert "Mill in one piece, then cut into 2 parts: fronts (2 matched)." in said


def test_what_comes_off_the_near_edge_counts_its_kerf_as_in_the_cutting_list() -> None:
    # 3/8 of wane and the kerf of 1/8: the strip begins 1/2 from the near edge.
    cut = [
        ("0", "2", "trim"),
        ("2", "26", [Strip("3/8", "burn"), Strip("5 1/2", "k4")]),
    ]
    board = make_piece("W6", "28", "7")
    cutting = crosscut_first(board, [*cut, ("26", "28", "trim")])
    # The builder takes a pass of a kerf first; here the edge comes off in one.
    tree = _without_first_pass(cutting.tree)
    cutting = dataclasses.replace(cutting, tree=tree)
    plan = full_plan(woods=(make_wood("walnut", (cutting,), {}),))
    ((run, cutting),) = boards(plan)
    said = [t.text for t in block(cutting, run, 320.0, 1).scene.texts()]
    assert "take 1/2 off, burn" in said
    assert "take 1/2 off" in cutting_list(cutting, run.saw, numbered=False)[1]


def _without_first_pass(tree: Node) -> Node:
    section = tree.into[1]
    edge = dataclasses.replace(
        section.into[0], box=(section.box[0], 0, section.box[2], ticks("3/8"))
    )
    strip = dataclasses.replace(
        section.into[1],
        box=(section.box[0], ticks("1/2"), section.box[2], ticks("6")),
    )
    cut = dataclasses.replace(section, into=(edge, strip, *section.into[2:]))
    return dataclasses.replace(tree, into=(tree.into[0], cut, *tree.into[2:]))


def test_marks_are_never_set_smaller_whatever_the_board() -> None:
    # 14 ft with 12 marks: 2, 13 1/2, 25 ... 117, 166.
    said = [t for page in pages_of("long names") for t in large(page, 18)]
    for mark in ("2", "13 1/2", "25", "36 1/2", "48", "59 1/2", "71", "82 1/2", "94", "105 1/2", "117", "166"):  # fmt: skip
        assert mark in said


def test_a_long_board_is_folded_and_goes_on_from_the_same_zero() -> None:
    said = [t for page in pages_of("long names") for t in said_on(page)]
    assert any(re.fullmatch(r"continued from .*, still measured from zero", t) for t in said)  # fmt: skip
    zeros = [t for p in pages_of("long names") for t in p.texts() if t.text == "0"]
    assert len(zeros) == 1 + 6  # W88 once, though folded; six strips of W9 once each


def test_a_set_cut_in_steps_has_strokes_across_its_crosscuts() -> None:
    # Three fronts end to end, each ripped to its own width: one stroke across the
    # cut between the first two, two across the next.
    parts = [plain_part(f"front {n}", "walnut", ("20", str(3 + n), "3/4")) for n in (1, 2, 3)]  # fmt: skip
    blanks = tuple(
        plain_blank(f"k{n}", part, step=Step(set="fronts", number=n, of=3))
        for n, part in enumerate(parts, start=1)
    )
    board = make_piece("W2", "68", "7")
    cutting = crosscut_first(
        board,
        [("0", "2", "trim"), ("2", "23", [Strip("4 1/4", "k1"), Strip("2 1/4", "keep")]), ("23", "44", [Strip("5 1/4", "k2")]), ("44", "65", [Strip("6 1/4", "k3")]), ("65", "68", "burn")],
    )  # fmt: skip
    plan = full_plan(
        woods=(make_wood("walnut", (cutting,), {part.id: 1 for part in parts}),),
        parts=tuple(parts), blanks=blanks, pieces=(board,),
        fits={blank.id: ("walnut 4/4",) for blank in blanks},
    )  # fmt: skip
    ((run, _),) = boards(plan)
    scene = block(cutting, run, 320.0, 1).scene
    strokes = [i for i in scene.items if isinstance(i, Line) and i.weight == 2.4]
    assert Counter(round(each.x0) for each in strokes).most_common() == [
        (round(strokes[1].x0), 2), (round(strokes[0].x0), 1),
    ]  # fmt: skip
    assert strokes[0].x0 < strokes[1].x0
    said = " ".join(t.text for t in scene.texts())
    for place in ("front 1 1 of 3", "front 2 2 of 3", "front 3 3 of 3"):
        assert place in said
    assert "Chalk marks and strokes, cut 1 to 4." in said


def test_over_14_pieces_have_their_number_beside_14_boxes() -> None:
    part = plain_part("slat", "walnut", ("10 1/2", "2 1/4", "3/4"), quantity=30)
    three = [Strip("2 1/2", "k1")] * 3
    marks: list[tuple[str, str, Content]] = [
        (str(start), str(start + 12), three) for start in range(2, 122, 12)
    ]
    board = make_piece("W3", "124", "9")
    cutting = crosscut_first(
        board, [("0", "2", "trim"), *marks, ("122", "124", "trim")]
    )
    plan = full_plan(
        woods=(make_wood("walnut", (cutting,), {"slat": 30}),), parts=(part,),
        blanks=(plain_blank("k1", part),), pieces=(board,), fits={"k1": ("walnut 4/4",)},
    )  # fmt: skip
    page = sheets(plan)[-1]
    assert page.collisions() == []
    assert said_on(page).count("30 ×") == 3  # rough rips, final widths, final lengths
    boxes = [i for i in page.items if type(i).__name__ == "Box" and i.weight == 1.0]
    assert len(boxes) == 3 * 14


def test_names_that_are_cut_short_stay_unlike_each_other() -> None:
    # Twelve names of 60 letters that differ in their last two.
    said = [t for page in pages_of("long names") for t in said_on(page)]
    ends = {m[0] for t in said if "show" in t and (m := re.search(r"\d\d", t))}
    assert ends >= {f"{n:02d}" for n in range(1, 13)}


def test_sheets_are_measured_from_the_end_that_was_squared() -> None:
    ((run, cutting),) = [(r, c) for r, c in boards(full_plan()) if c.piece.is_sheet]
    said = [t.text for t in block(cutting, run, 640.0, 1).scene.texts()]
    steps = " ".join(said)
    # Three pieces of 21 7/16, a kerf of 1/8 between: 21 7/16, then 43.
    assert "Square the zero end, 1/4 off; zero is the fresh end." in steps
    assert "21 7/16" in said
    assert "43" in said


def test_a_metric_job_is_in_millimetres_on_its_own_paper(tmp_path: Path) -> None:
    (path,) = CuttingSheets().write(metric_plan(), passed(metric_plan()), tmp_path)
    read = text_in_pdf(path.read_bytes(), tmp_path)
    assert b"595.2756" in path.read_bytes()
    assert "Millimetres. Lengths to scale" in read
    assert "152.4" in read  # the first mark of W1: 6 × 25.4


# ---- Fence and stops.


@EVERY_PLAN
def test_the_fence_list_frees_every_strip_once_and_in_an_order_the_saw_can_keep(
    which: str,
) -> None:
    for run in runs_of(PLANS[which]()):
        order = [node for each in fence_settings(run) for node in each.nodes]
        needed = []
        for cutting in run.cuttings:
            for node in _all(cutting.tree):
                if node.cut != "rip":
                    continue
                strips = [s for s in node.into if s.box[3] < node.box[3]]
                if strips and strips[0].fate in ("edge", "burn", "trim") and strips[0] is node.into[0]:  # fmt: skip
                    strips = strips[1:]  # taken off the near edge, not at a setting
                strips = [s for s in strips if s.fate != "edge"]
                needed += [s.id for s in strips]
                places = [order.index(s.id) for s in strips]
                # From the near edge up, and after whatever it was cut from.
                assert places == sorted(places)
                for above in _all(cutting.tree):
                    if above.id in order and above is not node and any(n is node for n in _all(above)):  # fmt: skip
                        assert all(order.index(above.id) < p for p in places)
        assert sorted(order) == sorted(needed)


def test_full_length_strips_come_first_then_the_widest() -> None:
    poplar = next(run for run in runs_of(full_plan()) if run.name == "poplar 4/4")
    figures = [tape(from_ticks(each.figure)) for each in fence_settings(poplar)]
    # P1 is ripped first: 5 1/2, then 6 1/8 as they lie; then the backs of P2, 4 7/8,
    # and the strips of 2 beside them that are burnt.
    assert figures == ["5 1/2", "6 1/8", "4 7/8", "2"]
    assert fence_settings(poplar)[0].where == "P1, full length: in this order"


def test_final_sizes_count_every_part_the_run_gives() -> None:
    plan = full_plan()
    walnut = next(run for run in runs_of(plan) if run.name == "walnut 4/4")
    lengths = [(tape(e.size), dict(e.parts)) for e in final_sizes(walnut, "length")]
    assert lengths == [
        ("22", {"divider": 2}),
        ("21 1/2", {"lower/front": 1, "upper/front": 1}),
        ("8", {"set-up, half-blind": 1}),
        ("5 1/2", {"knob blank": 2}),
    ]
    poplar = next(run for run in runs_of(plan) if run.name == "poplar 4/4")
    # Three strips of 6 are one panel of 18, trimmed after the glue has cured.
    widths = {tape(e.size): dict(e.parts) for e in final_sizes(poplar, "width")}
    assert widths["18"] == {"=1+1 (panel)": 1}
    assert "6" not in widths


def test_what_the_saw_leaves_finished_has_no_final_size() -> None:
    (run,) = runs_of(stick_plan())
    assert final_sizes(run, "length") == []
    assert fence_settings(run) == []


def test_there_is_a_box_to_tick_for_every_piece() -> None:
    page = next(p for p in pages_of("inches") if "Fence and stops: walnut 4/4" in said_on(p))  # fmt: skip
    walnut = next(run for run in runs_of(full_plan()) if run.name == "walnut 4/4")
    wanted = sum(len(each.nodes) for each in fence_settings(walnut))
    wanted += sum(e.count for way in ("width", "length") for e in final_sizes(walnut, way))  # type: ignore[arg-type] # fmt: skip
    boxes = [i for i in page.items if type(i).__name__ == "Box" and i.weight == 1.0]
    assert len(boxes) == wanted


# ---- The file.


def test_the_file_is_small_and_its_words_are_those_of_the_pages(tmp_path: Path) -> None:
    (path,) = CuttingSheets().write(full_plan(), passed(full_plan()), tmp_path)
    content = path.read_bytes()
    assert len(content) < 150_000
    read = text_in_pdf(content, tmp_path)
    assert read.count("\f") == len(pages_of("inches"))
    for page, text in zip(pages_of("inches"), read.split("\f"), strict=False):
        for words in page.texts():
            if not words.figures and "/" not in words.text:
                assert " ".join(words.text.split()) in " ".join(text.split())


def test_a_plan_without_a_cut_has_no_cutting_sheets(tmp_path: Path) -> None:
    none = dataclasses.replace(full_plan(), woods=())
    assert CuttingSheets().write(none, passed(none), tmp_path) == ()


def test_text_of_the_sheets_is_text() -> None:
    assert all(isinstance(t, Text) for page in pages_of("inches") for t in page.texts())
