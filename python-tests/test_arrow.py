"""Tables as Arrow data: what pyarrow, polars, pandas and duckdb read is what the table says."""

from __future__ import annotations

import copy
import pickle
import subprocess
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path

import duckdb
import edgenail
import pandas  # type: ignore[import-untyped]
import polars
import pyarrow  # type: ignore[import-untyped]
import pytest
from edgenail.table import Kind, Value

MEMORY = Path("/proc/self/statm")

TYPES: dict[Kind, pyarrow.DataType] = {"int": pyarrow.int64(), "float": pyarrow.float64(), "text": pyarrow.utf8()}

PLAN = edgenail.plan(edgenail.demo_house())

WIDE_DOOR = [{"op": "replace", "path": "/walls/0/sections/0/stack/0/openings/0/width", "value": "73 1/2"}]

ENDS = {"kind": "hold_down", "length": "4 ft", "height": "8 ft", "inset": 0}


def tables() -> Iterator[edgenail.Table]:
    yield from (PLAN.table(name) for name in PLAN.table_names)
    yield edgenail.street([PLAN, PLAN]).deliveries
    yield PLAN.what_if(WIDE_DOOR).table
    for outcome in edgenail.plan_batch([edgenail.generated_house(1)[0]], plans=True):
        assert outcome.plan is not None
        yield outcome.plan.table("panels")
    for shear in ([250.0, -1.0], [250.0]):
        rows = edgenail.capacity_columns(ENDS, {"shear": shear, "dead": 0})
        yield from (rows.answers, rows.faults, rows.assumed, *rows.lists.values())


TABLES = list(tables())

every_table = pytest.mark.parametrize("table", TABLES, ids=lambda table: table.name)


def plain(values: Sequence[Value]) -> list[Value | None]:
    """Values to be compared: what is no number is not even equal to itself."""
    return [None if value != value else value for value in values]


@every_table
def test_the_libraries_read_the_values_of_the_table(table: edgenail.Table) -> None:
    wanted = {column.name: plain(column.values) for column in table.columns}
    arrow = pyarrow.table(table)
    arrow.validate(full=True)
    found = {
        "pyarrow": arrow.to_pydict(),
        "polars": polars.DataFrame(table).to_dict(as_series=False),
        "pandas": pandas.DataFrame.from_arrow(table).to_dict("list"),
        "duckdb": duckdb.from_arrow(table).to_arrow_table().to_pydict(),
    }
    for library, columns in found.items():
        assert list(columns) == list(table.column_names), library
        assert {name: plain(values) for name, values in columns.items()} == wanted, library


@every_table
def test_every_column_has_the_type_of_its_kind_and_no_nulls(table: edgenail.Table) -> None:
    schema = pyarrow.schema(table)
    assert schema == pyarrow.table(table).schema
    for column, field in zip(table.columns, schema, strict=True):
        assert (field.name, field.type, field.nullable) == (column.name, TYPES[column.kind], False)
        assert {type(value) for value in column.values} <= {{"int": int, "float": float, "text": str}[column.kind]}


@every_table
def test_metadata_say_units_and_meanings(table: edgenail.Table) -> None:
    schema = pyarrow.schema(table)
    assert schema.metadata == {b"name": table.name.encode(), b"meaning": table.meaning.encode()}
    for column, field in zip(table.columns, schema, strict=True):
        unit = {} if column.unit is None else {b"unit": column.unit.encode()}
        assert field.metadata == {b"meaning": column.meaning.encode(), **unit}


def test_lengths_tell_their_unit() -> None:
    assert pyarrow.schema(PLAN.nails).field("x").metadata[b"unit"] == b"1/40640 in."


def test_tables_of_every_kind_and_of_no_rows_were_read() -> None:
    assert {column.kind for table in TABLES for column in table.columns if len(table)} == {"int", "float", "text"}
    assert any(column.kind == "int" for table in TABLES for column in table.columns if not len(table))


@every_table
def test_columns_of_numbers_are_the_same_memory_in_pyarrow_and_polars(table: edgenail.Table) -> None:
    arrow, again, frame = pyarrow.table(table), pyarrow.table(table), polars.DataFrame(table)
    for column in table.columns:
        if column.kind == "text" or len(table) == 0:
            continue
        (chunk,), (chunk_again,) = arrow[column.name].chunks, again[column.name].chunks
        _, values = chunk.buffers()
        assert values.address == chunk_again.buffers()[1].address
        assert values.address == frame[column.name].to_numpy(allow_copy=False).ctypes.data


def test_a_query_reads_a_variable() -> None:
    nails = PLAN.nails
    assert len(nails) > 0
    found = duckdb.sql("select count(*) from nails")
    assert found is not None
    assert found.fetchall() == [(len(nails),)]


def test_memory_outlives_the_table() -> None:
    table = edgenail.Table("squares", "", [edgenail.Column("n", "int", None, "", tuple(n * n for n in range(1000)))])
    arrow, frame = pyarrow.table(table), polars.DataFrame(table)
    del table
    assert arrow["n"].to_pylist() == frame["n"].to_list() == [n * n for n in range(1000)]


def test_a_schema_that_is_asked_for_changes_nothing() -> None:
    asked = pyarrow.schema([pyarrow.field(name, pyarrow.utf8()) for name in PLAN.walls.column_names])
    stream = PLAN.walls.__arrow_c_stream__(requested_schema=asked.__arrow_c_schema__())
    assert pyarrow.RecordBatchReader._import_from_c_capsule(stream).read_all() == pyarrow.table(PLAN.walls)


@every_table
def test_copies_hand_over_the_same(table: edgenail.Table) -> None:
    # Buffers of answers are not pickled by Python.
    copies = [copy.copy(table)]
    if not any(isinstance(column.values, memoryview) for column in table.columns):
        copies += [copy.deepcopy(table), pickle.loads(pickle.dumps(table))]
    for one in copies:
        assert pyarrow.schema(one).equals(pyarrow.schema(table), check_metadata=True)
        assert polars.DataFrame(one).equals(polars.DataFrame(table))


@pytest.mark.parametrize(
    ("kind", "values", "error"),
    [
        ("int", (1, None), TypeError),
        ("int", (1.5,), TypeError),
        ("int", (2**63,), OverflowError),
        ("float", ("1",), TypeError),
        ("text", (1,), TypeError),
        ("date", (1,), ValueError),
    ],
)
def test_values_of_another_kind_are_refused(kind: Kind, values: tuple[Value, ...], error: type[Exception]) -> None:
    table = edgenail.Table("made", "", [edgenail.Column("n", kind, None, "", values)])
    with pytest.raises(error) as raised:
        table.__arrow_c_stream__()
    assert raised.value.__notes__ == ["column n of the table made"]


def test_columns_of_different_lengths_are_refused() -> None:
    columns = [edgenail.Column(name, "int", None, "", tuple(range(n))) for name, n in (("first", 2), ("second", 3))]
    with pytest.raises(ValueError, match="column second has 3 values, the first column 2"):
        edgenail.Table("made", "", columns).__arrow_c_schema__()


def test_a_table_without_columns_is_handed_over() -> None:
    assert pyarrow.table(edgenail.Table("made", "", [])).shape == (0, 0)


@pytest.mark.skipif(not MEMORY.exists(), reason="the memory in use is read as Linux tells it")
def test_capsules_that_nobody_takes_free_what_they_hold() -> None:
    rows = memoryview(bytes(400_000)).cast("q")

    def round_of_capsules() -> None:
        # 400 kB of values and 400 kB of metadata: what stays of the rounds would be 300 MB.
        table = edgenail.Table("zeros", "m" * 400_000, [edgenail.Column("n", "int", None, "", rows)])
        table.__arrow_c_schema__()
        table.__arrow_c_stream__()
        pyarrow.table(table)

    for _ in range(20):
        round_of_capsules()
    before = int(MEMORY.read_text().split()[1])
    for _ in range(380):
        round_of_capsules()
    assert (int(MEMORY.read_text().split()[1]) - before) * 4096 < 30_000_000


def test_no_other_library_is_imported() -> None:
    others = "{'pyarrow', 'polars', 'pandas', 'duckdb', 'numpy'} & {name.split('.')[0] for name in sys.modules}"
    code = f"import sys, edgenail; edgenail.plan(edgenail.demo_house()).walls.__arrow_c_stream__(); print({others})"
    shown = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert shown.stdout == "set()\n"
