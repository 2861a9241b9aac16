"""The macro of the wall schedule: plans every row of the sheet ``Walls`` as one house, and writes back what it takes.

Nothing is written but faults where a row has one: a take-off that lacks a wall would be worse than none.
"""

import csv
import io
import os
import sys

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
from edgenail_calls import UNITS_PER_INCH, Library, Refused  # noqa: E402

WALLS = "Walls"
RULES = "Rules"
# What a row says, in the order of its columns.
GIVEN = ("name", "length", "plate_height", "stud_spacing", "openings", "practice", "segments", "wind", "seismic")
# What comes back beside it.
TOLD = ("Panels", "Nails", "Blocks", "Demand ratio", "Governs", "Hold-down, lb", "Says")
FIRST_ROW = 4
ROWS_MOST = 10_000
# Nails of each wall, by name and by where they go.
NAILS = "Nails"
# Sheets that are written, each with its table of the plan and the columns that it shows.
SHEETS = {
    "Take-off": ("takeoff", "what item place used unit ordered order_unit pounds money minutes because"),
    "Cut list": ("cut_list", "wall mark sheet cut_sheet source size x y turned notches rake hand"),
    "Blocks": ("blocks", "wall kind length lie stick x0 y0 because"),
    "Capacity": (
        "capacity",
        "wall storey load edition method demand resists ratio governs governing_ratio hold_down drift confidence faults",
    ),
    "Findings": ("findings", "wall severity message found allowed code"),
}
# Lines of the take-off for storeys and walls stand in the plan itself.
ONLY = {"takeoff": ("scope", "house")}
# What a table writes where nothing is ordered.
NOT_ORDERED = ("takeoff", "ordered", "-1")


def plan_schedule(*_):
    """Plans the schedule of the document in front."""
    plan_document(XSCRIPTCONTEXT.getDocument())  # noqa: F821


def plan_document(document, library=None):
    """Plans the schedule of a document. Returns how many rows had faults."""
    library = library or Library()
    sheet = document.getSheets().getByName(WALLS)
    cells = sheet.getCellRangeByPosition(0, FIRST_ROW, len(GIVEN) - 1, FIRST_ROW + ROWS_MOST - 1).getDataArray()
    rows = [row for row in cells if any(value != "" for value in row)]
    count = max((place + 1 for place, row in enumerate(cells) if any(value != "" for value in row)), default=0)
    says = [""] * count
    document.lockControllers()
    try:
        clear(document, sheet)
        schedule, faults = added(library, document, cells[:count], says)
        plan = None
        try:
            if faults == 0:
                plan, faults = planned(library, schedule, cells[:count], says)
            told = [("",) * (len(TOLD) - 1) + (line,) for line in says]
            if plan is not None:
                told = wall_figures(library, plan, cells[:count])
                for title, (table, columns) in SHEETS.items():
                    write_table(document, title, read_table(library, plan, table, columns.split()))
                write_table(document, NAILS, nails(library, plan))
            if count:
                at = len(GIVEN)
                sheet.getCellRangeByPosition(at, FIRST_ROW, at + len(TOLD) - 1, FIRST_ROW + count - 1).setDataArray(tuple(told))
            headline = f"{len(rows)} walls planned" if plan is not None else f"{faults} faults: nothing was planned"
            sheet.getCellByPosition(1, 1).setString(headline)
        finally:
            if plan is not None:
                library.call("edgenail_plan_free", plan)
            if schedule is not None:
                library.call("edgenail_wall_schedule_free", schedule)
    finally:
        document.unlockControllers()
    return faults


def clear(document, sheet):
    """Takes away what an earlier run wrote."""
    at = len(GIVEN)
    content = 1 | 2 | 4 | 16
    sheet.getCellRangeByPosition(at, FIRST_ROW, at + len(TOLD) - 1, FIRST_ROW + ROWS_MOST - 1).clearContents(content)
    for title in (*SHEETS, NAILS):
        if document.getSheets().hasByName(title):
            document.getSheets().getByName(title).clearContents(content)


def added(library, document, rows, says):
    """The schedule with every row that has no fault, and how many have; ``says`` takes what is wrong with each."""
    try:
        (schedule,) = library.call("edgenail_wall_schedule_new", *rules(library, document))
    except (Refused, TypeError) as fault:
        says[:1] = [str(fault)]
        return None, 1
    faults = 0
    for place, row in enumerate(rows):
        try:
            library.call("edgenail_wall_schedule_add", schedule, *values(library, row))
        except (Refused, TypeError) as fault:
            says[place] = str(fault)
            faults += 1
    return schedule, faults


def rules(library, document):
    """Name of the job and rules of design, from the second column of their sheet."""
    cells = document.getSheets().getByName(RULES).getCellRangeByPosition(1, 1, 1, 7).getDataArray()
    name, edition, method, level, sharing, high_seismic, unverified = (row[0] for row in cells)
    if edition == "":
        return str(name), 0, 0, 0, 0, 0, 0
    numbers = [
        library.call("edgenail_choice_number", choice, word)[0]
        for choice, word in (("method", method), ("level", level), ("sharing", sharing))
    ]
    return str(name), edition, *numbers, yes(high_seismic), yes(unverified)


def yes(word):
    """1 for yes, 0 for no."""
    known = {"yes": 1, "no": 0}
    if str(word).strip().lower() not in known:
        raise TypeError(f"`{word}` is neither yes nor no")
    return known[str(word).strip().lower()]


def values(library, row):
    """A row as the library takes it: lengths in inches, a blank load as none."""
    name, length, plate_height, spacing, openings, practice, segments, wind, seismic = row
    return (
        _text(name),
        *(inches(library, value) for value in (length, plate_height, spacing)),
        *(_text(value) for value in (openings, practice, segments)),
        *(0.0 if value == "" else value for value in (wind, seismic)),
    )


def _text(value):
    """A cell as text; a number that somebody typed as a name or as a practice is written without its decimal point."""
    return value if isinstance(value, str) else f"{value:.17g}"


def inches(library, value):
    """A cell that holds a length: a number in inches, or text such as ``12' 6``."""
    if not isinstance(value, str):
        return value
    units, _ = library.call("edgenail_length_parse", value, library.constants["EDGENAIL_UNIT_INCH"])
    return units / UNITS_PER_INCH


def planned(library, schedule, rows, says):
    """The plan, or nothing and the number of faults, each written to the row of its wall."""
    try:
        (plan,) = library.call("edgenail_wall_schedule_plan", schedule)
    except Refused as fault:
        names = [_text(row[0]) for row in rows]
        for path, wall, message in fault.entries:
            place = names.index(wall) if wall in names else 0
            line = f"{path}: {message}" if path else message
            if says:
                says[place] = f"{says[place]}\n{line}".strip()
        return None, len(fault.entries)
    return plan, 0


def wall_figures(library, plan, rows):
    """What comes back beside each row."""
    walls = {row["wall"]: row for row in records(library, plan, "walls")}
    blocks = {}
    for row in records(library, plan, "blocks"):
        blocks[row["wall"]] = blocks.get(row["wall"], 0) + 1
    lines = {}
    for row in records(library, plan, "capacity"):
        lines.setdefault(row["wall"], []).append(row)
    says = {}
    for row in records(library, plan, "findings"):
        if row["severity"] != "advise":
            says.setdefault(row["wall"], []).append(row["message"])
    told = []
    for row in rows:
        name = _text(row[0])
        if name not in walls:
            told.append(("",) * len(TOLD))
            continue
        told.append(
            (
                float(walls[name]["panels"]),
                float(walls[name]["nails"]),
                float(blocks.get(name, 0)),
                *resisted(lines.get(name, [])),
                "\n".join(says.get(name, [])),
            )
        )
    return told


def resisted(lines):
    """The worst ratio of demand to what resists it, what governs there, and the most that pulls at a hold-down."""
    unknown = [line["faults"] for line in lines if line["governing_ratio"] == ""]
    if not lines or unknown:
        return "", "\n".join(unknown), ""
    worst = max(lines, key=lambda line: float(line["governing_ratio"]))
    tension = max((float(line["hold_down"]) for line in lines if line["hold_down"] != ""), default="")
    return float(worst["governing_ratio"]), f"{worst['load']}: {worst['governs']}", tension


def nails(library, plan):
    """How many nails of each name each wall takes at panel edges, on members between and so on."""
    (text,) = library.call("edgenail_plan_csv", plan, "nail_rows")
    heads, *rows = csv.reader(io.StringIO(text))
    wall, zone, nail, count = (heads.index(head) for head in ("wall", "zone", "nail", "count"))
    counts = {}
    for row in rows:
        place = (row[wall], row[zone], row[nail])
        counts[place] = counts.get(place, 0) + int(row[count])
    return [("wall", "zone", "nail", "count"), *((*place, float(count)) for place, count in counts.items())]


def records(library, plan, table):
    """A table as a list of dicts of texts."""
    (text,) = library.call("edgenail_plan_csv", plan, table)
    return list(csv.DictReader(io.StringIO(text)))


def read_table(library, plan, table, shown):
    """Columns of a table as rows of cells, their heads first; numbers of a fraction of a unit become numbers of the unit."""
    (text,) = library.call("edgenail_plan_csv", plan, table)
    names, *rows = csv.reader(io.StringIO(text))
    kind_of_text = library.constants["EDGENAIL_KIND_TEXT"]
    heads = []
    readers = []
    for column in shown:
        place = names.index(column)
        _, kind = library.call("edgenail_plan_column", plan, table, place)
        (unit,) = library.call("edgenail_plan_column_unit", plan, table, column)
        divisor = 1
        if unit.startswith("1/"):
            part, _, unit = unit[2:].partition(" ")
            divisor = int(part.replace(",", ""))
        heads.append(f"{column.replace('_', ' ')}, {unit}" if unit else column.replace("_", " "))
        readers.append((place, None if kind == kind_of_text else divisor))
    if table in ONLY:
        column, value = ONLY[table]
        rows = [row for row in rows if row[names.index(column)] == value]
    if table == NOT_ORDERED[0]:
        place = names.index(NOT_ORDERED[1])
        for row in rows:
            row[place] = "" if row[place] == NOT_ORDERED[2] else row[place]
    told = [tuple(row[at] if scale is None else cell(row[at], scale) for at, scale in readers) for row in rows]
    return [tuple(heads), *told]


def cell(value, divisor=1):
    """A number of a table; blank where there is none."""
    return float(value) / divisor if value != "" else ""


def write_table(document, title, rows):
    """Rows on the sheet of this title, which is made where it is missing."""
    sheets = document.getSheets()
    if not sheets.hasByName(title):
        sheets.insertNewByName(title, sheets.getCount())
    sheet = sheets.getByName(title)
    page = document.getStyleFamilies().getByName("PageStyles").getByName(sheet.PageStyle)
    page.ScaleToPagesX, page.ScaleToPagesY = 1, 0
    # Widths are chosen by the first rows: Calc takes long over all of many.
    for first, last in ((0, min(len(rows), 50)), (50, len(rows))):
        if first < last:
            area = sheet.getCellRangeByPosition(0, first, len(rows[0]) - 1, last - 1)
            area.setDataArray(tuple(rows[first:last]))
        if first == 0:
            sheet.getRows().getByIndex(0).CharWeight = 150.0
            area.getColumns().OptimalWidth = True


g_exportedScripts = (plan_schedule,)
