"""One way for every property test to draw its examples: the same ones each time, no clock."""

from __future__ import annotations

from hypothesis import settings

# A heavy library loads inside the first example; a slow machine is no mistake.
settings.register_profile(
    "steady", max_examples=40, deadline=None, derandomize=True, database=None
)
settings.load_profile("steady")
