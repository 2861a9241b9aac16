"""Plans of houses."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import asdict, is_dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Any

from edgenail import _edgenail
from edgenail.changes import Change, WhatIf
from edgenail.house import House
from edgenail.lengths import Length
from edgenail.notebook import plan_html
from edgenail.table import Table

if TYPE_CHECKING:
    from _typeshed import DataclassInstance

__all__ = ["Plan", "demo_house", "generated_house", "plan"]


class Plan:
    """The plan of a house. It never changes, and any thread may read it.

    It is no substitute for the local building code and licensed practice: check it before you build.
    """

    def __init__(self, house: bytes) -> None:
        """Plans the house that bytes of JSON describe; ``edgenail.plan`` takes other forms too."""
        self._hold(_edgenail.plan(house), house)

    def _hold(self, planned: _edgenail.Planned, house: bytes | None) -> None:
        self._planned = planned
        self._house = house
        self._tables: dict[str, Table] = {}

    @classmethod
    def _of(cls, planned: _edgenail.Planned, house: bytes | None = None) -> Plan:
        """What the core has already planned, and the document that it was made from."""
        plan = cls.__new__(cls)
        plan._hold(planned, house)
        return plan

    @property
    def _document(self) -> bytes:
        """The house that was planned, or as it was understood, which gives the same plan."""
        return self._house or json.dumps(self.to_dict()["house"]).encode()

    def what_if(self, changes: Sequence[Change] | str | bytes) -> WhatIf:
        """Plans the house again after changes, and tells what is different.

        ``changes`` is a JSON Patch (RFC 6902): objects with ``op`` (``add``, ``remove``, ``replace`` or ``test``), ``path`` (a
        JSON pointer into the document that was planned) and ``value``. ``add`` sets a field whether the document says it or
        not; ``replace`` wants it said.

        Raises ``InputError`` with the changes that are none, or with the faults of the changed house.

        >>> import edgenail
        >>> plan = edgenail.plan({"walls": [{"name": "north", "length": "16 ft"}, {"name": "east", "length": "8 ft"}]})
        >>> longer = plan.what_if([{"op": "replace", "path": "/walls/0/length", "value": "20 ft"}])
        >>> longer.unchanged_walls
        ['east']
        """
        text = changes if isinstance(changes, (str, bytes)) else b"[%b]" % b",".join(map(document, changes))
        return WhatIf(self, self._document, document(text))

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
            self._tables[name] = Table._plain(name, self._planned.table(name))
        return self._tables[name]

    @property
    def walls(self) -> Table:
        """The walls."""
        return self.table("walls")

    @property
    def openings(self) -> Table:
        """The openings, the zones without sheathing, the holes cut in place."""
        return self.table("openings")

    @property
    def members(self) -> Table:
        """The members of the frames, with everything that the plan adds."""
        return self.table("members")

    @property
    def panels(self) -> Table:
        """The pieces of sheathing as they hang."""
        return self.table("panels")

    @property
    def outlines(self) -> Table:
        """The corners of the panels' outlines."""
        return self.table("outlines")

    @property
    def cells(self) -> Table:
        """The corners of the panels' cells, from seam centre to seam centre, which tile each wall."""
        return self.table("cells")

    @property
    def edges(self) -> Table:
        """The stretches of the panels' edges, and what supports them."""
        return self.table("edges")

    @property
    def blocks(self) -> Table:
        """The wood that the plan adds: blocks, studs, widened members."""
        return self.table("blocks")

    @property
    def nail_rows(self) -> Table:
        """The rows of nails."""
        return self.table("nail_rows")

    @property
    def nails(self) -> Table:
        """Every single nail."""
        return self.table("nails")

    @property
    def sheets(self) -> Table:
        """The sheets to be cut."""
        return self.table("sheets")

    @property
    def cuts(self) -> Table:
        """What each sheet is cut into."""
        return self.table("cuts")

    @property
    def cut_list(self) -> Table:
        """The pieces to be cut, by sheet and place on it."""
        return self.table("cut_list")

    @property
    def takeoff(self) -> Table:
        """What to order, what it costs, and what work it is: by house, storey and wall."""
        return self.table("takeoff")

    @property
    def costs(self) -> Table:
        """The parts of what each wall's layout costs."""
        return self.table("costs")

    @property
    def alternatives(self) -> Table:
        """The layouts that were weighed and not chosen, with what each costs more."""
        return self.table("alternatives")

    @property
    def differences(self) -> Table:
        """The parts of its cost in which each alternative is not the same as the chosen layout."""
        return self.table("differences")

    def why(self, wall: str) -> str:
        """Why this layout of a wall and not another, as text: each alternative with the parts of its cost that differ.

        Raises ``KeyError`` when there is no such wall.

        >>> import edgenail
        >>> plan = edgenail.plan(edgenail.demo_house())
        >>> "Alternative 1:" in plan.why("south")
        True
        """
        return self._planned.why(wall)

    @property
    def steps(self) -> Table:
        """The order of work on each wall, with its hold points and what each step waits for."""
        return self.table("steps")

    @property
    def findings(self) -> Table:
        """What the checks found."""
        return self.table("findings")

    @property
    def wall_names(self) -> list[str]:
        """The names of the walls, in the order of the house."""
        return [str(name) for name in self.walls["wall"]]

    def svg(self, wall: str) -> str:
        """The drawing of a wall with its sheathing as SVG; ``KeyError`` when there is no such wall."""
        return self._planned.wall_svg(wall)

    def frame_svg(self, wall: str) -> str:
        """The drawing of a wall's frame, its members and what is added before the sheets, as SVG.

        Raises ``KeyError`` when there is no such wall.
        """
        return self._planned.frame_svg(wall)

    @property
    def cut_sheet_pages(self) -> int:
        """How many pages the drawing of all sheets that are cut has: at least one."""
        return self._planned.cut_sheet_pages()

    def cut_sheets_svg(self, page: int) -> str:
        """A page of the drawing of all sheets that are cut, as SVG; pages count from 0.

        Raises ``IndexError`` for a page below 0 or past the last.
        """
        return self._planned.cut_sheets_svg(page)

    def _repr_svg_(self) -> str | None:
        """A notebook shows a plan of one wall as its drawing."""
        return self.svg(self.wall_names[0]) if len(self.wall_names) == 1 else None

    def _repr_html_(self) -> str:
        return plan_html(self)

    def __reduce__(self) -> tuple[type[Plan], tuple[bytes]]:
        return (Plan, (self._document,))

    def __repr__(self) -> str:
        counts = (("walls", self.walls), ("panels", self.panels), ("findings", self.findings))
        return f"<edgenail.Plan: {', '.join(f'{len(table)} {name}' for name, table in counts)}>"


def plan(house: House | Mapping[str, object] | str | bytes | DataclassInstance) -> Plan:
    """Plans a house.

    ``house`` is JSON text, bytes of JSON, the same document in plain Python values, or a dataclass of such values.
    A ``Length`` may stand wherever the document has a length. ``edgenail.house.House`` tells an editor and a type
    checker which fields there are.

    Raises ``InputError`` with every fault of the input, or ``NoLayoutError``.
    """
    return Plan(document(house))


def demo_house() -> str:
    """The demo house as JSON text: an invented place with invented prices."""
    return _edgenail.demo_house()


def generated_house(seed: int) -> tuple[str, list[str]]:
    """A house made from a number, as JSON text, and the names of the classes of houses that it belongs to.

    The same number gives the same house in every language and on every machine; tests and measurements are run on them.

    >>> import edgenail
    >>> edgenail.generated_house(7) == edgenail.generated_house(7)
    True
    """
    return _edgenail.generated_house(seed)


def document(house: object) -> bytes:
    """A house or a question as bytes of JSON."""
    if isinstance(house, bytes):
        return house
    if isinstance(house, str):
        return house.encode()
    if isinstance(house, Mapping):
        house = dict(house)
    return json.dumps(house, ensure_ascii=False, default=_plain).encode()


def _plain(value: object) -> object:
    """A length as exact text, other values as JSON knows them; anything else is refused."""
    if isinstance(value, Length):
        return str(value)
    if isinstance(value, Mapping):
        return dict(value)
    if is_dataclass(value) and not isinstance(value, type):
        return asdict(value)
    raise TypeError(f"a house or a question cannot hold {value!r}")
