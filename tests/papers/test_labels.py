"""Labels: one for every part that is cut, each on its own label, whatever it is called."""

from __future__ import annotations

import dataclasses
from collections import Counter
from pathlib import Path

from tests.builders_plan import full_job, full_plan, passed, short_plan, stress_plan
from tests.papers.pdf_text import text_in_pdf
from yieldplan.model.plan import Plan
from yieldplan.papers.labels import _A4, _LETTER, Label, Labels, _page, labels


def test_there_is_a_label_for_every_part_in_every_blank_and_every_kept_offcut() -> None:
    for plan in (full_plan(), short_plan(), stress_plan()):
        blanks = {blank.id: blank for blank in plan.blanks}
        sawn = kept = 0
        for wood in plan.woods:
            for cutting in wood.cuttings:
                for leaf in cutting.tree.leaves():
                    sawn += len(blanks[leaf.blank].inside) if leaf.blank else 0
                    kept += leaf.fate == "keep"
        found = list(labels(plan))
        assert len(found) == sawn + kept
        assert sum(each.size.startswith("offcut") for each in found) == kept


def test_no_two_labels_carry_one_name_but_spares() -> None:
    found = Counter(each.name + each.place for each in labels(full_plan()))
    twice = [name for name, count in found.items() if count > 1]
    assert all(name.endswith("spare") for name in twice)


def test_numbers_run_to_what_the_job_asks_for_so_a_missing_part_shows() -> None:
    # The last label of a part that lacks one says "n of m" with n below m.
    plan = short_plan()
    names = [each.name + each.place for each in labels(plan)]
    for part in plan.parts:
        own = [name for name in names if name.startswith(f"{part.id} ")]
        if own and part.glue_up is None:
            assert own[0] == f"{part.id} 1 of {part.needed}"


def crowded() -> Label:
    """A label with more on it than goes on."""
    return Label(
        name="chest of drawers for the upper hall, in walnut/upper left drawer's applied front",
        place=" 12 of 24",
        size="panel about 13/16 × about 15 31/32 × about 103 29/32",
        mind="walnut: plane to its opening, then mark the near edge before it is joined",
        board="the long board behind the door no. 12",
    )


def test_words_never_touch_nor_leave_their_label() -> None:
    for sheet in (_LETTER, _A4):
        count = sheet.across * sheet.down
        page = _page([crowded()] * count, "A chest of six drawers " * 4, sheet)
        assert page.collisions() == []
        assert sum("12 of 24" in each.text for each in page.texts()) == count
        for text in page.texts():
            column = int(text.rect().x0 // sheet.pitch)
            assert text.rect().x1 <= column * sheet.pitch + sheet.wide
            row = int(text.rect().y0 // sheet.high)
            assert text.rect().y1 <= (row + 1) * sheet.high
            assert text.size >= 7.5


def test_thirty_on_letter_and_twenty_four_on_a4(tmp_path: Path) -> None:
    # 2-5/8 x 1 in, three across, ten down; 70 x 36 mm, three across, eight down.
    assert _LETTER.across * _LETTER.down == 30
    assert _A4.across * _A4.down == 24
    plan = full_plan()
    pages = -(-len(list(labels(plan))) // 30)
    (file,) = Labels().write(plan, passed(plan), tmp_path)
    assert text_in_pdf(file.read_bytes(), tmp_path).count("\f") == pages
    metric = full_plan(job=full_job(unit="mm"))
    pages = -(-len(list(labels(metric))) // 24)
    (file,) = Labels().write(metric, passed(metric), tmp_path)
    assert text_in_pdf(file.read_bytes(), tmp_path).count("\f") == pages


def test_where_nothing_is_cut_there_are_no_labels(tmp_path: Path) -> None:
    plan = full_plan()
    woods = tuple(dataclasses.replace(wood, cuttings=()) for wood in plan.woods)
    empty: Plan = dataclasses.replace(plan, woods=woods)
    assert Labels().write(empty, passed(plan), tmp_path) == ()


def test_a_note_does_not_hide_which_face_shows() -> None:
    plan = full_plan()
    clear = {part.id for part in plan.parts if part.show_face == "clear"}
    noted = [
        dataclasses.replace(part, note="fingers 1/4 in wide") for part in plan.parts
    ]
    said = {
        label.name: label.mind
        for label in labels(dataclasses.replace(plan, parts=tuple(noted)))
        if label.name in clear and "strip of a panel" not in label.mind
    }
    assert said
    for name, mind in said.items():
        assert mind.endswith("; fingers 1/4 in wide"), name
        assert "show face" in mind or "resaw" in mind, name
