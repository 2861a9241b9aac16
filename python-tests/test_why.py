"""Why this layout and not another: the table of differences, and the same as text."""

from __future__ import annotations

import edgenail
import pytest

PLAN = edgenail.plan(edgenail.demo_house())


def test_the_differences_of_an_alternative_sum_to_its_difference() -> None:
    assert len(PLAN.alternatives) > 0
    for alternative in PLAN.alternatives:
        rows = [
            row["amount_difference"]
            for row in PLAN.differences
            if (row["wall"], row["alternative"]) == (alternative["wall"], alternative["place"])
        ]
        assert sum(map(int, rows)) == alternative["difference"]


def test_the_text_tells_every_alternative_and_every_part() -> None:
    for wall in PLAN.wall_names:
        text = PLAN.why(wall)
        summaries = [row["summary"] for row in PLAN.alternatives if row["wall"] == wall]
        for number, summary in enumerate(summaries, 1):
            assert f"Alternative {number}: {summary}." in text
        parts = [str(row["part"]).replace("_", " ") for row in PLAN.differences if row["wall"] == wall]
        assert sum(line.count(" (") for line in text.splitlines()) == len(parts)
        assert all(f"{part} (" in text for part in parts)


def test_a_wall_that_there_is_not_is_said() -> None:
    with pytest.raises(KeyError, match="no such wall"):
        PLAN.why("no such wall")
