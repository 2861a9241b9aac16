"""What somebody makes of a list."""

from __future__ import annotations

import time
from dataclasses import dataclass

from ortools.sat.python import cp_model


@dataclass(frozen=True)
class Outcome:
    """Sheets that are needed, those that any plan needs, and the time."""

    sheets: int | None
    """None where there is no plan."""
    bound: int | None
    proven: bool
    seconds: float

    @classmethod
    def of(cls, model: cp_model.CpModel, start: float, seconds: float) -> Outcome:
        """What CP-SAT makes of a model until its time is spent."""
        cp = solver(start + seconds - time.perf_counter())
        status = cp.solve(model)
        found = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
        return cls(
            round(cp.objective_value) if found else None,
            round(cp.best_objective_bound) if found else None,
            status == cp_model.OPTIMAL,
            time.perf_counter() - start,
        )


def solver(seconds: float) -> cp_model.CpSolver:
    """CP-SAT on one thread."""
    cp = cp_model.CpSolver()
    cp.parameters.num_workers = 1
    cp.parameters.random_seed = 1
    cp.parameters.max_time_in_seconds = max(0.01, seconds)
    return cp
