"""Route left out: a way from stock to part the shop does not take; without the wish it may."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator

from yieldplan.model.job import Job
from yieldplan.wishes.wish import Stated, Wish


class RouteLeftOut(Wish):
    """One wish for each route the shop goes without."""

    def stated(self, job: Job) -> Iterator[Stated]:
        for route in job.shop.without:
            others = tuple(each for each in job.shop.without if each != route)
            shop = dataclasses.replace(job.shop, without=others)
            yield Stated(
                words=f"without the route {route}",
                without=dataclasses.replace(job, shop=shop),
            )
