"""Mistakes as data: gathered from many readers, and the same slip told once."""

from __future__ import annotations

from yieldplan.faults import Faults, Where, did_you_mean


def test_what_another_list_holds_is_noted_once() -> None:
    first, second = Faults(), Faults()
    first.add(Where(file="job.toml", line=3), "oka", "no such wood", "Correct it")
    second.extend(first)
    second.extend(first)
    assert list(second) == list(first)


def test_a_slip_in_many_rows_is_told_at_the_first_of_them() -> None:
    found = Faults()
    for row in (4, 2, 3):
        found.add(Where(file="t.csv", row=row, key="wood"), "oka", "no", "Correct it")
    found.add(Where(file="t.csv", row=3, key="grade"), "oka", "no", "Correct it")
    wood, grade = found.told_once()
    assert (wood.where.row, wood.wrong) == (2, "no (rows 3, 4 too)")
    assert (grade.where.row, grade.wrong) == (3, "no")


def test_a_slip_many_things_share_is_told_at_the_first_of_them() -> None:
    found = Faults()
    for line, name in enumerate(("upper", "middle"), start=1):
        found.add(Where(file="j", line=line, key=f'drawer "{name}"'), "", "no", "Do")
    (told,) = found.told_once()
    assert told.wrong == 'no (so it is with drawer "middle")'
    found.add(Where(file="j", line=3, key='drawer "lower"'), "", "no", "Do")
    (told,) = found.told_once()
    assert told.wrong == "no (so it is with 2 others)"


def test_different_remedies_are_different_mistakes() -> None:
    found = Faults()
    found.add(Where(file="j", line=1), "", "no", "Plane it")
    found.add(Where(file="j", line=2), "", "no", "Buy another")
    assert len(list(found.told_once())) == 2


def test_a_word_of_a_longer_name_is_understood() -> None:
    known = ["chest", "drawer", "drawer bank", "tool chest"]
    assert did_you_mean("bank", known) == 'Did you mean "drawer bank"?'
    assert did_you_mean("veneer", known).startswith("Known here")
