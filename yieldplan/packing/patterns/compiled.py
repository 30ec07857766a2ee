"""The one door of the compiler, which is an extra: `pip install yieldplan[fast]`.

Functions that call each other stand in one file: what is compiled is kept on disk, file by
file, and compiled again when its own file has changed.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import ParamSpec, TypeVar

import numba

_P = ParamSpec("_P")
_R = TypeVar("_R")


def compiled(function: Callable[_P, _R]) -> Callable[_P, _R]:
    """The function compiled when it is first called, or read back from disk."""
    try:
        made: Callable[_P, _R] = numba.njit(cache=True, nogil=True)(function)
    except RuntimeError:
        # No folder can be written: then it is compiled each time.
        made = numba.njit(nogil=True)(function)
    return made
