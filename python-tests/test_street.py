"""Houses of a street, from Python: each piece once, sheets counted apart from the library."""

from __future__ import annotations

import edgenail
import pytest


def lots() -> list[edgenail.Plan]:
    return [
        edgenail.plan({"name": f"lot {feet}", "walls": [{"name": "front", "length": f"{feet} ft"}]})
        for feet in (10, 14, 9, 13, 6)
    ]


def test_the_street_saves_sheets_and_says_where_they_go() -> None:
    plans = lots()
    found = edgenail.street(plans)
    told = found.to_dict()
    new = [sheet for sheet in told["cutting"]["sheets"] if sheet["source"]["kind"] == "sheet"]
    assert sum(int(count) for count in found.deliveries["delivered"]) == len(new)
    alone = [
        sheet
        for plan in plans
        for sheet in plan.to_dict()["cutting"]["sheets"]
        if sheet["source"]["kind"] == "sheet"
    ]
    assert sum(int(count) for count in found.deliveries["alone"]) == len(alone) > len(new)
    assert all(carried["from"] < carried["to"] for carried in told["carried"])
    assert found.json == edgenail.street(plans).json
    assert "deliveries" in repr(found)


def test_unlike_houses_are_told() -> None:
    sheet = {"name": "other", "width": "48", "length": "96", "category": "7/16"}
    other = edgenail.plan({"walls": [{"name": "a", "length": "8 ft"}], "stock": {"sheets": [sheet]}})
    with pytest.raises(edgenail.InputError) as caught:
        edgenail.street([*lots(), other])
    assert caught.value.issues[0].path == "/5/stock/sheets"


def test_no_house_is_an_empty_street() -> None:
    assert len(edgenail.street([]).deliveries) == 0
