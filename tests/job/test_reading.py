"""A job file becomes a job: sizes exact, what the shop says once for all, names, joints."""

from __future__ import annotations

import subprocess
import sys
from datetime import date
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from tests.job.toys import FRAME, HEAD, WALNUT, Hook, Slot, frames_of, read_text


def test_sizes_are_read_exactly_in_the_unit_they_are_written_in(tmp_path: Path) -> None:
    job, faults = read_text(tmp_path, HEAD + WALNUT + FRAME.replace('"6"', '"500 mm"'))
    assert not faults
    (frame,) = frames_of(job)
    assert frame.opening == (22, Fraction(5000, 254))
    assert frame.rail.thickness == Fraction(3, 4)


def test_a_bare_number_is_in_the_unit_of_the_job(tmp_path: Path) -> None:
    job, faults = read_text(
        tmp_path,
        HEAD.replace('"in"', '"mm"')
        + WALNUT
        + FRAME.replace('"22"', "559").replace('"6"', "152.5")
        .replace('"3/4"', "19").replace('"7/8"', '"7/8 in"'),
    )  # fmt: skip
    assert not faults
    (frame,) = frames_of(job)
    assert frame.opening == (Fraction(5590, 254), Fraction(1525, 254))
    assert frame.stile.thickness == Fraction(7, 8)


def test_what_the_shop_says_once_holds_until_a_table_overrules_it(
    tmp_path: Path,
) -> None:
    shop = """[shop.picture_frame]
in = "rabbet"
rail = { wood = "walnut", thickness = "3/4", joint = { kind = "half-blind hook", reach = "1/4" } }
stile = { wood = "walnut", thickness = "7/8" }
"""
    frame = """[[picture_frame]]
name = "{}"
opening = [20, 10]
{}
"""
    job, faults = read_text(
        tmp_path,
        HEAD
        + WALNUT
        + shop
        + frame.format("as the shop does", "")
        + frame.format("thicker", 'rail = { thickness = "1" }')
        + frame.format("longer hook", 'rail = { joint = { reach = "3/8" } }')
        + frame.format("slotted", 'rail = { joint = { kind = "slot" } }')
        + frame.format("slotted too", 'rail = { joint = "slot" }\nin = "groove"'),
    )
    assert not faults
    plain, thicker, longer, slotted, too = frames_of(job)
    assert plain.in_ == "rabbet"
    assert plain.rail.joint == Hook(how_far=Fraction(1, 4))
    assert (thicker.rail.thickness, thicker.rail.wood) == (1, "walnut")
    assert longer.rail.joint == Hook(how_far=Fraction(3, 8))
    # A joint of another kind replaces the shop's whole: a slot has no reach.
    assert slotted.rail.joint == Slot()
    assert too.rail.joint == Slot()
    assert too.in_ == "groove"


def test_a_list_of_names_makes_one_of_each(tmp_path: Path) -> None:
    job, faults = read_text(
        tmp_path, HEAD + WALNUT + FRAME.replace('"large"', '["upper", "lower"]')
    )
    assert not faults
    assert [frame.name for frame in frames_of(job)] == ["upper", "lower"]


@pytest.mark.parametrize(
    "kind", ["half-blind hook", "Half Blind Hook", "half_blind_hook"]
)
def test_a_joint_is_known_however_its_name_is_written(
    tmp_path: Path, kind: str
) -> None:
    job, faults = read_text(
        tmp_path,
        HEAD
        + WALNUT
        + FRAME
        + f'only = "{kind}"\njoints = ["slot", {{ kind = "{kind}" }}]\n',
    )
    assert not faults
    (frame,) = frames_of(job)
    assert frame.only == Hook()
    assert frame.joints == (Slot(), Hook())


def test_prices_sheets_matches_and_what_is_made(tmp_path: Path) -> None:
    job, faults = read_text(
        tmp_path,
        HEAD
        + WALNUT
        + FRAME
        + """[sheet.back]
product = "birch plywood"
thickness = "5.2 mm"
size = ["48", "96"]
price = 38.50
quantity = 2
[[price]]
wood = "walnut"
thickness = "4/4"
grade = "#1c"
per_foot = "$14.50"
as_of = 2026-11-02
[[grain_match]]
name = "rails"
parts = ["large/rail", "large/stile"]
laid = "one above the other"
[made]
"large/rail" = 1
""",
    )
    assert not faults
    assert job is not None
    sheet = job.sheets["back"]
    # The second figure of a sheet's size runs with its face grain.
    assert (sheet.width, sheet.length) == (48, 96)
    assert sheet.thickness == Fraction(52, 254)
    assert (sheet.price, sheet.quantity) == (Decimal("38.50"), 2)
    (price,) = job.prices
    assert (price.grade, price.per_foot) == ("No. 1 Common", Decimal("14.50"))
    assert price.as_of == date(2026, 11, 2)
    assert job.grain_matches[0].parts == ("large/rail", "large/stile")
    assert job.grain_matches[0].laid == "one above the other"
    assert job.made == {"large/rail": 1}


def test_a_price_by_the_cubic_metre_is_kept_by_the_foot_to_the_cent(
    tmp_path: Path,
) -> None:
    price = '[[price]]\nwood = "walnut"\nthickness = "27 mm rough"\nper_cubic_metre = 1850\n'
    job, faults = read_text(tmp_path, HEAD + WALNUT + FRAME + price)
    assert not faults
    assert job is not None
    # 1850 x 0.002359737216 m3 a board foot = 4.3655...
    assert job.prices[0].per_foot == Decimal("4.37")
    assert job.prices[0].per_cubic_metre == Decimal("1850")


def test_inch_yards_measure_by_whole_feet_and_metric_ones_exactly(
    tmp_path: Path,
) -> None:
    inch, _ = read_text(tmp_path, HEAD + WALNUT + FRAME)
    metric, _ = read_text(tmp_path, HEAD.replace('"in"', '"mm"') + WALNUT + FRAME)
    assert inch is not None
    assert metric is not None
    assert (inch.board_measure, metric.board_measure) == ("nhla", "exact")


def test_every_setting_of_the_shop_may_be_given(tmp_path: Path) -> None:
    shop = '[shop]\nkerf = "3/32"\nbreakdown = "either"\ngang_at_most = 3\nmoisture_today = 6.5\n'
    job, faults = read_text(tmp_path, HEAD + shop + WALNUT + FRAME)
    assert not faults
    assert job is not None
    assert job.shop.kerf == Fraction(3, 32)
    assert job.shop.breakdown == "either"
    assert job.shop.gang_at_most == 3
    assert job.shop.moisture_today == Fraction(13, 2)
    assert job.shop.rip_step == Fraction(1, 8)  # left at its default


@pytest.mark.parametrize("is_installed", [True, False])
def test_parts_beside_marks_are_asked_for_where_the_extra_is(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, is_installed: bool
) -> None:
    monkeypatch.setattr(
        "yieldplan.job.shop_table.is_fast_installed", lambda: is_installed
    )
    shop = "[shop]\nbeside_marks = true\n"
    job, faults = read_text(tmp_path, HEAD + shop + WALNUT + FRAME)
    if is_installed:
        assert not faults
        assert job is not None
        assert job.shop.beside_marks
        return
    (fault,) = faults
    assert "an extra that is not installed" in fault.wrong
    assert "pip install yieldplan[fast]" in fault.remedy
    # The line under [shop], which stands where the head ends.
    assert fault.where.line == HEAD.count("\n") + 2


def test_a_byte_order_mark_and_windows_line_ends_are_no_mistakes(
    tmp_path: Path,
) -> None:
    file = tmp_path / "job.toml"
    text = "\ufeff" + HEAD + WALNUT + FRAME + "play = true\n"
    file.write_bytes(text.replace("\n", "\r\n").encode("utf-8"))
    from tests.job.toys import JOINTS, KINDS
    from yieldplan.faults import Faults
    from yieldplan.job.reading import read_job

    faults = Faults()
    read_job(file, faults, kinds=KINDS, joints=JOINTS)
    (fault,) = faults
    assert fault.where.line == 11
    assert fault.said == "true"


def test_pydantic_waits_until_a_job_is_read() -> None:
    code = "import sys, yieldplan.job; sys.exit('pydantic' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
