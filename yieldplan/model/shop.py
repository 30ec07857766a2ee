"""How this shop works: kerfs, trims, allowances, machine sizes. Every figure can be set in the job file."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from yieldplan.units import Inches

Breakdown = Literal["crosscut first", "rip first", "either"]
FAMILY_OF: dict[Breakdown, Literal["C", "R", "E"]] = {
    "crosscut first": "C",
    "rip first": "R",
    "either": "E",
}

BESIDE_MARKS: dict[Breakdown, Literal["C+", "R+", "E+"]] = {
    "crosscut first": "C+",
    "rip first": "R+",
    "either": "E+",
}
"""The same, where a narrow part may be ripped out beside a mark."""


@dataclass(frozen=True, kw_only=True)
class Shop:
    """The shop's settings; the defaults stand in `reference/shop_defaults.csv`.

    All lengths in inches. The names are the keys of `[shop]` in a job file.
    """

    # the saw
    kerf: Inches
    breakdown: Breakdown
    beside_marks: bool = False
    crosscut_step: Inches
    rip_step: Inches
    sheet_step: Inches
    stick_step: Inches
    # off the stock before anything is measured
    end_trim: Inches
    surfaced_end_trim: Inches
    edge_pass: Inches
    sheet_trim: Inches
    stick_trim: Inches
    # boards that are not straight
    straight_line_rip: bool
    crook_at_most: Inches
    twisted_at_most: Inches
    # zones that stay clear
    joint_zones: bool
    joint_margin: Inches
    knot_margin: Inches
    check_margin: Inches
    bridge_pith: bool
    # finished part -> rough blank
    rough_length_short: Inches
    rough_length_long: Inches
    rough_length_leg: Inches
    long_over: Inches
    rough_width_small: Inches
    rough_width: Inches
    rough_width_long: Inches
    small_up_to_width: Inches
    small_up_to_length: Inches
    very_long_over: Inches
    strip_width: Inches
    panel_length: Inches
    panel_width: Inches
    panel_thickness: Inches
    planing: Inches
    planing_large: Inches
    planing_flat: Inches
    planing_large_over_length: Inches
    planing_large_over_width: Inches
    planing_flat_up_to: Inches
    # ways from stock to part that this shop does not take
    without: tuple[str, ...]
    # thick stock into thin
    resaw_slice: Inches
    resaw_kerf: Inches
    resaw_flattening: Inches
    resaw_height: Inches
    # glue-ups whose strips the plan chooses
    strip_least: Inches
    strip_most: Inches
    # machines
    jointer_width: Inches
    planer_width: Inches
    machine_length: Inches
    shortest_rip: Inches
    narrowest_rip: Inches
    gang_at_most: int
    # drawers and joints
    runner_side_clearance: Inches
    runner_height_clearance: Inches
    rear_clearance: Inches
    slide_side_clearance: Inches
    slide_height_clearance: Inches
    undermount_width_less: Inches
    undermount_height_clearance: Inches
    front_gap: Inches = Fraction(3, 32)
    movement_step: Inches = Fraction(1, 32)
    groove_depth: Inches
    groove_up: Inches
    groove_up_undermount: Inches
    sheet_play: Inches
    lap: Inches
    template_lap: Inches
    tenon_length: Inches
    # frames, doors and panels
    panel_groove: Inches = Fraction(3, 8)
    panel_groove_width: Inches = Fraction(1, 4)
    panel_play: Inches = Fraction(1, 16)
    door_gap: Inches = Fraction(1, 16)
    tongue_length: Inches = Fraction(1, 4)
    # bookcases
    shelf_clearance: Inches = Fraction(1, 16)
    board_gap: Inches = Fraction(1, 16)
    # lb on each foot of a shelf; in a job in millimetres kg on each metre
    shelf_load: Fraction = Fraction(25)
    # share of a shelf's span
    shelf_sag: Fraction = Fraction(1, 384)
    # per cent, of the wood's dry weight
    moisture_today: Fraction
    moisture_wettest: Fraction
    moisture_driest: Fraction = Fraction(5)
    # set-up pieces
    set_up_length: Inches
    set_up_pieces: int
    # offcuts worth keeping
    keep_show_width: Inches
    keep_show_length: Inches
    keep_narrow_width: Inches
    keep_narrow_length: Inches
    keep_other_width: Inches
    keep_other_length: Inches
    keep_stick_length: Inches
    offcut_percent_show: int
    offcut_percent_other: int
    # buying before the boards are known, parts of a hundred to add
    add_percent: int
    add_percent_matched: int
    add_percent_no_1_common: int
    add_percent_sheets: int
