"""What a drawer says of its own comes before what the shop says for all."""

from __future__ import annotations

from yieldplan.job.assembly_tables import merged


def test_a_wood_replaces_the_shared_sheet_and_the_other_way() -> None:
    sheet, wood = (
        {"bottom": {"sheet": "ply", "in": "groove"}},
        {"bottom": {"wood": "oak"}},
    )
    assert merged(sheet, wood) == {"bottom": {"wood": "oak", "in": "groove"}}
    assert merged(wood, {"bottom": {"sheet": "ply"}}) == {"bottom": {"sheet": "ply"}}
