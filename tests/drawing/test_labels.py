"""Words in a piece leave its knots in sight."""

from __future__ import annotations

import pytest

from yieldplan.drawing.labels import Fullness, Label, say
from yieldplan.drawing.scene import Rect, Text


@pytest.mark.parametrize("at", [10.0, 60.0, 90.0, 130.0])
def test_words_leave_a_knot_in_sight(at: float) -> None:
    knot = Rect(at, 4.0, at + 10.0, 20.0)
    label = Label(
        rect=Rect(0, 0, 200, 26), name="upper/side", number=1, setting="rip 5 1/4", avoid=(knot,)
    )  # fmt: skip
    words = say(label, Fullness.ONE_LINE)
    assert words is not None
    texts = [item.rect() for item in words if isinstance(item, Text)]
    assert texts
    # Where no place is free, at least three quarters of the knot stay in sight.
    hidden = sum(
        max(0.0, min(knot.x1, text.x1) - max(knot.x0, text.x0))
        * max(0.0, min(knot.y1, text.y1) - max(knot.y0, text.y0))
        for text in texts
    )
    assert hidden <= knot.width * knot.height / 4
