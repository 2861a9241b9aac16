"""What if, from Python: against the two plans, on a house that was planned from text, values or a batch."""

from __future__ import annotations

from decimal import Decimal

import edgenail
import pytest

HOUSE = {
    "name": "two",
    "walls": [{"name": "north", "length": "16 ft"}, {"name": "east", "length": "8 ft"}],
}
LONGER = [{"op": "replace", "path": "/walls/0/length", "value": edgenail.Length("20 ft")}]


def test_the_difference_is_one_plan_less_the_other() -> None:
    before = edgenail.plan(HOUSE)
    found = before.what_if(LONGER)
    after = edgenail.plan({**HOUSE, "walls": [{"name": "north", "length": "20 ft"}, HOUSE["walls"][1]]})
    assert found.plan.json == after.json
    assert found.unchanged_walls == ["east"]
    nails = [sum(int(count) for count in plan.walls["nails"]) for plan in (before, after)]
    (row,) = (row for row in found.table if row["part"] == "total" and row["quantity"] == "nails")
    assert [int(row["before"]), int(row["after"])] == nails
    assert int(row["difference"]) == nails[1] - nails[0]
    house = [
        {
            (line["what"], line["item"], line["serves"], line["place"]): Decimal(int(line["minutes"])) / 10_000
            for line in plan.takeoff
            if line["scope"] == "house"
        }
        for plan in (before, after)
    ]
    told = [
        Decimal(str(row["difference"]))
        for row in found.table
        if row["part"] == "takeoff" and row["scope"] == "house" and row["quantity"] == "minutes"
    ]
    assert sum(told) == sum(house[1].values()) - sum(house[0].values())


def test_changes_may_be_text_and_follow_each_other() -> None:
    plan = edgenail.plan(edgenail.demo_house())
    text = '[{"op": "replace", "path": "/stock/sheets/0/price", "value": "17.25"}]'
    found = plan.what_if(text)
    assert found.to_dict()["after"]["money"] > found.to_dict()["before"]["money"]
    again = found.plan.what_if('[{"op": "test", "path": "/stock/sheets/0/price", "value": "17.25"}]')
    assert len(again.unchanged_walls) == len(again.plan.wall_names)
    assert "unchanged" in again._repr_html_()


def test_a_plan_of_a_batch_may_be_changed_too() -> None:
    (outcome,) = edgenail.plan_batch([HOUSE], plans=True)
    assert outcome.plan is not None
    found = outcome.plan.what_if(LONGER)
    assert found.plan.takeoff.to_csv() == edgenail.plan(HOUSE).what_if(LONGER).plan.takeoff.to_csv()


def test_faults_of_changes_have_their_pointers() -> None:
    plan = edgenail.plan(HOUSE)
    with pytest.raises(edgenail.InputError) as raised:
        plan.what_if([{"op": "replace", "path": "/walls/9/length", "value": "9 ft"}])
    assert (raised.value.code, raised.value.path) == ("nothing_there", "/0/path")
    with pytest.raises(edgenail.InputError) as raised:
        plan.what_if([{"op": "replace", "path": "/walls/0/length", "value": "-9 ft"}])
    assert raised.value.path == "/walls/0/length"
