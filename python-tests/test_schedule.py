"""Wall schedules from Python, CSV and workbooks, against houses written out by hand."""

from __future__ import annotations

from pathlib import Path

import edgenail
import openpyxl
import pytest

HOUSE = {
    "name": "job",
    "unit": "in",
    "walls": [
        {
            "name": name,
            "length": length,
            "practice": {"running": "upright", "assembly": {"edge_spacing": 4, "field_spacing": 12}},
            "sections": [{"stack": [{"kind": "storey", "name": "first floor", "stud": {"length": "92 5/8"}, "openings": openings}]}],
        }
        for name, length, openings in (
            ("back", 144, [{"name": "opening 1", "kind": "window", "left": 36, "sill": 40, "width": 48, "height": 36}]),
            ("front", 246, [{"name": "opening 1", "kind": "door", "left": 30, "sill": 0, "width": 90, "height": 80}]),
        )
    ],
}
CSV = """name,length,openings,practice
back,12',"36,40,48,36",upright 4/12
front,20' 6,"2' 6,0,90,80",Upright 4/12
"""


def same(schedule: edgenail.WallSchedule) -> bool:
    """The plan is that of the house by hand, down to the last nail."""
    ours, theirs = schedule.plan(), edgenail.plan(HOUSE)
    tables = ("panels", "nail_rows", "blocks", "cut_list", "takeoff", "walls")
    return all(ours.table(name).to_dict() == theirs.table(name).to_dict() for name in tables)


def test_rows_are_the_house_that_they_describe(tmp_path: Path) -> None:
    schedule = edgenail.WallSchedule("job")
    schedule.add("back", edgenail.Length("12'"), openings=[(36, "40", 48, edgenail.Length("36"))], practice="upright 4/12")
    schedule.add("front", 246, plate_height="8' 1 1/8", openings="30,0,90,80", practice="upright 4/12")
    assert len(schedule) == 2 and same(schedule)

    file = tmp_path / "job.csv"
    file.write_text(CSV, encoding="utf-8")
    assert same(edgenail.WallSchedule.read_csv(file))

    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    sheet.title = "Walls"
    sheet.append(["name", "length", "plate_height", "openings", "practice", "wind"])
    sheet.append(["back", 144, 97.125, "36,40,48,36", "upright 4/12", None])
    sheet.append([None, None, None, None, None, None])
    sheet.append(["front", "20' 6", "97 1/8", "30,0,90,80", "upright 4/12", 0])
    book.save(tmp_path / "job.xlsx")
    assert same(edgenail.WallSchedule.read_excel(tmp_path / "job.xlsx"))


def test_every_row_says_what_is_wrong_with_it(tmp_path: Path) -> None:
    file = tmp_path / "job.csv"
    file.write_text("name,length,openings,wind,colour\na,12',\"1,2,3\",,red\n,8-1,,much,\nb,144,,,\nb,144,,,\n", encoding="utf-8")
    with pytest.raises(edgenail.InputError) as caught:
        edgenail.WallSchedule.read_csv(file)
    found = [(issue.code, issue.path) for issue in caught.value.issues]
    assert ("unknown_field", "/rows/0/colour") in found
    assert ("missing_field", "/rows/1/name") in found
    assert ("not_a_number", "/rows/1/wind") in found
    assert any(path == "/rows/1/length" for _, path in found)
    plain = edgenail.WallSchedule()
    rows: list[dict[str, object]] = [
        {"name": "a", "length": 144, "openings": "1,2,3"},
        {"name": "b", "length": 144},
        {"name": "b", "length": float("nan")},
        {"name": "c", "length": 144, "wind": 500},
    ]
    with pytest.raises(edgenail.InputError) as caught:
        edgenail.WallSchedule.from_rows(rows)
    paths = [issue.path for issue in caught.value.issues]
    assert paths[0] == "/rows/0/openings/0" and "/rows/2/name" in paths and "/rows/3/wind" in paths
    assert len(plain) == 0


def test_the_template_is_the_workbook_s_schedule() -> None:
    design = edgenail.Design(edition="2015", method="asd", high_seismic=False, accept_unverified=True)
    template = Path(__file__).parent.parent / "bindings/spreadsheet/walls.csv"
    plan = edgenail.WallSchedule.read_csv(template, design=design).plan()
    assert plan.table("walls")["wall"] == ("street", "yard", "lane", "hedge", "shed front")
    assert {row["wall"] for row in plan.table("capacity")} == {"street", "lane"}


def test_loads_want_rules_and_are_resisted_by_segments() -> None:
    design = edgenail.Design(edition="2015", method="asd", high_seismic=False, accept_unverified=True)
    schedule = edgenail.WallSchedule("job", design)
    schedule.add("back", 288, practice="upright 4/12", segments="0,96; 192,288", wind=3000)
    (row,) = schedule.plan().table("capacity")
    assert (row["wall"], row["load"], row["edition"]) == ("back", "wind", "SDPWS 2015")
    # ASCE 7-10 and later give wind at strength level; allowable stress design takes 0.6 of it (ASCE 7 2.4.1, from memory).
    assert row["demand"] == pytest.approx(0.6 * 3000)
    with pytest.raises(ValueError, match="edition"):
        edgenail.WallSchedule("job", edgenail.Design(edition="1999", method="asd", high_seismic=False))  # type: ignore[arg-type]
