"""The proofs of a floor as plain data of plan.json, and as lines of its text: they are long, and nobody reads them."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import Any

from yieldplan.model.plan import Bound
from yieldplan.model.proofs import Branch, Leaf, Limited, PriceRow

Document = dict[str, Any]
_KEYS = ("limited", "sets", "tried", "packs")


def bound_of(bound: Bound) -> Document:
    """The floor, its prices, and further proofs where there are any."""
    document: Document = {
        "value": bound.value,
        "priced": bound.priced,
        "family": bound.family,
        "prices": dict(sorted(bound.prices.items())),
    }
    if bound.as_asked:
        document["as_asked"] = True
    if bound.limited:
        document["limited"] = _limited(bound.limited)
    if bound.sets is not None:
        document["sets"] = {
            "least": bound.sets.least,
            "rows": _rows(bound.sets.rows),
            "tree": _node(bound.sets.tree),
        }
    if bound.tried is not None:
        document["tried"] = {
            "least": bound.tried.least,
            "rows": _rows(bound.tried.rows),
        }
    if bound.packs is not None:
        document["packs"] = {
            "least": bound.packs.least,
            "rows": _rows(bound.packs.rows),
        }
    return document


def _limited(limited: Sequence[Limited]) -> list[Document]:
    return [
        {"stock": list(each.stock), "prices": dict(sorted(each.prices.items()))}
        for each in limited
    ]


def _rows(rows: Sequence[PriceRow]) -> list[Document]:
    return [
        {"prices": dict(sorted(row.prices.items())), "limited": _limited(row.limited)}
        for row in rows
    ]


def _node(node: Branch | Leaf) -> Document:
    if isinstance(node, Leaf):
        return {"weights": [list(pair) for pair in node.weights], "of": node.of}
    return {
        "stock": node.stock,
        "at_most": node.at_most,
        "no_more": _node(node.no_more),
        "more": _node(node.more),
    }


def in_lines(document: Document) -> str:
    """The document as indented JSON, with each further proof on a line of its own."""
    proofs: list[Any] = []

    def set_aside(wood: Document) -> Document:
        bound = dict(wood["bound"])
        for key in _KEYS:
            if key in bound:
                # No text of a plan holds a control character.
                proofs.append(bound[key])
                bound[key] = f"\x00{len(proofs) - 1}"
        return {**wood, "bound": bound}

    woods = [set_aside(wood) for wood in document["woods"]]
    text = json.dumps({**document, "woods": woods}, ensure_ascii=False, indent=1)
    for number, proof in enumerate(proofs):
        line = json.dumps(proof, ensure_ascii=False, separators=(",", ":"))
        text = text.replace(f'"\\u0000{number}"', line, 1)
    return text
