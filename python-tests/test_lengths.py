"""Lengths in Python against exact fractions of the standard library."""

from __future__ import annotations

import copy
import pickle
from fractions import Fraction

import edgenail
import pytest
from edgenail import Length
from hypothesis import given
from hypothesis import strategies as st

SIXTY_FOURTHS = st.integers(min_value=-800_000, max_value=800_000)
UNITS = st.integers(min_value=-(2**29), max_value=2**29)


@given(SIXTY_FOURTHS)
def test_every_sixty_fourth_is_read_exactly(count: int) -> None:
    inches = Fraction(count, 64)
    whole, part = divmod(abs(inches), 1)
    text = f"{'-' if count < 0 else ''}{whole} {part}" if part else f"{int(inches)}"
    length = Length(text)
    assert Fraction(length.units, Length.PER_INCH) == inches
    assert length.exact
    assert Length(float(inches)).units == length.units


@given(UNITS)
def test_exact_text_reads_back(units: int) -> None:
    length = Length.from_units(units)
    again = Length(str(length))
    assert again == length
    assert again.exact


@given(UNITS, st.sampled_from(["inches", "feet_inches", "decimal_inches", "millimetres"]))
def test_shown_down_reads_back_to_no_more_and_up_to_no_less(units: int, style: str) -> None:
    length = Length.from_units(units)
    down = length.show(style, "down")  # type: ignore[arg-type]
    up = length.show(style, "up")  # type: ignore[arg-type]
    assert down.rounded == up.rounded
    if abs(units) < 2**29 - Length.PER_INCH:
        assert Length(down.text) <= length <= Length(up.text)
        assert down.rounded or Length(down.text) == length


@given(UNITS, UNITS, st.integers(-9, 9))
def test_arithmetic_is_that_of_integers(first: int, second: int, count: int) -> None:
    left, right = Length.from_units(first), Length.from_units(second)
    assert (left + right).units == first + second
    assert (left - right).units == first - second
    assert (left * count).units == (count * left).units == first * count
    assert (left < right, left == right) == (first < second, first == second)
    assert (-left).units == -first


def test_an_ambiguous_text_says_what_is_allowed() -> None:
    with pytest.raises(edgenail.InputError) as caught:
        Length("8-1")
    error = caught.value
    assert (error.code, error.found) == ("two_numbers", "8-1")
    assert error.allowed and error.issues[0].message == str(error)
    assert isinstance(error, ValueError)
    again = pickle.loads(pickle.dumps(error))
    assert (type(again), again.issues, str(again)) == (edgenail.InputError, error.issues, str(error))


@pytest.mark.parametrize("value", [float("nan"), float("inf"), 1e300, 10**30])
def test_numbers_that_are_no_length_are_refused(value: float) -> None:
    with pytest.raises(edgenail.InputError):
        Length(value)


def test_wrong_words_are_refused() -> None:
    with pytest.raises(ValueError, match="unit: inch"):
        Length("1", "furlong")  # type: ignore[arg-type]
    with pytest.raises(ValueError, match="style: inches"):
        Length("1").show("cubits")  # type: ignore[arg-type]
    with pytest.raises(TypeError):
        Length("1") + 1  # type: ignore[operator]


def test_lengths_are_copied_pickled_and_hashed_by_value() -> None:
    length = Length("97 1/8")
    assert copy.deepcopy(length) == pickle.loads(pickle.dumps(length)) == length
    assert len({length, Length("8' 1 1/8\"")}) == 1
    assert repr(length) == "Length('97 1/8 in.')"
