"""Reading a plan file entry by entry, as its format's page lists them."""

from __future__ import annotations

from yieldplan.checking.facts import (
    Bound,
    Cutting,
    Mark,
    Node,
    Offcuts,
    Piece,
    Plan,
    PurchaseLine,
    Rules,
    Wood,
)
from yieldplan.checking.reading_further import (
    limited_of,
    packs_chosen,
    sets_of_pieces,
    tried_of,
)
from yieldplan.checking.shape import DEEPEST, LARGEST, LONGEST, MOST_ROWS, Record
from yieldplan.checking.wanted import Blank, GlueUp, Inside, Part, Step

VERSION = 1
TICKS_PER_INCH = 8128
MONEY_PER_UNIT = 10_000
FAMILIES = ("R", "C", "E", "R+", "C+", "E+")
MOST_INSIDE = 1_000
"""No blank holds more parts than this."""
FATES = ("trim", "edge", "burn", "keep")
COLOURS = ("any", "one lot", "one board")
MOST_PERCENT = 50
"""An offcut counts for at most half of what the wood in it cost."""


def read(document: object) -> tuple[Plan | None, list[str]]:
    """The plan a file holds, or None and what is wrong with the file's form."""
    objections: list[str] = []
    top = Record(document, "the plan file", objections)
    if not isinstance(document, dict):
        return None, objections
    top.whole("yieldplan_plan", least=VERSION, most=VERSION)
    top.whole("ticks_per_inch", least=TICKS_PER_INCH, most=TICKS_PER_INCH)
    top.whole("money_per_unit", least=MONEY_PER_UNIT, most=MONEY_PER_UNIT)
    for key in ("title", "mark", "currency"):
        top.text(key, empty=key == "mark")
    money = top.record("money")
    plan = Plan(
        complete=top.flag("complete"),
        unit=top.word("unit", ("in", "mm")),
        faces=top.words_of("faces"),
        zones=frozenset(top.texts("zones")),
        parts=tuple(_part(row) for row in top.records("parts")),
        blanks=tuple(_blank(row) for row in top.records("blanks")),
        stock=tuple(_piece(row) for row in top.records("stock")),
        woods=tuple(_wood(row) for row in top.records("woods")),
        purchase=tuple(_line(row) for row in money.records("lines")),
        total=money.whole("total"),
        minimum=tuple(_minimum(money)),
    )
    return (None if objections else plan), objections


def _part(row: Record) -> Part:
    why = row.record("why")
    length, width, thickness = row.wholes("size", 3, least=1)
    terms = [
        tuple(ticks for _, ticks in why.pairs(key))
        for key in ("length", "width", "thickness")
    ]
    return Part(
        id=row.text("id"),
        quantity=row.whole("quantity"),
        size=(length, width, thickness),
        why=(terms[0], terms[1], terms[2]),
        show_face=row.text("show_face"),
        back_face=row.text("back_face"),
        strips=row.whole("strips", least=1),
        set_up=row.flag("set_up"),
        zone=row.whole("zone", most=LONGEST),
        glue_up=_glue_up(row.record_or_none("glue_up")),
    )


def _glue_up(row: Record | None) -> GlueUp | None:
    if row is None:
        return None
    return GlueUp(
        step=row.whole("step", least=1, most=LONGEST),
        units=row.whole("units", least=1, most=LONGEST),
        least=row.whole("least", most=LONGEST),
        most=row.whole("most", most=LONGEST),
        colour=row.word("colour", COLOURS),
    )


def _blank(row: Record) -> Blank:
    length, width = row.wholes("size", 2, least=1)
    return Blank(
        id=row.text("id"),
        route=row.text("route"),
        wood=row.text("wood"),
        length=length,
        width=width,
        thickness=row.whole("thickness", least=1, most=LONGEST),
        lines=frozenset(row.texts("stock")),
        makes=row.counts("makes", least=1),
        inside=tuple(_inside(each) for each in row.records("inside", most=MOST_INSIDE)),
        show_face=row.text("show_face"),
        back_face=row.text("back_face"),
        turned=row.flag("turned"),
        step=_step(row.record_or_none("step")),
        may_spare=row.flag("may_spare"),
    )


def _step(row: Record | None) -> Step | None:
    if row is None:
        return None
    return Step(
        set=row.text("set"),
        number=row.whole("number", least=1),
        of=row.whole("of", least=1),
    )


def _inside(row: Record) -> Inside:
    x, y = row.wholes("at", 2, least=-LONGEST)
    length, width = row.wholes("size", 2, least=1)
    return Inside(
        part=row.text("part"),
        box=(x, y, x + length, y + width),
        slice=row.whole("slice", most=MOST_INSIDE),
    )


def _piece(row: Record) -> Piece:
    length, width = row.wholes("size", 2, least=1)
    at_zero, at_far_end = row.wholes("trims", 2)
    near, far = row.wholes("edges", 2)
    width_at_zero, width_at_far_end = row.wholes("widths", 2, least=1)
    row.text("thickness")
    pack = row.text("pack") if row.has("pack") else ""
    return Piece(
        id=row.text("id"),
        wood=row.text("wood"),
        line=row.text("line"),
        kind=row.text("kind"),
        planed=row.flag("planed"),
        thick=row.whole("thick", least=1, most=LONGEST),
        grade=row.text("grade", empty=True),
        lot=row.text("lot", empty=True),
        length=length,
        width=width,
        widths=(width_at_zero, width_at_far_end),
        crook=row.whole("crook", most=LONGEST),
        bow=row.whole("bow", most=LONGEST),
        twist=row.whole("twist", most=LONGEST),
        copies=row.whole("copies", least=1),
        feet=row.feet_or_none("board_feet"),
        per_foot=row.whole_or_none("per_foot"),
        price=row.whole("price"),
        trims=(at_zero, at_far_end),
        edges=(near, far),
        marks=tuple(
            Mark(
                kind=mark.text("kind"),
                face=mark.word("face", ("A", "B", "through")),
                box=mark.box("box"),
            )
            for mark in row.records("marks")
        ),
        pack=pack,
    )


def _wood(row: Record) -> Wood:
    bound = row.record("bound")
    return Wood(
        name=row.text("wood"),
        rules=_rules(row.record("rules")),
        need=row.counts("need"),
        missing=row.counts("missing"),
        cuttings=tuple(
            Cutting(
                stock=cutting.text("stock"),
                copy=cutting.whole("copy"),
                tree=_node(cutting.record("tree"), [MOST_ROWS], 1),
            )
            for cutting in row.records("cuttings")
        ),
        cost=row.whole("cost"),
        bound=Bound(
            value=bound.whole("value"),
            priced=bound.whole("priced", least=-LARGEST),
            family=bound.word("family", FAMILIES),
            prices=bound.counts("prices"),
            as_asked=bound.has("as_asked") and bound.flag("as_asked"),
            limited=limited_of(bound),
            sets=sets_of_pieces(bound),
            tried=tried_of(bound),
            packs=packs_chosen(bound),
        ),
    )


def _rules(row: Record) -> Rules:
    along, across = row.wholes("step", 2, least=1)
    offcuts = row.record("offcuts")
    return Rules(
        family=row.word("family", FAMILIES),
        kerf=row.whole("kerf", most=LONGEST),
        along=along,
        across=across,
        marks_from=row.word("marks_from", ("zero end", "trimmed end")),
        crook_at_most=row.whole_or_none("crook_at_most"),
        twisted_at_most=row.whole("twisted_at_most", most=LONGEST),
        around_knots=row.whole("around_knots", most=LONGEST),
        short_of_checks=row.whole("short_of_checks", most=LONGEST),
        resaw_kerf=row.whole("resaw_kerf", most=LONGEST),
        offcuts=Offcuts(
            percent=offcuts.whole("percent", most=MOST_PERCENT),
            sizes=tuple(
                (length, width) for length, width in offcuts.rows_of("sizes", 2)
            ),
        ),
    )


def _node(row: Record, left: list[int], depth: int) -> Node:
    """A node and all below it; `left` counts down the nodes a tree may still have."""
    left[0] -= 1
    node_id, box = row.text("id"), row.box("box")
    told = [key for key in ("into", "blank", "fate") if row.has(key)]
    if len(told) != 1:
        row.objections.append(
            f"{row.where}: a node is cut `into` others, a `blank`, or has a `fate`; "
            f"this one tells {' and '.join(told) or 'none of them'}."
        )
        return Node(node_id, box)
    if row.has("blank"):
        return Node(
            node_id, box, blank=row.text("blank"), face_up=row.word("face_up", "AB")
        )
    if row.has("fate"):
        fate = row.word("fate", FATES)
        kept = fate == "keep"
        name = row.text("name") if kept else ""
        worth = row.whole("worth") if kept else 0
        return Node(node_id, box, fate=fate, name=name, worth=worth)
    cut = row.word("cut", ("rip", "crosscut"))
    if depth == DEEPEST or left[0] < 0:
        row.objections.append(f"{row.where}: the piece is cut into pieces without end.")
        return Node(node_id, box)
    into = tuple(_node(each, left, depth + 1) for each in row.records("into"))
    if not into:
        row.objections.append(f"{row.where}: node {node_id} is cut into nothing.")
    return Node(node_id, box, cut=cut, into=into)


def _minimum(money: Record) -> list[tuple[str, int]]:
    if not money.has("minimum"):
        return []
    return list(money.pairs("minimum", empty=True))


def _line(row: Record) -> PurchaseLine:
    by = row.word("by", ("foot", "piece", "pack", "minimum"))
    return PurchaseLine(
        wood=row.text("wood", empty=by == "minimum"),
        line=row.text("line"),
        grade=row.text("grade", empty=True),
        pieces=tuple(row.pairs("pieces")),
        feet=row.feet_or_none("board_feet"),
        by=by,
        per=row.whole("per"),
        total=row.whole("total"),
        pack=row.text("pack") if by == "pack" or row.has("pack") else "",
    )
