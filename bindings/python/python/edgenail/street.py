"""Houses of a street cut together, in building order."""

from __future__ import annotations

import json
from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

from edgenail import _edgenail
from edgenail.table import Table

if TYPE_CHECKING:
    from edgenail.plan import Plan

__all__ = ["Street", "street"]


class Street:
    """Houses cut together: what is delivered to each, and what is carried on to later ones.

    It is no substitute for the local building code and licensed practice: check it before you build.
    """

    def __init__(self, text: str, table: Table) -> None:
        """Made by ``street``."""
        self._json = text
        self._table = table

    @property
    def json(self) -> str:
        """The street as the library's JSON, the same in every language."""
        return self._json

    def to_dict(self) -> dict[str, Any]:
        """The street as plain Python values: deliveries, what is carried, both prices, the cut plan."""
        found: dict[str, Any] = json.loads(self._json)
        return found

    @property
    def deliveries(self) -> Table:
        """For each house and kind of sheet: sheets if it is cut alone, and sheets delivered to it on the street."""
        return self._table

    def _repr_html_(self) -> str:
        return self._table._repr_html_()

    def __repr__(self) -> str:
        return f"<edgenail.Street: {len(self._table)} deliveries>"


def street(plans: Iterable[Plan], *, effort_most: int = 20_000_000) -> Street:
    """Cuts the sheets of planned houses together, in the order in which they are built.

    ``effort_most`` is what may be spent on it, in parts of sheets looked at.

    Raises ``InputError`` where a house has other sheets, off-cuts or rules of cutting than the first.

    >>> import edgenail
    >>> lots = [edgenail.plan({"walls": [{"name": "front", "length": f"{feet} ft"}]}) for feet in (10, 14)]
    >>> found = edgenail.street(lots)
    >>> sum(found.deliveries["delivered"]) <= sum(found.deliveries["alone"])
    True
    """
    text, table = _edgenail.street([plan._planned for plan in plans], effort_most)
    return Street(text, Table._plain("deliveries", table))
