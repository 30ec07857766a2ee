"""The cutting list of one board in words, step by step, with a box to tick for every piece."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from itertools import groupby
from math import ceil

from yieldplan.drawing.cuts import Crosscuts, crosscuts, flat, is_waste, kept, rips
from yieldplan.drawing.saw import Saw
from yieldplan.model.blanks import Blank
from yieldplan.model.plan import Cutting, Node
from yieldplan.units import from_ticks, tape

_FAR = Fraction(3, 16)
"""Over the quarter that would do, from which the bench should hear of it. [in]"""
TICK = "[ ]"


def cutting_list(cutting: Cutting, saw: Saw, *, numbered: bool) -> list[str]:
    """The steps in the order they are done.

    Parameters
    ----------
    numbered
        Whether the picture shows numbers instead of names; the list then explains them.
    """
    return [
        f"{number}. {step}"
        for number, step in enumerate(_Words(cutting, saw, numbered).steps(), start=1)
    ]


def after_the_saw(blank: Blank) -> str:
    """What happens next to a blank of several parts."""
    number = len(blank.inside)
    if blank.slices > 1:
        return f"Flatten {blank.words}, mark its end with a triangle, then resaw it into {blank.slices} slices"
    if blank.route == "glue up":
        return f"Cut {blank.words} into its {number} strips; keep them in their order"
    return f"Mill {blank.words} in one piece, then cut it into its {number} parts"


class _Words:
    def __init__(self, cutting: Cutting, saw: Saw, numbered: bool) -> None:
        self.cutting, self.saw = cutting, saw
        self.numbers = (
            {n.id: i for i, n in enumerate(kept(cutting.tree), start=1)}
            if numbered
            else {}
        )

    def steps(self) -> Iterator[str]:
        tree = self.cutting.tree
        yield from self._strokes()
        if not tree.into:
            yield f"Take it whole: {self._leaf(tree)}."
        elif tree.cut == "crosscut":
            marks = crosscuts(tree, self.saw.rules)
            yield self._crosscut_at(marks) + self._not_used(tree, marks)
            yield from self._sections(tree, marks)
        else:
            strips = list(rips(tree))
            yield self._rip_the_board(tree, any(r.node.into for r in strips))
            for number, rip in enumerate(strips, start=1):
                if rip.node.into:
                    yield self._strip(rip.node, number)
        yield from self._after_milling()
        yield from self._planed_far()

    def _size(self, ticks: int) -> str:
        return tape(from_ticks(ticks), self.saw.unit)

    def _crosscut_at(self, marks: Crosscuts) -> str:
        figures = ", ".join(self._size(marks.figure(cut)) for cut in marks.at)
        start = "from the zero end"
        squared = ""
        if marks.square_off:
            start = "from the fresh end"
            squared = f"Square the zero end, {self._size(marks.square_off)} off. "
        if not figures:
            return squared.strip()
        return f"{squared}Crosscut at {figures} {start}, blade right of every mark."

    def _stretch(self, node: Node, marks: Crosscuts) -> str:
        # A piece begins a kerf after the mark before it: the marks are what is chalked.
        before = [cut for cut in marks.at if cut < node.box[0]]
        start = self._size(marks.figure(before[-1])) if before else "0"
        if node.box[2] in marks.at:
            return f"{start} to {self._size(marks.figure(node.box[2]))}"
        return f"{start} to the end"

    def _sections(self, tree: Node, marks: Crosscuts) -> Iterator[str]:
        """The sections from zero; neighbours that are sawn alike are told once."""
        pieces = [
            piece
            for piece in flat(tree)
            if piece.box[0] >= marks.origin and not is_waste(piece)
        ]
        for (length, content), alike in groupby(
            pieces, key=lambda piece: (piece.length, self._content(piece))
        ):
            places = [self._stretch(piece, marks) for piece in alike]
            each = "each " if len(places) > 1 else ""
            said = _times(content, len(places))
            yield f"{_listed(places)}, {each}{self._size(length)} long: {said}."

    def _not_used(self, tree: Node, marks: Crosscuts) -> str:
        waste = [
            f"{self._stretch(piece, marks)} is {_fate(piece)}"
            for piece in flat(tree)
            if piece.box[0] >= marks.origin and is_waste(piece)
        ]
        return f" {', '.join(waste)}." if waste else ""

    def _rip_the_board(self, tree: Node, then_crosscut: bool) -> str:
        ripped = self._ripping(tree, name_strips=True)
        zero = (
            "its own zero end"
            if self.saw.rules.marks_from == "zero end"
            else "its own fresh end"
        )
        then = (
            f" Then crosscut each strip from {zero}, blade right of every mark."
            if then_crosscut
            else ""
        )
        return f"Whole length, from the near edge: {ripped}.{then}"

    def _strip(self, node: Node, number: int) -> str:
        start = f"Strip {number}, {self._size(node.width)} wide:"
        if node.cut != "crosscut":
            return f"{start} {self._content(node)}."
        marks = crosscuts(node, self.saw.rules)
        pieces = [
            f"{self._stretch(child, marks)}: {self._content(child)}"
            for child in flat(node)
            if child.fate != "trim" and child.box[0] >= marks.origin
        ]
        squared = (
            f" square the zero end, {self._size(marks.square_off)} off;"
            if marks.square_off
            else ""
        )
        return f"{start}{squared} {'; '.join(pieces)}."

    def _content(self, node: Node) -> str:
        if not node.into:
            return self._leaf(node)
        if node.cut == "rip":
            return self._ripping(node, name_strips=False)
        return self._crosscutting(node)

    def _ripping(self, node: Node, *, name_strips: bool) -> str:
        said: list[str] = []
        straighten = "trim" if self.cutting.piece.is_sheet else "joint"
        start, off = node.box[1], 0
        alike: list[str] = []

        def tell() -> None:
            if alike:
                often = f"{len(alike)} times: " if len(alike) > 1 else ""
                setting, colon, what = alike[0].partition(": ")
                what = _times(what, len(alike))
                said.append(
                    f"{setting}, {often}{what}" if often else f"{setting}{colon}{what}"
                )
                alike.clear()

        for rip in rips(node):
            if rip.kind == "edge":
                off = rip.node.width if rip.node.fate == "burn" else 0
                continue
            if rip.pass_before:
                tell()
                again = " again" if said else ""
                taken = self._size(rip.node.box[1] - start)
                said.append(
                    f"take {taken} off the near edge"
                    if off
                    else f"{straighten} the near edge{again}"
                )
            off = 0
            if rip.node.fate == "edge":
                continue  # the far edge falls off
            is_named = name_strips and rip.node.into
            what = "" if is_named else f": {self._content(rip.node)}"
            words = f"{rip.kind} {self._size(rip.node.width)}{what}"
            if alike and (alike[0] != words or not what):
                tell()
            alike.append(words)
        tell()
        return "; ".join(said)

    def _crosscutting(self, node: Node) -> str:
        pieces = flat(node)
        said = []
        for (length, content), alike in groupby(
            pieces, key=lambda piece: (piece.length, self._within(piece))
        ):
            count = len(list(alike))
            often = f"{count} at " if count > 1 else ""
            said.append(f"{often}{self._size(length)}: {_times(content, count)}")
        if is_waste(pieces[-1]):
            said[-1] = f"rest {_fate(pieces[-1])}"
        return f"(crosscut it: {', '.join(said)})"

    def _within(self, piece: Node) -> str:
        said = self._content(piece)
        return f"({said})" if piece.cut == "rip" else said

    def _leaf(self, node: Node) -> str:
        number = f"({self.numbers[node.id]}) " if node.id in self.numbers else ""
        if node.blank is not None:
            turned = " TURN OVER, face B up" if node.face_up == "B" else ""
            name = self.saw.blanks[node.blank].words
            return f"{number}{name}{turned} {TICK}"
        if node.fate == "keep":
            size = f"{self._size(node.width)} × {self._size(node.length)}"
            return f"{number}KEEP {node.name}, {size} {TICK}"
        return _fate(node)

    def _strokes(self) -> Iterator[str]:
        for node in kept(self.cutting.tree):
            blank = self.saw.blanks[node.blank] if node.blank else None
            if blank is None or blank.route != "match":
                continue
            if blank.step is None and blank.slices == 1:
                parts = sorted(blank.inside, key=lambda part: (part.x, part.y))
                order = ", ".join(part.demand for part in parts)
                yield f"Chalk strokes across the joints of {blank.words} before sawing; from zero: {order}."
            elif blank.step is not None and blank.step.number == 1:
                order = ", ".join(_in_steps(blank.step.set, self.saw.blanks.values()))
                yield f"Chalk strokes across the crosscuts between the steps of {blank.step.set} before sawing; from zero: {order}."

    def _after_milling(self) -> Iterator[str]:
        seen: list[str] = []
        for node in kept(self.cutting.tree):
            blank = self.saw.blanks[node.blank] if node.blank else None
            if blank is None or len(blank.inside) < 2 or blank.id in seen:
                continue
            seen.append(blank.id)
            yield f"{after_the_saw(blank)}."

    def _planed_far(self) -> Iterator[str]:
        """Parts from stock a quarter or more too thick: resawing may save wood."""
        piece = self.cutting.piece
        far: dict[str, str] = {}
        for node in kept(self.cutting.tree):
            blank = self.saw.blanks[node.blank] if node.blank else None
            if blank is None or blank.is_sawn_to_size or blank.set_up:
                continue
            would_do = max(Fraction(1), Fraction(ceil(4 * blank.thickness.value), 4))
            if piece.thick - would_do >= _FAR:
                rough = tape(blank.thickness.value, self.saw.unit)
                far[blank.words] = rough
        for rough in sorted(set(far.values())):
            names = _listed([name for name, need in far.items() if need == rough])
            yield f"Planed from {piece.thickness}, where {rough} thick would do: {names}."


def _times(content: str, count: int) -> str:
    """What becomes of so many pieces sawn alike: a box to tick for each."""
    return content.replace(TICK, " ".join([TICK] * count))


def _listed(words: Sequence[str]) -> str:
    if len(words) == 1:
        return words[0]
    return f"{', '.join(words[:-1])} and {words[-1]}"


def _in_steps(name: str, blanks: Iterable[Blank]) -> list[str]:
    """The parts of a set that is cut in steps, from the zero end on."""
    steps = [
        (blank.step.number, *blank.makes)
        for blank in blanks
        if blank.step is not None and blank.step.set == name
    ]
    return [str(part) for _, part in sorted(steps)]


def _fate(node: Node) -> str:
    return node.fate or ""
