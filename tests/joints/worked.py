"""Every joint worked by hand: what it reaches into its mate, and what it adds to either part.

Every field is said in one example at least, so that no figure of a joint is left out of it.
Figures are common practice, no source, unless one is named; a joint that is added brings
its own examples here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from tests.builders import inches
from yieldplan.joints.butt import Butt
from yieldplan.joints.dado import Dado
from yieldplan.joints.finger_joint import FingerJoint
from yieldplan.joints.groove import Groove
from yieldplan.joints.half_blind_dovetail import HalfBlindDovetail
from yieldplan.joints.joint import Joint
from yieldplan.joints.mortise_and_tenon import MortiseAndTenon
from yieldplan.joints.rabbet import Rabbet
from yieldplan.joints.stub_tenon import StubTenon
from yieldplan.joints.through_dovetail import ThroughDovetail
from yieldplan.joints.tongue_and_groove import TongueAndGroove


@dataclass(frozen=True, kw_only=True)
class Worked:
    """A joint between a part and a mate of another size, and its figures by hand.

    Parameters
    ----------
    own, mate
        Of the part that enters, and of the part it enters, in its direction. [in]
    depth
        How far the one reaches into the other. [in]
    housed, housing
        What an end of either gains, counted from the joint's base. [in]
    """

    joint: Joint
    own: str
    mate: str
    depth: str
    housed: str
    housing: str

    def __str__(self) -> str:
        return f"{self.joint.name}, {self.own} into {self.mate}"


WORKED: Mapping[str, tuple[Worked, ...]] = {
    "butt": (
        # The end stays outside.
        Worked(joint=Butt(), own="1/2", mate="3/4", depth="0", housed="0", housing="0"),
    ),
    "dado": (
        # A third of a 3/4 side is 1/4: each end of the shelf gains that, the side nothing.
        Worked(
            joint=Dado(), own="1/2", mate="3/4", depth="1/4", housed="1/4", housing="0"
        ),
        # Half of a 7/8 side is 7/16.
        Worked(
            joint=Dado(depth_share=Fraction(1, 2)),
            own="1/2", mate="7/8", depth="7/16", housed="7/16", housing="0",
        ),
        # A depth that is given does not ask how thick the side is.
        Worked(
            joint=Dado(deep=inches("5/16")),
            own="1/2", mate="3/4", depth="5/16", housed="5/16", housing="0",
        ),
    ),
    "finger joint": (
        # Both boards run to the outside; the fingers are as long as the mate is thick.
        Worked(
            joint=FingerJoint(finger=inches("3/8")),
            own="3/8", mate="1/2", depth="1/2", housed="0", housing="0",
        ),
        # 1/32 to plane flush, at every end of both: 1/2 + 1/32 = 17/32.
        Worked(
            joint=FingerJoint(proud=inches("1/32")),
            own="3/8", mate="1/2", depth="17/32", housed="1/32", housing="1/32",
        ),
    ),
    "groove": (
        # H. H. Windsor (ed.), Mission Furniture, Part 3, 1912, buffet: the panel enters
        # its grooves by 1/4 a side; the stile is 2 wide and gains nothing.
        Worked(
            joint=Groove(deep=inches("1/4")),
            own="3/8", mate="2", depth="1/4", housed="1/4", housing="0",
        ),
    ),
    "half-blind dovetail": (
        # 3/4 front - 1/4 lap = 1/2; the front keeps its full length.
        Worked(
            joint=HalfBlindDovetail(lap=inches("1/4")),
            own="5/8", mate="3/4", depth="1/2", housed="1/2", housing="0",
        ),
        # 7/8 front - 3/16 lap = 11/16.
        Worked(
            joint=HalfBlindDovetail(lap=inches("3/16")),
            own="1/2", mate="7/8", depth="11/16", housed="11/16", housing="0",
        ),
    ),
    "mortise and tenon": (
        # A blind tenon of 1-1/4 in a stile 2 wide.
        Worked(
            joint=MortiseAndTenon(length=inches("1-1/4")),
            own="3/4", mate="2", depth="1-1/4", housed="1-1/4", housing="0",
        ),
        # Through a leg of 1-3/4.
        Worked(
            joint=MortiseAndTenon(through=True),
            own="3/4", mate="1-3/4", depth="1-3/4", housed="1-3/4", housing="0",
        ),
        # The same left 1/8 proud: 1-3/4 + 1/8 = 1-7/8.
        Worked(
            joint=MortiseAndTenon(through=True, proud=inches("1/8")),
            own="3/4", mate="1-3/4", depth="1-7/8", housed="1-7/8", housing="0",
        ),
    ),
    "rabbet": (
        # Half of the 3/4 side that is rabbeted is 3/8: the back gains it, the side nothing.
        Worked(
            joint=Rabbet(), own="1/2", mate="3/4", depth="3/8", housed="3/8", housing="0"
        ),
        # Two thirds of 3/4 are 1/2.
        Worked(
            joint=Rabbet(depth_share=Fraction(2, 3)),
            own="5/8", mate="3/4", depth="1/2", housed="1/2", housing="0",
        ),
        Worked(
            joint=Rabbet(deep=inches("5/16")),
            own="1/2", mate="3/4", depth="5/16", housed="5/16", housing="0",
        ),
    ),
    "stub tenon": (
        # As long as the panel's groove is deep, here 3/8.
        Worked(
            joint=StubTenon(deep=inches("3/8")),
            own="3/4", mate="2-1/4", depth="3/8", housed="3/8", housing="0",
        ),
        # A moulding no deeper than the groove changes nothing: the tenon reaches as far.
        Worked(
            joint=StubTenon(deep=inches("3/8"), profile=inches("3/8")),
            own="3/4", mate="2-1/4", depth="3/8", housed="3/8", housing="0",
        ),
        # A moulding of 1/2 over a groove of 3/8: the cope reaches 1/2 - 3/8 = 1/8 beyond.
        Worked(
            joint=StubTenon(deep=inches("3/8"), profile=inches("1/2")),
            own="3/4", mate="2-1/4", depth="1/2", housed="1/2", housing="0",
        ),
    ),
    "through dovetail": (
        # Through a 3/4 board; both boards are as long as the outside of the work.
        Worked(
            joint=ThroughDovetail(),
            own="1/2", mate="3/4", depth="3/4", housed="0", housing="0",
        ),
        # W. Noyes, Handwork in Wood, 1910: 1/32 in to plane flush, at every end of both.
        # The tails reach 3/4 + 1/32 = 25/32.
        Worked(
            joint=ThroughDovetail(proud=inches("1/32")),
            own="1/2", mate="3/4", depth="25/32", housed="1/32", housing="1/32",
        ),
    ),
    "tongue and groove": (
        # A tongue of 5/16 on one board; its neighbour is 4 wide and stays so.
        Worked(
            joint=TongueAndGroove(deep=inches("5/16")),
            own="3/4", mate="4", depth="5/16", housed="5/16", housing="0",
        ),
    ),
}  # fmt: skip
"""Joint's name to its examples; `test_every_joint.py` asks for one a joint and a field."""
