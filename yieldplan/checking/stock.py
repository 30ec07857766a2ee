"""The stock: each piece is cut once, by its own rules, into blanks it is thick enough for."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.checking.facts import Plan
from yieldplan.checking.fits import (
    ROUNDED,
    hindrances_of_shape,
    is_listed,
)


def shapes_are_of_one_piece(plan: Plan) -> Iterator[str]:
    """Ensures that widths go with the size, and that pieces sold alike, and sheets, are straight."""
    for piece in plan.stock:
        if max(piece.widths) != piece.width:
            yield (
                f"{piece.id} is {plan.say(piece.width)} wide, yet its ends are "
                f"{plan.say(piece.widths[0])} and {plan.say(piece.widths[1])}."
            )
        if not piece.is_straight and (piece.copies > 1 or piece.is_sheet):
            what = "a sheet" if piece.is_sheet else f"there {piece.copies} times"
            yield f"{piece.id} is {what} and is not said to be straight."


def no_copy_is_cut_twice(plan: Plan) -> Iterator[str]:
    """Ensures that every cutting has a piece of its own, of its own wood."""
    seen: set[tuple[str, int]] = set()
    for wood in plan.woods:
        for cutting in wood.cuttings:
            piece = plan.piece_of[cutting.stock]
            if piece.wood != wood.name:
                yield f"{wood.name} is cut from {piece.id}, which is {piece.wood}."
            if not 1 <= cutting.copy <= piece.copies:
                yield (
                    f"{wood.name} cuts copy {cutting.copy} of {piece.id}; "
                    f"{piece.copies} of it were offered."
                )
            if (piece.id, cutting.copy) in seen:
                yield f"{wood.name} cuts copy {cutting.copy} of {piece.id} twice."
            seen.add((piece.id, cutting.copy))


def blanks_come_from_stock_they_list(plan: Plan) -> Iterator[str]:
    """Ensures that a blank is cut only from its own wood and from lines it lists."""
    for wood in plan.woods:
        for cutting, leaf in wood.leaves():
            blank, piece = plan.blank_of[leaf.blank], plan.piece_of[cutting.stock]
            if blank.wood != wood.name:
                yield (
                    f"{wood.name}, {piece.id}, node {leaf.id}: blank {blank.id} is to be "
                    f"{blank.wood}."
                )
            elif piece.line not in blank.lines:
                yield (
                    f"{wood.name}, {piece.id}, node {leaf.id}: {piece.id} is {piece.line}; "
                    f"blank {blank.id} may be cut from {_listed(blank.lines)}."
                )
            else:
                for why in hindrances_of_shape(plan, wood.rules, blank, piece):
                    yield f"{wood.name}, {piece.id}, node {leaf.id}: {why}."


def turned_blanks_are_of_sheets(plan: Plan) -> Iterator[str]:
    """Ensures that nothing is turned across the grain of a board."""
    for blank in plan.blanks:
        boards = [
            piece.id
            for piece in plan.stock
            if is_listed(blank, piece) and not piece.is_sheet
        ]
        if blank.turned and boards:
            yield (
                f"blank {blank.id} lies across, and may be cut from {boards[0]}, which is "
                "no sheet."
            )


def stock_is_thick_enough(plan: Plan) -> Iterator[str]:
    """Ensures that a blank listed for a line finds stock there as thick as it and its parts."""
    for blank in plan.blanks:
        finished = max((plan.part_of[part].size[2] for part in blank.makes), default=0)
        for piece in plan.stock:
            if not is_listed(blank, piece):
                continue
            # What is planed already need only be as thick as the part ends at.
            least = max(finished, 0 if piece.planed else blank.thickness)
            if piece.thick + ROUNDED < least:
                yield (
                    f"{piece.id} ({piece.line}) is {plan.say(piece.thick)} thick; blank "
                    f"{blank.id}, which lists that line, needs {plan.say(least)}."
                )


def blanks_stay_out_of_trims_and_edges(plan: Plan) -> Iterator[str]:
    """Ensures that no blank reaches into what is trimmed off the ends and the near edge."""
    for wood in plan.woods:
        for cutting, leaf in wood.leaves():
            piece = plan.piece_of[cutting.stock]
            x0, y0, x1, _ = leaf.box
            for into, lost, words in (
                (piece.trims[0] - x0, piece.trims[0], "end trim at zero"),
                (x1 - piece.length + piece.trims[1], piece.trims[1], "far end trim"),
                (piece.edges[0] - y0, piece.edges[0], "near edge pass"),
            ):
                if into > 0:
                    yield (
                        f"{wood.name}, {piece.id} copy {cutting.copy}, node {leaf.id}: "
                        f"blank {leaf.blank} reaches {plan.say(into)} into the {words} "
                        f"of {plan.say(lost)}."
                    )


def _listed(lines: frozenset[str]) -> str:
    return " or ".join(sorted(lines)) or "nothing"


RULES = (
    shapes_are_of_one_piece,
    no_copy_is_cut_twice,
    blanks_come_from_stock_they_list,
    turned_blanks_are_of_sheets,
    stock_is_thick_enough,
    blanks_stay_out_of_trims_and_edges,
)
