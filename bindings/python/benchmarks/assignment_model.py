"""The assignment model: CP-SAT gives every sheet its pieces by area; sets that do not fit by edge-to-edge cuts are
forbidden, one after the other, until every sheet of the solution can be cut."""

from __future__ import annotations

import time

from edge_to_edge import Counts, OutOfTime, Sheet
from lists import CutList
from ortools.sat.python import cp_model
from outcome import Outcome, solver


def solve(cut_list: CutList, seconds: float) -> Outcome:
    """The fewest sheets by assigning pieces; unproven where the time is spent."""
    start = time.perf_counter()
    sheet = Sheet(cut_list, start + seconds)
    forbidden = _pairs(sheet)
    area = sum(n * w * h for n, (w, h) in zip(sheet.wanted, sheet.types, strict=True))
    sheets = max(1, -(-area // (sheet.room[0] * sheet.room[1])))
    try:
        # The least number of sheets with a solution: every smaller one was shown to have none.
        while True:
            solution = _assign(sheet, sheets, forbidden)
            if solution is None:
                sheets += 1
                continue
            bad = {counts for counts in solution if not sheet.fits(counts)}
            if not bad:
                return Outcome(sheets, sheets, True, time.perf_counter() - start)
            forbidden.extend(_smallest(sheet, counts) for counts in sorted(bad))
    except OutOfTime:
        return Outcome(None, sheets, False, time.perf_counter() - start)


def _assign(sheet: Sheet, sheets: int, forbidden: list[Counts]) -> list[Counts] | None:
    """Pieces for so many sheets that no forbidden set is part of; nothing where there are none."""
    model = cp_model.CpModel()
    kinds = range(len(sheet.types))
    has = [
        [model.new_int_var(0, sheet.wanted[kind], f"{kind} on {at}") for kind in kinds] for at in range(sheets)
    ]
    for kind in kinds:
        model.add(sum(row[kind] for row in has) == sheet.wanted[kind])
    areas = [w * h for w, h in sheet.types]
    filled = [sum(areas[kind] * row[kind] for kind in kinds) for row in has]
    for at, row in enumerate(has):
        model.add(filled[at] <= sheet.room[0] * sheet.room[1])
        if at:
            model.add(filled[at - 1] >= filled[at])
        reaches: dict[tuple[int, int], cp_model.IntVar] = {}
        for counts in forbidden:
            literals = []
            for kind, count in enumerate(counts):
                if count:
                    if (kind, count) not in reaches:
                        at_least = model.new_bool_var("")
                        model.add(row[kind] >= count).only_enforce_if(at_least)
                        model.add(row[kind] < count).only_enforce_if(~at_least)
                        reaches[kind, count] = at_least
                    literals.append(~reaches[kind, count])
            model.add_bool_or(literals)
    sheet.check_time()
    cp = solver(sheet.until - time.perf_counter())
    status = cp.solve(model)
    if status == cp_model.INFEASIBLE:
        return None
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        raise OutOfTime
    return [tuple(cp.value(var) for var in row) for row in has]


def _pairs(sheet: Sheet) -> list[Counts]:
    """Two pieces that do not fit together."""
    kinds = range(len(sheet.types))
    pairs = (
        tuple(int(kind == one) + int(kind == other) for kind in kinds) for one in kinds for other in kinds if one <= other
    )
    wanted = (pair for pair in pairs if all(n <= most for n, most in zip(pair, sheet.wanted, strict=True)))
    return [pair for pair in wanted if not sheet.fits(pair)]


def _smallest(sheet: Sheet, counts: Counts) -> Counts:
    """A part of a set that does not fit, of which no part is left out without making it fit."""
    for kind in range(len(counts)):
        while counts[kind]:
            less = (*counts[:kind], counts[kind] - 1, *counts[kind + 1 :])
            if sum(less) == 0 or sheet.fits(less):
                break
            counts = less
    return counts
