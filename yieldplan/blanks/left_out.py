"""Which routes a shop takes: all there are, but for those it says under `without`."""

from __future__ import annotations

from collections.abc import Mapping

from yieldplan.blanks.route import Route
from yieldplan.faults import Faults, Where, did_you_mean
from yieldplan.model.job import Job
from yieldplan.model.shop import Shop


def is_left_out(route: str, shop: Shop) -> bool:
    """Whether the shop does without the route of this name."""
    return _loosely(route) in {_loosely(name) for name in shop.without}


def routes_taken(
    known: Mapping[str, type[Route]], job: Job, faults: Faults
) -> dict[str, type[Route]]:
    """The routes that are not left out, by name; a name that is none goes to `faults`."""
    where = Where(file=job.file, key="shop.without")
    names = {_loosely(name): name for name in known}
    can_go = [name for name, route in known.items() if route.may_be_left_out]
    for written in job.shop.without:
        name = names.get(_loosely(written))
        if name is None:
            faults.add(
                where,
                written,
                "no way from stock to part is called this",
                did_you_mean(written, can_go),
            )
        elif name not in can_go:
            faults.add(
                where,
                written,
                "no shop can do without it: there would be parts that nothing makes",
                f"Leave it out of the list; these may stand there: {', '.join(can_go)}",
            )
    return {
        name: route
        for name, route in sorted(known.items())
        if name not in can_go or not is_left_out(name, job.shop)
    }


def _loosely(name: str) -> str:
    return " ".join(name.casefold().replace("-", " ").replace("_", " ").split())
