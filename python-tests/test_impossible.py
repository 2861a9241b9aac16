"""Input that cannot be planned: weights that are none, and walls without a layout with what makes them possible."""

from __future__ import annotations

import copy
import math
from typing import Any

import edgenail
import pytest

SHEETS = [{"name": "4x8", "width": "47 7/8", "length": "95 7/8", "category": "7/16", "price": 16}]
STOREY = {"kind": "storey", "name": "first", "stud": {"width": "1 1/2", "depth": "5 1/2", "length": "104 5/8"}}
WALL = {"name": "w", "length": "16 ft", "sections": [{"bottom": {"bears": "floor"}, "stack": [STOREY]}]}
SHORT: dict[str, Any] = {
    "walls": [WALL],
    "stock": {"sheets": SHEETS},
    "practice": {"running": "upright", "blocked_edges": "segments_only", "stagger_least": "30"},
}


@pytest.mark.parametrize("rate", [math.nan, math.inf, -math.inf, -1.0, -0.0001])
@pytest.mark.parametrize("path", ["/rates/set_8", "/rates/judgement/narrow_piece", "/stock/sheets/0/price"])
def test_a_weight_that_is_none_is_named(rate: float, path: str) -> None:
    house = copy.deepcopy({"walls": [WALL], "stock": {"sheets": SHEETS}})
    with pytest.raises(edgenail.InputError) as raised:
        edgenail.plan(put(house, path, rate))
    (issue,) = raised.value.issues
    assert issue.path == path
    assert issue.found.lower() == {math.inf: "infinity", -math.inf: "-infinity"}.get(rate, str(rate))
    assert issue.allowed and issue.message
    assert issue.code == ("out_of_range" if math.isfinite(rate) else "not_a_number")


def test_every_remedy_makes_the_wall_possible() -> None:
    with pytest.raises(edgenail.NoLayoutError) as raised:
        edgenail.plan(SHORT)
    error = raised.value
    assert error.wall == "w"
    paths = {unmet.path for remedy in error.remedies for unmet in remedy}
    assert {f"/walls/0/practice/{field}" for field in ("running", "blocked_edges", "stagger_least")} < paths
    assert "/stock/sheets/0/length" in paths
    for remedy in error.remedies:
        house = copy.deepcopy(SHORT)
        for unmet in remedy:
            assert unmet.demand in str(error)
            assert unmet.remedy in str(error)
            put(house, unmet.path, unmet.wanted)
        assert len(edgenail.plan(house).panels) > 0


def put(house: dict[str, Any], path: str, value: object) -> dict[str, Any]:
    """The house with a field set, and the objects on the way to it."""
    *way, last = path.split("/")[1:]
    here: Any = house
    for step in way:
        here = here[int(step)] if isinstance(here, list) else here.setdefault(step, {})
    here[last] = value
    return house
