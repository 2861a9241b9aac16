"""Runs inside LibreOffice: plans the workbook with its macro, calls the functions for cells, saves, and writes what it saw.

What to do stands in the file that the environment names: ``workbook``, ``formulas``, ``many`` and ``module`` go in.
"""

import json
import os
import time
import traceback

import uno
from com.sun.star.beans import PropertyValue

import edgenail_macro
from edgenail_calls import Library


def run(*_):
    with open(os.environ["EDGENAIL_TASK"], encoding="utf-8") as file:
        task = json.load(file)
    desktop = XSCRIPTCONTEXT.getDesktop()  # noqa: F821
    seen = {}
    try:
        seen["schedule"] = schedule(desktop, task)
        seen["cells"] = cells(desktop, task["formulas"], task["cells"])
        seen["many"] = many(desktop, task)
        seen["basic"] = basic(desktop, task["module"])
    except Exception:
        seen["trouble"] = traceback.format_exc()
    with open(task["seen"], "w", encoding="utf-8") as file:
        json.dump(seen, file)
    desktop.terminate()


def prop(name, value):
    made = PropertyValue()
    made.Name, made.Value = name, value
    return made


def url(path):
    return uno.systemPathToFileUrl(os.path.abspath(path))


def load(desktop, path):
    return desktop.loadComponentFromURL(url(path), "_blank", 0, (prop("Hidden", True),))


def schedule(desktop, task):
    """The workbook planned, then with a fault, then planned again; its faults each time."""
    document = load(desktop, task["workbook"])
    walls = document.getSheets().getByName("Walls")
    openings = walls.getCellByPosition(4, edgenail_macro.FIRST_ROW)
    right = openings.getString()
    openings.setString("64,24,wide,58")
    faults = [edgenail_macro.plan_document(document)]
    message = walls.getCellByPosition(len(edgenail_macro.GIVEN) + len(edgenail_macro.TOLD) - 1, edgenail_macro.FIRST_ROW).getString()
    left_over = document.getSheets().hasByName("Take-off")
    openings.setString(right)
    for _ in range(2):
        faults.append(edgenail_macro.plan_document(document))
    document.storeToURL(url(task["saved"]), (prop("FilterName", "Calc MS Excel 2007 XML"),))
    document.storeToURL(url(task["page"]), (prop("FilterName", "calc_pdf_Export"),))
    document.close(True)
    return {"faults": faults, "message": message, "left_over": left_over}


def cells(desktop, formulas, saved):
    """What each formula gives: a row of values, or the number of its error."""
    document = desktop.loadComponentFromURL("private:factory/scalc", "_blank", 0, (prop("Hidden", True),))
    sheet = document.getSheets().getByIndex(0)
    found = []
    for row, (formula, width) in enumerate(formulas):
        area = sheet.getCellRangeByPosition(0, row, width - 1, row)
        if width == 1:
            sheet.getCellByPosition(0, row).setFormula(formula)
        else:
            area.setArrayFormula(formula)
        first = sheet.getCellByPosition(0, row)
        error = first.getError()
        found.append(error if error else list(area.getDataArray()[0]))
    document.storeToURL(url(saved), (prop("FilterName", "Calc MS Excel 2007 XML"),))
    document.close(True)
    return found


def many(desktop, task):
    """Seconds for a schedule of many rows: by the macro, and for the planning alone."""
    rows = task["many"]
    document = load(desktop, task["workbook"])
    walls = document.getSheets().getByName("Walls")
    first = edgenail_macro.FIRST_ROW
    walls.getCellRangeByPosition(0, first, len(rows[0]) - 1, first + len(rows) - 1).setDataArray(tuple(map(tuple, rows)))
    library = Library()
    name, *_ = edgenail_macro.rules(library, document)
    made = library.call("edgenail_wall_schedule_new", *edgenail_macro.rules(library, document))[0]
    for row in rows:
        library.call("edgenail_wall_schedule_add", made, *edgenail_macro.values(library, tuple(row)))
    start = time.monotonic()
    plan = library.call("edgenail_wall_schedule_plan", made)[0]
    planning = time.monotonic() - start
    library.call("edgenail_plan_free", plan)
    library.call("edgenail_wall_schedule_free", made)
    start = time.monotonic()
    faults = edgenail_macro.plan_document(document, library)
    whole = time.monotonic() - start
    document.close(True)
    return {"rows": len(rows), "faults": faults, "planning": planning, "macro": whole}


def basic(desktop, module):
    """Whether Calc's own Basic, which reads VBA, takes the module: what a function beside it gives."""
    document = desktop.loadComponentFromURL("private:factory/scalc", "_blank", 0, (prop("Hidden", True), prop("MacroExecutionMode", 4)))
    libraries = document.BasicLibraries
    if not libraries.hasByName("Standard"):
        libraries.createLibrary("Standard")
    libraries.getByName("Standard").insertByName("Cells", module)
    probe = document.getScriptProvider().getScript("vnd.sun.star.script:Standard.Cells.Probe?language=Basic&location=document")
    told = probe.invoke((), (), ())[0]
    document.close(True)
    return told


g_exportedScripts = (run,)
