"""The workbook, its macro and its functions for cells under LibreOffice itself, against the library's own figures.

    python check.py --library target/release/libedgenail.so --cases target/cases/cells.txt [--rows 1000]

Each figure of the saved workbook is read back with openpyxl and compared with the tables of the plan; each shared case of a
function for cells is put into a cell, and the SHA-256 of all answers compared with that of the answers in Rust.
"""

import argparse
import csv
import hashlib
import io
import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

from openpyxl import load_workbook

ROOT = Path(__file__).resolve().parents[2]
SPREADSHEET = ROOT / "bindings/spreadsheet"
sys.path.insert(0, str(SPREADSHEET))

import build  # noqa: E402
import edgenail_macro  # noqa: E402
import workbook  # noqa: E402
from edgenail_calls import UNITS_PER_INCH, Library, method_name, results  # noqa: E402

OUT = ROOT / "target/spreadsheet"
# Words of a case that a cell writes as a number: the set that each parameter is of.
SETS = {
    "load": "load", "method": "method", "grade": "grade", "material": "panel_material", "coating": "coating",
    "line_method": "line_method", "sharing": "sharing", "plies": "plies", "axis": "axis",
}  # fmt: skip
FACE = 20
passed = 0


def check(condition: bool, what: str) -> None:
    global passed
    if not condition:
        raise SystemExit(f"FAILED  {what}")
    passed += 1


def office(task: dict) -> dict:
    """What LibreOffice saw."""
    profile = OUT / "profile"
    scripts = profile / "user/Scripts/python"
    shutil.copytree(OUT / "macro", scripts)
    shutil.copy(Path(__file__).with_name("in_office.py"), scripts)
    installation = f"-env:UserInstallation={profile.as_uri()}"
    # The office's own installer refuses the administrator, unless for everybody.
    shared = ["--shared"] if os.geteuid() == 0 else []
    subprocess.run(["unopkg", "add", "--force", *shared, installation, OUT / "edgenail.oxt"], check=True)
    environment = {**os.environ, "EDGENAIL_TASK": str(OUT / "task.json"), "PYTHONPATH": str(scripts)}
    (OUT / "task.json").write_text(json.dumps(task), encoding="utf-8")
    script = "vnd.sun.star.script:in_office.py$run?language=Python&location=user"
    command = ["soffice", "--headless", "--norestore", "--nologo", installation, script]
    try:
        subprocess.run(command, check=True, timeout=600, env=environment)
    finally:
        subprocess.run(["unopkg", "remove", *shared, installation, build.IDENTIFIER], check=False)
    seen = json.loads(Path(task["seen"]).read_text(encoding="utf-8"))
    check("trouble" not in seen, seen.get("trouble", ""))
    return seen


def formulas(library: Library, cases: list[tuple[str, list[str], str]]) -> list[tuple[str, int]]:
    """Each case as a formula of a cell, with how many cells its answer fills."""
    made = []
    for function, arguments, _ in cases:
        name = f"edgenail_{function}"
        if function == "wall_line":
            face = formula(library, "edgenail_construction", arguments[:FACE])
            made.append((f"={formula(library, name, [None, *arguments[FACE:]], face)}", 3))
        else:
            made.append((f"={formula(library, name, arguments)}", results(library.functions[name])))
    return made


def formula(library: Library, function: str, arguments: list, first: str = "") -> str:
    given = build.inputs(library.functions[function])
    check(len(given) == len(arguments), f"{function}: {arguments}")
    written = []
    for (kind, name), argument in zip(given, arguments):
        if argument is None:
            written.append(first)
        elif kind == "string":
            written.append('"' + argument.replace('"', '""') + '"')
        elif name in SETS:
            written.append(str(library.call("edgenail_choice_number", SETS[name], argument)[0]))
        else:
            written.append(argument)
    return f"EDGENAIL.CELLS.{method_name(function).upper()}({';'.join(written)})"


def same_cells(seen: list, cases: list[tuple[str, list[str], str]], wanted: list) -> None:
    """Answers of cells are those of Rust, to the last bit; what Rust refuses is an error there."""
    ours = hashlib.sha256()
    theirs = hashlib.sha256()
    for (function, arguments, answer), found in zip(cases, seen):
        if answer == "refused":
            check(isinstance(found, int) and found > 0, f"{function} {arguments}: {found} where Rust refuses")
            continue
        check(isinstance(found, list), f"{function} {arguments}: error {found}")
        for text in answer.split():
            theirs.update(f"{float(text):.17g}\n".encode())
        for number in found:
            ours.update(f"{number:.17g}\n".encode())
        check([float(text) for text in answer.split()] == found, f"{function} {arguments}: {found}, not {answer}")
    check(ours.digest() == theirs.digest(), "the hashes of all answers differ")
    print(f"{len(cases)} cases of cells, SHA-256 {ours.hexdigest()}")
    for (text, expected), found in zip(wanted, seen[len(cases) :]):
        check(found == expected, f"{text}: {found}, not {expected}")


def extra(library: Library) -> list:
    """Formulas of walls and texts, each with what it has to give."""
    row = '144;97.125;16;"36,40,48,36";"upright"'
    inputs = (144.0, 97.125, 16.0, "36,40,48,36", "upright")
    figures = [float(number) for number in library.call("edgenail_wall_figures", *inputs)]
    wall = "EDGENAIL.CELLS.EDGENAILWALL"
    bad = '144;97.125;16;"36,40,wide,36";"upright"'
    try:
        library.call("edgenail_wall_sheets", 144.0, 97.125, 16.0, "36,40,wide,36", "upright")
    except Exception as fault:
        message = str(fault)
    return [
        ((f"={wall}FIGURES({row})", 7), figures),
        ((f"={wall}SHEETS({row})", 1), figures[:1]),
        ((f"={wall}NAILS({row})", 1), figures[1:2]),
        ((f"={wall}BLOCKS({row})", 1), figures[2:3]),
        ((f"={wall}SHEETS({bad})", 1), 502),
        ((f"={wall}SHEETS({bad};TRUE())", 1), [message]),
        ((f"={wall}SHEETS({row};TRUE())", 1), [""]),
        (('=EDGENAIL.CELLS.EDGENAILCHOICENUMBER("load";"Seismic")', 1), [2.0]),
        (('=EDGENAIL.CELLS.EDGENAILCHOICEWORD("grade";2)', 1), ["structural_i"]),
        (('=EDGENAIL.CELLS.EDGENAILCHOICEWORD("grade";2.5;TRUE())', 1), ["number: a whole number is needed"]),
        (("=EDGENAIL.CELLS.EDGENAILLENGTHPARSE(\"8' 1 1/8\";1)", 2), [97.125 * UNITS_PER_INCH, 1.0]),
        (("=EDGENAIL.CELLS.EDGENAILLENGTHSHOW(3947160;4;3)", 2), ["8'-1 1/8\"", 0.0]),
    ]


def same_workbook(library: Library, saved: Path) -> None:
    """Every table and every figure beside a row is that of the plan, planned anew from rows of our own reading."""
    book = load_workbook(saved)
    setting = [row[1].value for row in book[edgenail_macro.RULES].iter_rows(min_row=2, max_row=8)]
    check(setting[1:6] == [2015, "asd", "strength", "reduced strength", "no"], f"rules {setting}")
    schedule = library.call("edgenail_wall_schedule_new", setting[0], 2015, 1, 1, 1, 0, 1)[0]
    sheet = book[edgenail_macro.WALLS]
    given = len(edgenail_macro.GIVEN)
    rows = [
        [cell.value for cell in row]
        for row in sheet.iter_rows(min_row=edgenail_macro.FIRST_ROW + 1, max_row=edgenail_macro.FIRST_ROW + len(workbook.ROWS))
    ]
    for row in rows:
        length = row[1] if not isinstance(row[1], str) else {"32'": 384.0, "24' 6": 294.0}[row[1]]
        texts = [text or "" for text in row[4:7]]
        library.call("edgenail_wall_schedule_add", schedule, row[0], length, row[2], row[3], *texts, row[7] or 0, row[8] or 0)
    plan = library.call("edgenail_wall_schedule_plan", schedule)[0]

    def table(name: str) -> list[dict]:
        return list(csv.DictReader(io.StringIO(library.call("edgenail_plan_csv", plan, name)[0])))

    for wall, row in zip(table("walls"), rows):
        blocks = sum(block["wall"] == wall["wall"] for block in table("blocks"))
        ratios = [line for line in table("capacity") if line["wall"] == wall["wall"]]
        told = [max((float(line[name]) for line in ratios), default=None) for name in ("governing_ratio", "hold_down")]
        wanted = [float(wall["panels"]), float(wall["nails"]), float(blocks), *told]
        found = [*row[given : given + 4], row[given + 5]]
        check(all(map(alike, found, wanted)), f"{wall['wall']}: {found}, not {wanted}")
    check(sum(row[given + 3] is not None for row in rows) == 2, "ratios of two walls")
    counts = [(row[0], row[3]) for row in book[edgenail_macro.NAILS].iter_rows(min_row=2, values_only=True)]
    for wall in table("walls"):
        counted = sum(count for name, count in counts if name == wall["wall"])
        check(counted == float(wall["nails"]), f"{wall['wall']}: {counted} nails, not {wall['nails']}")
    for title, (name, columns) in edgenail_macro.SHEETS.items():
        lines = [line for line in table(name) if name != "takeoff" or line["scope"] == "house"]
        heads, *cells = book[title].iter_rows(values_only=True)
        check(len(cells) == len(lines), f"{title}: {len(cells)} rows, not {len(lines)}")
        for found, line in zip(cells, lines):
            for head, value, column in zip(heads, found, columns.split()):
                check(head.partition(", ")[0] == column.replace("_", " "), f"{title}: {head} for {column}")
                text = "" if (name, column, line[column]) == edgenail_macro.NOT_ORDERED else line[column]
                same = value == (text or None) if isinstance(value, str | None) else alike(value * divisor(head), float(text))
                check(same, f"{title}: {value}, not {text}")
    library.call("edgenail_plan_free", plan)
    library.call("edgenail_wall_schedule_free", schedule)


def alike(found: float | None, wanted: float | None) -> bool:
    """Equal to the 15 digits that Calc writes into a file."""
    if found is None or wanted is None:
        return found is wanted
    return abs(found - wanted) <= 1e-14 * max(abs(wanted), 1)


def divisor(head: str) -> int:
    """How many of the library's units stand in one of the column's."""
    unit = head.partition(", ")[2]
    if unit == "in.":
        return UNITS_PER_INCH
    return 10_000 if unit in ("of the currency", "min", "of the objective's unit") else 1


def many(count: int) -> list[list]:
    """Rows of invented walls."""
    practices = ("upright", "flat blocked", "either", "upright 4/12")
    return [
        [f"wall {number}", 96 + number % 29 * 12, 97.125, 16, f"{24 + number % 5 * 8},36,36,40", practices[number % 4], "", "", ""]
        for number in range(count)
    ]


def module() -> str:
    """The VBA module as Calc's Basic takes it, with a function that calls a wrapper's own helper.

    That Basic does not know ``PtrSafe``, nor the attribute in the first line, which Office writes and reads itself.
    """
    text = (SPREADSHEET / "edgenail.bas").read_text(encoding="ascii").partition("\n")[2].replace("Declare PtrSafe", "Declare")
    return f'Option VBASupport 1\n{text}\nPublic Function Probe() As Variant\n  Probe = Failed(True, "#message")\nEnd Function\n'


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--library", type=Path, required=True)
    parser.add_argument("--cases", type=Path, required=True)
    parser.add_argument("--rows", type=int, default=50, help="rows of the schedule that is timed")
    arguments = parser.parse_args()
    build.build(arguments.library, OUT)
    library = Library(str(arguments.library.resolve()))
    lines = arguments.cases.read_text(encoding="utf-8").splitlines()
    cases = [(name, words, answer) for name, *words, answer in (line.split("\t") for line in lines)]
    wanted = extra(library)
    seen = office(
        {
            "workbook": str(OUT / "walls.xlsx"),
            "saved": str(OUT / "walls-planned.xlsx"),
            "page": str(OUT / "walls-planned.pdf"),
            "cells": str(OUT / "cells.xlsx"),
            "formulas": formulas(library, cases) + [formula for formula, _ in wanted],
            "many": many(arguments.rows),
            "module": module(),
            "seen": str(OUT / "seen.json"),
        }
    )
    told = seen["schedule"]
    check(told["faults"] == [1, 0, 0], f"faults {told['faults']}")
    check(told["message"].startswith("/openings/0/width: "), told["message"])
    check(not told["left_over"], "a take-off stands beside a fault")
    same_workbook(library, OUT / "walls-planned.xlsx")
    same_cells(seen["cells"], cases, wanted)
    check(seen["basic"] == "#message", f"the VBA module in Calc's Basic: {seen['basic']}")
    timed = seen["many"]
    check(timed["faults"] == 0, f"{timed['faults']} faults of many rows")
    beyond = timed["macro"] - timed["planning"]
    print(f"{timed['rows']} rows: the macro took {beyond:.2f} s beyond the planning's {timed['planning']:.2f} s")
    print(f"{passed} passed")


if __name__ == "__main__":
    main()
