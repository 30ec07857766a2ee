"""Figures under a board stay clear of each other and of the lines that lead to them."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from yieldplan.drawing.running_marks import Figure, draw, rows_needed
from yieldplan.drawing.scene import Line, Scene, Text


def _drawn(figures: list[Figure], right: float = 690.0) -> Scene:
    scene = Scene(691.0, 20.0 + rows_needed(figures, right) * 14.0 + 20)
    scene.extend(draw(figures, 30.0, 20.0, right))
    return scene


def test_figures_with_room_stand_in_one_row_under_their_marks() -> None:
    figures = [Figure(x=100.0, says="6"), Figure(x=200.0, says="30 1/2")]
    texts = [t for t in _drawn(figures).texts() if t.text != "0"]
    assert [(t.x, t.size) for t in texts] == [(100.0, 12.0), (200.0, 12.0)]
    assert rows_needed(figures, 690.0) == 1


def test_close_marks_take_a_second_row_or_stand_beside_their_lines() -> None:
    figures = [Figure(x=100.0 + 15 * n, says=f"{20 + 4 * n} 1/2") for n in range(5)]
    scene = _drawn(figures)
    assert scene.collisions() == []
    assert len([t for t in scene.texts() if t.text != "0"]) == 5


@given(
    st.lists(st.integers(18, 120), min_size=1, max_size=14).filter(
        lambda gaps: sum(gaps) < 600
    )
)
def test_whatever_the_marks_no_figure_is_lost_or_crossed(gaps: list[int]) -> None:
    x, figures = 30.0, []
    for number, gap in enumerate(gaps):
        x += gap
        figures.append(Figure(x=x, says=f"{10 * number + 11} 1/2"))
    scene = _drawn(figures)
    texts = [t for t in scene.texts() if t.text != "0"]
    assert len(texts) == len(figures)
    assert scene.collisions() == []
    for item in scene.items:
        if isinstance(item, Line) and item.x0 == item.x1:
            crossed = [
                t.text for t in texts
                if t.rect().x0 + 0.5 < item.x0 < t.rect().x1 - 0.5
                and t.rect().y0 + 2 < item.y1
                and item.x0 != t.x
            ]  # fmt: skip
            assert crossed == []


def test_the_figure_of_the_last_mark_never_passes_the_margin() -> None:
    figures = [Figure(x=688.0, says="166 1/2")]
    (text,) = [t for t in _drawn(figures).texts() if t.text != "0"]
    assert isinstance(text, Text)
    assert text.rect().x1 <= 690.0
