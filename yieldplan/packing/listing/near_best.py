"""All patterns of a board that are worth nearly as much as its best one, by what they make.

Small jobs are proved by trying: of a choice of boards only patterns that lose little at
every row of prices can be part of a plan. They are found by walking the board from its near
end (see `walk`); what can still follow at best, by the same programs that find the best
pattern, tells which states are worth going on with.
"""

from __future__ import annotations

import numpy as np

from yieldplan.packing.grid.crossings import Bools, Ints
from yieldplan.packing.grid.pattern import Pattern
from yieldplan.packing.listing.allowance import Allowance
from yieldplan.packing.listing.counts import first_of_each
from yieldplan.packing.listing.near_layout import Joined, Layout, Stretch, in_order
from yieldplan.packing.listing.walk import Fillings, Walk
from yieldplan.packing.listing.weeding import undominated
from yieldplan.packing.patterns.values import LOW

HIGH = -LOW


class NearBest:
    """The patterns of one board in one layout that are worth enough at each row.

    Parameters
    ----------
    prices
        A row for each price vector, a column for each demand. [money/10,000]
    least
        For each row, the least worth that matters. [money/10,000]
    """

    def __init__(
        self, layout: Layout, prices: Ints, least: Ints, allowance: Allowance
    ) -> None:
        self.layout = layout
        self._prices = prices
        self._allowance = allowance
        rows, counts = len(prices), layout.counts
        self.made = np.zeros((0, counts.words), np.int64)
        self.most = np.zeros(rows, np.int64)
        if not layout.num_kinds:
            return
        self._priced = layout.price(prices)
        at_best = self._priced.at_best
        self._walks: dict[int, Walk] = {}
        marks = np.arange(layout.size + 1)
        self._ends = marks[:, None] + layout.sizes[None, :]
        self._may = (
            (layout.kind >= 0)
            & (self._ends <= layout.size)
            & (layout.sizes[None, :] > 0)
        )
        labels = np.broadcast_to(np.arange(len(layout.sizes)), layout.kind.shape)
        self._value = np.where(self._may[None], at_best[:, layout.kind, labels], LOW)
        self._of_joined = [self._value_of(each, at_best) for each in layout.joined]
        self._after = self._best_after()
        self.most = self._after[:, 0]
        self._least_at = least[:, None] - self._after
        needed = np.full((rows, layout.num_kinds, len(layout.sizes)), HIGH, np.int64)
        is_wanted = np.zeros((layout.num_kinds, len(layout.sizes)), np.bool_)
        if (self.most < least).any():
            return
        self._ask(needed, is_wanted, at_best)
        longest = int(np.flatnonzero(is_wanted.any(axis=0)).max(initial=0))
        self._priced.begin(self.most - least, longest, allowance)
        contents = self._contents(needed, is_wanted)
        self._walk = Walk(
            counts,
            prices,
            layout.size,
            contents,
            self._valid,
            lambda ends, _: self._least_at[:, ends],
            allowance,
        )
        states = self._walk.states
        self._kept = first_of_each(states.made, states.size)
        self._kept = self._kept[
            undominated(
                counts, states.made[self._kept], states.size[self._kept] * 0, allowance
            )
        ]
        self.made = states.made[self._kept]

    # -- what is worth looking at ----------------------------------------------

    def _value_of(self, joined: Joined, at_best: Ints) -> Ints:
        """Of joined stretches, by row and the cell they begin at."""
        may = joined.kinds[:, 0] >= 0
        own = self.layout.counts.unpack(joined.made) @ self._prices.T
        value = np.repeat(own.T, len(may), axis=1)
        for place, label in enumerate(joined.parts):
            value = value + at_best[:, joined.kinds[:, place], label]
        return np.where(may[None], value, LOW)

    def _best_after(self) -> Ints:
        """What the stretches from each cell on are worth at best, by row."""
        size = self.layout.size
        after = np.zeros((len(self._prices), size + 1), np.int64)
        for at in range(size - 1, -1, -1):
            best = after[:, at + 1].copy()
            may = np.flatnonzero(self._may[at])
            if len(may):
                found = self._value[:, at, may] + after[:, self._ends[at, may]]
                np.maximum(best, found.max(axis=1), out=best)
            for joined, value in zip(self.layout.joined, self._of_joined, strict=True):
                if at + joined.size <= size:
                    found = value[:, at] + after[:, at + joined.size]
                    np.maximum(best, found, out=best)
            after[:, at] = best
        return after

    def _best_before(self) -> Ints:
        """What the stretches up to each cell are worth at best, by row."""
        layout = self.layout
        before = np.zeros((len(self._prices), layout.size + 1), np.int64)
        labels = np.flatnonzero(layout.sizes > 0)
        for end in range(1, layout.size + 1):
            best = before[:, end - 1].copy()
            begins = end - layout.sizes[labels]
            may = begins >= 0
            begins = begins[may]
            if len(begins):
                found = before[:, begins] + self._value[:, begins, labels[may]]
                np.maximum(best, found.max(axis=1), out=best)
            for joined, value in zip(layout.joined, self._of_joined, strict=True):
                if end >= joined.size:
                    begin = end - joined.size
                    np.maximum(best, before[:, begin] + value[:, begin], out=best)
            before[:, end] = best
        return before

    def _ask(self, needed: Ints, is_wanted: Bools, at_best: Ints) -> None:
        """What each kind and label must be worth at least to be of any use."""
        layout = self.layout
        before = self._best_before()
        ends = np.minimum(self._ends, layout.size)
        asked = self._least_at[:, ends] - before[:, :, None]
        alive = self._may & (self._value >= asked).all(axis=0)
        at, labels = np.nonzero(alive)
        kinds = layout.kind[at, labels]
        is_wanted[kinds, labels] = True
        for row in range(len(self._prices)):
            np.minimum.at(needed[row], (kinds, labels), asked[row, at, labels])
        for joined, value in zip(layout.joined, self._of_joined, strict=True):
            starts = np.arange(max(0, layout.size - joined.size + 1))
            asked_of = self._least_at[:, starts + joined.size] - before[:, starts]
            fits = (value[:, starts] >= asked_of).all(axis=0)
            fits &= joined.kinds[starts, 0] >= 0
            for start in np.flatnonzero(fits).tolist():
                for place, label in enumerate(joined.parts):
                    kind = int(joined.kinds[start, place])
                    is_wanted[kind, label] = True
                    others = value[:, start] - at_best[:, kind, label]
                    needed[:, kind, label] = np.minimum(
                        needed[:, kind, label], asked_of[:, start] - others
                    )

    # -- what the stretches hold -----------------------------------------------

    def _contents(self, needed: Ints, is_wanted: Bools) -> Fillings:
        layout, counts = self.layout, self.layout.counts
        found: list[Fillings] = []
        # Of each content: its kind, and the joined stretches it is, or the state it has.
        self._source: list[tuple[int, tuple[tuple[int, Walk | None, int], ...]]] = []
        kinds: list[Ints] = []
        for kind in np.flatnonzero(is_wanted.any(axis=1)).tolist():
            least = np.where(is_wanted[kind][None], needed[:, kind], HIGH)
            walk = self._walks[kind] = self._priced.fill(kind, least, self._allowance)
            states = walk.states
            keep = layout.sizes[states.label] > 0
            keep &= states.made.any(axis=1)
            keep &= is_wanted[kind, states.label]
            keep &= (least[:, states.label] <= states.worth.T).all(axis=0)
            places = np.flatnonzero(keep)
            places = places[first_of_each(states.made[places], states.label[places])]
            places = places[
                undominated(
                    counts, states.made[places], states.label[places], self._allowance
                )
            ]
            chosen = states.at(places)
            chosen.size = layout.sizes[chosen.label]
            chosen.label = chosen.label * 0
            found.append(chosen)
            kinds.append(np.full(len(places), kind, np.int64))
            self._source += [(kind, ((kind, walk, int(s)),)) for s in places]
        num_single = len(self._source)
        self._starts_of: list[tuple[int, Bools, Bools]] = []
        for number in range(len(layout.joined)):
            self._add_joined(number, found, kinds)
        self._kinds = np.concatenate(kinds) if kinds else np.zeros(0, np.int64)
        self._num_single = num_single
        none = np.zeros(0, np.int64)
        empty = Fillings(
            np.zeros((0, counts.words), np.int64),
            none,
            none,
            np.zeros((0, len(self._prices)), np.int64),
        )
        all_ = [empty, *found]
        contents = Fillings(
            np.concatenate([each.made for each in all_]),
            np.concatenate([each.size for each in all_]),
            np.concatenate([each.label for each in all_]),
            np.concatenate([each.worth for each in all_]),
        )
        self._label_of_size = np.full(layout.size + 2, -1, np.int64)
        for label, size in enumerate(layout.sizes.tolist()):
            if 0 < size <= layout.size:
                self._label_of_size[size] = label
        self._label = self._label_of_size[contents.size[:num_single]]
        self._contents_size = contents.size
        return contents

    def _add_joined(
        self, number: int, found: list[Fillings], kinds: list[Ints]
    ) -> None:
        """What a set in steps can hold, for each row of kinds it may stand in."""
        counts, joined = self.layout.counts, self.layout.joined[number]
        rows = joined.kinds[joined.kinds[:, 0] >= 0]
        for row in np.unique(rows, axis=0):
            made = joined.made
            chosen: list[tuple[tuple[int, Walk, int], ...]] = [()]
            for kind, label in zip(row.tolist(), joined.parts, strict=True):
                walk = self._walks.get(kind)
                if walk is None:
                    continue
                fits = np.flatnonzero(walk.states.label <= label)
                self._allowance.take(len(made) * len(fits))
                one = np.repeat(np.arange(len(made)), len(fits))
                other = np.tile(fits, len(made))
                made, _ = counts.add(made[one], walk.states.made[other])
                chosen = [
                    (*chosen[a], (kind, walk, int(b)))
                    for a, b in zip(one.tolist(), other.tolist(), strict=True)
                ]
                kept = first_of_each(made, np.zeros(len(made), np.int64))
                kept = kept[undominated(counts, made[kept], kept * 0, self._allowance)]
                made, chosen = made[kept], [chosen[a] for a in kept.tolist()]
            here = (joined.kinds == row[None]).all(axis=1)
            fresh = here.copy()
            fresh[1:] &= ~here[:-1]
            none = np.zeros(len(made), np.int64)
            found.append(
                Fillings(
                    made,
                    none + joined.size,
                    none,
                    counts.unpack(made) @ self._prices.T,
                )
            )
            kinds.append(none - 1 - len(self._starts_of))
            self._starts_of.append((number, here, fresh))
            # Every step has a stretch of its own, also where nothing lies beside it.
            self._source += [
                (-1 - number, in_order(row.tolist(), each)) for each in chosen
            ]

    def _valid(self, at: int) -> tuple[Bools, Bools]:
        layout = self.layout
        now = np.zeros(len(self._kinds), np.bool_)
        fresh = np.zeros(len(self._kinds), np.bool_)
        single = slice(0, self._num_single)
        fits = at + self._contents_size[single] <= layout.size
        now[single] = fits & (layout.kind[at, self._label] == self._kinds[single])
        if layout.is_fresh[at]:
            fresh[single] = now[single]
        for number, (_, here, is_fresh) in enumerate(self._starts_of):
            mine = self._kinds == -1 - number
            now[mine] = here[at]
            fresh[mine] = is_fresh[at]
        return now, fresh

    # -- back to a pattern -----------------------------------------------------

    def pattern(self, number: int) -> Pattern:
        """The pattern behind a row of `made`."""
        stretches: list[Stretch] = []
        for content, begin in self._walk.way_to(int(self._kept[number])):
            kind, parts = self._source[content]
            if kind >= 0:
                size = int(self._contents_size[content])
                stretches.append(Stretch(begin, size, *parts[0]))
                continue
            joined = self.layout.joined[-1 - kind]
            at = begin
            for part, label in zip(parts, joined.parts, strict=True):
                size = int(self.layout.sizes[label])
                stretches.append(Stretch(at, size, *part))
                at += size
        return self._priced.pattern(stretches)
