"""Notes from the saw are read line by line against the plan they speak of; what they cannot mean is told."""

from __future__ import annotations

import copy
import json
import random
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.sources.tallies import make_job
from yieldplan import sources
from yieldplan.faults import Fault, Faults
from yieldplan.sources.saved_pieces import SavedPieces, saved_pieces
from yieldplan.sources.saved_plan import Left, left_of
from yieldplan.sources.since import Since, read_since

PAGE = Path(sources.__file__).parents[1] / "plan_format.md"
NOTES = """\
# Monday morning
W07 cut
W07.2.1 is spoiled
W07.2.2.1 knot A 3 to 5 x 1/2 to 1   # under the saw
W08 bought
"""


def example() -> dict[str, object]:
    """The plan that the page of the format works through: two boards, one cut."""
    text = PAGE.read_text(encoding="utf-8")
    found = json.loads(text[text.rindex("```json") + 7 : text.rindex("```")])
    assert isinstance(found, dict)
    return found


def pieces() -> SavedPieces:
    return saved_pieces(example())


def read(folder: Path, text: str) -> tuple[Since, list[Fault]]:
    file = folder / "since.txt"
    file.write_text(text, encoding="utf-8")
    faults = Faults()
    return read_since(file, pieces(), ["rail"], "in", faults), list(faults)


def left(noted: Since) -> Left:
    return left_of(example(), pieces(), noted, "plan.json", make_job())


def names() -> list[str]:
    return [spot.name for spot in pieces().spots.values()]


def test_the_example_is_what_these_tests_take_it_for() -> None:
    assert {"W07", "W08"} <= set(names())
    assert any(spot.is_cut and spot.above for spot in pieces().spots.values())


def test_a_board_that_is_cut_leaves_what_its_first_cuts_part(tmp_path: Path) -> None:
    noted, faults = read(tmp_path, "W07 cut\n")
    assert not faults
    ids = [piece.id for piece in left(noted).pieces]
    assert "W07" not in ids
    assert "W08" in ids
    parted = {s.name for s in pieces().spots.values() if s.above == ("W07",)}
    assert {piece for piece in ids if piece != "W08"} <= parted


def test_what_is_said_of_a_piece_sawn_out_implies_the_cuts_above_it(
    tmp_path: Path,
) -> None:
    deepest = max(pieces().spots.values(), key=lambda spot: len(spot.above))
    noted, faults = read(tmp_path, f"{deepest.name} cut")
    assert not faults
    assert set(deepest.above) <= noted.cut


def test_a_mark_is_measured_in_the_piece_it_is_found_in(tmp_path: Path) -> None:
    spot = next(s for s in pieces().spots.values() if s.above and s.box[0] > 0)
    mark = f"{spot.name} knot A 3 to 5 x 1/2 to 1"
    noted, faults = read(tmp_path, f"{mark}\n{spot.above[0]} all cut")
    assert not faults
    (mark,) = noted.marks[spot.name]
    # The tape lay on its own zero end and near edge; the board's lies further off.
    assert mark.x0 == 3 + Fraction(spot.box[0], 8128)
    assert mark.y1 == 1 + Fraction(spot.box[1], 8128)


def test_a_mark_in_a_piece_nobody_has_sawn_out_is_asked_about(tmp_path: Path) -> None:
    spot = next(s for s in pieces().spots.values() if s.above and s.box[0] > 0)
    _, faults = read(tmp_path, f"{spot.name} knot A 3 to 5 x 1/2 to 1")
    (fault,) = faults
    assert spot.above[0] in fault.wrong
    assert f"Write {spot.above[0]} cut as well" in fault.remedy


def test_a_sawn_piece_is_paid_and_has_no_trim_where_it_was_sawn(
    tmp_path: Path,
) -> None:
    noted, _ = read(tmp_path, "W07 cut")
    found = left(noted).pieces
    sawn = [piece for piece in found if piece.id.startswith("W07.")]
    assert sawn
    for piece in sawn:
        box = pieces().spots[piece.id].box
        assert piece.price == 0
        assert piece.marks_from == "trimmed end"
        assert piece.length == Fraction(box[2] - box[0], 8128)
        # W07 has 1 in of trim at each end, and 1/8 at each edge, of 60 x 7-3/4.
        assert piece.end_trims[0] == max(0, 1 - Fraction(box[0], 8128))
        assert piece.end_trims[1] == max(0, Fraction(box[2], 8128) - 59)
        assert piece.edge_passes == (Fraction(1, 8), Fraction(1, 8))
    # Board feet go with the area: no more than the board's 3.23 in all.
    assert sum(piece.board_feet or 0 for piece in sawn) <= Fraction("3.23")


def test_marks_of_the_board_move_into_the_piece(tmp_path: Path) -> None:
    # A knot from 20 to 22 and 6 to 7 on W07, face A, lies in the section that holds it.
    noted, _ = read(tmp_path, "W07 cut")
    held = [p for p in left(noted).pieces if p.id.startswith("W07.") and p.marks]
    (piece,) = held
    (mark,) = piece.marks
    start = Fraction(pieces().spots[piece.id].box[0], 8128)
    assert (mark.kind, mark.face, mark.x0) == ("knot", "A", 20 - start)
    assert (mark.y0, mark.y1) == (6, 7)


def test_notes_may_be_typed_as_one_speaks(tmp_path: Path) -> None:
    noted, faults = read(tmp_path, "w07 Is Cut.\nW08: bought\nrail spoiled\n\n# done\n")
    assert not faults
    assert "W07" in noted.cut
    assert noted.bought == {"W08"}
    assert noted.lost["rail"] == 1


@pytest.mark.parametrize(
    ("line", "said", "wrong", "remedy"),
    [
        ("W7 cut", "W7", "no such piece", 'Did you mean "W07"?'),
        ("Q99 cut", "Q99", "no such piece", "cut diagrams"),
        ("W07", "W07", "nobody can say", "W07 cut"),
        ("W07 cutt", "cutt", "nobody can say", 'Did you mean "cut"?'),
        ("W07 konot 3 to 5", "konot", "nobody can say", 'Did you mean "knot"?'),
        ("W07 knot 3 to 61", "knot 3 to 61", "runs off", "Correct"),
        ("W07 spoiled 9 to 3", "9 to 3", "is reversed", "lesser first"),
        ("W08 cut", "W08 cut", "does not cut this board", "into a tally"),
        ("W07.2 bought", "W07.2 bought", "only a whole board", "W07 bought"),
        ("", "", "the file is empty", "a line for each"),
    ],
)  # fmt: skip
def test_one_slip_gives_one_message_with_its_line(
    tmp_path: Path, line: str, said: str, wrong: str, remedy: str
) -> None:
    _, faults = read(tmp_path, f"# Monday\n{line}\n" if line else "")
    (fault,) = faults
    assert said in fault.said
    assert wrong in fault.wrong
    assert remedy in fault.remedy
    assert fault.where.line == (2 if line else None)


def test_all_slips_are_told_in_one_run(tmp_path: Path) -> None:
    _, faults = read(tmp_path, "W7 cut\nW07 cut\nW07 knto 3 to 5\nW07 spoiled 5 to 3\n")
    assert [fault.where.line for fault in faults] == [1, 3, 4]


@settings(
    max_examples=70,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(
    st.lists(
        st.one_of(
            st.sampled_from(
                [*names(), *NOTES.split(), "\n", "all", "all cut", "all bought", "gone"]
            ),
            st.text(max_size=6),
        ),
        max_size=20,
    ).map(" ".join)
)
def test_any_words_give_notes_or_faults(tmp_path: Path, text: str) -> None:
    file = tmp_path / "since.txt"
    file.write_text(text, encoding="utf-8", errors="replace")
    faults = Faults()
    noted = read_since(file, pieces(), ["rail"], "in", faults)
    assert all(fault.wrong and fault.remedy for fault in faults)
    rest = left(noted)
    # Whatever was noted, no piece that is left lies in another.
    ids = {piece.id for piece in rest.pieces}
    for piece in rest.pieces:
        assert not ids & set(pieces().spots[piece.id].above)


def test_a_damaged_plan_gives_pieces_or_faults(tmp_path: Path) -> None:
    chance = random.Random(11)
    file = tmp_path / "plan.json"
    for _ in range(150):
        document = copy.deepcopy(example())
        _spoil(document, chance)
        file.write_text(json.dumps(document), encoding="utf-8")
        faults = Faults()
        found = sources.read([file], make_job(), faults)
        assert found or len(faults)


def _spoil(thing: object, chance: random.Random) -> None:
    """Change one value somewhere in it."""
    while True:
        if isinstance(thing, dict) and thing:
            key = chance.choice(sorted(thing))
            inner = thing[key]
            if not isinstance(inner, dict | list) or chance.random() < 0.2:
                thing[key] = chance.choice([None, -1, "x", [], {}, 10**30, 1.5])
                return
        elif isinstance(thing, list) and thing:
            at = chance.randrange(len(thing))
            inner = thing[at]
            if not isinstance(inner, dict | list) or chance.random() < 0.2:
                thing[at] = chance.choice([None, -1, "x", [], {}, 10**30, 1.5])
                return
        else:
            return
        thing = inner
