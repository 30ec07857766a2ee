"""Every assembly worked by hand: what is asked, and the finished size of each part.

Figures are common practice, no source. An assembly that is added brings its own here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from tests.builders import (
    HERE,
    inches,
    make_bank,
    make_bookcase,
    make_door,
    make_drawer,
    make_plain,
    make_shop,
)
from yieldplan.assemblies.assembly import Assembly
from yieldplan.assemblies.bookcase import keys as case_keys
from yieldplan.assemblies.door import keys as door_keys
from yieldplan.assemblies.drawer_bank import keys as bank_keys
from yieldplan.assemblies.part import Between
from yieldplan.assemblies.tray import Tray
from yieldplan.joints.half_blind_dovetail import HalfBlindDovetail
from yieldplan.joints.mortise_and_tenon import MortiseAndTenon
from yieldplan.model.shop import Shop


@dataclass(frozen=True, kw_only=True)
class Worked:
    """An assembly and its parts by hand.

    Parameters
    ----------
    parts
        Part's id to quantity and length × width × thickness, as it is said. [in]
    """

    assembly: Assembly
    shop: Shop
    parts: Mapping[str, str]


WORKED: Mapping[str, tuple[Worked, ...]] = {
    "bookcase": (
        # 36 wide, 72 high, 12 deep, all 3/4; toe kick 3-1/2, two fixed shelves in dadoes
        # a third of 3/4 = 1/4 deep, top in rabbets half of 3/4 = 3/8 deep.
        # Shelf and bottom: 36 - 2 x 3/4 + 2 x 1/4 = 35; top: 36 - 2 x 3/4 + 2 x 3/8 = 35-1/4.
        # The 1/4 ply covers their rear edges: 12 - 1/4 = 11-3/4.
        # Loose: 36 - 2 x 3/4 - 2 x 1/16 = 34-3/8; kick between the sides: 34-1/2.
        # Back: 34-1/2 + 2 x 3/8 rabbet - 1/16 play = 35-3/16; 72 - 3-1/2 = 68-1/2 high.
        Worked(
            assembly=make_bookcase(
                fixed_shelves=2,
                loose=case_keys.Loose(quantity=3),
                toe_kick=case_keys.ToeKick(height=inches("3-1/2")),
                back=case_keys.Back(sheet="ply"),
            ),
            shop=make_shop(shelf_clearance="1/16", sheet_play="1/16"),
            parts={
                "den/side": "2: 72 × 12 × 3/4",
                "den/top": "1: 35-1/4 × 11-3/4 × 3/4",
                "den/bottom": "1: 35 × 11-3/4 × 3/4",
                "den/shelf": "2: 35 × 11-3/4 × 3/4",
                "den/loose shelf": "3: 34-3/8 × 11-3/4 × 3/4",
                "den/toe kick": "1: 34-1/2 × 3-1/2 × 3/4",
                "den/back": "1: 68-1/2 × 35-3/16 × 1/4",
            },
        ),
        # Half-blind dovetails, lap 1/4: 36 - 2 x 1/4 = 35-1/2. Boards 1/2 thick behind,
        # rabbeted into the top too: 40 - 3/4 + 3/8 = 39-5/8 high, bottom 12 - 1/2 deep.
        # Across: 34-1/2 + 2 x 3/8 = 35-1/4; six boards, each 1/4 tongue less 1/16 gap in
        # the next: (35-1/4 + 5 x 3/16) / 6 = 6-1/32, down to 6; the last has
        # 35-1/4 - 5 x 6 + 5 x 3/16 = 6-3/16.
        Worked(
            assembly=make_bookcase(
                height="40",
                top=case_keys.End(joint=HalfBlindDovetail()),
                bottom=case_keys.End(joint=HalfBlindDovetail()),
                back=case_keys.Back(
                    wood="poplar", thickness=inches("1/2"), boards=6,
                    rabbeted="sides and top",
                ),
            ),
            shop=make_shop(lap="1/4", groove_depth="1/4", board_gap="1/16"),
            parts={
                "den/side": "2: 40 × 12 × 3/4",
                "den/top": "1: 35-1/2 × 12 × 3/4",
                "den/bottom": "1: 35-1/2 × 11-1/2 × 3/4",
                "den/back board": "5: 39-5/8 × 6 × 1/2",
                "den/last back board": "1: 39-5/8 × 6-3/16 × 1/2",
            },
        ),
    ),
    "door": (
        # Door 18 x 30, stiles and rails 2-1/4, stub tenons 3/8 as deep as the groove.
        # Rail: 18 - 2 x 2-1/4 + 2 x 3/8 = 14-1/4.
        # Ply panel: 14-1/4 - 1/16 play = 14-3/16 wide;
        # 30 - 2 x 2-1/4 + 2 x 3/8 - 1/16 = 26-3/16 high, its grain upright.
        Worked(
            assembly=make_door(),
            shop=make_shop(panel_groove="3/8", panel_play="1/16"),
            parts={
                "hall/stile": "2: 30 × 2-1/4 × 3/4",
                "hall/top rail": "1: 14-1/4 × 2-1/4 × 3/4",
                "hall/bottom rail": "1: 14-1/4 × 2-1/4 × 3/4",
                "hall/panel": "1: 26-3/16 × 14-3/16 × 1/4",
            },
        ),
        # A pair in an opening 30 x 40, gaps 1/16: leaf 15 - 1/16 - 1/32 = 14-29/32 wide,
        # 40 - 2 x 1/16 = 39-7/8 high; horns: 39-7/8 + 2 x 1 = 41-7/8.
        # Rails with 1-in tenons: 14-29/32 - 2 x 2 + 2 x 1 = 12-29/32.
        # Panel groove to groove across: 14-29/32 - 2 x 2 + 2 x 1/4 = 11-13/32. Cherry
        # moves 0.00248 x 11-13/32 x 4 per cent = 0.113, up to 1/8: 11-9/32 wide.
        # Upper: 39-7/8 - 2 - 20 - 3 + 2 x 1/4 - 1/16 = 15-5/16 high.
        # Lower: 20 - 4 + 2 x 1/4 - 1/16 = 16-7/16 high.
        Worked(
            assembly=make_door(
                leaf=None,
                opening=door_keys.Opening(width=inches("30"), height=inches("40")),
                leaves=2,
                joint=MortiseAndTenon(length=inches("1")),
                stile=door_keys.Stile(
                    wood="cherry", thickness=inches("7/8"), width=inches("2"),
                    horns=inches("1"),
                ),
                bottom_rail=door_keys.Rail(width=inches("4")),
                middle_rails=(
                    door_keys.MiddleRail(width=inches("3"), up=inches("20")),
                ),
                panel=door_keys.Panel(
                    wood="cherry", thickness=inches("5/8"), raised=True,
                    groove_depth=inches("1/4"),
                ),
            ),
            shop=make_shop(
                door_gap="1/16", panel_play="1/16", moisture_today="7",
                moisture_wettest="11", movement_step="1/32",
            ),
            parts={
                "hall/stile": "4: 41-7/8 × 2 × 7/8",
                "hall/top rail": "2: 12-29/32 × 2 × 7/8",
                "hall/middle rail": "2: 12-29/32 × 3 × 7/8",
                "hall/bottom rail": "2: 12-29/32 × 4 × 7/8",
                "hall/left upper panel": "1: 15-5/16 × 11-9/32 × 5/8",
                "hall/left lower panel": "1: 16-7/16 × 11-9/32 × 5/8",
                "hall/right upper panel": "1: 15-5/16 × 11-9/32 × 5/8",
                "hall/right lower panel": "1: 16-7/16 × 11-9/32 × 5/8",
            },
        ),
    ),
    "drawer": (
        # Opening 22 × 6 × 20, planed to fit: 22 wide and 6 high all over.
        # Side: 20 - 1/4 behind - 1/4 lap = 19-1/2.
        # Back in rabbets half of the 1/2 sides: 22 - 2 × 1/2 + 2 × 1/4 = 21-1/2; it sits
        # on the bottom, so its height is 6 - 1/2 below the groove - 1/4 ply = 5-1/4.
        # Bottom, side to side: 22 - 2 × 1/2 + 2 × 1/4 grooves - 1/16 play = 21-7/16.
        # Front to back, flush with the back: 20 - 1/4 - 3/4 + 1/4 - 1/16 = 19-3/16.
        Worked(
            assembly=make_drawer(),
            shop=make_shop(
                rear_clearance="1/4", lap="1/4", groove_depth="1/4", groove_up="1/2",
                sheet_play="1/16",
            ),
            parts={
                "upper/front": "1: 22 × 6 × 3/4",
                "upper/side": "2: 19-1/2 × 6 × 1/2",
                "upper/back": "1: 21-1/2 × 5-1/4 × 1/2",
                "upper/bottom": "1: 21-7/16 × 19-3/16 × 1/4",
            },
        ),
    ),
    "drawer bank": (
        # 30 high, three drawers 1 apart, rails of 3/4 between: 30 - 2 x 3/4 = 28-1/2 to
        # share; (28-1/2 - 3 x 1) / 3 = 8-1/2, so 8-1/2, 9-1/2, 10-1/2, exactly.
        # Planed to fit: fronts and sides as high; backs less 3/8 and the 1/4 ply.
        # Sides: 20 - 1/4 behind - 1/4 lap = 19-1/2; backs: 30 - 2 x 1/2 + 2 x 1/4 = 29-1/2.
        # Bottoms: 30 - 2 x 1/2 + 2 x 1/4 - 1/16 = 29-7/16 by 20 - 1/4 - 3/4 + 1/4 - 1/16.
        # Rails let 1/4 into sides of 3/4: 30 + 2 x 1/4 = 30-1/2; runners with tenons of 1:
        # 20 - 1/4 behind - 2 x 2 + 2 x 1 = 17-3/4, two in each of two frames.
        Worked(
            assembly=make_bank(
                drawers=3, graduated=bank_keys.Graduated(step=inches("1")),
                rail=bank_keys.Rail(
                    wood="walnut", thickness=inches("3/4"), width=inches("2"),
                    case_side=inches("3/4"),
                ),
                frame=bank_keys.Frame(wood="ash", width=inches("2")),
            ),
            shop=make_shop(
                rear_clearance="1/4", lap="1/4", groove_depth="1/4", groove_up="3/8",
                sheet_play="1/16", tenon_length="1",
            ),
            parts={
                "bank/1/front": "1: 30 × 8-1/2 × 3/4",
                "bank/1/side": "2: 19-1/2 × 8-1/2 × 1/2",
                "bank/1/back": "1: 29-1/2 × 7-7/8 × 1/2",
                "bank/1/bottom": "1: 29-7/16 × 19-3/16 × 1/4",
                "bank/2/front": "1: 30 × 9-1/2 × 3/4",
                "bank/2/side": "2: 19-1/2 × 9-1/2 × 1/2",
                "bank/2/back": "1: 29-1/2 × 8-7/8 × 1/2",
                "bank/2/bottom": "1: 29-7/16 × 19-3/16 × 1/4",
                "bank/3/front": "1: 30 × 10-1/2 × 3/4",
                "bank/3/side": "2: 19-1/2 × 10-1/2 × 1/2",
                "bank/3/back": "1: 29-1/2 × 9-7/8 × 1/2",
                "bank/3/bottom": "1: 29-7/16 × 19-3/16 × 1/4",
                "bank/rail": "2: 30-1/2 × 2 × 3/4",
                "bank/back rail": "2: 30-1/2 × 2 × 3/4",
                "bank/runner": "4: 17-3/4 × 2 × 3/4",
            },
        ),
    ),
    "part": (
        # A rail between stiles: 30 + 2 × 1-1/8 of tenon = 32-1/4.
        Worked(
            assembly=make_plain(
                "rail", length=None, quantity=3,
                between=Between(clear=inches("30"), joint=MortiseAndTenon()),
            ),
            shop=make_shop(tenon_length="1-1/8"),
            parts={"rail": "3: 32-1/4 × 4 × 3/4"},
        ),
        # By its length it is what it is said to be.
        Worked(
            assembly=make_plain("shelf"),
            shop=make_shop(),
            parts={"shelf": "1: 30 × 4 × 3/4"},
        ),
    ),
    "tray": (
        # 16 x 10 outside in finger joints, sides of 1/2: sides 16, ends 10.
        # Bottom in grooves of 1/4: 16 - 2 x 1/2 + 2 x 1/4 - 1/16 = 15-7/16;
        # 10 - 2 x 1/2 + 2 x 1/4 - 1/16 = 9-7/16.
        Worked(
            assembly=Tray(
                name="tea", where=HERE, length=inches("16"), width=inches("10"),
                height=inches("2-1/2"), wood="cherry", thickness=inches("1/2"),
                bottom="ply",
            ),
            shop=make_shop(groove_depth="1/4", groove_up="3/8", sheet_play="1/16"),
            parts={
                "tea/side": "2: 16 × 2-1/2 × 1/2",
                "tea/end": "2: 10 × 2-1/2 × 1/2",
                "tea/bottom": "1: 15-7/16 × 9-7/16 × 1/4",
            },
        ),
        # 16 x 10 inside, dovetails with a lap of 1/8: sides 16 + 2 x 1/2 = 17; ends
        # 10 + 2 x 1/2 less the two laps 2 x 1/8 = 10-3/4. Bottom in rabbets half of 1/2:
        # 16 + 2 x 1/4 - 1/16 = 16-7/16 by 10 + 2 x 1/4 - 1/16 = 10-7/16.
        Worked(
            assembly=Tray(
                name="tea", where=HERE, length=inches("16"), width=inches("10"),
                height=inches("2-1/2"), measured="inside", wood="cherry",
                thickness=inches("1/2"), bottom="ply", bottom_in="rabbet",
                joint=HalfBlindDovetail(lap=inches("1/8")),
            ),
            shop=make_shop(sheet_play="1/16"),
            parts={
                "tea/side": "2: 17 × 2-1/2 × 1/2",
                "tea/end": "2: 10-3/4 × 2-1/2 × 1/2",
                "tea/bottom": "1: 16-7/16 × 10-7/16 × 1/4",
            },
        ),
    ),
}  # fmt: skip
"""Assembly's name to its examples; `test_every_assembly.py` asks for one each."""
