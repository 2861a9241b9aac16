"""The pattern model: every set of pieces that fits on one sheet is a column; CP-SAT covers the list with the fewest."""

from __future__ import annotations

import time

from edge_to_edge import Counts, OutOfTime, Sheet
from lists import CutList
from ortools.sat.python import cp_model
from outcome import Outcome

MOST_PATTERNS = 200_000


def solve(cut_list: CutList, seconds: float) -> Outcome:
    """The fewest sheets by covering with patterns; unproven where the time or the patterns are too many."""
    start = time.perf_counter()
    sheet = Sheet(cut_list, start + seconds)
    try:
        columns = _largest(_patterns(sheet), sheet)
    except OutOfTime:
        return Outcome(None, None, False, time.perf_counter() - start)
    model = cp_model.CpModel()
    most = sum(sheet.wanted)
    used = [model.new_int_var(0, most, f"pattern {place}") for place in range(len(columns))]
    for kind, wanted in enumerate(sheet.wanted):
        cut = sum(column[kind] * times for column, times in zip(columns, used, strict=True) if column[kind])
        model.add(cut >= wanted)
    model.minimize(sum(used))
    return Outcome.of(model, start, seconds)


def _patterns(sheet: Sheet) -> set[Counts]:
    """All sets that fit, grown piece by piece from those that do."""
    nothing = tuple(0 for _ in sheet.types)
    found: set[Counts] = set()
    last = {nothing}
    while last:
        more: set[Counts] = set()
        for counts in last:
            for kind, wanted in enumerate(sheet.wanted):
                if counts[kind] < wanted:
                    larger = (*counts[:kind], counts[kind] + 1, *counts[kind + 1 :])
                    if larger not in more and sheet.fits(larger):
                        more.add(larger)
            if len(found) + len(more) > MOST_PATTERNS:
                raise OutOfTime
        found |= more
        last = more
    return found


def _largest(patterns: set[Counts], sheet: Sheet) -> list[Counts]:
    """Patterns to which no piece of the list can be added."""

    def grows(counts: Counts) -> bool:
        return any(
            counts[kind] < wanted and (*counts[:kind], counts[kind] + 1, *counts[kind + 1 :]) in patterns
            for kind, wanted in enumerate(sheet.wanted)
        )

    return sorted(counts for counts in patterns if not grows(counts))
