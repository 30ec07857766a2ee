"""What a job may ask for only where an extra is installed."""

from __future__ import annotations

from importlib.util import find_spec

INSTALL_FAST = "pip install yieldplan[fast]"
"""What a person types for it."""


def is_fast_installed() -> bool:
    """Whether the compiler is there that laying narrow parts beside marks needs."""
    return find_spec("numba") is not None
