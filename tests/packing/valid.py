"""Asserts, cell by cell, that a pattern is one of its family and clear of forbidden marks."""

from __future__ import annotations

from tests.packing.from_the_page import Page
from yieldplan.packing.grid.pattern import Cut, Pattern, Strip
from yieldplan.packing.problem import Problem


def assert_is_of_its_family(pattern: Pattern, problem: Problem) -> None:
    """Sections, strips and cuts in order, inside each other, each blank allowed."""
    piece = problem.bins[pattern.bin]
    page = Page(problem, piece)
    at = 0
    for section in pattern.sections:
        assert at <= section.i < section.j <= page.along
        at = section.j
        if pattern.breakdown == "R":
            assert (section.i, section.j) == (0, page.along)
        across, _ = page.room(section.i, section.j, pattern.breakdown)
        top = 0
        for strip in section.strips:
            assert top <= strip.u < strip.v <= across
            top = strip.v
            mark = section.i
            for cut in strip.cuts:
                long, wide = page.takes(cut.item)
                assert mark <= cut.i
                assert cut.j == cut.i + long
                assert cut.j <= section.j
                assert wide <= strip.v - strip.u
                assert cut.item in piece.holds
                mark = cut.j
                if cut.across is not None:
                    assert problem.family.endswith("+")
                    assert_lies_beside_marks(cut, strip, page)
                    continue
                i, j = (cut.i, cut.j)
                if pattern.breakdown == "C":
                    i, j = section.i, section.j
                assert page.may_lie(cut.item, i, j, strip.u, strip.v, pattern.breakdown)
    assert_sets_are_whole(pattern, problem, page)


def assert_lies_beside_marks(cut: Cut, strip: Strip, page: Page) -> None:
    """On a straight board, within its strip, clear on its own cells and in its zones."""
    assert page.piece.is_straight
    assert cut.across is not None
    low, high = cut.across
    assert strip.u <= low
    assert high <= strip.v
    assert high - low == page.takes(cut.item)[1]
    assert page.may_lie(cut.item, cut.i, cut.j, low, high, "R")


def assert_sets_are_whole(pattern: Pattern, problem: Problem, page: Page) -> None:
    """Each step alone in its section at the near edge, in order, one face up for all."""
    begun: tuple[int, ...] = ()
    done, at = 0, 0
    ways = {0, 1}
    for section in pattern.sections:
        steps = [cut for cut in section.cuts() if cut.item in problem.in_sets()]
        assert len(steps) <= 1
        if begun and done < len(begun):
            assert steps
            assert section.i == at
        if not steps:
            continue
        (cut,) = steps
        if not begun or done == len(begun):
            (begun,) = (each for each in problem.sets if each[0] == cut.item)
            done, ways = 0, {0, 1}
        assert cut.item == begun[done]
        assert (cut.i, cut.j) == (section.i, section.j)
        (strip,) = (each for each in section.strips if cut in each.cuts)
        assert strip.u == 0
        ways &= page.ways_up(cut.item, cut.i, cut.j, 0, strip.v, "C")
        assert ways
        done, at = done + 1, section.j
    assert done == len(begun)
