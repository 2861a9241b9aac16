"""Tables as columns of plain Python values, or of buffers of numbers."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Literal, TypeAlias, overload

from edgenail import _edgenail
from edgenail.notebook import table_html

if TYPE_CHECKING:
    from typing_extensions import CapsuleType

__all__ = ["Column", "Kind", "Table", "Value", "Values"]

Kind: TypeAlias = Literal["int", "float", "text"]
"""The kind of a column's values: int64, float64 or text."""
Value = int | float | str
"""A value of a table: lengths of a plan are integers in units of 1/40640 inch."""
Values: TypeAlias = Sequence[Value]
"""The values of a column: plain values, or a ``memoryview`` of int64 or float64."""


@dataclass(frozen=True)
class Column:
    """One column of a table."""

    name: str
    """The column's name."""
    kind: Kind
    """The kind of its values, which a column without rows has too."""
    unit: str | None
    """The unit of its numbers; nothing for text, counts and indices."""
    meaning: str
    """What the value says."""
    values: Values
    """The values, one a row."""


class Table:
    """A table: a sequence of rows, each a dict by column name; ``table["x"]`` is a column's values.

    Other libraries read it as Arrow data: ``polars.DataFrame(table)``, ``pandas.DataFrame.from_arrow(table)``,
    ``pyarrow.table(table)``, ``duckdb.from_arrow(table)``, or ``nails`` in a query of duckdb where a variable has that name.
    No column has nulls, and those of numbers are not copied. The metadata of a field are its ``unit`` and ``meaning``,
    those of the schema the table's ``name`` and ``meaning``.
    """

    def __init__(self, name: str, meaning: str, columns: list[Column], csv: str | None = None) -> None:
        self._name = name
        self._meaning = meaning
        self._columns = tuple(columns)
        self._by_name = {column.name: column for column in columns}
        self._csv = csv
        self._arrow: _edgenail.ArrowTable | None = None

    @classmethod
    def _plain(cls, name: str, table: _edgenail._PlainTable) -> Table:
        meaning, columns, csv, arrow = table
        made = cls(name, meaning, [Column(*column[:4], tuple(column[4])) for column in columns], csv)
        made._arrow = arrow
        return made

    @property
    def name(self) -> str:
        """The table's name."""
        return self._name

    @property
    def meaning(self) -> str:
        """What one row is."""
        return self._meaning

    @property
    def columns(self) -> tuple[Column, ...]:
        """The columns, in the order of every other language."""
        return self._columns

    @property
    def column_names(self) -> tuple[str, ...]:
        """The names of the columns."""
        return tuple(self._by_name)

    @property
    def rows(self) -> list[tuple[Value, ...]]:
        """The rows as tuples, in column order."""
        return list(zip(*(column.values for column in self._columns), strict=True))

    def to_dict(self) -> dict[str, list[Value]]:
        """The columns as lists by name."""
        return {column.name: list(column.values) for column in self._columns}

    def to_csv(self) -> str:
        """The table as comma-separated values (RFC 4180)."""
        if self._csv is None:
            text = io.StringIO(newline="")
            rows = ([_shown(value) for value in row] for row in self.rows)
            csv.writer(text).writerows([self.column_names, *rows])
            self._csv = text.getvalue()
        return self._csv

    def __arrow_c_schema__(self) -> CapsuleType:
        """Names, types, units and meanings of the columns, through the Arrow PyCapsule interface."""
        return self._as_arrow().__arrow_c_schema__()

    def __arrow_c_stream__(self, requested_schema: object | None = None) -> CapsuleType:
        """The table through the Arrow PyCapsule interface, in its own types whatever schema is asked for."""
        return self._as_arrow().__arrow_c_stream__(requested_schema)

    def _as_arrow(self) -> _edgenail.ArrowTable:
        if self._arrow is None:
            columns = [(one.name, one.kind, one.unit, one.meaning, one.values) for one in self._columns]
            self._arrow = _edgenail.ArrowTable(self._name, self._meaning, columns)
        return self._arrow

    def __getstate__(self) -> dict[str, Any]:
        # What is pickled or copied makes its Arrow data again.
        return {**self.__dict__, "_arrow": None}

    def __len__(self) -> int:
        return len(self._columns[0].values) if self._columns else 0

    def __iter__(self) -> Iterator[dict[str, Value]]:
        names = self.column_names
        return (dict(zip(names, row, strict=True)) for row in self.rows)

    @overload
    def __getitem__(self, key: int) -> dict[str, Value]: ...
    @overload
    def __getitem__(self, key: slice) -> list[dict[str, Value]]: ...
    @overload
    def __getitem__(self, key: str) -> Values: ...
    def __getitem__(
        self, key: int | slice | str
    ) -> dict[str, Value] | list[dict[str, Value]] | Values:
        if isinstance(key, str):
            return self._by_name[key].values
        if isinstance(key, slice):
            return [self[index] for index in range(*key.indices(len(self)))]
        return {column.name: column.values[key] for column in self._columns}

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Table):
            return NotImplemented
        return self._name == other._name and self._columns == other._columns

    __hash__ = None  # type: ignore[assignment]

    def __repr__(self) -> str:
        return f"<edgenail.Table {self._name}: {len(self)} rows, {len(self._columns)} columns>"

    def _repr_html_(self) -> str:
        return table_html(self)


def _shown(value: Value) -> Value:
    """Nothing for what is no number."""
    return "" if value != value else value
