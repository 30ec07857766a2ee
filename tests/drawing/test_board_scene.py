"""The picture of a board: to scale, no words in each other's way, nothing lost at 30 parts."""

from __future__ import annotations

import dataclasses
import io
import xml.etree.ElementTree as ET
from itertools import pairwise

import pytest
from PIL import Image

from tests.builders_plan import (
    Strip,
    crosscut_first,
    full_plan,
    make_mark,
    make_piece,
    stress_plan,
)
from yieldplan.drawing import png, svg
from yieldplan.drawing.board_scene import (
    WIDTH,
    BoardPicture,
    board_scene,
    common_scale,
)
from yieldplan.drawing.labels import Fullness
from yieldplan.drawing.saw import Saw
from yieldplan.drawing.scene import Arrow, Line
from yieldplan.model.plan import Plan


def pictures(plan: Plan) -> dict[str, BoardPicture]:
    """Every board of a plan as the workbook draws it."""
    blanks = {blank.id: blank for blank in plan.blanks}
    drawn = {}
    for wood in plan.woods:
        saw = Saw(blanks=blanks, unit=plan.job.unit, rules=wood.rules)
        scale = common_scale(wood.cuttings, plan.job.unit)
        for cutting in wood.cuttings:
            drawn[cutting.piece.id] = board_scene(cutting, saw, scale)
    return drawn


ALL = {**pictures(full_plan()), **pictures(stress_plan())}


@pytest.mark.parametrize("board", ALL)
def test_no_words_touch_other_words_or_leave_the_picture(board: str) -> None:
    assert ALL[board].scene.collisions() == []


def test_words_that_touch_are_noticed() -> None:
    scene = pictures(full_plan())["W1"].scene
    first = next(iter(scene.texts()))
    scene.add(dataclasses.replace(first, x=first.x + 1))
    assert scene.collisions()


@pytest.mark.parametrize("board", ALL)
def test_nothing_is_drawn_outside_the_picture(board: str) -> None:
    scene = ALL[board].scene
    for item in scene.items:
        if isinstance(item, Line):
            assert min(item.x0, item.x1) >= 0
            assert max(item.x0, item.x1) <= scene.width
            assert min(item.y0, item.y1) >= 0
            assert max(item.y0, item.y1) <= scene.height


@pytest.mark.parametrize("board", ALL)
def test_no_word_is_smaller_than_a_print_can_be_read(board: str) -> None:
    # Workbook pictures: marks and settings 9 pt at the least, names 8.5, numbers 7.
    assert min(text.size for text in ALL[board].scene.texts()) >= 7


def test_a_board_of_14_ft_with_30_parts_still_shows_every_mark_and_piece() -> None:
    picture = ALL["W88"]
    said = [text.text for text in picture.scene.texts()]
    # Ten sections of 11-1/2 from 2 on: 13-1/2, 25, ... 117, then 166.
    for mark in ("2", "13 1/2", "25", "36 1/2", "48", "59 1/2", "71", "82 1/2", "94",
                 "105 1/2", "117", "166"):  # fmt: skip
        assert mark in said
    assert picture.numbered
    assert {str(number) for number in range(1, 32)} <= set(said)


def test_six_strips_are_drawn_apart_with_a_fence_setting_each() -> None:
    said = [text.text for text in ALL["W9"].scene.texts()]
    assert said.count("2 1/2") == 6
    assert said.count("14") == 6  # each strip is marked from its own zero
    assert said.count("0") == 6


def test_marks_stand_to_scale_less_the_gaps_of_pieces_pulled_apart() -> None:
    plan = full_plan()
    walnut = next(wood for wood in plan.woods if wood.wood == "walnut")
    picture = ALL["W1"]
    heads = [item.x for item in picture.scene.items if isinstance(item, Arrow)]
    scale = common_scale(walnut.cuttings, "in")
    # Between two marks lie their inches and the 7 points their pieces are pulled apart.
    inches = [50 - 6, 54 - 50, 77 - 54, 106 - 77]
    drawn = [after - before for before, after in pairwise(heads)]
    assert drawn == pytest.approx([long * scale + 7 for long in inches])


def test_a_matched_set_shows_its_parts_in_order_and_the_strokes_between() -> None:
    scene = ALL["W1"].scene
    upper, lower = (
        next(text for text in scene.texts() if text.text == name)
        for name in ("upper/front", "lower/front")
    )
    assert upper.x < lower.x
    strokes = [i for i in scene.items if isinstance(i, Line) and i.weight == 2.4]
    assert len(strokes) == 1  # one stroke across the first joint
    assert upper.rect().x1 < strokes[0].x0 < strokes[0].x1 < lower.rect().x0


def test_words_make_way_for_a_mark_on_their_piece() -> None:
    # Sap on the turned divider: its words stand beside or above it, not on it.
    board = make_piece("W5", "40", "6", marks=(make_mark("stain A 17 23 0 1"),))
    cutting = crosscut_first(
        board, [("0", "2", "trim"), ("2", "38", [Strip("5", "k2")]), ("38", "40", "trim")]
    )  # fmt: skip
    plan = full_plan()
    saw = Saw(
        blanks={blank.id: blank for blank in plan.blanks},
        unit="in",
        rules=plan.woods[-1].rules,
    )
    picture = board_scene(cutting, saw)
    name = next(text for text in picture.scene.texts() if text.text == "divider")
    circles = [item for item in picture.scene.items if hasattr(item, "rx")]
    assert not any(
        name.rect().x0 < c.x < name.rect().x1 and name.rect().y0 < c.y < name.rect().y1
        for c in circles
    )


def test_a_board_says_as_much_as_fits_on_it() -> None:
    assert ALL["P2"].fullness == Fullness.ONE_LINE
    assert ALL["W88"].fullness == Fullness.NUMBER


@pytest.mark.parametrize("board", ["W1", "W88"])
def test_a_picture_is_black_and_white_at_220_dots_and_the_same_each_time(
    board: str,
) -> None:
    scene = ALL[board].scene
    painted = png.paint(scene)
    assert painted == png.paint(scene)
    image = Image.open(io.BytesIO(painted))
    assert image.mode == "1"
    assert image.width == -(-WIDTH * 220 // 72)


def test_the_same_scene_is_a_valid_svg_with_every_word_in_it() -> None:
    scene = ALL["P1"].scene
    root = ET.fromstring(svg.paint(scene))
    said = "".join(root.itertext())
    assert "=1+1 strip" in said
    assert "KEEP P1-A" in said
