"""The collected values of the standards, read by Python's own reader, against what the library answers."""

from __future__ import annotations

import csv
import re
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
            "inside_hold_downs": False,
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


MATERIALS = {
    "plywood siding": "plywood_siding",
    "particleboard M-S/M-2": "particleboard",
    "structural fiberboard": "structural_fiberboard",
    "Structural I": "structural_i",
    "Sheathing": "sheathing",
    "Plywood siding": "plywood_siding",
    "gypsum wallboard": "gypsum_wallboard",
    "gypsum wallboard two-ply": "two_ply_gypsum_wallboard",
    "x 2 ft x 8 ft gypsum sheathing": "gypsum_sheathing_2_ft",
    "x 4 ft gypsum sheathing": "gypsum_sheathing_4_ft",
    "gypsum lath + 1/2 plaster": "gypsum_lath_and_plaster",
    "portland cement plaster on wire lath": "portland_cement_plaster",
}
"""Materials of faces, in the words of the tables and of questions."""

FASTENERS = [
    (r"face 8d cooler", "cooler_8d_over_6d"),
    (r"(\d)d cooler", r"cooler_\1d"),
    (r"No\.6", "screw_no_6"),
    (r"roofing", "roofing_11_gauge"),
    (r"0\.092x1-1/8", "lath_nail"),
    (r"7/16 head", "wire_lath_nail"),
    (r"staple=16 ga", "staple_16_gauge"),
    (r"nail=(\d+)d galvanized casing", r"casing_\1d"),
    (r"nail=(\d+)d", r"\1d"),
]
"""What of a key tells its fastener, and the fastener's word."""

FACINGS = [
    row
    for row in CELLS
    if row["table"].startswith(("4.3A", "4.3C", "780 CMR", "ASD seismic plf panels over"))
    and (" vs|Ga|vw" in row["table"] or not row["table"].startswith("4.3A") or " vs plf" in row["table"])
    and "Ga kips/in" not in row["table"]
]
"""A cell of unit shear of every row of faces that are no wood structural panels nailed to the framing."""


def said(key: str, pattern: str) -> str | None:
    found = re.search(pattern, key)
    return found[1] if found else None


def fastener(key: str) -> str | None:
    for pattern, word in FASTENERS:
        if (found := re.search(pattern, key)) is not None:
            return found.expand(word)
    return None


def faces(row: dict[str, str]) -> list[dict[str, Any]]:
    """The faces that a cell belongs to: one for each thickness that it lists."""
    key = row["row keys"]
    words = said(key, r"(?:material|grade)=([^;]+)")
    gypsum = row["table"].startswith("4.3C")
    first, _, rest = key.partition(";")[0].partition(" ")
    material = MATERIALS[rest if gypsum else str(words)]
    if "staple" in key:
        material = f"stapled_{material}"
    if "over" in row["table"]:
        material = f"{material}_over_gypsum"
    wood = not gypsum and material != "structural_fiberboard"
    both = re.search(r"(\d+)(?: edge)?/(\d+)(?: field)?;stud", key)
    return [
        {
            "material": material,
            "thickness": thickness,
            "fastener": fastener(key),
            "edge_spacing": both[1] if both else said(key, r"edge[ =](\d)") or "7",
            "field_spacing": both[2] if both else "6" if wood else None,
            "stud_spacing": "16" if "S19 says 16" in key else said(key, r"stud (\d+)") or "16",
            "blocked": not key.endswith("unblocked"),
            "specific_gravity": 0.5 if wood else None,
            "seam_member": "2 1/2",
        }
        for thickness in ([first] if gypsum else str(said(key, r"thickness=([^;]+)")).split(", "))
    ]


def other(row: dict[str, str], column: str) -> str | None:
    """The cell of the same row in another column."""
    table = re.sub(r"vs plf|v_s = v_w nominal plf", column, row["table"])
    cells = (cell for cell in CELLS if cell["table"] == table and cell["row keys"] == row["row keys"])
    cell = next(cells, None)
    return cell["value"] if cell else None


@pytest.mark.parametrize("row", FACINGS, ids=lambda row: f"{row['table']} {row['row keys']}")
def test_every_cell_of_other_faces_is_answered(row: dict[str, str]) -> None:
    stapled = row["table"].startswith("780 CMR")
    for load in ("seismic", "wind"):
        stiffness: str | None
        if "|" in row["value"]:
            seismic, stiffness, wind = row["value"].split("|")
        else:
            seismic, stiffness = row["value"], other(row, "Ga kips/in") if row["table"][:3] == "4.3" else None
            wind = str(other(row, "vw plf")) if "vs plf" in row["table"] else seismic
        for face in faces(row):
            question = {
                "kind": "facing",
                "edition": "780_cmr" if stapled else "2015",
                "load": load,
                "method": "asd",
                "high_seismic": False,
                "accept_unverified": True,
                "facing": face,
            }
            if row["table"].startswith("ASD seismic") and load == "wind":
                with pytest.raises(edgenail.InputError, match="was not collected"):
                    edgenail.capacity(question)
                continue
            answer = edgenail.capacity(question).to_dict()
            printed = float(wind if load == "wind" else seismic)
            assert answer["table_plf"] == printed
            assert answer["cell"] == row["row keys"]
            assert answer["stiffness_kips_per_in"] == (float(stiffness) if stiffness else None)
            if stapled:
                assert answer["design_plf"] == pytest.approx(printed * (1.4 if load == "wind" else 1))
            else:
                twice = 2 if row["table"].startswith("ASD") else 1
                assert answer["nominal_plf"] == printed * twice == 2 * answer["design_plf"]


def test_the_tables_of_other_faces_were_collected_whole() -> None:
    assert len(FACINGS) == 109
    assert sum(len(faces(row)) for row in FACINGS) == 125
