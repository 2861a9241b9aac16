"""Tables as columns of plain Python values, or of buffers of numbers."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeAlias, overload

from edgenail.notebook import table_html

if TYPE_CHECKING:
    from edgenail._edgenail import Planned, _PlainTable

__all__ = ["Column", "Table", "Value", "Values"]

Value = int | float | str
"""A value of a table: lengths of a plan are integers in units of 1/40640 inch."""
Values: TypeAlias = Sequence[Value]
"""The values of a column: plain values, or a ``memoryview`` of int64 or float64."""


@dataclass(frozen=True)
class Column:
    """One column of a table."""

    name: str
    """The column's name."""
    unit: str | None
    """The unit of its numbers; nothing for text, counts and indices."""
    meaning: str
    """What the value says."""
    values: Values
    """The values, one a row."""


class Table:
    """A table: a sequence of rows, each a dict by column name; ``table["x"]`` is a column's values.

    ``pandas.DataFrame(table.to_dict())`` and ``polars.DataFrame(table.to_dict())`` make a frame of it.
    """

    def __init__(self, name: str, meaning: str, columns: list[Column], csv: str | None = None) -> None:
        self._name = name
        self._meaning = meaning
        self._columns = tuple(columns)
        self._by_name = {column.name: column for column in columns}
        self._csv = csv

    @classmethod
    def _read(cls, planned: Planned, name: str) -> Table:
        meaning, columns = planned.table(name)
        made = [Column(column, unit, says, tuple(values)) for column, unit, says, values in columns]
        return cls(name, meaning, made, planned.table_csv(name))

    @classmethod
    def _plain(cls, name: str, table: _PlainTable) -> Table:
        meaning, columns, csv = table
        return cls(name, meaning, [Column(*column[:3], tuple(column[3])) for column in columns], csv)

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
