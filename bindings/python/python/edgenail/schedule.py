"""Wall schedules: one row a wall, from Python, CSV or a workbook, planned as one house."""

from __future__ import annotations

import csv
import json
import os
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal, TypeAlias

from edgenail import _edgenail
from edgenail.errors import EdgenailError, InputError
from edgenail.lengths import Length
from edgenail.plan import Plan

__all__ = ["Design", "Opening", "WallSchedule"]

Opening: TypeAlias = Sequence["float | str | Length"]
"""Left edge, sill, width and height of a rough opening; numbers in inches."""

COLUMNS = ("name", "length", "plate_height", "stud_spacing", "openings", "practice", "segments", "wind", "seismic")
"""The columns of a file, in any order; ``name`` and ``length`` have to be there."""


@dataclass(frozen=True, kw_only=True)
class Design:
    """By which rules walls resist the loads of their rows.

    >>> import edgenail
    >>> edgenail.Design(edition="2015", method="asd", high_seismic=False).level
    'strength'
    """

    edition: Literal["2008", "2015", "2021"]
    """Of the Special Design Provisions for Wind and Seismic."""
    method: Literal["asd", "lrfd"]
    """Allowable stress, or load and resistance factor design."""
    high_seismic: bool
    """The building is in seismic design category D, E or F."""
    level: Literal["strength", "asd"] = "strength"
    """At which the loads of all rows are given."""
    sharing: Literal["reduced_strength", "equal_deflection"] = "reduced_strength"
    """How the segments of a line share its shear."""
    accept_unverified: bool = False
    """Values that were recalled and not checked against print may be used; results say so."""


class WallSchedule:
    """Walls as the rows of a sheet have them: one storey on concrete, a treated bottom plate, two top plates, a level top.

    >>> import edgenail
    >>> schedule = edgenail.WallSchedule("shed")
    >>> schedule.add("back", "12'", openings=[(36, 40, 48, 36)], practice="upright")
    >>> schedule.add("front", 144, openings="30,0,90,80")
    >>> schedule.plan().table("walls")["wall"]
    ('back', 'front')
    """

    def __init__(self, name: str = "house", design: Design | None = None) -> None:
        """A schedule without rows; rows may say loads only where ``design`` says the rules."""
        words = None
        if design is not None:
            said = (design.edition, design.method, design.level, design.sharing)
            words = (*said, design.high_seismic, design.accept_unverified)
        self._scheduled = _edgenail.Scheduled(name, words)

    def add(
        self,
        name: str,
        length: float | str | Length,
        *,
        plate_height: float | str | Length = 97.125,
        stud_spacing: float | str | Length = 16,
        openings: str | Iterable[Opening] = "",
        practice: str = "",
        segments: str = "",
        wind: float = 0,
        seismic: float = 0,
    ) -> None:
        """Adds a wall; the schedule stays as it was where the row has a fault.

        Parameters
        ----------
        name
            Unique in the schedule.
        length
            Of the frame. Numbers are inches here and below.
        plate_height
            From the underside of the bottom plate to the top of the top plates.
        stud_spacing
            On centre.
        openings
            ``left,sill,width,height; …`` or as many sequences of four lengths. A sill of 0 makes a door, any other a window.
        practice
            ``either``, ``upright``, ``flat``, each with ``blocked`` if every panel edge is to be backed; then nailing at edges
            and between if it is not 6/12: ``flat blocked 4/12``.
        segments
            Shear segments of full height, ``left,right; …``.
        wind, seismic
            Along the wall at its top, in pounds.

        Raises
        ------
        InputError
            With every fault of the row, at paths such as ``/openings/1/width``.
        """
        if not isinstance(openings, str):
            openings = "; ".join(",".join(_cell(length) for length in opening) for opening in openings)
        sizes = (_inches(length), _inches(plate_height), _inches(stud_spacing))
        self._scheduled.add(name, *sizes, openings, practice, segments, wind, seismic)

    def __len__(self) -> int:
        return self._scheduled.count()

    def __repr__(self) -> str:
        return f"<edgenail.WallSchedule: {len(self)} walls>"

    @property
    def house_json(self) -> str:
        """The house that the rows describe, as the JSON that ``edgenail.plan`` takes."""
        return self._scheduled.house_json()

    def plan(self) -> Plan:
        """Plans the rows as one house, whose sheets are cut for all walls together.

        Raises ``InputError`` or ``NoLayoutError``.
        """
        return Plan(self.house_json.encode())

    @classmethod
    def from_rows(cls, rows: Iterable[Mapping[str, object]], name: str = "house", design: Design | None = None) -> WallSchedule:
        """A schedule of rows with the names of ``COLUMNS``; what is blank or missing takes its default.

        Raises ``InputError`` with the faults of all rows, at paths such as ``/rows/3/openings/1/width``; rows count from 0.
        """
        schedule = cls(name, design)
        faults: list[dict[str, Any]] = []
        for place, row in enumerate(rows):
            try:
                schedule._add_row(row)
            except InputError as error:
                for fault in json.loads(error.json)["issues"]:
                    faults.append({**fault, "path": f"/rows/{place}{fault['path']}"})
        if faults:
            raise _input_error(faults)
        return schedule

    def _add_row(self, row: Mapping[str, object]) -> None:
        said = {column: value for column, value in row.items() if value is not None and value != ""}
        faults = [
            _issue("unknown_field", f"/{column}", str(column), ", ".join(COLUMNS), f"there is no column `{column}`")
            for column in row
            if column not in COLUMNS
        ]
        faults += [
            _issue("missing_field", f"/{column}", "", "a value", f"`{column}` is missing")
            for column in ("name", "length")
            if column not in said
        ]
        for column in ("wind", "seismic"):
            try:
                said[column] = float(str(said.get(column, 0)))
            except ValueError:
                faults.append(_issue("not_a_number", f"/{column}", str(said[column]), "pounds", f"`{said[column]}` is no number"))
        for column in ("length", "plate_height", "stud_spacing"):
            if column in said:
                try:
                    said[column] = _inches(said[column])
                except InputError as error:
                    faults += [{**fault, "path": f"/{column}"} for fault in json.loads(error.json)["issues"]]
        if faults:
            raise _input_error(faults)
        for column in ("name", "openings", "practice", "segments"):
            if column in said:
                said[column] = _cell(said[column])
        self.add(**said)  # type: ignore[arg-type]

    @classmethod
    def read_csv(
        cls, path: str | os.PathLike[str], *, name: str | None = None, design: Design | None = None
    ) -> WallSchedule:
        """A schedule from a CSV file in UTF-8 whose first line names its columns; see ``from_rows``."""
        with open(path, encoding="utf-8-sig", newline="") as file:
            reader = csv.DictReader(file, restkey="more cells than columns")
            return cls.from_rows(reader, name or Path(path).stem, design)

    @classmethod
    def read_excel(
        cls, path: str | os.PathLike[str], sheet: str = "Walls", *, name: str | None = None, design: Design | None = None
    ) -> WallSchedule:
        """A schedule from a sheet of an .xlsx workbook whose first row names its columns; see ``from_rows``.

        Wants openpyxl. Cells hold what they show: formulas as they were last computed.
        """
        from openpyxl import load_workbook

        lines = load_workbook(path, read_only=True, data_only=True)[sheet].iter_rows(values_only=True)
        heads = [str(head) for head in next(lines, ())]
        rows = (dict(zip(heads, line, strict=True)) for line in lines if any(cell not in (None, "") for cell in line))
        return cls.from_rows(rows, name or Path(path).stem, design)


def _inches(value: object) -> float:
    """A length in inches."""
    if isinstance(value, Length):
        return value.inches
    return Length(value).inches if isinstance(value, str) else float(value)  # type: ignore[arg-type]


def _cell(value: object) -> str:
    """A value as the text of a cell; a workbook holds a name of digits as a number."""
    if isinstance(value, Length):
        return f"{value.inches!r}"
    return f"{value:.17g}" if isinstance(value, float) else str(value)


def _issue(code: str, path: str, found: str, allowed: str, message: str) -> dict[str, Any]:
    return {"code": code, "path": path, "wall": "", "found": found, "allowed": allowed, "message": message}


def _input_error(faults: list[dict[str, Any]]) -> EdgenailError:
    message = "\n".join(f"{fault['path']}: {fault['message']}" for fault in faults)
    return EdgenailError.from_json(json.dumps({"error": "issues", "issues": faults}), message)
