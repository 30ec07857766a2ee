"""What wishes cost, in a few lines of text: what was found, between what is proved."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from yieldplan.measure.money import CENT, down_to_the_cent, say_money
from yieldplan.model.price_of_a_wish import PriceOfAWish


def wishes_summary(prices: Sequence[PriceOfAWish], currency: str) -> Iterator[str]:
    """A line a wish, the dearest first."""
    yield ""
    if not prices:
        yield "The job states no wish that could be let go."
        return
    yield f"What each wish costs ({currency})"
    for price in sorted(prices, key=lambda each: (-each.found, each.words)):
        yield f"  {price.words}: {_said(price)}."
    yield "  Found: by planning again without it. The best plans differ by no less and no"
    yield "    more than the two figures after it."


def _said(price: PriceOfAWish) -> str:
    if price.unknown:
        return f"not known, {price.unknown}"
    if not price.woods or not price.most:
        return "nothing"
    least = say_money(down_to_the_cent(price.least))
    most = say_money(-(-price.most // CENT) * CENT)
    if price.least == price.most:
        return f"{most}, proved"
    return f"{say_money(down_to_the_cent(price.found))}, between {least} and {most}"
