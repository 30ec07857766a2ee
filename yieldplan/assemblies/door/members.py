"""What stiles and rails are made of, once everything that was left out is as with the stiles."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from yieldplan.assemblies.door.keys import Rail
from yieldplan.model.faces import FaceWord
from yieldplan.units import Inches

if TYPE_CHECKING:
    from yieldplan.assemblies.door import Door


@dataclass(frozen=True, kw_only=True)
class Member:
    """A stile or a rail: its wood, width and thickness, its faces. [in]"""

    wood: str
    width: Inches
    thickness: Inches
    show_face: FaceWord
    back_face: FaceWord


def stile(door: Door) -> Member:
    """Both stiles."""
    own = door.stile
    return Member(
        wood=own.wood,
        width=own.width,
        thickness=own.thickness,
        show_face=own.show_face,
        back_face=own.back_face,
    )


def rail(door: Door) -> Member:
    """The top rail, and middle rails that do not differ."""
    return _or_as(stile(door), door.rail)


def bottom_rail(door: Door) -> Member:
    """The bottom rail."""
    return _or_as(rail(door), door.bottom_rail)


def _or_as(like: Member, own: Rail) -> Member:
    return Member(
        wood=like.wood if own.wood is None else own.wood,
        width=like.width if own.width is None else own.width,
        thickness=like.thickness if own.thickness is None else own.thickness,
        show_face=own.show_face or like.show_face,
        back_face=own.back_face or like.back_face,
    )
