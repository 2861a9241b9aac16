"""Questions of capacity asked many times over, their fields replaced by columns."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping
from copy import deepcopy
from dataclasses import is_dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING, Any, TypeAlias

from edgenail import _edgenail
from edgenail.capacity import Capacity
from edgenail.lengths import Length
from edgenail.notebook import table_html
from edgenail.plan import document
from edgenail.question import Question
from edgenail.table import Column, Table, Values

if TYPE_CHECKING:
    from _typeshed import DataclassInstance

__all__ = ["CapacityColumns", "capacity_columns"]

Cell: TypeAlias = bool | int | float | str | bytes | None
"""A value of a field as the core takes it; bytes are JSON."""

UNITS = {
    "_lb_per_in": "lb/in.",
    "_kips_per_in": "kips/in.",
    "_plf": "lb/ft",
    "_psf": "lb/sq ft",
    "_lb": "lb",
    "_ft": "ft",
    "_in": "in.",
}
"""Units by the ends of names, longer ends first."""


class CapacityColumns(Mapping[str, Values]):
    """Answers to many questions of capacity: a mapping of names to columns, one value a row.

    A column of numbers is a read-only ``memoryview`` of float64 with shape ``(n,)``, which ``numpy.asarray`` takes without
    a copy; a column of text is a tuple of ``n`` texts. Names are those of one answer, with their unit at the end; what an
    answer has within an object is named with a dot, such as ``unit_shear.design_plf``. Flags are 1 and 0.

    A number is NaN, and a text empty, in a row that has no answer, whose faults ``faults`` lists, and where the row's
    answer itself has nothing, such as ``estimate_factor`` where nothing is estimated.

    The answers do not replace the code in force or a licensed design professional: see ``caution``.
    """

    def __init__(self, question: bytes, columns: list[tuple[str, list[Cell], bool]]) -> None:
        """Answers at once; ``edgenail.capacity_columns`` takes other forms too."""
        self._question = question
        self._columns = columns
        answers, lists, faults, assumed, self._caution = _edgenail.capacity_columns(question, columns)
        self._rows = answers[1]
        self._answers = _table("An answer.", answers)
        self._lists = MappingProxyType(
            {table[0]: _table("An item of a list of an answer.", table) for table in lists}
        )
        self._faults = Table._plain("faults", faults)
        self._assumed = Table._plain("assumed", assumed)

    @property
    def rows(self) -> int:
        """The number of rows, ``n``."""
        return self._rows

    @property
    def answers(self) -> Table:
        """The answers as a table, one a row."""
        return self._answers

    @property
    def lists(self) -> Mapping[str, Table]:
        """The lists of the answers by their names, such as ``segments``.

        Each is a table with ``row``, the row of its answer, and ``position``, the place in the answer's list.
        """
        return self._lists

    @property
    def faults(self) -> Table:
        """Every fault of the rows that have no answer: row, code, field, found, allowed, message, wall."""
        return self._faults

    @property
    def assumed(self) -> Table:
        """What the questions did not say: field, value taken, why, and in how many rows."""
        return self._assumed

    @property
    def caution(self) -> str:
        """What has to be confirmed, and by whom."""
        return self._caution

    def question(self, row: int) -> dict[str, Any]:
        """The question of a row; ``edgenail.capacity`` answers it with its steps.

        Raises ``IndexError`` past the last row.
        """
        if not 0 <= row < self._rows:
            raise IndexError(f"there is no row {row}")
        asked: dict[str, Any] = json.loads(self._question)
        for field, values, each in self._columns:
            value = values[row if each else 0]
            _set(asked, _way(field), json.loads(value) if isinstance(value, bytes) else value)
        return asked

    def capacity(self, row: int) -> Capacity:
        """The answer of a row with every step that led to it.

        Raises ``IndexError`` past the last row, ``InputError`` where the row has a fault.
        """
        return Capacity(document(self.question(row)))

    def to_dict(self) -> dict[str, list[Any]]:
        """The columns of the answers as lists, of which pandas, polars and pyarrow make a table."""
        return {name: list(values) for name, values in self.items()}

    def __getitem__(self, name: str) -> Values:
        return self._answers[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._answers.column_names)

    def __len__(self) -> int:
        return len(self._answers.columns)

    def _repr_html_(self) -> str:
        faults = table_html(self._faults) if len(self._faults) > 0 else ""
        return f"{table_html(self._answers)}{faults}<p>{self._caution}</p>"

    def __reduce__(self) -> tuple[type[CapacityColumns], tuple[bytes, list[tuple[str, list[Cell], bool]]]]:
        return (CapacityColumns, (self._question, self._columns))

    def __repr__(self) -> str:
        faulty = len(set(self._faults["row"]))
        return f"<edgenail.CapacityColumns: {self._rows} rows, {faulty} without an answer, {len(self)} columns>"


def capacity_columns(
    question: Question | Mapping[str, object] | str | bytes | DataclassInstance,
    columns: Mapping[str, object],
) -> CapacityColumns:
    """Answers a question of capacity once for each row of its columns.

    Parameters
    ----------
    question : mapping, str, bytes or dataclass
        The question as ``edgenail.capacity`` takes it, without the fields that the columns set.
    columns : mapping of str to column, or a table
        Values by field. A field is a JSON pointer such as ``/assembly/edge_spacing``, or the same with dots,
        ``assembly.edge_spacing``; one that the question lacks is added. A column has shape ``(n,)``: a list, an array, a
        ``Series``, a column of an Arrow table. A text, a number, a length, a mapping or None stands for every row. All
        columns have the same length ``n``; where none has a length, ``n`` is 1. Bare numbers of length fields are in the
        question's ``unit``, inches where it says none; forces are in pounds, unit shears in pounds per foot.

    Returns
    -------
    CapacityColumns
        Columns of shape ``(n,)`` by the names of the answer, each with its unit at the end of its name, and the faults of
        the rows that have no answer. Every number is the one that ``edgenail.capacity`` gives to the row's question.

    Raises
    ------
    InputError
        The question is no JSON, or a column has another length than the first, or sets a field that another sets, or one
        that there cannot be. ``path`` is its field. What is wrong in single rows does not raise.
    TypeError
        A value that no question can hold; the message names the column and the row.

    Notes
    -----
    The interpreter's lock is not held meanwhile, and Ctrl-C ends the call.

    Examples
    --------
    >>> import edgenail
    >>> ends = {"kind": "hold_down", "length": "4 ft", "height": "8 ft", "inset": 0}
    >>> rows = edgenail.capacity_columns(ends, {"shear": [250.0, 500.0, -1.0], "dead": 0})
    >>> list(rows["tension_lb"])
    [2000.0, 4000.0, nan]
    >>> rows.faults["row"], rows.faults["field"], rows.faults["found"]
    ((2,), ('/shear',), ('-1.0',))
    >>> rows.capacity(1).derivation.steps[0].value
    500.0
    """
    given = [_column(str(field), values) for field, values in _items(columns)]
    return CapacityColumns(document(question), given)


def _items(columns: Any) -> Iterable[tuple[object, object]]:
    """Names and columns of a mapping or of a table of any library."""
    for way in ("items", "to_pydict", "to_dict"):
        if hasattr(columns, way):
            found = getattr(columns, way)()
            return found if way == "items" else found.items()  # type: ignore[no-any-return]
    raise TypeError(f"columns have to be a mapping or a table, not {type(columns).__name__}")


def _column(field: str, values: Any) -> tuple[str, list[Cell], bool]:
    """A column as the core takes it, and whether it has a value for each row."""
    # An array without a dimension gives its value here, a column its list.
    for way in ("to_pylist", "to_list", "tolist"):
        if hasattr(values, way):
            values = getattr(values, way)()
            break
    alone = values is None or isinstance(values, (str, bytes, Mapping, Length)) or is_dataclass(values)
    if alone or not isinstance(values, Iterable):
        return (field, [_cell(field, None, values)], False)
    return (field, [_cell(field, row, value) for row, value in enumerate(values)], True)


def _cell(field: str, row: int | None, value: Any) -> Cell:
    if value is None or isinstance(value, (bool, float, str)):
        return value
    if isinstance(value, int) and -(2**63) <= value < 2**63:
        return value
    if type(value).__name__ == "NAType":
        return None  # what pandas writes for nothing
    if hasattr(value, "item"):
        return _cell(field, row, value.item())
    try:
        # Text that is one value already, such as a length, goes as text; lists and objects go as JSON.
        return str(value) if isinstance(value, Length) else document([value])[1:-1]
    except (TypeError, ValueError) as error:
        place = "" if row is None else f", row {row}"
        raise TypeError(f"column {field!r}{place}: {error}") from error


def _way(field: str) -> list[str]:
    if not field.startswith("/"):
        return field.split(".")
    return [part.replace("~1", "/").replace("~0", "~") for part in field.split("/")[1:]]


def _set(asked: Any, way: list[str], value: object) -> None:
    for part in way[:-1]:
        asked = asked[int(part)] if isinstance(asked, list) else asked.setdefault(part, {})
    if isinstance(asked, list):
        asked[int(way[-1])] = deepcopy(value)
    else:
        asked[way[-1]] = deepcopy(value)


def _table(meaning: str, table: _edgenail._Answers) -> Table:
    name, _, columns = table
    return Table(name, meaning, [_answered(name, cells) for name, cells in columns])


def _answered(name: str, cells: tuple[str, bytes] | list[str]) -> Column:
    if isinstance(cells, list):
        return Column(name, "text", _unit(name), "", tuple(cells))
    kind, packed = cells
    values = memoryview(packed)
    if kind == "q":
        return Column(name, "int", _unit(name), "", values.cast("q"))
    return Column(name, "float", _unit(name), "", values.cast("d"))


def _unit(name: str) -> str | None:
    return next((unit for end, unit in UNITS.items() if name.endswith(end)), None)
