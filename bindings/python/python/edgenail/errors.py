"""What edgenail raises."""

from __future__ import annotations

import json
from dataclasses import dataclass
from typing import Any

__all__ = ["EdgenailError", "InputError", "InternalError", "Issue", "NoLayoutError", "Unmet"]


@dataclass(frozen=True)
class Issue:
    """One fault of the input."""

    code: str
    """The kind of fault, such as ``out_of_range``. Names do not change."""
    path: str
    """JSON pointer to the field, such as ``/walls/0/openings/2/width``."""
    wall: str
    """The wall that the fault belongs to, empty when it belongs to none."""
    found: str
    """What was found, as it was written."""
    allowed: str
    """What is allowed there."""
    message: str
    """A sentence for a person."""


class EdgenailError(Exception):
    """Anything that edgenail raises about a house. ``json`` is the error as every language gives it."""

    def __init__(self, message: str, json: str = "") -> None:
        super().__init__(message, json)
        self.message = message
        self.json = json

    def __str__(self) -> str:
        return self.message

    @classmethod
    def from_json(cls, text: str, message: str) -> EdgenailError:
        """The exception for an error of the core, given as JSON."""
        kind = json.loads(text)["error"]
        known = {"issues": InputError, "length": InputError, "no_layout": NoLayoutError}
        return known.get(kind, InternalError)(message, text)


class InputError(EdgenailError, ValueError):
    """The input is wrong. ``issues`` lists every fault, in the order of the document.

    The fields of the first fault are attributes of the exception itself.
    """

    @property
    def issues(self) -> list[Issue]:
        """Every fault of the input."""
        return [Issue(**issue) for issue in json.loads(self.json)["issues"]]

    @property
    def code(self) -> str:
        """The kind of the first fault."""
        return self.issues[0].code

    @property
    def path(self) -> str:
        """Where the first fault is."""
        return self.issues[0].path

    @property
    def wall(self) -> str:
        """The wall of the first fault."""
        return self.issues[0].wall

    @property
    def found(self) -> str:
        """What was found at the first fault."""
        return self.issues[0].found

    @property
    def allowed(self) -> str:
        """What is allowed at the first fault."""
        return self.issues[0].allowed


@dataclass(frozen=True)
class Unmet:
    """A demand of practice or stock that cannot be met beside the others, and what was tried in its place."""

    path: str
    """JSON pointer to the field that demands it, in the house as it is understood, where every field is said."""
    found: Any
    """What the field says."""
    wanted: Any
    """What was tried in its place, as the field takes it."""
    demand: str
    """What is demanded, for a person."""
    remedy: str
    """What would make it possible, for a person."""


class NoLayoutError(EdgenailError):
    """No layout of a wall satisfies the rules that may not be broken."""

    @property
    def wall(self) -> str:
        """The wall's name."""
        return str(json.loads(self.json)["wall"])

    @property
    def remedies(self) -> list[list[Unmet]]:
        """Changes under which the wall has a layout, each tried; of one with several parts none may be left out."""
        remedies = json.loads(self.json)["remedies"]
        return [[Unmet(**change) for change in remedy["changes"]] for remedy in remedies]


class InternalError(EdgenailError, RuntimeError):
    """The library failed; a fault of the library, never of the caller."""
