"""Plans of houses."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict, is_dataclass
from functools import cached_property
from typing import Any

from edgenail import _edgenail
from edgenail.lengths import Length
from edgenail.table import Table

__all__ = ["Plan", "plan"]


class Plan:
    """The plan of a house. It never changes, and any thread may read it."""

    def __init__(self, house: bytes) -> None:
        self._house = house
        self._planned = _edgenail.plan(house)
        self._tables: dict[str, Table] = {}

    @cached_property
    def json(self) -> str:
        """The whole plan as the library's JSON, with the same bytes in every language."""
        return self._planned.json()

    def to_dict(self) -> dict[str, Any]:
        """The whole plan as plain Python values."""
        document: dict[str, Any] = json.loads(self.json)
        return document

    @property
    def table_names(self) -> list[str]:
        """The names of all tables."""
        return self._planned.table_names()

    def table(self, name: str) -> Table:
        """The table of this name; ``KeyError`` when there is none."""
        if name not in self._tables:
            self._tables[name] = Table._read(self._planned, name)
        return self._tables[name]

    def svg(self, wall: str) -> str:
        """The drawing of a wall as SVG; ``KeyError`` when there is no such wall."""
        return self._planned.wall_svg(wall)

    @property
    def walls(self) -> list[str]:
        """The names of the walls."""
        return [str(wall["name"]) for wall in self.to_dict()["house"]["walls"]]

    def __reduce__(self) -> tuple[type[Plan], tuple[bytes]]:
        return (Plan, (self._house,))

    def __repr__(self) -> str:
        sizes = ", ".join(f"{len(self.table(name))} {name}" for name in self.table_names)
        return f"<edgenail.Plan: {sizes}>"


def plan(house: Mapping[str, Any] | str | bytes) -> Plan:
    """Plans a house, given as JSON text, as bytes of JSON, or as the same document in plain Python values.

    Raises ``InputError`` with every fault of the input, or ``NoLayoutError``.
    """
    return Plan(_document(house))


def _document(house: Mapping[str, Any] | str | bytes) -> bytes:
    if isinstance(house, bytes):
        return house
    if isinstance(house, str):
        return house.encode()
    return json.dumps(house, ensure_ascii=False, allow_nan=False, default=_plain).encode()


def _plain(value: object) -> object:
    """A length as exact text; anything else that JSON does not know is refused."""
    if isinstance(value, Length):
        return str(value)
    if is_dataclass(value) and not isinstance(value, type):
        return asdict(value)
    raise TypeError(f"a house cannot hold {value!r}")
