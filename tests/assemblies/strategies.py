"""Random drawers, bookcases, doors and parts for the properties: sizes on the sixteenth, every joint and runner."""

from __future__ import annotations

import dataclasses
from fractions import Fraction
from typing import get_args

from hypothesis import strategies as st

from tests.builders import HERE
from yieldplan import joints
from yieldplan.assemblies.assembly import Assembly
from yieldplan.assemblies.bookcase import Bookcase
from yieldplan.assemblies.bookcase import keys as case_keys
from yieldplan.assemblies.door import Door
from yieldplan.assemblies.door import keys as door_keys
from yieldplan.assemblies.drawer import Drawer
from yieldplan.assemblies.drawer.keys import (
    Back,
    Bottom,
    BoxFront,
    Clearance,
    DrawerKeys,
    Front,
    Jig,
    Opening,
    Runs,
    Side,
    Sits,
)
from yieldplan.assemblies.drawer_bank import DrawerBank
from yieldplan.assemblies.drawer_bank import keys as bank_keys
from yieldplan.assemblies.part import Between, PlainPart
from yieldplan.assemblies.tray import Tray
from yieldplan.joints.joint import Joint
from yieldplan.joints.stub_tenon import StubTenon
from yieldplan.registry import find

JOINTS = find(joints, Joint)  # type: ignore[type-abstract]


def sizes(low: int, high: int) -> st.SearchStrategy[Fraction]:
    """Sixteenths of an inch, from so many inches to so many."""
    return st.integers(low * 16, high * 16).map(lambda n: Fraction(n, 16))


def thin() -> st.SearchStrategy[Fraction]:
    return st.integers(6, 16).map(lambda n: Fraction(n, 16))


def any_joint(*, corner: bool) -> st.SearchStrategy[Joint]:
    kinds = [kind for kind in JOINTS.values() if kind.makes_box_corner or not corner]
    lengths = thin().map(lambda n: n / 4)
    return st.sampled_from(kinds).flatmap(
        lambda kind: st.builds(
            kind,
            **{
                field.name: lengths
                for field in dataclasses.fields(kind)
                if field.name in ("lap", "deep", "length")
            },
        )
    )


def maybe(values: st.SearchStrategy[Fraction]) -> st.SearchStrategy[Fraction | None]:
    return st.none() | values


@st.composite
def drawers(draw: st.DrawFn) -> Assembly:
    """Drawers of every kind whose keys go together; a few have no room for themselves."""
    small = thin().map(lambda n: n / 2)
    runs = draw(st.sampled_from(get_args(Runs)))
    on_slides = runs != "on wooden runners"
    overlay = draw(maybe(small))
    behind = st.none() | st.builds(BoxFront, wood=st.just("ash"), thickness=thin())
    joint = draw(any_joint(corner=False))
    solid = draw(st.booleans())
    return Drawer(
        name="upper",
        where=HERE,
        opening=draw(
            st.builds(
                Opening, width=sizes(8, 36), height=sizes(3, 12), depth=sizes(14, 26)
            )
        ),
        runs=runs,
        slide_length=draw(sizes(10, 13)) if on_slides else None,
        fit=draw(st.sampled_from([None, "net"])),
        front=Front(
            wood="walnut",
            thickness=draw(thin()),
            joint=draw(st.none() | any_joint(corner=True)),
            overlay=overlay,
        ),
        box_front=draw(behind) if on_slides or overlay is not None else None,
        side=Side(wood="poplar", thickness=draw(thin())),
        back=Back(
            wood="poplar",
            thickness=draw(thin()),
            joint=joint,
            set_in=draw(maybe(small)) if joint.lets_run_past else None,
            sits="on the bottom" if solid else draw(st.sampled_from(get_args(Sits))),
        ),
        bottom=Bottom(wood="ash", thickness=draw(small))
        if solid
        else Bottom(sheet="ply"),
        clearance=draw(
            st.builds(
                Clearance, width=maybe(small), height=maybe(small), rear=maybe(small)
            )
        ),
        jig=draw(st.none() | st.builds(Jig, spacing=sizes(1, 2), remainder=small)),
    )


def plain_parts() -> st.SearchStrategy[Assembly]:
    """Parts between two mates, and a few by their length."""
    plain = {
        "name": st.just("rail"),
        "where": st.just(HERE),
        "wood": st.just("walnut"),
        "width": sizes(1, 6),
        "thickness": thin(),
    }
    by_length = st.builds(PlainPart, **plain, length=sizes(2, 60))
    spanning = st.builds(
        PlainPart,
        **plain,
        between=st.builds(
            Between,
            clear=sizes(2, 60),
            joint=any_joint(corner=False),
            far_joint=st.none() | any_joint(corner=False),
            mate=thin(),
            far_mate=maybe(thin()),
        ),
    )
    return spanning | spanning | spanning | by_length


@st.composite
def bookcases(draw: st.DrawFn) -> Assembly:
    """Bookcases with every joint, back and toe kick that go together."""
    small = thin().map(lambda n: n / 4)
    past = any_joint(corner=False).filter(lambda joint: joint.lets_run_past)
    kick = draw(
        st.none()
        | st.builds(case_keys.ToeKick, height=sizes(2, 5), set_back=small, joint=past)
    )
    any_end = any_joint(corner=True) | past
    back = draw(
        st.none()
        | st.builds(
            case_keys.Back,
            sheet=st.just("ply"),
            rabbeted=st.sampled_from(get_args(case_keys.Rabbeted)),
        )
        | st.builds(
            case_keys.Back,
            wood=st.just("poplar"),
            thickness=thin(),
            boards=st.integers(2, 9),
            rabbeted=st.sampled_from(get_args(case_keys.Rabbeted)),
        )
    )
    return Bookcase(
        name="den",
        where=HERE,
        width=draw(sizes(14, 48)),
        height=draw(sizes(24, 84)),
        depth=draw(sizes(8, 16)),
        side=case_keys.Side(wood="cherry", thickness=draw(thin())),
        top=draw(st.builds(case_keys.End, joint=st.none() | any_end)),
        bottom=draw(
            st.builds(case_keys.End, joint=st.none() | (past if kick else any_end))
        ),
        shelf=draw(
            st.builds(
                case_keys.Shelf,
                wood=st.just("poplar"),
                thickness=thin(),
                joint=past,
                set_back=small,
            )
        ),
        fixed_shelves=draw(st.none() | st.integers(0, 6)),
        loose=draw(
            st.none()
            | st.builds(
                case_keys.Loose,
                quantity=st.integers(1, 4),
                clearance=maybe(small),
                set_back=small,
            )
        ),
        toe_kick=kick,
        back=back,
    )


def _rails() -> st.SearchStrategy[door_keys.Rail]:
    return st.builds(door_keys.Rail, width=maybe(sizes(1, 6)), thickness=maybe(thin()))


def _door_panels(draw: st.DrawFn, groove: Fraction | None) -> door_keys.Panel:
    small = thin().map(lambda n: n / 8)
    either = {
        "grain": draw(st.sampled_from(get_args(door_keys.Grain))),
        "groove_depth": groove,
        "play": draw(maybe(small)),
    }
    if draw(st.booleans()):
        return door_keys.Panel(sheet="ply", **either)
    return door_keys.Panel(
        wood=draw(st.sampled_from(["walnut", "cherry"])),
        thickness=draw(thin()) / 2,
        strips=draw(st.integers(1, 4)),
        cut=draw(st.sampled_from(get_args(door_keys.Cut))),
        room_to_move=draw(maybe(small)),
        **either,
    )


@st.composite
def doors(draw: st.DrawFn) -> Assembly:
    """Doors and pairs whose keys go together; a few have no room for themselves."""
    small = thin().map(lambda n: n / 4)
    groove = draw(maybe(small))
    kinds = [kind for kind in JOINTS.values() if kind.makes_frame_corner]
    joint: Joint = draw(st.sampled_from(kinds))()
    if isinstance(joint, StubTenon):
        joint = StubTenon(profile=draw(small))
    leaves = draw(st.integers(1, 2))
    around: dict[str, object] = {
        "leaf": door_keys.Leaf(width=draw(sizes(8, 36)), height=draw(sizes(20, 80)))
    }
    if draw(st.booleans()):
        opening = st.builds(
            door_keys.Opening, width=sizes(16, 60), height=sizes(20, 80)
        )
        words = draw(
            st.sampled_from(
                [
                    ("gap", "gap_top", "gap_bottom"),
                    ("overlay", "overlay_top", "overlay_bottom"),
                ]
            )
        )
        around = {"opening": draw(opening)} | {
            word: draw(maybe(small)) for word in words
        }
        if leaves == 2:
            around["gap_between"] = draw(maybe(small))
    ups = draw(st.none() | st.lists(sizes(5, 60), max_size=4, unique=True))
    middles = [None] * draw(st.integers(0, 3)) if ups is None else ups
    return Door(
        name="hall",
        where=HERE,
        leaves=leaves,
        joint=joint,
        stile=door_keys.Stile(
            wood="walnut",
            width=draw(sizes(1, 5)),
            thickness=draw(thin()),
            horns=draw(maybe(small)) or Fraction(0),
        ),
        rail=draw(_rails()),
        bottom_rail=draw(_rails()),
        middle_rails=tuple(
            door_keys.MiddleRail(up=up, width=draw(maybe(sizes(1, 4))))
            for up in middles
        ),
        panel=_door_panels(draw, groove),
        **around,  # type: ignore[arg-type]
    )


@st.composite
def drawer_banks(draw: st.DrawFn) -> Assembly:
    """Banks of drawers of every kind, equal, graduated or by their heights."""
    drawer = draw(drawers())
    said = {
        field.name: getattr(drawer, field.name)
        for field in dataclasses.fields(DrawerKeys)
    }
    opening = dataclasses.replace(said["opening"], height=draw(sizes(16, 60)))
    rail = draw(
        st.none()
        | st.builds(
            bank_keys.Rail,
            wood=st.just("walnut"),
            thickness=thin(),
            width=sizes(1, 3),
            case_side=thin(),
            joint=any_joint(corner=False).filter(lambda joint: joint.lets_run_past),
        )
    )
    frame = draw(
        st.none() | st.builds(bank_keys.Frame, wood=st.just("ash"), width=sizes(1, 3))
    )
    grows = st.builds(bank_keys.Graduated, step=sizes(0, 2)) | st.builds(
        bank_keys.Graduated, ratio=st.sampled_from([Fraction(6, 5), Fraction(3, 2)])
    )
    bank = DrawerBank(
        **said
        | {
            "name": "bank",
            "opening": opening,
            "drawers": draw(st.integers(1, 6)),
            "graduated": draw(st.none() | grows),
            "rail": rail,
            "frame": frame if rail is not None else None,
        }
    )
    if rail is None and bank.is_applied:
        gap = draw(maybe(thin().map(lambda n: n / 4)))
        bank = dataclasses.replace(bank, gap_between=gap)
    return bank


def trays() -> st.SearchStrategy[Assembly]:
    """Trays of every corner joint; in a few the bottom or the sides find no room."""
    return st.builds(
        Tray,
        name=st.just("tea"),
        where=st.just(HERE),
        length=sizes(4, 24),
        width=sizes(1, 16),
        height=sizes(1, 6),
        measured=st.sampled_from(["outside", "inside"]),
        wood=st.just("cherry"),
        thickness=thin(),
        joint=any_joint(corner=True),
        bottom=st.just("ply"),
        bottom_in=st.sampled_from(["groove", "rabbet"]),
    )


OF_EVERY_KIND = {
    "bookcase": bookcases(),
    "door": doors(),
    "drawer": drawers(),
    "drawer bank": drawer_banks(),
    "part": plain_parts(),
    "tray": trays(),
}
"""A strategy for every assembly the registry finds; a new one brings its own."""
