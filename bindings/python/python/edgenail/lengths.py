"""Exact lengths."""

from __future__ import annotations

from functools import total_ordering
from typing import Literal, NamedTuple, Self, TypeAlias

from edgenail import _edgenail

__all__ = ["Length", "Rounding", "Shown", "Style", "Unit"]

Unit: TypeAlias = Literal["inch", "foot", "millimetre", "centimetre", "metre"]
"""The unit of a number that stands without one."""
Style: TypeAlias = Literal["inches", "feet_inches", "decimal_inches", "millimetres"]
"""How a length is shown."""
Rounding: TypeAlias = Literal["down", "up", "nearest"]
"""Which way a size is rounded that the figures cannot carry: cut sizes down, clear sizes up, positions nearest."""


class Shown(NamedTuple):
    """A length as it is shown."""

    text: str
    """The text, marked when it is rounded."""
    rounded: bool
    """Whether the shown size differs from the length."""


@total_ordering
class Length:
    """A length, exact in units of 1/40640 inch, which is 1/1600 mm.

    >>> wall = Length("8' 1 1/8\\"")
    >>> wall.units
    3947160
    >>> str(wall)
    '97 1/8 in.'
    >>> wall.show("feet_inches").text
    '8\\'-1 1/8"'
    >>> Length("1219.2 mm") == Length("4'")
    True

    A text that is no length, or an ambiguous one such as ``8-1``, raises ``InputError``.
    """

    __slots__ = ("_exact", "_units")

    PER_INCH = 40640
    """Units in one inch."""
    PER_MM = 1600
    """Units in one millimetre."""

    def __init__(self, value: str | float, unit: Unit = "inch") -> None:
        """Reads a text or a number; ``unit`` is that of a number without one."""
        if isinstance(value, str):
            self._units, self._exact = _edgenail.parse_length(value, unit)
        elif isinstance(value, int):
            # An integer is written out, because a double would round a large one.
            self._units, self._exact = _edgenail.parse_length(str(value), unit)
        else:
            self._units, self._exact = _edgenail.length_from_float(value, unit)

    @classmethod
    def from_units(cls, units: int) -> Self:
        """The length of so many units of 1/40640 inch."""
        length = cls.__new__(cls)
        length._units, length._exact = units, True
        return length

    @property
    def units(self) -> int:
        """The length in units of 1/40640 inch."""
        return self._units

    @property
    def exact(self) -> bool:
        """Whether this is what was written; otherwise it was rounded to a whole unit when it was read."""
        return self._exact

    @property
    def inches(self) -> float:
        """The length in inches, for plots."""
        return self._units / self.PER_INCH

    @property
    def mm(self) -> float:
        """The length in millimetres, for plots."""
        return self._units / self.PER_MM

    def show(
        self, style: Style = "inches", rounding: Rounding = "nearest", finest: Literal[16, 32, 64] = 16
    ) -> Shown:
        """The length as a person reads it; a rounded figure is marked."""
        return Shown(*_edgenail.show_length(self._units, style, finest, rounding))

    def __str__(self) -> str:
        return _edgenail.length_text(self._units)

    def __repr__(self) -> str:
        return f"Length({str(self)!r})"

    def __eq__(self, other: object) -> bool:
        return self._units == other._units if isinstance(other, Length) else NotImplemented

    def __lt__(self, other: Length) -> bool:
        return self._units < other._units if isinstance(other, Length) else NotImplemented

    def __hash__(self) -> int:
        return hash((Length, self._units))

    def __add__(self, other: Length) -> Length:
        return Length.from_units(self._units + other._units) if isinstance(other, Length) else NotImplemented

    def __sub__(self, other: Length) -> Length:
        return Length.from_units(self._units - other._units) if isinstance(other, Length) else NotImplemented

    def __mul__(self, count: int) -> Length:
        return Length.from_units(self._units * count) if isinstance(count, int) else NotImplemented

    __rmul__ = __mul__

    def __neg__(self) -> Length:
        return Length.from_units(-self._units)

    def __reduce__(self) -> tuple[object, tuple[int]]:
        return (Length.from_units, (self._units,))
