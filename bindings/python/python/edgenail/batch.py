"""Many houses on all cores."""

from __future__ import annotations

import json
from collections import deque
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import asdict, dataclass
from decimal import Decimal
from types import TracebackType
from typing import TYPE_CHECKING, Any

from edgenail import _edgenail
from edgenail.errors import EdgenailError
from edgenail.house import House
from edgenail.plan import Plan, document

if TYPE_CHECKING:
    from _typeshed import DataclassInstance

__all__ = ["Batch", "Figures", "Outcome", "plan_batch"]


@dataclass(frozen=True)
class Figures:
    """The figures of a planned house. Tables and drawings are in its plan."""

    walls: int
    """Walls."""
    panels: int
    """Pieces of sheathing."""
    sheets: int
    """New sheets that are cut or used whole, without spare."""
    blocks: int
    """Blocks that the plan adds."""
    nails: int
    """Nails."""
    money: Decimal
    """Money for all that is ordered, in the currency of its prices."""
    minutes: Decimal
    """Work in minutes."""
    cost: Decimal
    """What the layouts of its walls cost together, in the unit of the objective."""
    house_cost: Decimal
    """The same with the sheets that the house buys in place of shares."""
    house_cost_least: Decimal
    """What that is at least, however its walls are laid out and cut."""
    refuse: int
    """Findings that must not be built so."""
    mend: int
    """Findings to be mended before sheathing goes on."""
    advise: int
    """Findings that are worth a thought."""
    stopped: int
    """Walls whose search ran into its limit of effort."""
    cutting_proven: bool
    """No cutting takes fewer sheets, or cheaper ones."""
    cutting_gap: Decimal
    """By how much a better cutting may be better at most: price of sheets, or sheets where all are free."""


@dataclass(frozen=True)
class Outcome:
    """What became of one house of a batch: its figures, or why it has no plan."""

    index: int
    """Its place among the houses, from 0."""
    house: str
    """Its name, empty where its document does not say one."""
    figures: Figures | None
    """Its figures; none where it has no plan."""
    error: EdgenailError | None
    """Why it has no plan: what ``edgenail.plan`` would have raised."""
    plan: Plan | None
    """Its plan; only where the batch was asked for plans."""
    json: str
    """The outcome as the library's JSON, the same in every language; the plan is not in it."""

    @property
    def row(self) -> dict[str, object]:
        """The outcome as a flat row, for a table of many: ``pandas.DataFrame(outcome.row for outcome in outcomes)``."""
        head: dict[str, object] = {"index": self.index, "house": self.house, "fault": str(self.error or "")}
        return head | (asdict(self.figures) if self.figures is not None else {})


class Batch(Iterator[Outcome]):
    """Houses being planned: an iterator of what becomes of each, in their order.

    Leaving its ``with`` block, or ``close``, ends it; so does an interrupt from the keyboard, and whatever the iterable of
    houses or ``progress`` raises.
    """

    def __init__(
        self,
        houses: Iterable[bytes],
        threads: int | None,
        plans: bool,
        progress: Callable[[int, int], object] | None,
    ) -> None:
        """Plans documents in bytes; ``edgenail.plan_batch`` takes other forms too."""
        self._documents: deque[bytes] = deque()
        source = map(self._kept, houses) if plans else iter(houses)
        self._batched = _edgenail.Batched(source, threads, plans, progress)

    def _kept(self, house: bytes) -> bytes:
        """Keeps a document for its plan, until its outcome is handed on."""
        self._documents.append(house)
        return house

    def __next__(self) -> Outcome:
        found = self._batched.next()
        if found is None:
            raise StopIteration
        text, error, planned = found
        house = self._documents.popleft() if self._documents else None
        fields = json.loads(text, parse_float=Decimal)
        return Outcome(
            index=fields["index"],
            house=fields["house"],
            figures=None if fields["figures"] is None else _figures(fields["figures"]),
            error=None if error is None else EdgenailError.from_json(*error),
            plan=None if planned is None else Plan._of(planned, house),
            json=text,
        )

    def close(self) -> None:
        """Ends the batch: what is being planned is finished and dropped, and nothing more is begun."""
        self._batched.close()

    def __enter__(self) -> Batch:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    def __repr__(self) -> str:
        return "<edgenail.Batch>"


def plan_batch(
    houses: Iterable[House | Mapping[str, object] | str | bytes | DataclassInstance],
    *,
    threads: int | None = None,
    progress: Callable[[int, int], object] | None = None,
    plans: bool = False,
) -> Batch:
    """Plans many houses on all cores, and tells what becomes of each, in their order.

    Houses are taken from the iterable as they are needed, a window of ``32 * threads`` at a time, so that memory does not
    grow with their number. Each may have any form that ``edgenail.plan`` takes. A house that cannot be planned is told with
    its ``error`` and stops no other. ``progress`` is called with how many houses were taken and how many of them are
    finished. With ``plans`` each outcome holds the whole plan.

    Neither threads nor neighbours change what becomes of a house.

    >>> import edgenail
    >>> houses = [edgenail.generated_house(seed)[0] for seed in range(3)]
    >>> [(outcome.house, outcome.error) for outcome in edgenail.plan_batch(houses)]
    [('generated 0', None), ('generated 1', None), ('generated 2', None)]
    """
    return Batch(map(document, houses), threads, plans, progress)


def _figures(fields: dict[str, Any]) -> Figures:
    cutting = fields.pop("cutting")
    for amount in ("money", "minutes", "cost", "house_cost", "house_cost_least"):
        fields[amount] = Decimal(fields[amount])
    fields["cutting_proven"] = cutting["kind"] == "proven"
    fields["cutting_gap"] = Decimal(cutting.get("amount", cutting.get("gap", 0)))
    return Figures(**fields)
