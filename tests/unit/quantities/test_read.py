from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dryfit.quantities import ANGLE, LENGTH, TIME, UNITS, Quantity
from dryfit.quantities.kinds import Kind
from dryfit.quantities.read import UnreadableQuantityError, read_of_kind, read_quantity

INCH = Fraction(254, 10)


@pytest.mark.parametrize(
    ("text", "value", "kind"),
    [
        ("79 mm", Fraction(79), LENGTH),
        ("3.2mm", Fraction(16, 5), LENGTH),
        ("1 1/2 in", Fraction(3, 2) * INCH, LENGTH),
        ("1-1/2 in", Fraction(3, 2) * INCH, LENGTH),
        ('5/16"', Fraction(5, 16) * INCH, LENGTH),
        ("3' 1 1/2\"", Fraction(75, 2) * INCH, LENGTH),
        ("1 m 20 cm", Fraction(1200), LENGTH),
        ("  0 mm ", Fraction(0), LENGTH),
        ("1.5 min", Fraction(3, 2), TIME),
        ("1 h 30 min", Fraction(90), TIME),
        ("24 H", Fraction(1440), TIME),
        ("45°", Fraction(45), ANGLE),
    ],
)
def test_quantities_are_exact(text: str, value: Fraction, kind: Kind) -> None:
    assert read_quantity(text) == Quantity(value, kind)


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("79", "the unit is missing"),
        ("1 1/2", "the unit is missing"),
        ("3 cubits", "`cubits` is no unit"),
        ("3 mm 2 min", "a length and a time cannot be added"),
        ("1/0 in", "`1/0` divides by 0"),
        ("3,2 mm", "a decimal point is written `.`, as in `3.2 mm`"),
        ("-3 mm", "it cannot be less than nothing"),
        ("mm", "a number with its unit belongs here"),
        ("", "a number with its unit belongs here"),
        ("3 mm wide", "a number with its unit belongs here"),
        ("3 mm 4", "a number with its unit belongs here"),
        ("٣ mm", "a number with its unit belongs here"),
    ],
)
def test_what_is_no_quantity_says_why(text: str, reason: str) -> None:
    with pytest.raises(UnreadableQuantityError) as caught:
        read_quantity(text)
    assert str(caught.value).startswith(reason)


def test_a_quantity_of_another_kind_is_refused() -> None:
    assert read_of_kind("2 h", TIME) == 120
    with pytest.raises(UnreadableQuantityError, match="a time where a length belongs"):
        read_of_kind("2 h", LENGTH)


@given(
    st.integers(0, 9999),
    st.integers(0, 63),
    st.sampled_from([2, 4, 8, 16, 32, 64]),
    st.sampled_from(sorted(UNITS)),
)
def test_a_mixed_number_in_any_unit(whole: int, part: int, of: int, unit: str) -> None:
    expected = (whole + Fraction(part, of)) * UNITS[unit].size
    assert read_quantity(f"{whole} {part}/{of} {unit}").value == expected


@given(st.text(max_size=12))
def test_any_text_is_a_quantity_or_says_why_not(text: str) -> None:
    try:
        read_quantity(text)
    except UnreadableQuantityError as problem:
        assert str(problem)  # noqa: PT017 - both outcomes are right, a third one is not
