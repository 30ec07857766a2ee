"""Asserts, cell by cell, that a pattern is one of its family and clear of forbidden marks."""

from __future__ import annotations

from tests.packing.from_the_page import Page
from yieldplan.packing.pattern import Pattern
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
        top = 0
        for strip in section.strips:
            assert top <= strip.u < strip.v <= page.across
            top = strip.v
            mark = section.i
            for cut in strip.cuts:
                long, wide = page.takes(cut.item)
                assert mark <= cut.i
                assert cut.j == cut.i + long
                assert cut.j <= section.j
                assert wide <= strip.v - strip.u
                assert cut.item in piece.holds
                i, j = (cut.i, cut.j)
                if pattern.breakdown == "C":
                    i, j = section.i, section.j
                assert page.may_lie(cut.item, i, j, strip.u, strip.v)
                mark = cut.j
