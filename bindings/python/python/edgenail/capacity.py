"""What walls, nails and panels resist, with every step to each number."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Any

from edgenail import _edgenail
from edgenail.plan import document
from edgenail.question import Question

if TYPE_CHECKING:
    from _typeshed import DataclassInstance

__all__ = ["Capacity", "Derivation", "Input", "Step", "capacity"]


@dataclass(frozen=True)
class Input:
    """A value that goes into a step."""

    symbol: str
    """Its symbol in the formula."""
    value: float
    """The number."""
    unit: str
    """Its unit, empty for a bare number."""
    source: str
    """``given``, or the published cell; empty where an earlier step gave it."""


@dataclass(frozen=True)
class Step:
    """One step: a formula, what goes in, what comes out."""

    symbol: str
    """The symbol of what comes out."""
    meaning: str
    """What it is."""
    formula: str
    """The formula over the symbols of the inputs."""
    inputs: tuple[Input, ...]
    """Everything that the formula names."""
    value: float
    """What comes out."""
    unit: str
    """Its unit, empty for a bare number."""
    source: str
    """The rule or the table: standard, edition, section, footnote."""
    confidence: str
    """``two_sources``, ``source`` or ``memory``: the least of the rule and its inputs."""


class Derivation:
    """The steps of a result. A notebook shows them as a table."""

    def __init__(self, steps: tuple[Step, ...], text: str, markdown: str, html: str) -> None:
        self.steps = steps
        self._text = text
        self._markdown = markdown
        self._html = html

    def text(self) -> str:
        """The steps as plain text, a block of lines each."""
        return self._text

    def markdown(self) -> str:
        """The steps as a table in Markdown."""
        return self._markdown

    def html(self) -> str:
        """The steps as a table in HTML."""
        return self._html

    def _repr_html_(self) -> str:
        return self._html

    def __str__(self) -> str:
        return self._text

    def __len__(self) -> int:
        return len(self.steps)

    def __iter__(self) -> Iterator[Step]:
        return iter(self.steps)

    def __repr__(self) -> str:
        return f"<edgenail.Derivation: {len(self)} steps>"


class Capacity(Mapping[str, Any]):
    """The answer to a question of capacity: a mapping of names to numbers, the unit at the end of each name.

    What is asked for by name stands there as an attribute too, ``answer["design_plf"]`` as ``answer.design_plf``, which an
    editor in a notebook completes.

    It does not replace the code in force or a licensed design professional: see ``caution``.
    """

    def __init__(self, question: bytes) -> None:
        """Answers the question that bytes of JSON ask; ``edgenail.capacity`` takes other forms too."""
        self._question = question
        self._json, self._text, self._markdown, self._html = _edgenail.capacity(question)
        self._document: dict[str, Any] = json.loads(self._json)

    @property
    def json(self) -> str:
        """The answer as the library's JSON, with the same bytes in every language."""
        return self._json

    def to_dict(self) -> dict[str, Any]:
        """The answer as plain Python values."""
        answer: dict[str, Any] = json.loads(self._json)
        return answer

    @property
    def kind(self) -> str:
        """What was asked, such as ``unit_shear``."""
        return str(self._document["kind"])

    @property
    def edition(self) -> str | None:
        """The standard that was asked; none where the result follows none."""
        edition = self._document["edition"]
        return None if edition is None else str(edition)

    @property
    def confidence(self) -> str:
        """The least of all that was used: ``two_sources``, ``source`` or ``memory``."""
        return str(self._document["confidence"])

    @property
    def unverified(self) -> bool:
        """A value was used that was recalled and not checked against the printed standard."""
        return bool(self._document["unverified"])

    @property
    def estimate(self) -> bool:
        """The result is an engineering estimate, not a value of the standard."""
        return bool(self._document["estimate"])

    @property
    def caution(self) -> str:
        """What has to be confirmed, and by whom."""
        return str(self._document["caution"])

    @cached_property
    def derivation(self) -> Derivation:
        """The steps to the numbers."""
        steps = tuple(
            Step(**{**step, "inputs": tuple(Input(**one) for one in step["inputs"])})
            for step in self._document["derivation"]["steps"]
        )
        return Derivation(steps, self._text, self._markdown, self._html)

    def __getitem__(self, name: str) -> Any:
        return self._document[name]

    def __getattr__(self, name: str) -> Any:
        # Private names are never in an answer; copying looks for some before there is a document.
        if not name.startswith("_") and name in self._document:
            return self._document[name]
        raise AttributeError(f"an answer of {type(self).__name__} has no {name!r}", name=name, obj=self)

    def __dir__(self) -> list[str]:
        return sorted({*super().__dir__(), *self._document})

    def __iter__(self) -> Iterator[str]:
        return iter(self._document)

    def __len__(self) -> int:
        return len(self._document)

    def _repr_html_(self) -> str:
        return f"{self._html}<p>{self.caution}</p>"

    def __reduce__(self) -> tuple[type[Capacity], tuple[bytes]]:
        return (Capacity, (self._question,))

    def __repr__(self) -> str:
        numbers = {name: value for name, value in self._document.items() if isinstance(value, float)}
        return f"<edgenail.Capacity: {self.kind} {numbers}>"


def capacity(question: Question | Mapping[str, object] | str | bytes | DataclassInstance) -> Capacity:
    """Answers a question of capacity.

    ``question`` is JSON text, bytes of JSON, the same document in plain Python values, or a dataclass of such values;
    its field ``kind`` says what is asked. A ``Length`` may stand wherever the document has a length.
    ``edgenail.question`` tells an editor and a type checker which fields there are.

    Raises ``InputError`` with every fault of the question. What a table does not list, and what was recalled and is
    not accepted, are faults too.

    >>> import edgenail
    >>> ends = edgenail.capacity(
    ...     {"kind": "hold_down", "shear": 250, "length": "4 ft", "height": "8 ft", "inset": 0}
    ... )
    >>> ends["tension_lb"], ends.tension_lb
    (2000.0, 2000.0)
    >>> ends.derivation.steps[-1].formula
    '(v * b * h - w * b^2 / 2) / d'
    """
    return Capacity(document(question))
