"""Further proofs in plan.json: written whole, each on a line of its own."""

from __future__ import annotations

import json
from dataclasses import replace

from tests.measure.hall_case import make_plan
from yieldplan import plan_file
from yieldplan.model.proofs import Branch, Leaf, Limited, PriceRow, SetsProof

LESS = Limited(stock=("W07",), prices={"rail": 100})
ROW = PriceRow(prices={"rail": 200}, limited=(LESS,))
TREE = Branch(
    stock="W07",
    at_most=0,
    no_more=Leaf(weights=((0, 3),), of=2),
    more=Leaf(weights=(), of=1),
)


def test_proofs_stand_in_the_file_as_the_page_says() -> None:
    plan = make_plan()
    bound = replace(
        plan.woods[0].bound,
        limited=(LESS,),
        sets=SetsProof(least=387_600, rows=(ROW,), tree=TREE),
    )
    wood = replace(plan.woods[0], bound=bound)
    document = plan_file.write(replace(plan, woods=(wood,)))
    written = document["woods"][0]["bound"]
    less = {"stock": ["W07"], "prices": {"rail": 100}}
    assert written["limited"] == [less]
    assert written["sets"] == {
        "least": 387_600,
        "rows": [{"prices": {"rail": 200}, "limited": [less]}],
        "tree": {
            "stock": "W07",
            "at_most": 0,
            "no_more": {"weights": [[0, 3]], "of": 2},
            "more": {"weights": [], "of": 1},
        },
    }
    text = plan_file.dump(document).decode()
    assert json.loads(text) == document
    lines = [line for line in text.splitlines() if '"tree":{' in line]
    assert len(lines) == 1
    assert lines[0].lstrip().startswith('"sets": {"least":387600')


def test_a_plan_without_further_proofs_has_no_keys_for_them() -> None:
    written = plan_file.write(make_plan())["woods"][0]["bound"]
    assert list(written) == ["value", "priced", "family", "prices"]
