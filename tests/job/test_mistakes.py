"""Every mistake in a job file is told once, in one run, with its line, its text and a remedy."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.job.toys import FRAME, HEAD, WALNUT, frames_of, read_text

WHOLE = HEAD + WALNUT + FRAME


def test_the_job_these_tests_spoil_is_whole(tmp_path: Path) -> None:
    _, faults = read_text(tmp_path, WHOLE)
    assert not faults


@pytest.mark.parametrize(
    ("right", "spoilt", "line", "said", "wrong", "remedy"),
    [
        ('title = "Frames"', "", None, "", "the job has no title", "title"),
        ("title", "titel", 1, "titel", "not known", 'Did you mean "title"?'),
        ('"in"', '"inch"', 2, "inch", "not known", 'Did you mean "in"?'),
        ('"USD"', '"usd"', 3, "usd", "three capitals", '"USD"'),
        ('"USD"', '"dollars"', 3, "dollars", "not a currency", "three letters"),
        ('"black walnut"', '"blak walnut"', 5, "blak walnut", "no such species", '"black walnut"'),
        ("species =", "show_wood = 1\nspecies =", 5, "1", "neither yes nor no", "true or false"),
        ('"22"', '"10-4"', 8, "10-4", "could be feet and inches", "10' 4\""),
        ('"22"', "22e1", 8, "22e1", "not a length", "17-3/8"),
        ('"22"', "0", 8, "0", "leaves nothing", "real size"),
        ('"22"', '"2200"', 8, "2200", "over 100 ft", "decimal point"),
        ('["22", "6"]', '["22"]', 8, "", "too short", "Add"),
        ('["22", "6"]', '"22"', 8, "22", "a list is needed", "brackets"),
        ("opening", "openning", 8, "openning", "not known", 'Did you mean "opening"?'),
        ('opening = ["22", "6"]', "", 6, "", '"opening" is missing', "describe picture frame"),
        ('"3/4"', '"5/4"', 9, "5/4", "name of a thickness", '"1-1/4"'),
        ('"slot"', '"slott"', 9, "slott", "no such joint", 'Did you mean "slot"?'),
        ('"slot"', '{ depth_share = "1/2" }', 9, "", "which joint", "kind"),
        ('"slot"', '{ kind = "slot", reach = 1 }', 9, "reach", "not known", "depth_share"),
        ('"slot"', '{ kind = "slot", depth_share = "third" }', 9, "third", "not a number", '"1/3"'),
        ('"large"', '""', 7, "", "a name is missing", "Write one"),
        ('"large"', '"a/b"', 7, "a/b", 'no "/"', "hyphen"),
        ('"large"', '"a\\u202eb"', 7, "a\u202eb", "direction character", "plain letters"),
        ('"large"', f'"{"x" * 61}"', 7, "x" * 61, "61 characters", "Shorten"),
        ('"large"', '["a", "a"]', 7, "a", "have this name", "its own"),
        ('name = "large"', "", 6, "", "has no name", "name ="),
        ('name = "large"', 'name = "large"\nin = "grove"', 8, "grove", "not known", '"groove"'),
        ('name = "large"', 'name = "large"\nquantity = 10001', 8, "10001", "from 1 to 10,000", "split"),
        ('name = "large"', 'name = "large"\nquantity = "2"', 8, "2", "whole number", "no quotes"),
        ('name = "large"', 'name = "large"\nis_flat = true', 7, "", "a flat frame has no play", "describe"),
        ("[[picture_frame]]", "[picture_frame]", 6, "", "list of tables", "double brackets"),
        ("[wood.walnut]", "[shop]\nkref = 1\n[wood.walnut]", 5, "kref", "no such setting", '"kerf"'),
        ("[wood.walnut]", "[shop]\nrip_step = 0\n[wood.walnut]", 5, "0", "no marks", "1/8"),
        ("[wood.walnut]", '[shop]\nkerf = "1.8"\n[wood.walnut]', 5, "1.8", "no saw", "1/8"),
        ("[wood.walnut]", "[shop]\nmoisture_wettest = 5\n[wood.walnut]", 5, "5", "drier than today", "higher"),
        ("[wood.walnut]", "[shop.picture_frame]\nplay = [1]\n[wood.walnut]", 5, "", "not a size", "quotes"),
        ("[wood.walnut]", "[shop.drawers]\n[wood.walnut]", 4, "drawers", "no such setting", "Known here"),
        ("[wood.walnut]", "prices = 1\n[wood.walnut]", 4, "prices", "later version", "Leave it out"),
        ("[wood.walnut]", "recipe = 1\n[wood.walnut]", 4, "1", "a table is needed", "[recipe]"),
        ("[wood.walnut]", "[sheet.walnut]\nproduct = 'p'\nthickness = '6 mm'\nsize = [48, 96]\nprice = 1\n[wood.walnut]", 4, "walnut", "same name", "another"),
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
    _, faults = read_text(tmp_path, WHOLE.replace(right, spoilt, 1))
    (fault,) = faults
    assert fault.where.file == "frames.toml"
    assert fault.where.line == line
    assert fault.said == said
    assert wrong in fault.wrong
    assert remedy in fault.remedy


PRICE = """[[price]]
wood = "walnut"
thickness = "4/4"
per_foot = "14.50"
"""
MATCH = '[[grain_match]]\nname = "rails"\nparts = ["large/rail", "large/stile"]\n'


@pytest.mark.parametrize(
    ("right", "spoilt", "said", "wrong", "remedy"),
    [
        ('"14.50"', '"14,50"', "14,50", "a comma", "without thousands"),
        ('"14.50"', '"14.505"', "14.505", "finer than a cent", "Round"),
        ('"4/4"', '"3/4"', "3/4", "rough stock or surfaced", "3/4 surfaced"),
        ('wood = "walnut"\nth', 'wood = "wallnut"\nth', "wallnut", "no such wood", '"walnut"'),
        ('per_foot = "14.50"', "", "", "either per_foot or per_cubic_metre", "one of them"),
        (PRICE, PRICE + PRICE, "walnut 4/4", "a price on line 11 already", "Keep one"),
        (', "large/stile"', "", "", "too short", "Add"),
        (MATCH, MATCH + MATCH.replace('"rails"', '"more"').replace("stile", "top"), "large/rail", "matched set already", "once"),
    ],
)  # fmt: skip
def test_one_mistake_in_prices_and_matches_gives_one_message(
    tmp_path: Path, right: str, spoilt: str, said: str, wrong: str, remedy: str
) -> None:
    text = WHOLE + PRICE + MATCH
    assert text.count(right) == 1
    _, faults = read_text(tmp_path, text.replace(right, spoilt))
    (fault,) = faults
    assert fault.said == said
    assert wrong in fault.wrong
    assert remedy in fault.remedy


def test_a_slip_in_the_shops_table_is_told_once_for_all_frames(tmp_path: Path) -> None:
    shop = '[shop.picture_frame]\nplay = "thin"\n'
    text = HEAD + shop + WALNUT + FRAME.replace('"large"', '["a", "b"]')
    _, (fault,) = read_text(tmp_path, text)
    assert str(fault.where) == "frames.toml, line 5, shop.picture_frame.play"
    # ... and also where no frame is asked for today.
    _, faults = read_text(tmp_path, HEAD + shop + WALNUT)
    assert "thin" in [fault.said for fault in faults]


@pytest.mark.parametrize(
    ("right", "spoilt"),
    [("[wood.walnut]", "[wod.walnut]"), ("[[picture_frame]]", "[[picture_frames]]")],
)
def test_one_wrong_letter_in_a_head_is_one_mistake(
    tmp_path: Path, right: str, spoilt: str
) -> None:
    job, (fault,) = read_text(tmp_path, WHOLE.replace(right, spoilt) + PRICE + MATCH)
    assert fault.said == spoilt.strip("[]").partition(".")[0]
    assert job is not None
    assert list(job.woods) == ["walnut"]
    assert [frame.name for frame in frames_of(job)] == ["large"]


def test_sizes_are_not_blamed_for_a_unit_that_is_missing(tmp_path: Path) -> None:
    metric = WHOLE.replace('unit = "in"\n', "").replace('"22"', "2200")
    metric = metric.replace('"3/4"', "19").replace('"7/8"', "22")
    job, (fault,) = read_text(tmp_path, metric)
    assert fault.wrong == "the job has no unit"
    assert job is not None
    assert job.unit == "mm"


def test_money_says_nothing_of_a_unit_that_is_missing(tmp_path: Path) -> None:
    inches = WHOLE.replace('unit = "in"\n', 'minimum_order = "400"\n')
    job, (fault,) = read_text(tmp_path, inches)
    assert fault.wrong == "the job has no unit"
    assert job is not None
    assert job.unit == "in"


def test_mistakes_are_told_in_the_order_of_the_file_and_the_rest_is_read(
    tmp_path: Path,
) -> None:
    text = WHOLE.replace('"black walnut"', '"wallnut"') + FRAME.replace(
        '"large"', '"small"'
    ).replace('"3/4"', '"thick"')
    job, faults = read_text(tmp_path, text)
    assert [fault.where.line for fault in faults] == [5, 14]
    assert job is not None
    # The wood keeps its name, so that no board of it is said to be unknown.
    assert list(job.woods) == ["walnut"]
    assert [frame.name for frame in frames_of(job)] == ["large"]


@pytest.mark.parametrize(
    ("raw", "wrong"),
    [
        (b'title = "Frames\n', "not TOML"),
        (b"title = \n", "not TOML"),
        (b"kerf = 1/8 in\n", 'Put it in quotes: kerf = "1/8 in"'),
        (b"title = 1\ntitle = 2\n", "not TOML"),
        (b'title = "K\xfcche"\n', "UTF-8"),
        (b"a = " + b"[" * 20_000, "nested too deeply"),
        (b"a = " + b"1" * 5_000, "far too long"),
        (b"#" * 1_000_001, "at most 1 MB"),
    ],
)
def test_a_file_that_is_no_job_is_told_without_a_traceback(
    tmp_path: Path, raw: bytes, wrong: str
) -> None:
    from yieldplan.faults import Faults
    from yieldplan.job import read

    file = tmp_path / "job.toml"
    file.write_bytes(raw)
    faults = Faults()
    assert read(file, faults) is None
    (fault,) = faults
    assert wrong in f"{fault.wrong}: {fault.remedy}"
    assert fault.remedy


def test_a_file_that_is_not_there_is_told(tmp_path: Path) -> None:
    from yieldplan.faults import Faults
    from yieldplan.job import read

    faults = Faults()
    assert read(tmp_path / "no.toml", faults) is None
    assert "cannot be read" in next(iter(faults)).wrong


def test_too_many_parts_are_refused_before_anything_expands(tmp_path: Path) -> None:
    many = ", ".join(f'"f{number}"' for number in range(6))
    text = WHOLE.replace('name = "large"', f"name = [{many}]\nquantity = 10000")
    _, (fault,) = read_text(tmp_path, text)
    assert "over 50,000 parts" in fault.wrong
