"""The VBA module of a workbook against the C header, read here a second time."""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
HEADER = (ROOT / "bindings/c/include/edgenail.h").read_text(encoding="utf-8")
MODULE = (ROOT / "bindings/spreadsheet/edgenail.bas").read_bytes()

# How a parameter of C reaches a Declare of VBA: Office VBA language reference, Declare statement, and Microsoft's table of
# data types: Double has 64 bits, Long 32, LongLong 64, LongPtr those of a pointer. From memory.
PASSED = {
    "double": "ByVal Double",
    "int32_t": "ByVal Long",
    "int64_t": "ByVal LongLong",
    "const char *": "ByVal String",
    "const uint16_t *": "ByVal LongPtr",
    "double *": "ByRef Double",
    "int32_t *": "ByRef Long",
    "int64_t *": "ByRef LongLong",
}
RETURNED = {"int32_t": "Long", "int64_t": "LongLong", "void": None}


def in_c() -> dict[str, tuple[str | None, list[str]]]:
    """Every function of the header: what it returns, and its parameters as VBA has to pass them."""
    code = re.sub(r"/\*.*?\*/", "", HEADER, flags=re.DOTALL)
    functions = {}
    for returns, name, inside in re.findall(r"^(void|int32_t|int64_t) (edgenail_\w+)\((.*?)\);", code, re.DOTALL | re.MULTILINE):
        parameters = [" ".join(part.split()) for part in inside.split(",") if part.strip() != "void"]
        kinds = [re.fullmatch(r"(.*?)(\w+)", parameter) for parameter in parameters]
        assert all(kinds), name
        passed = [how(match[1].strip(), match[2]) for match in kinds if match]
        functions[name] = (RETURNED[returns], passed)
    return functions


def how(kind: str, name: str) -> str:
    if name == "buffer":
        return "ByVal LongPtr"
    if "struct" in kind:
        return "ByRef LongPtr" if kind.count("*") == 2 else "ByVal LongPtr"
    return PASSED[kind]


def logical_lines() -> list[str]:
    return MODULE.decode("ascii").replace(" _\r\n", " ").split("\r\n")


def declared() -> dict[str, tuple[str | None, list[str]]]:
    """Every Declare of the library's functions."""
    pattern = re.compile(r'Public Declare PtrSafe (?:Sub|Function) (\w+) Lib "edgenail" \((.*)\)(?: As (\w+))?$')
    functions = {}
    for line in logical_lines():
        if found := pattern.match(line):
            parts = [re.fullmatch(r"\s*(ByVal|ByRef) (\w+) As (\w+)", part) for part in found[2].split(",") if part.strip()]
            assert all(parts), line
            functions[found[1]] = (found[3], [f"{part[1]} {part[3]}" for part in parts if part])
    return functions


def test_every_declaration_is_that_of_the_header() -> None:
    c = in_c()
    vba = declared()
    assert len(vba) > 50
    for name, declaration in vba.items():
        assert declaration == c[name], name


def test_every_function_that_takes_no_row_can_be_called() -> None:
    rows = set(re.findall(r"(edgenail_\w+)\([^)]*_row \*", HEADER))
    left_out = in_c().keys() - declared().keys() - rows
    twins = {name for name in left_out if f"{name}_utf16" in declared()}
    assert left_out == twins


def test_constants_are_those_of_the_header() -> None:
    c = dict(re.findall(r"^\s*(EDGENAIL_\w+) = (\d+),", HEADER, re.MULTILINE))
    vba = dict(re.findall(r"^Public Const (EDGENAIL_\w+) As Long = (\d+)\r$", MODULE.decode("ascii"), re.MULTILINE))
    assert vba == c
    assert vba["EDGENAIL_STATUS_INPUT"] == "100"


def test_every_wrapper_calls_with_as_many_arguments_as_are_declared() -> None:
    c = in_c()
    calls = [line for line in logical_lines() if re.match(r"\s+status = edgenail_", line)]
    called = set()
    for line in calls:
        found = re.match(r"\s+status = (\w+)\((.*)\)$", line)
        assert found, line
        depth = 0
        arguments = 1
        for letter in found[2]:
            depth += (letter == "(") - (letter == ")")
            arguments += letter == "," and depth == 0
        assert arguments == len(c[found[1]][1]), line
        called.add(found[1])
    assert {"edgenail_wall_sheets_utf16", "edgenail_hold_down", "edgenail_length_parse_utf16"} <= called


@pytest.mark.parametrize("limit", [1023])
def test_lines_are_such_as_the_editor_of_office_takes(limit: int) -> None:
    """A line holds at most 1,023 characters, and goes on at most 24 times (VBA's limits, from memory)."""
    text = MODULE.decode("ascii")
    assert text.count("\n") == text.count("\r\n")
    assert max(map(len, text.split("\r\n"))) <= limit
    assert max(len(run) for run in re.findall(r"(?:.* _\r\n)+", text)) < limit * 24
    assert max(run.count("\n") for run in re.findall(r"(?:.* _\r\n)+", text)) <= 24
