"""The workbook to start from: a wall schedule of an invented house, rules of design, and the functions for cells at work."""

from pathlib import Path

from openpyxl import Workbook
from openpyxl.styles import Alignment, Font, PatternFill
from openpyxl.worksheet.worksheet import Worksheet

from edgenail_macro import FIRST_ROW, GIVEN, RULES, TOLD, WALLS

HEADS = {
    "name": "Wall",
    "length": "Length",
    "plate_height": "Plate height",
    "stud_spacing": "Stud spacing",
    "openings": "Openings: left,sill,width,height; …",
    "practice": "Practice",
    "segments": "Segments: left,right; …",
    "wind": "Wind, lb",
    "seismic": "Earthquake, lb",
}
# Invented, for the demo alone.
ROWS = [
    ("street", 384, 109.125, 16, "64,24,72,58; 180,0,38 1/2,82 1/2; 292,36,48,46", "flat blocked 4/12", "0,60; 344,384", 2600, 1900),
    ("yard", "32'", 109.125, 16, "5',42,60,40; 160,0,72 1/2,82 1/2", "either", "", "", ""),
    ("lane", "24' 6", 109.125, 16, "96,36,36,46", "upright 4/12", "0,60; 246,294", 2100, 1750),
    ("hedge", "24' 6", 109.125, 16, "", "upright", "", "", ""),
    ("shed front", 150, 97.125, 24, "30,0,90,80", "upright", "", "", ""),
]
SETTINGS = [
    ("Job", "Willow Bend 3", "Name of the house"),
    ("Edition", 2015, "Of the Special Design Provisions for Wind and Seismic: 2008, 2015 or 2021; blank asks for no capacity"),
    ("Method", "asd", "asd or lrfd"),
    ("Level of loads", "strength", "strength or asd"),
    ("Sharing of shear", "reduced strength", "reduced strength or equal deflection"),
    ("High seismic", "no", "yes in seismic design category D, E or F"),
    ("Recalled values", "yes", "yes accepts values that were recalled and not checked against print; results say so"),
]
CAUTION = (
    "Planning aid only. It does not replace the construction documents. Whether sheathing, nailing and framing are adequate "
    "has to be confirmed by a licensed design professional and under the code in force where it is built."
)
HEAD = PatternFill("solid", fgColor="DDE6EE")
WIDTHS = (12, 9, 9, 9, 44, 17, 18, 9, 11, 8, 8, 8, 9, 18, 11, 50)
# How numbers of the columns that come back are shown; nothing for text.
SHOWN = ("#,##0", "#,##0", "#,##0", "0.00", None, "#,##0", None)
# Rows that are made ready for what comes back.
READY = 200


def write(path: Path) -> None:
    """Writes the workbook."""
    book = Workbook()
    walls = book.active
    assert isinstance(walls, Worksheet)
    walls.title = WALLS
    walls["A1"] = "Wall schedule"
    walls["A1"].font = Font(bold=True, size=14)
    walls["A2"] = "Result"
    walls["A3"] = CAUTION
    for column, title in enumerate([HEADS[field] for field in GIVEN] + list(TOLD), start=1):
        _head(walls, FIRST_ROW, column, title)
        walls.column_dimensions[walls.cell(1, column).column_letter].width = WIDTHS[column - 1]
    for place, row in enumerate(ROWS):
        for column, value in enumerate(row, start=1):
            walls.cell(FIRST_ROW + 1 + place, column, value if value != "" else None)
    for row in range(FIRST_ROW + 1, FIRST_ROW + 1 + READY):
        for column, shown in enumerate(SHOWN, start=len(GIVEN) + 1):
            cell = walls.cell(row, column)
            cell.alignment = Alignment(wrap_text=shown is None, vertical="top")
            if shown is not None:
                cell.number_format = shown
        for column in range(1, len(GIVEN) + 1):
            walls.cell(row, column).alignment = Alignment(vertical="top", horizontal="left", wrap_text=True)
    walls.freeze_panes = walls.cell(FIRST_ROW + 1, 2)
    walls.page_setup.orientation = "landscape"
    walls.row_dimensions[FIRST_ROW].height = 30
    walls.print_title_rows = f"{FIRST_ROW}:{FIRST_ROW}"
    walls.page_margins.left = walls.page_margins.right = 0.4
    walls.page_setup.fitToWidth = 1
    walls.page_setup.fitToHeight = 0
    walls.sheet_properties.pageSetUpPr.fitToPage = True
    rules = book.create_sheet(RULES)
    for column, title in enumerate(("Rule", "Says", "Meaning"), start=1):
        _head(rules, 1, column, title)
    for place, setting in enumerate(SETTINGS, start=2):
        for column, value in enumerate(setting, start=1):
            rules.cell(place, column, value)
    for letter, width in zip("ABC", (20, 20, 100)):
        rules.column_dimensions[letter].width = width
    rules.sheet_properties.pageSetUpPr.fitToPage = True
    book.save(path)


def _head(sheet: Worksheet, row: int, column: int, title: str) -> None:
    cell = sheet.cell(row, column, title)
    cell.font = Font(bold=True)
    cell.fill = HEAD
    cell.alignment = Alignment(wrap_text=True, vertical="top")
