"""Reads from a plan file which blanks it offered and which it cut, to compare the routes to a part."""

from __future__ import annotations

from collections.abc import Iterator

from yieldplan.measure.routes_taken import Routes
from yieldplan.measure.ways import Offer, Place, mean_prices, without_wood
from yieldplan.plan_file import Document


def routes_in(document: Document) -> Routes:
    """The routes of a plan file that has passed its check."""
    set_up = {part["id"] for part in document["parts"] if part["set_up"]}
    line_of = {piece["id"]: piece["line"] for piece in document["stock"]}
    return Routes(
        offers={
            blank["id"]: _offer(blank)
            for blank in document["blanks"]
            if not set(blank["makes"]) <= set_up
        },
        lines=mean_prices(
            (
                piece["line"],
                without_wood(piece["line"], piece["wood"]),
                piece["price"],
                piece["size"][0] * piece["size"][1],
                piece["planed"],
            )
            for piece in document["stock"]
        ),
        sawn=[
            (blank, line_of[cutting["stock"]])
            for wood in document["woods"]
            for cutting in wood["cuttings"]
            for blank in _blanks_of(cutting["tree"])
        ],
    )


def _offer(blank: Document) -> Offer:
    return Offer(
        route=blank["route"],
        area=blank["size"][0] * blank["size"][1],
        makes=blank["makes"],
        inside=tuple(
            Place(
                demand=place["part"],
                area=place["size"][0] * place["size"][1],
                slice=place["slice"],
            )
            for place in blank["inside"]
        ),
        lines=tuple(blank["stock"]),
        is_step=blank["step"] is not None,
    )


def _blanks_of(node: Document) -> Iterator[str]:
    if "blank" in node:
        yield node["blank"]
    for child in node.get("into", ()):
        yield from _blanks_of(child)
