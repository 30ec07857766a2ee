"""Every assembly worked by hand: what is asked, and the finished size of each part.

Figures are common practice, no source. An assembly that is added brings its own here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from tests.builders import inches, make_drawer, make_plain, make_shop
from yieldplan.assemblies.assembly import Assembly
from yieldplan.assemblies.part import Between
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
}  # fmt: skip
"""Assembly's name to its examples; `test_every_assembly.py` asks for one each."""
