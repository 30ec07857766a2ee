"""A shop's own piece, said once in the job file and used in two sizes; every mistake with its line."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from yieldplan import assemblies, job
from yieldplan.faults import Fault, Faults
from yieldplan.model.parts import Built

HEAD = """title = "Shelves"
unit = "in"
currency = "USD"

[wood.oak]
species = "white oak"
[wood.cherry]
species = "black cherry"

"""
RECIPE = """[recipe.wall_shelf]
words = "A wall shelf"
sizes = { width = "24", height = "ask", depth = "7", board = "3/4", rail = "3" }
counts = { shelves = 2 }
materials = { outside = "oak" }
also = { inside = "width - 2 * board", gap = "(height - shelves * board) / (shelves + 1)" }

[[recipe.wall_shelf.part]]
name = "side"
quantity = 2
wood = "outside"
length = "height"
width = "depth"
thickness = "board"
show_face = "clear"

[[recipe.wall_shelf.part]]
name = "shelf"
quantity = "shelves"
wood = "outside"
between = { clear = "inside", joint = { kind = "dado", depth = "board / 3" }, mate = "board" }
width = "depth - 1/4"
thickness = "board"

[[recipe.wall_shelf.part]]
name = "hanging rail"
wood = "oak"
length = "inside + 2 * 1/4"
width = "min(rail, gap)"
thickness = "board"

[[recipe.wall_shelf.check]]
words = "width over all"
measured = "shelf.length - 2 * 1/4 + 2 * side.thickness"
should_be = "width"

"""
USED = """[[wall_shelf]]
name = "hall"
height = "30"

[[wall_shelf]]
name = ["den", "attic"]
width = "36"
height = "12"
outside = "cherry"
shelves = 3
"""
WHOLE = HEAD + RECIPE + USED


def built(folder: Path, text: str) -> tuple[Built, list[Fault]]:
    """The parts of a job file and what is wrong with it."""
    (folder / "job.toml").write_text(text, encoding="utf-8")
    faults = Faults()
    commission = job.read(folder / "job.toml", faults)
    if commission is None or len(faults):
        return Built(parts=()), list(faults)
    made = assemblies.parts_of(commission, faults)
    return made, list(faults)


def said(made: Built) -> dict[str, str]:
    """Quantity, wood and the sums of each part."""
    return {
        part.id: f"{part.quantity} {part.wood}: {part.length} | {part.width} | {part.thickness}"
        for part in made.parts
        if not part.set_up
    }


def test_a_recipe_is_used_in_two_sizes(tmp_path: Path) -> None:
    made, faults = built(tmp_path, WHOLE)
    assert not faults
    # hall: 24 - 2 x 3/4 = 22-1/2 inside; two dadoes a third of 3/4 = 1/4 deep make 23.
    # Gap (30 - 2 x 3/4) / 3 = 9-1/2: the rail keeps its 3.
    # den: 36 - 1-1/2 + 1/2 = 35; gap (12 - 3 x 3/4) / 4 = 2-7/16: the rail gives way.
    inside = "36 width − 2 × 3/4 board"
    assert said(made) == {
        "hall/side": "2 oak: 30 height | 7 depth | 3/4 board",
        "hall/shelf": "2 oak: 24 width − 2 × 3/4 board + 2 × 1/4 dado = 23"
        " | 7 depth − 1/4 as drawn = 6-3/4 | 3/4 board",
        "hall/hanging rail": "1 oak: 24 width − 2 × 3/4 board + 2 × 1/4 as drawn = 23"
        " | 3 smaller of rail and gap | 3/4 board",
        **{
            f"{name}/{part}": words
            for name in ("den", "attic")
            for part, words in {
                "side": "2 cherry: 12 height | 7 depth | 3/4 board",
                "shelf": f"3 cherry: {inside} + 2 × 1/4 dado = 35"
                " | 7 depth − 1/4 as drawn = 6-3/4 | 3/4 board",
                "hanging rail": f"1 oak: {inside} + 2 × 1/4 as drawn = 35"
                " | 2-7/16 smaller of rail and gap | 3/4 board",
            }.items()
        },
    }
    assert {part.show_face for part in made.parts if part.id.endswith("side")} == {
        "clear"
    }


def test_its_joints_are_set_up_like_any_other(tmp_path: Path) -> None:
    made, _ = built(tmp_path, WHOLE)
    assert {(each.joint, each.housed) for each in made.meetings} == {
        ("dado", f"{name}/shelf") for name in ("hall", "den", "attic")
    }
    assert any(part.set_up for part in made.parts)


def test_the_same_recipe_in_millimetres(tmp_path: Path) -> None:
    # The same piece in whole millimetres: 600 - 2 x 18 = 564, two dadoes of 18 / 3 = 6.
    metric = WHOLE.replace('unit = "in"', 'unit = "mm"')
    for inch, mm in (
        ('"24"', '"600"'), ('"7"', '"180"'), ('"3/4"', '"18"'), ('rail = "3"', 'rail = "75"'),
        ('height = "30"', "height = 750"), ('"36"', "900"), ('height = "12"', "height = 300.5"),
        ('"depth - 1/4"', '"depth - 6"'), ("2 * 1/4", "2 * 6"),
    ):  # fmt: skip
        assert inch in metric
        metric = metric.replace(inch, mm)
    made, faults = built(tmp_path, metric)
    assert not faults
    lengths = {part.id: part.length.say("mm") for part in made.parts}
    assert lengths["hall/shelf"] == "600 width − 2 × 18 board + 2 × 6 dado = 576"
    assert lengths["den/shelf"] == "900 width − 2 × 18 board + 2 × 6 dado = 876"
    widths = {part.id: part.width.say("mm") for part in made.parts}
    # (750 - 2 x 18) / 3 = 238, so the rail keeps 75; (300.5 - 3 x 18) / 4 = 61.625.
    assert widths["hall/hanging rail"] == "75 smaller of rail and gap"
    assert widths["den/hanging rail"] == "about 61.6 smaller of rail and gap"
    assert widths["hall/shelf"] == "180 depth − 6 as drawn = 174"


def test_none_of_a_part_is_asked_for_where_its_count_is_0(tmp_path: Path) -> None:
    made, faults = built(tmp_path, WHOLE.replace("shelves = 3", "shelves = 0"))
    assert not faults
    # Nothing divides by the shelves: (12 - 0 x 3/4) / 1 = 12, and no check measures one.
    assert "hall/shelf" in said(made)
    assert "den/shelf" not in said(made)


def test_a_shop_says_its_own_figures_once_for_all_of_a_recipe(tmp_path: Path) -> None:
    shop = '[shop.wall_shelf]\nboard = "7/8"\noutside = "cherry"\n\n'
    made, faults = built(tmp_path, HEAD + shop + RECIPE + USED)
    # A dado a third of 7/8 = 7/24 deep is not the 1/4 of the check.
    assert {fault.where.line for fault in faults} == {51, 55}
    made, faults = built(
        tmp_path, HEAD + shop + RECIPE.replace("2 * 1/4", "2 * (board / 3)") + USED
    )
    assert not faults
    assert said(made)["hall/side"] == "2 cherry: 30 height | 7 depth | 7/8 board"


def test_a_joint_that_begins_outside_cancels_its_mate_by_name(tmp_path: Path) -> None:
    lapped = WHOLE.replace(
        '{ kind = "dado", depth = "board / 3" }',
        '{ kind = "half-blind dovetail", lap = "1/8" }',
    ).replace("shelf.length - 2 * 1/4 + 2 * side.thickness", "shelf.length + 2 * 1/8")
    made, faults = built(tmp_path, lapped)
    assert not faults
    # 24 - 2 x 3/4 + 2 x (3/4 - 1/8): the sides cancel, 24 - 2 x 1/8 = 23-3/4.
    assert "24 width − 2 × 1/8 lap = 23-3/4" in said(made)["hall/shelf"]


def test_a_check_that_does_not_hold_is_told_at_the_piece(tmp_path: Path) -> None:
    text = WHOLE.replace('clear = "inside"', 'clear = "width"')
    made, faults = built(tmp_path, text)
    assert not made.parts
    # A shelf as long as the whole is wide, 24 + 1/2, makes 24 + 2 x 3/4 over all.
    assert str(faults[0]) == (
        'job.toml, line 47, wall_shelf "hall", "shelf.length - 2 * 1/4 + 2 * side.thickness":'
        " width over all: the parts make 25 1/2, and it should be 24.\n"
        "  Correct the parts of the recipe, or its check on line 41."
    )


@pytest.mark.parametrize(
    ("right", "spoilt", "line", "said", "wrong", "remedy"),
    [
        ("[recipe.wall_shelf]", "[recipe]\nbox = 1\n[recipe.wall_shelf]", 11, "1", "a table is needed", "[recipe.box]"),
        ('words = "A wall shelf"', 'word = "A wall shelf"', 11, "word", "no such key", '"words"'),
        ('words = "A wall shelf"', "words = 3", 11, "3", "not a text", "quotes"),
        ('"24"', '"24 -1/2"', 12, "24 -1/2", "not a length", "17-3/8"),
        ("shelves = 2", "shelves = -2", 13, "-2", "from 0 to 10,000", "Correct"),
        ('rail = "3"', 'rail = "3", shelves = "3"', 13, "shelves", "stands under sizes already", "its own"),
        ('rail = "3"', 'rail = "3", max = "9"', 12, "max", "for something else", "another"),
        ('rail = "3"', 'rail = "3", name = "9"', 12, "name", "for something else", "another"),
        ('rail = "3"', 'rail = "3", "top rail" = "9"', 12, "top rail", "letters, digits and underlines", "top_rail"),
        ('"width - 2 * board"', '"width - 2 * bord"', 15, "bord", "no size or count of this name", '"board"'),
        ('"width - 2 * board"', '"width - 2 board"', 15, "width - 2 board", "nothing stands between 2 and board", "×"),
        ('"width - 2 * board"', '"width * board"', 15, "width * board", "area", "count"),
        ('"width - 2 * board"', '"inside - 2 * board"', 15, "inside → inside", "in a circle", "its own"),
        ('"width - 2 * board"', '"width - 2 * edge", edge = "board"', None, "", "", ""),
        ('(height - shelves', '(inside - gap', 15, "gap → gap", "in a circle", "its own"),
        ('length = "height"', 'length = "hight"', 21, "hight", "no size or count", '"height"'),
        ('length = "height"', 'length = "shelves"', 21, "shelves", "a count, and a length is needed", "Multiply"),
        ('length = "height"', 'length = "shelf.length"', 21, "shelf.length", "known to checks only", "under also"),
        ('length = "height"', "length = true", 21, "true", "no formula", "quotes"),
        ('quantity = "shelves"', 'quantity = "depth"', 28, "depth", "a length, and a count is needed", "counts"),
        ('depth = "board / 3"', 'depth = "boards / 3"', 30, "boards", "no size or count", '"board"'),
        ('"dado"', '"dadoo"', 30, "dadoo", "no such joint", '"dado"'),
        ('name = "shelf"', "", 26, "", '"name" is missing', "describe recipe"),
        ('name = "shelf"', 'name = "side"', 27, "side", "on line 17 already", "its own"),
        ('name = "shelf"', 'name = "top/shelf"', 27, "top/shelf", 'no "/"', "hyphen"),
        ('show_face = "clear"', 'show_face = "clean"', 24, "clean", "not known", '"clear"'),
        ('"shelf.length -', '"shelve.length -', 43, "shelve.length", "no size or count", '"shelf.length"'),
        ('should_be = "width"', 'should_be = "width"\nis = 3', 45, "is", "not known here", "should_be"),
        ("[[wall_shelf]]\nname = \"hall\"", "[[wal_shelf]]\nname = \"hall\"", 46, "wal_shelf", "not known here", '"wall_shelf"'),
        ('height = "30"', "", 46, "", '"height" is missing', "recipe asks"),
        ('height = "30"', 'height = "30"\ndepht = 3', 49, "depht", "not known here", '"depth"'),
        ("recipe.wall_shelf", "recipes.wall_shelf", 10, "recipes", "not known here", '"recipe"'),
        ("recipe.wall_shelf", "recipe.drawer", 10, "drawer", "for something else", "another name"),
    ],
)  # fmt: skip
def test_one_mistake_gives_one_message(
    tmp_path: Path,
    right: str,
    spoilt: str,
    line: int | None,
    said: str,
    wrong: str,
    remedy: str,
) -> None:
    assert WHOLE.count(right) >= 1
    many = -1 if right == "recipe.wall_shelf" else 1
    text = WHOLE.replace(right, spoilt, many)
    if "recipe.drawer" in text:
        text = text.replace(
            USED,
            '[[part]]\nname = "a"\nwood = "oak"\nlength = 9\nwidth = 3\nthickness = 1\n',
        )
    _, faults = built(tmp_path, text)
    if line is None:  # sizes may stand in any order
        assert not faults
        return
    (fault,) = faults
    assert (fault.where.line, fault.said) == (line, said)
    assert wrong in fault.wrong
    assert remedy in fault.remedy


@pytest.mark.parametrize(
    ("right", "spoilt", "line", "wrong"),
    [
        ('height = "30"', 'height = "30"\nwidth = "1"', 47, "shelf: its clear is not a size: 1 width − 2 × 3/4 board = −1/2"),
        ('height = "30"', 'height = "90\'"\nwidth = "101 ft"', 49, "over 100 ft"),
        ('quantity = "shelves"', 'quantity = "shelves / 4"', 47, "shelf: its quantity (shelves / 4) comes to 0.5"),
        ('quantity = "shelves"', 'quantity = "shelves - 3"', 47, "shelf: its quantity (shelves - 3) comes to -1"),
        ("(shelves + 1)", "(shelves - 2)", 47, "gap: (height − shelves × board) ÷ (shelves − 2) divides by 0"),
        ('outside = "oak"', 'outside = "ok"', 17, "a wood the job does not have"),
        ('outside = "cherry"', 'outside = "ash"', 17, "a wood the job does not have"),
        ('thickness = "board"\nshow', "show", 17, "how thick the part is is missing"),
    ],
)  # fmt: skip
def test_what_a_piece_cannot_be_is_told_when_it_is_built(
    tmp_path: Path, right: str, spoilt: str, line: int, wrong: str
) -> None:
    assert right in WHOLE
    _, faults = built(tmp_path, WHOLE.replace(right, spoilt, 1))
    assert wrong in " ".join(fault.wrong for fault in faults)
    assert faults[0].where.line == line


def test_all_mistakes_of_a_recipe_are_told_in_one_run(tmp_path: Path) -> None:
    text = (
        WHOLE.replace('"24"', '"24 -1/2"')
        .replace('"width - 2 * board"', '"width - 2 board"')
        .replace('length = "height"', 'length = "hight"')
        .replace('"min(rail, gap)"', '"min(rail, gap"')
        .replace('"shelf.length', '"shelves.length')
    )
    _, faults = built(tmp_path, text)
    # What is spoilt itself is still a name: nobody is told that `inside` is unknown.
    assert [fault.where.line for fault in faults] == [12, 15, 21, 38, 43]


def test_a_circle_of_sizes_is_told_once(tmp_path: Path) -> None:
    also = 'a = "b + 1", b = "c + 1", c = "a + 1", d = "c + 1", inside ='
    _, (fault,) = built(tmp_path, WHOLE.replace("inside =", also, 1))
    assert fault.said == "a → b → c → a"
    assert fault.where.line == 15


def test_sizes_that_grow_from_one_another_end_in_words(tmp_path: Path) -> None:
    chain = ", ".join(f'n{k} = "n{k - 1} * n{k - 1}"' for k in range(1, 90))
    text = WHOLE.replace("inside =", f"{chain}, inside =", 1)
    text = text.replace("shelves = 2", "shelves = 2, n0 = 2")
    _, faults = built(tmp_path, text)
    assert "grows beyond anything" in faults[0].wrong


@pytest.mark.parametrize("seed", range(16))
def test_however_a_recipe_is_damaged_there_are_messages(
    tmp_path: Path, seed: int
) -> None:
    from tests.job.test_any_text import damaged

    dice = random.Random(seed)
    for _ in range(5):
        spoilt = RECIPE
        for _ in range(dice.randint(1, 3)):
            spoilt = damaged(spoilt, dice)
        _, faults = built(tmp_path, HEAD + spoilt + USED)
        for fault in faults:
            assert fault.where.file == "job.toml"
            assert fault.wrong
            assert fault.remedy
