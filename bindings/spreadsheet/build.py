"""Builds what LibreOffice Calc needs into a folder: the add-in with its cell functions, the macro, a workbook to start from.

    python3 build.py --library target/release/libedgenail.so --out target/spreadsheet

Needs openpyxl, and the commands ``unoidl-write`` (Debian: libreoffice-dev) and ``soffice``. Then, as an ordinary user:

    unopkg add target/spreadsheet/edgenail.oxt
    cp -r target/spreadsheet/macro/* ~/.config/libreoffice/4/user/Scripts/python/

The second puts the macro ``edgenail_macro.plan_schedule`` among My Macros.
"""

import argparse
import json
import shutil
import subprocess
import zipfile
from pathlib import Path
from xml.sax.saxutils import escape, quoteattr

import workbook
from edgenail_calls import method_name, results

HERE = Path(__file__).resolve().parent
WRITER = "sdk/bin/unoidl-write"
IDENTIFIER = "edgenail.cells"
VERSION = "0.1.0"

MANIFEST = """<?xml version="1.0" encoding="UTF-8"?>
<manifest:manifest xmlns:manifest="http://openoffice.org/2001/manifest">
 <manifest:file-entry manifest:media-type="application/vnd.sun.star.uno-typelibrary;type=RDB" manifest:full-path="edgenail.rdb"/>
 <manifest:file-entry manifest:media-type="application/vnd.sun.star.uno-components" manifest:full-path="edgenail.components"/>
 <manifest:file-entry manifest:media-type="application/vnd.sun.star.configuration-data" manifest:full-path="CalcAddIn.xcu"/>
</manifest:manifest>
"""

COMPONENTS = """<?xml version="1.0" encoding="UTF-8"?>
<components xmlns="http://openoffice.org/2010/uno-components">
 <component loader="com.sun.star.loader.Python" uri="edgenail_addin.py">
  <implementation name="edgenail.Cells">
   <service name="edgenail.Cells"/>
   <service name="com.sun.star.sheet.AddIn"/>
  </implementation>
 </component>
</components>
"""

DESCRIPTION = f"""<?xml version="1.0" encoding="UTF-8"?>
<description xmlns="http://openoffice.org/extensions/description/2006" xmlns:xlink="http://www.w3.org/1999/xlink">
 <identifier value="{IDENTIFIER}"/>
 <version value="{VERSION}"/>
 <display-name><name lang="en">edgenail: structural sheathing of wood-frame walls</name></display-name>
</description>
"""


def office_folder() -> Path:
    """Where LibreOffice lies, with the tools of its libreoffice-dev."""
    command = shutil.which("soffice")
    folder = Path(command).resolve().parents[1] if command else None
    if folder is None or not (folder / WRITER).exists():
        raise SystemExit(f"LibreOffice with its {WRITER} is not installed (Debian: libreoffice-calc, libreoffice-dev)")
    return folder


def cell_functions() -> list[dict]:
    """The functions that a cell can call."""
    table = json.loads((HERE / "functions.json").read_text(encoding="utf-8"))
    return [function for function in table["functions"] if function["cell"]]


def inputs(function: dict) -> list[tuple[str, str]]:
    """What a cell gives: the type as UNO names it, and the name."""
    given = []
    parameters = iter(function["parameters"])
    for kind, name in parameters:
        if kind == "const char*":
            given.append(("string", name))
            next(parameters)
        elif kind == "char*":
            next(parameters)
            next(parameters)
        elif "*" not in kind:
            given.append(("double", name))
    return given


def idl() -> str:
    """The interface of the add-in."""
    lines = []
    for function in cell_functions():
        parameters = [f"[in] {kind} {uno_name(name)}" for kind, name in inputs(function)] + ["[in] any asMessage"]
        answer = "sequence< sequence< any > >" if results(function) > 1 else "any"
        lines.append(f"    {answer} {method_name(function['name'])}({', '.join(parameters)})")
    methods = "\n      raises (com::sun::star::lang::IllegalArgumentException);\n".join(lines)
    return (
        "module edgenail {\n  interface XCells {\n"
        f"{methods}\n      raises (com::sun::star::lang::IllegalArgumentException);\n"
        "  };\n};\n"
    )


def uno_name(name: str) -> str:
    """A name that is none of IDL's own words."""
    return "a" + "".join(word.capitalize() for word in name.split("_"))


def configuration() -> str:
    """How Calc shows the functions."""
    nodes = []
    for function in cell_functions():
        shown = function["name"].upper()
        parameters = [(uno_name(name), name.replace("_", " "), f"{name.replace('_', ' ')}; see edgenail.h") for _, name in inputs(function)]
        parameters.append(("asMessage", "as message", "TRUE gives what is wrong, empty where all is well"))
        described = "".join(
            f'<node oor:name={quoteattr(name)} oor:op="replace">{value("DisplayName", title)}{value("Description", meaning)}</node>'
            for name, title, meaning in parameters
        )
        nodes.append(
            f'<node oor:name="{method_name(function["name"])}" oor:op="replace">'
            f'{value("DisplayName", shown)}{value("Description", function["meaning"].replace("`", ""))}'
            f"<prop oor:name=\"Category\"><value>Add-In</value></prop>"
            f'<node oor:name="Parameters">{described}</node></node>'
        )
    inside = "\n".join(nodes)
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n'
        '<oor:component-data xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" '
        'oor:name="CalcAddIns" oor:package="org.openoffice.Office">\n<node oor:name="AddInInfo">\n'
        '<node oor:name="edgenail.Cells" oor:op="replace"><node oor:name="AddInFunctions">\n'
        f"{inside}\n</node></node>\n</node>\n</oor:component-data>\n"
    )


def value(name: str, text: str) -> str:
    return f'<prop oor:name="{name}"><value xml:lang="en">{escape(text)}</value></prop>'


def build(library: Path, out: Path) -> None:
    """Everything into ``out``."""
    macro = out / "macro"
    shutil.rmtree(out, ignore_errors=True)
    macro.mkdir(parents=True)
    shared = [HERE / "edgenail_calls.py", HERE / "functions.json"]
    for file in (HERE / "edgenail_macro.py", *shared, library):
        shutil.copy(file, macro / file.name)
    (out / "edgenail.idl").write_text(idl(), encoding="utf-8")
    office = office_folder()
    types = [office / "program/types.rdb", office / "program/types/offapi.rdb"]
    subprocess.run([office / WRITER, *types, out / "edgenail.idl", out / "edgenail.rdb"], check=True)
    with zipfile.ZipFile(out / "edgenail.oxt", "w", zipfile.ZIP_DEFLATED) as package:
        package.writestr("META-INF/manifest.xml", MANIFEST)
        package.writestr("description.xml", DESCRIPTION)
        package.writestr("edgenail.components", COMPONENTS)
        package.writestr("CalcAddIn.xcu", configuration())
        for file in (out / "edgenail.rdb", HERE / "edgenail_addin.py", *shared, library):
            package.write(file, file.name)
    workbook.write(out / "walls.xlsx")


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--library", type=Path, required=True, help="libedgenail.so, built for release")
    parser.add_argument("--out", type=Path, required=True, help="a folder, which is made anew")
    arguments = parser.parse_args()
    build(arguments.library, arguments.out)
