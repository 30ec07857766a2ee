"""Finger joints worked by hand. Figures are common practice, no source."""

from __future__ import annotations

from fractions import Fraction

from tests.builders import inches, make_drawer, make_job, parts_by_id
from yieldplan.assemblies.drawer.keys import Back, Front
from yieldplan.joints.finger_joint import FingerJoint
from yieldplan.joints.joint import Role


def test_both_boards_of_a_finger_joint_run_to_the_outside() -> None:
    joint = FingerJoint(finger=inches("3/8"))
    for role in Role:
        gain = joint.allowance(role=role, own=inches("3/8"), mate=inches("1/2"))
        assert gain.value == 0
    assert joint.depth(mate=inches("1/2")).value == inches("1/2")
    assert joint.needs_set_up


def test_a_drawer_of_finger_joints_is_as_long_and_as_wide_as_its_box() -> None:
    # Opening 22 x 6 x 20, planed to fit, 1/4 free behind: sides 20 - 1/4 = 19-3/4 from
    # the front's face to the back's outside, front and back 22.
    drawer = make_drawer(
        front=Front(wood="walnut", thickness=inches("3/4"), joint=FingerJoint()),
        back=Back(wood="poplar", thickness=inches("1/2"), joint=FingerJoint()),
    )
    parts = parts_by_id(make_job(drawer))
    assert parts["upper/side"].length.value == inches("19-3/4")
    assert parts["upper/front"].length.value == inches("22")
    assert parts["upper/back"].length.value == inches("22")


def test_fingers_left_proud_lengthen_both_boards() -> None:
    joint = FingerJoint(proud=inches("1/32"))
    for role in Role:
        gain = joint.allowance(role=role, own=inches("3/8"), mate=inches("1/2"))
        assert gain.value == Fraction(1, 32)
    # 1/2 + 1/32 = 17/32.
    assert joint.depth(mate=inches("1/2")).value == inches("17/32")


def test_fingers_without_width_are_refused() -> None:
    assert "no width" in FingerJoint(finger=Fraction(0)).impossible(mate=inches("1/2"))
    assert FingerJoint().impossible(mate=inches("1/2")) == ""


def test_thin_and_wide_fingers_are_warned_of() -> None:
    # 1/16 is under one pass of a blade; 1-1/4 is over 2 x 1/2.
    (thin,) = FingerJoint(finger=inches("1/16")).limits(
        own=inches("1/2"), mate=inches("3/4")
    )
    (wide,) = FingerJoint(finger=inches("1-1/4")).limits(
        own=inches("3/4"), mate=inches("1/2")
    )
    assert "snap off" in thin
    assert "1/2 in thick" in wide
    at_most = FingerJoint(finger=inches("1"))
    assert at_most.limits(own=inches("1/2"), mate=inches("1/2")) == ()
