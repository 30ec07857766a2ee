"""How parts meet: one joint a file."""

from __future__ import annotations

import sys
from collections.abc import Callable

from yieldplan import registry
from yieldplan.joints.joint import Joint

__all__ = ["Joint", "joints_that"]


def joints_that(serve: Callable[[type[Joint]], bool]) -> str:
    """The names of the joints that would do: `butt, rabbet or through dovetail`."""
    known = registry.find(sys.modules[__name__], Joint)  # type: ignore[type-abstract]
    *names, last = [name for name, kind in known.items() if serve(kind)]
    return f"{', '.join(names)} or {last}" if names else last
