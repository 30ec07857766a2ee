"""Reading a plan file entry by entry, as its format's page lists them."""

from __future__ import annotations

from yieldplan.checking.facts import (
    Blank,
    Bound,
    Cutting,
    Inside,
    Mark,
    Node,
    Part,
    Piece,
    Plan,
    PurchaseLine,
    Rules,
    Wood,
)
from yieldplan.checking.shape import DEEPEST, LARGEST, LONGEST, MOST_ROWS, Record

VERSION = 1
TICKS_PER_INCH = 8128
MONEY_PER_UNIT = 10_000
FAMILIES = ("R", "C", "E")
MOST_INSIDE = 1_000
"""No blank holds more parts than this."""
FATES = ("trim", "edge", "burn", "keep")


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
        parts=tuple(_part(row) for row in top.records("parts")),
        blanks=tuple(_blank(row) for row in top.records("blanks")),
        stock=tuple(_piece(row) for row in top.records("stock")),
        woods=tuple(_wood(row) for row in top.records("woods")),
        purchase=tuple(_line(row) for row in money.records("lines")),
        total=money.whole("total"),
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
    )


def _inside(row: Record) -> Inside:
    x, y = row.wholes("at", 2, least=-LONGEST)
    length, width = row.wholes("size", 2, least=1)
    return Inside(part=row.text("part"), box=(x, y, x + length, y + width))


def _piece(row: Record) -> Piece:
    length, width = row.wholes("size", 2, least=1)
    at_zero, at_far_end = row.wholes("trims", 2)
    near, far = row.wholes("edges", 2)
    row.text("thickness")
    return Piece(
        id=row.text("id"),
        wood=row.text("wood"),
        line=row.text("line"),
        kind=row.text("kind"),
        planed=row.flag("planed"),
        thick=row.whole("thick", least=1, most=LONGEST),
        grade=row.text("grade", empty=True),
        length=length,
        width=width,
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
    )


def _wood(row: Record) -> Wood:
    rules = row.record("rules")
    along, across = rules.wholes("step", 2, least=1)
    bound = row.record("bound")
    return Wood(
        name=row.text("wood"),
        rules=Rules(
            family=rules.word("family", FAMILIES),
            kerf=rules.whole("kerf", most=LONGEST),
            along=along,
            across=across,
            marks_from=rules.word("marks_from", ("zero end", "trimmed end")),
        ),
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
        worth = row.whole("worth", most=0) if kept else 0
        return Node(node_id, box, fate=fate, name=name, worth=worth)
    cut = row.word("cut", ("rip", "crosscut"))
    if depth == DEEPEST or left[0] < 0:
        row.objections.append(f"{row.where}: the piece is cut into pieces without end.")
        return Node(node_id, box)
    into = tuple(_node(each, left, depth + 1) for each in row.records("into"))
    if not into:
        row.objections.append(f"{row.where}: node {node_id} is cut into nothing.")
    return Node(node_id, box, cut=cut, into=into)


def _line(row: Record) -> PurchaseLine:
    return PurchaseLine(
        wood=row.text("wood"),
        line=row.text("line"),
        grade=row.text("grade", empty=True),
        pieces=tuple(row.pairs("pieces")),
        feet=row.feet_or_none("board_feet"),
        by=row.word("by", ("foot", "piece")),
        per=row.whole("per"),
        total=row.whole("total"),
    )
