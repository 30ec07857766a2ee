"""The outside of a drawer's box, worked from its opening: what runners, slides and planing leave of it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from yieldplan.assemblies.drawer.keys import Back, Clearance, Fit, Jig, Opening, Runs
from yieldplan.assemblies.ends import folded, from_outside
from yieldplan.joints.joint import Joint, Role
from yieldplan.model.shop import Shop
from yieldplan.model.sums import Sum
from yieldplan.units import Inches


@dataclass(frozen=True, kw_only=True)
class Groove:
    """The groove that holds the bottom.

    Parameters
    ----------
    depth
        Into the sides and the front. [in]
    up
        From the lower edge of a side to the groove. [in]
    """

    depth: Inches
    up: Inches


@dataclass(frozen=True, kw_only=True)
class Box:
    """The box between its outsides.

    Parameters
    ----------
    front, front_joint
        Thickness of the front that is joined to the sides, and how. [in]
    inset_front
        Thickness of an applied front that sits inside the opening, else 0. [in]
    front_growth, side_growth
        What the front and the sides may gain in height in the wettest season; 0 where
        they are planed to fit. [in]
    """

    opening: Opening
    runs: Runs
    fit: Fit
    clearance: Clearance
    jig: Jig | None
    slide_length: Inches | None
    front: Inches
    front_joint: Joint
    inset_front: Inches
    side: Inches
    back: Back
    back_joint: Joint
    front_growth: Inches
    side_growth: Inches
    shop: Shop

    @property
    def on_slides(self) -> bool:
        """Whether it runs on bought slides."""
        return self.runs != "on wooden runners"

    @property
    def width(self) -> Sum:
        """Over both sides."""
        opening = Sum.of(("opening width", self.opening.width))
        less = self.clearance.width
        if self.runs == "side-mounted slides":
            if less is not None:
                return opening + Sum.of((self.runs, -less))
            return opening + Sum.of((self.runs, -self.shop.slide_side_clearance, 2))
        if self.runs == "under-mounted slides":
            # Makers give the inside: whatever the sides measure, it must be this wide.
            inside = self.shop.undermount_width_less if less is None else less
            return opening + Sum.of((self.runs, -inside), ("side", self.side, 2))
        if self.fit == "plane to fit":
            return opening
        less = self.shop.runner_side_clearance if less is None else less
        return opening + Sum.of(("clearance", -less))

    def height(self, growth: Inches) -> Sum:
        """What the opening leaves for a part of the box that may grow by so much."""
        opening = Sum.of(("opening height", self.opening.height))
        less = self.clearance.height
        if self.runs == "side-mounted slides":
            less = self.shop.slide_height_clearance if less is None else less
            return opening + Sum.of((self.runs, -less))
        if self.runs == "under-mounted slides":
            less = self.shop.undermount_height_clearance if less is None else less
            return opening + Sum.of((self.runs, -less))
        if self.fit == "plane to fit":
            return opening
        if less is not None:
            return opening + Sum.of(("clearance", -less))
        net = opening + Sum.of(("clearance", -self.shop.runner_height_clearance))
        return net + Sum.of(("wettest season", -growth)) if growth else net

    @property
    def side_width(self) -> Sum:
        """Width of a side, on the template if there is one."""
        whole = self.height(self.side_growth)
        if self.jig is None:
            return whole
        fingers = (whole.value - self.jig.remainder) // self.jig.spacing
        over = whole.value - fingers * self.jig.spacing - self.jig.remainder
        return whole + Sum.of(("down to whole fingers", -over)) if over else whole

    @property
    def fingers(self) -> int:
        """Whole spacings of the template in a side."""
        if self.jig is None:
            return 1
        return int((self.side_width.value - self.jig.remainder) // self.jig.spacing)

    @property
    def rear(self) -> Inches:
        """Left free behind the drawer."""
        given = self.clearance.rear
        return self.shop.rear_clearance if given is None else given

    @property
    def depth(self) -> Sum:
        """From the face of the front that is joined to the sides to the back's outside."""
        if self.slide_length is not None:
            depth = Sum.of(("slide", self.slide_length))
            if self.runs == "under-mounted slides":
                # Clip in front and hook behind meet only if the whole box is so long.
                return depth
            # The sides are as long as the slides; what covers their ends comes on top.
            for end in (folded(self.front_end), folded(self.back_end)):
                depth += end.times(-1) if end.value < 0 else Sum(())
            return depth
        depth = Sum.of(("opening depth", self.opening.depth))
        if self.inset_front:
            depth += Sum.of(("applied front", -self.inset_front))
        return depth + Sum.of(("rear clearance", -self.rear)) if self.rear else depth

    @property
    def side_length(self) -> Sum:
        """Length of a side."""
        return folded(self.depth + self.front_end + self.back_end)

    @property
    def front_end(self) -> Sum:
        """What the joint at the front makes of a side's length, from the outside."""
        return from_outside(
            self.front_joint,
            Role.HOUSED,
            own=self.side,
            mate=self.front,
            mate_words="front",
        )

    @property
    def back_end(self) -> Sum:
        """The same at the back."""
        return from_outside(
            self.back_joint,
            Role.HOUSED if self.back_joint.has_tails else Role.HOUSING,
            own=self.side,
            mate=self.back.thickness,
            mate_words="back",
        )

    @property
    def back_set_in(self) -> Inches:
        """From the sides' rear ends to the back's outside."""
        if self.back.set_in is not None:
            return self.back.set_in
        # A dado needs wood behind it, or its far wall breaks out.
        return (
            self.back.thickness if not self.back_joint.makes_box_corner else Fraction(0)
        )
