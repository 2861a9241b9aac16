"""Questions asked by columns, against the same questions asked one by one."""

from __future__ import annotations

import array
import json
import math
import pickle
import signal
import threading
from collections.abc import Iterator
from copy import deepcopy
from typing import Any

import edgenail
import pytest
from cases import Case, load
from hypothesis import given
from hypothesis import strategies as st

CASES = [case for case in load() if case.operation == "capacity" and isinstance(case.input, dict)]

ENDS = {"kind": "hold_down", "length": "4 ft", "height": "8 ft", "inset": 0}

FACE: dict[str, Any] = {
    "kind": "unit_shear", "edition": "2015", "load": "seismic", "method": "asd", "high_seismic": False,
    "assembly": {
        "grade": "sheathing", "thickness": "7/16", "material": "osb", "edge_spacing": "6", "field_spacing": "6",
        "blocked": True, "stud_spacing": "24", "specific_gravity": 0.50, "seam_member": "2 1/2",
        "nail": {"shank": 0.131, "head": 0.281, "length": "2 1/2", "coating": "bright"},
    },
}  # fmt: skip


def scalars(answer: Any, name: str = "") -> Iterator[tuple[str, Any]]:
    """What an answer has outside of lists, named as columns are."""
    for key, value in answer.items():
        dotted = f"{name}.{key}" if name else key
        if isinstance(value, dict):
            if dotted != "derivation":
                yield from scalars(value, dotted)
        elif not isinstance(value, list) and dotted != "caution":
            yield dotted, value


def same(found: object, wanted: object) -> bool:
    """Whether a column says what an answer says."""
    if wanted is None:
        return found == "" or (isinstance(found, float) and math.isnan(found))
    return found == wanted


def pointers(document: Any, pointer: str = "") -> Iterator[tuple[str, Any]]:
    """Every scalar of a question with its JSON pointer."""
    items = document.items() if isinstance(document, dict) else enumerate(document)
    for key, value in items:
        own = f"{pointer}/{str(key).replace('~', '~0').replace('/', '~1')}"
        if isinstance(value, (dict, list)):
            yield from pointers(value, own)
        else:
            yield own, value


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_a_shared_case_by_columns_is_the_case_alone(case: Case) -> None:
    # Every scalar of the question comes from a column of three rows; the middle one is what no field takes.
    fields = [(field, value) for field, value in pointers(case.input) if "/house/" not in field]
    columns = {field: [value, {"no": []}, value] for field, value in fields}
    rows = edgenail.capacity_columns(case.input, columns)
    assert rows.rows == 3
    faulty = {row for row in rows.faults["row"]}
    try:
        answer = edgenail.capacity(case.input)
    except edgenail.InputError as error:
        assert faulty == {0, 1, 2}
        listed = [(fault["code"], fault["field"]) for fault in rows.faults if fault["row"] == 0]
        assert sorted(listed) == sorted((issue.code, issue.path) for issue in error.issues)
        return
    assert faulty == {1}
    wanted = dict(scalars(answer.to_dict()))
    for name, value in wanted.items():
        if name in rows:
            assert same(rows[name][0], value) and same(rows[name][2], value), name
            assert same(rows[name][1], None)
        else:
            assert value is None, name
    assert set(rows) <= set(wanted)
    assert rows.question(2) == case.input
    assert rows.capacity(0).json == answer.json
    for name, table in rows.lists.items():
        items = answer.to_dict()
        for part in name.split("."):
            items = [item[part] for item in items] if isinstance(items, list) else items[part]
        if "." not in name:
            assert [row for row in table["row"]] == [0] * len(items) + [2] * len(items)


number = st.floats(allow_nan=True, allow_infinity=True) | st.floats(1, 1000)


@given(
    st.lists(
        st.tuples(number, st.sampled_from(["3", "4", "6", "5", ""]), st.sampled_from([0.35, 0.5, None, "0.42"])),
        min_size=1,
        max_size=8,
    )
)
def test_random_columns_are_single_calls(rows: list[tuple[float, str, object]]) -> None:
    shanks = array.array("d", [row[0] / 1000 for row in rows])
    columns = {
        "/assembly/nail/shank": shanks,
        "assembly.edge_spacing": [row[1] for row in rows],
        "/assembly/specific_gravity": [row[2] for row in rows],
        "accept_unverified": True,
    }
    found = edgenail.capacity_columns(FACE, columns)
    for row, (_, spacing, gravity) in enumerate(rows):
        faults = {fault["field"] for fault in found.faults if fault["row"] == row}
        question = deepcopy(FACE)
        question["assembly"]["nail"]["shank"] = shanks[row]
        question["assembly"]["edge_spacing"] = spacing
        question["assembly"]["specific_gravity"] = gravity
        question["accept_unverified"] = True
        if not math.isfinite(shanks[row]):
            assert "/assembly/nail/shank" in faults
            continue
        try:
            answer = edgenail.capacity(question)
        except edgenail.InputError as error:
            assert faults == {issue.path for issue in error.issues}
            if "design_plf" in found:
                assert same(found["design_plf"][row], None)
            continue
        assert faults == set()
        for name, value in scalars(answer.to_dict()):
            assert same(found[name][row], value), name


def test_numbers_are_buffers_of_doubles_and_read_only() -> None:
    rows = edgenail.capacity_columns(ENDS, {"shear": [250.0, 500.0]})
    view = rows["tension_lb"]
    assert isinstance(view, memoryview)
    assert (view.format, view.shape, view.readonly) == ("d", (2,), True)
    # Own arithmetic: unit shear times height.
    assert view.tolist() == [2000.0, 4000.0]
    assert rows["kind"] == ("hold_down", "hold_down")
    assert rows.answers.columns[-1].name == "estimate"
    units = {column.name: column.unit for column in rows.answers.columns}
    assert (units["tension_lb"], units["arm_ft"], units["kind"]) == ("lb", "ft", None)


class Counted:
    """A column as table libraries have them."""

    def __init__(self, values: list[object]) -> None:
        self.values = values

    def to_pylist(self) -> list[object]:
        return self.values


class Frame:
    """A table as libraries have them."""

    def to_pydict(self) -> dict[str, object]:
        return {"shear": [250.0, 500.0]}


def test_columns_come_in_many_forms() -> None:
    forms: list[Any] = [
        [250, 500],
        (250.0, 500.0),
        array.array("d", [250, 500]),
        memoryview(array.array("q", [250, 500])),
        iter(["250", "500"]),
        Counted([250, 500]),
    ]
    for form in forms:
        rows = edgenail.capacity_columns(ENDS, {"shear": form})
        assert list(rows["tension_lb"]) == [2000.0, 4000.0]
    assert list(edgenail.capacity_columns(ENDS, Frame())["tension_lb"]) == [2000.0, 4000.0]  # type: ignore[arg-type]
    heights = {"shear": 250, "height": [edgenail.Length("8'"), "96", None]}
    rows = edgenail.capacity_columns(ENDS, heights)
    assert list(rows["tension_lb"])[:2] == [2000.0, 2000.0]
    assert list(rows.faults["row"]) == [2]
    assert edgenail.capacity_columns(ENDS, {"shear": 250}).rows == 1
    none = edgenail.capacity_columns(ENDS, {"shear": []})
    assert (none.rows, len(none), none.to_dict()) == (0, 0, {})


def test_a_column_that_does_not_fit_is_named() -> None:
    with pytest.raises(edgenail.InputError, match="`height` has not as many values") as caught:
        edgenail.capacity_columns(ENDS, {"shear": [1, 2, 3], "height": ["8'", "9'"]})
    assert (caught.value.path, caught.value.found) == ("/height", "2 values")
    with pytest.raises(TypeError, match="column 'shear', row 1: .* cannot hold"):
        edgenail.capacity_columns(ENDS, {"shear": [1, object()]})
    with pytest.raises(TypeError, match="a mapping or a table"):
        edgenail.capacity_columns(ENDS, 3)  # type: ignore[arg-type]
    with pytest.raises(IndexError):
        edgenail.capacity_columns(ENDS, {"shear": [1]}).question(1)


def test_answers_are_shown_copied_and_written() -> None:
    rows = edgenail.capacity_columns(ENDS, {"shear": [250.0, -1.0]})
    assert "1 without an answer" in repr(rows)
    assert rows.caution in rows._repr_html_() and "out_of_range" in rows._repr_html_()
    again = pickle.loads(pickle.dumps(rows))
    assert again.to_dict()["tension_lb"][0] == 2000.0
    lines = rows.answers.to_csv().split("\r\n")
    assert lines[0].startswith("kind,edition,chord_lb") and lines[1].startswith("hold_down,,2000.0")
    assert rows.assumed["field"] and set(rows.assumed["rows"]) == {1}
    assert json.loads(json.dumps(rows.question(0))) == {**ENDS, "shear": 250.0}


def test_ctrl_c_ends_a_long_call() -> None:
    timer = threading.Timer(0.2, signal.raise_signal, [signal.SIGINT])
    # A shell that runs the tests in the background has interrupts ignored.
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    timer.start()
    try:
        with pytest.raises(KeyboardInterrupt):
            edgenail.capacity_columns(FACE, {"/assembly/specific_gravity": [0.5] * 2_000_000})
    finally:
        timer.join()
        signal.signal(signal.SIGINT, before)
