"""Whether pieces fit on one sheet by cuts that run from edge to edge: by the sizes that such cuts can make of them."""

from __future__ import annotations

import time
from collections.abc import Iterator
from itertools import product

from lists import CutList

Counts = tuple[int, ...]
"""How many pieces of each type."""
Sizes = tuple[tuple[int, int], ...]
"""Rectangles from which the same pieces can be cut, none of which holds another."""


class OutOfTime(Exception):
    """The time that a reference is given is spent."""


class Sheet:
    """One sheet of a list: answers are kept, since models ask for the same pieces again and again."""

    def __init__(self, cut_list: CutList, until: float) -> None:
        self.types = [size for size, _ in cut_list.types]
        self.wanted = tuple(count for _, count in cut_list.types)
        self.room = cut_list.room
        self.turn = cut_list.turn
        self.until = until
        self._known: dict[Counts, Sizes] = {}

    def fits(self, counts: Counts) -> bool:
        """Whether so many pieces of each type fit together."""
        return bool(self._sizes(counts))

    def check_time(self) -> None:
        """Raises ``OutOfTime`` when it is spent."""
        if time.perf_counter() > self.until:
            raise OutOfTime

    def _sizes(self, counts: Counts) -> Sizes:
        known = self._known.get(counts)
        if known is None:
            self.check_time()
            area = sum(n * w * h for n, (w, h) in zip(counts, self.types, strict=True))
            known = () if area > self.room[0] * self.room[1] else self._least(counts)
            self._known[counts] = known
        return known

    def _least(self, counts: Counts) -> Sizes:
        width, height = self.room
        found: set[tuple[int, int]] = set()
        if sum(counts) == 1:
            size = self.types[counts.index(1)]
            found = {size, size[::-1]} if self.turn else {size}
            return _pareto({(w, h) for w, h in found if w <= width and h <= height})
        for part in _halves(counts):
            rest = tuple(all_ - some for all_, some in zip(counts, part, strict=True))
            one, other = self._sizes(part), self._sizes(rest)
            # A part that does not fit alone does not fit with more beside it.
            if not one or not other:
                return ()
            for (w1, h1), (w2, h2) in product(one, other):
                if w1 + w2 <= width:
                    found.add((w1 + w2, max(h1, h2)))
                if h1 + h2 <= height:
                    found.add((max(w1, w2), h1 + h2))
        return _pareto(found)


def _pareto(sizes: set[tuple[int, int]]) -> Sizes:
    kept: list[tuple[int, int]] = []
    for size in sorted(sizes):
        if not kept or size[1] < kept[-1][1]:
            kept.append(size)
    return tuple(kept)


def _halves(counts: Counts) -> Iterator[Counts]:
    """Every way to part the pieces in two, once: the first type's first piece is in the part that is given."""
    first = next(place for place, count in enumerate(counts) if count)
    ranges = [range(count + 1) for count in counts]
    ranges[first] = range(1, counts[first] + 1)
    return (part for part in product(*ranges) if part != counts)
