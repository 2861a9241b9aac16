"""What is different when a house is planned again after something changed."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

from edgenail import _edgenail
from edgenail.table import Table

if TYPE_CHECKING:
    from edgenail.plan import Plan

__all__ = ["Change", "WhatIf"]

Change = Mapping[str, object]
"""A change as RFC 6902 writes it: ``{"op": "replace", "path": "/walls/0/length", "value": "17 ft"}``."""


class WhatIf:
    """A house planned again after changes: its plan, and what is different.

    It is no substitute for the local building code and licensed practice: check it before you build.
    """

    def __init__(self, before: Plan, house: bytes, changes: bytes) -> None:
        """Plans changes in bytes of JSON; ``Plan.what_if`` takes other forms too."""
        text, planned, self._json, table = _edgenail.what_if(before._planned, house, changes)
        self._plan = type(before)._of(planned, text.encode())
        self._table = Table._plain("changes", table)

    @property
    def plan(self) -> Plan:
        """The plan after the changes."""
        return self._plan

    @property
    def json(self) -> str:
        """What is different as the library's JSON, the same in every language."""
        return self._json

    def to_dict(self) -> dict[str, Any]:
        """What is different as plain Python values: the totals, the take-off, walls, findings, capacity."""
        changes: dict[str, Any] = json.loads(self._json)
        return changes

    @property
    def table(self) -> Table:
        """What is different as one table: a row for everything that changed, and for every wall that did not."""
        return self._table

    @property
    def unchanged_walls(self) -> list[str]:
        """The walls that stay as they were."""
        return [wall["wall"] for wall in self.to_dict()["walls"] if wall["state"] == "unchanged"]

    def _repr_html_(self) -> str:
        return self._table._repr_html_()

    def __repr__(self) -> str:
        return f"<edgenail.WhatIf: {len(self._table)} rows of changes>"
