"""The collected values of the standards, read by Python's own reader, against what the library answers."""

from __future__ import annotations

import csv
from typing import Any, Literal

import edgenail
import pytest
from cases import ROOT

FOLDER = ROOT / "crates" / "edgenail" / "src" / "published"
NAILS = {"6d": (0.113, 0.266, "2"), "8d": (0.131, 0.281, "2 1/2"), "10d": (0.148, 0.312, "3")}
"""Common nails of the trade: shank, head, length."""


def rows(name: str) -> list[dict[str, str]]:
    with (FOLDER / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


PANELS = rows("sdpws_table_4_3a.csv")
CELLS = rows("sdpws_other_tables.csv")


def ask(row: dict[str, str], edition: str, load: str, material: Literal["osb", "plywood3"]) -> dict[str, Any]:
    shank, head, length = NAILS[row["nail"].split()[0]]
    question = {
        "kind": "unit_shear",
        "edition": edition,
        "load": load,
        "method": "asd",
        "high_seismic": False,
        "accept_unverified": True,
        "assembly": {
            "grade": row["sheathing_grade"].lower().replace(" ", "_"),
            "thickness": row["thickness_in"],
            "material": material,
            "nail": {"shank": shank, "head": head, "length": length},
            "edge_spacing": row["edge_spacing_in"],
            "field_spacing": 6,
            "blocked": True,
            "specific_gravity": 0.5,
            "seam_member": "2 1/2",
        },
    }
    return edgenail.capacity(question).to_dict()


@pytest.mark.parametrize("row", PANELS, ids=lambda row: " ".join(list(row.values())[:6]))
def test_every_cell_of_the_shear_table_is_answered(row: dict[str, str]) -> None:
    for edition in row["edition"].split("/"):
        for load in ("seismic", "wind"):
            printed = row["vw_wind_plf"] if load == "wind" else row["vs_seismic_plf"] or row["vw_wind_plf"]
            for material, column in (("osb", "ga_osb_kips_per_in"), ("plywood3", "ga_ply_kips_per_in")):
                answer = ask(row, edition, load, material)  # type: ignore[arg-type]
                assert answer["nominal_plf"] == answer["table_plf"] == float(printed)
                assert answer["stiffness_kips_per_in"] == float(row[column])
                stiffness = answer["derivation"]["steps"][0]
                assert stiffness["confidence"] == row["confidence"].replace("-", "_")
                assert stiffness["source"].endswith(f"seen in {row['source']}")
                assert f"{row['nail'].split()[0]} nails" in stiffness["source"]


def test_the_shear_table_was_collected_whole() -> None:
    assert len(PANELS) == 96
    assert {row["edition"] for row in PANELS} == {"2008/2015", "2021"}


@pytest.mark.parametrize("row", CELLS, ids=lambda row: f"{row['table']} {row['row keys']}")
def test_every_cell_of_the_other_tables_is_answered(row: dict[str, str]) -> None:
    question = {"kind": "cell", "table": row["table"], "key": row["row keys"], "accept_unverified": True}
    answer = edgenail.capacity(question)
    assert (answer["value"], answer["source"]) == (row["value"], row["source"])
    assert answer.confidence == row["confidence"].replace("-", "_")
    assert answer.unverified == (row["confidence"] == "memory")
