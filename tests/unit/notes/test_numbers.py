"""Every spelling of a number that the notes may hold, with its exact value."""

from fractions import Fraction

import pytest

from dryfit.diagnostics import Findings, Source
from dryfit.notes import parse
from dryfit.notes.tree import Number, Operation, Sum, ValueLine
from dryfit.quantities import ANGLE, LENGTH, TIME
from dryfit.quantities.kinds import Kind

# 1 in = 25.4 mm, 1 ft = 12 in: international yard and pound agreement of 1959.
INCH = Fraction(254, 10)

BARE = [
    ("15", Fraction(15)),
    ("0.75", Fraction(3, 4)),
    (".75", Fraction(3, 4)),
    ("12.5", Fraction(25, 2)),
    ("3/4", Fraction(3, 4)),
    ("1\u20442", Fraction(1, 2)),
    ("½", Fraction(1, 2)),
    ("⅞", Fraction(7, 8)),
    ("17 3/4", Fraction(71, 4)),
    ("17-3/4", Fraction(71, 4)),
    ("17¾", Fraction(71, 4)),
    ("17 ¾", Fraction(71, 4)),
    ("17-¾", Fraction(71, 4)),
    ("100/3", Fraction(100, 3)),
]
LENGTHS = [
    ("12.5mm", Fraction(25, 2)),
    ("12.5 mm", Fraction(25, 2)),
    ("2.4 m", Fraction(2400)),
    ("24 cm", Fraction(240)),
    ('17 3/4"', Fraction(71, 4) * INCH),
    ('17-3/4"', Fraction(71, 4) * INCH),
    ("17-3/4″", Fraction(71, 4) * INCH),
    ("17 3/4 in", Fraction(71, 4) * INCH),
    ("17 ¾″", Fraction(71, 4) * INCH),
    ("17¾ inches", Fraction(71, 4) * INCH),
    ("0.75in", Fraction(3, 4) * INCH),
    (".75 in", Fraction(3, 4) * INCH),
    ('1\u20442"', Fraction(1, 2) * INCH),
    ("3''", 3 * INCH),
    ("15 in", 15 * INCH),
    ("5' 6 1/2\"", Fraction(133, 2) * INCH),
    ("5'6½\"", Fraction(133, 2) * INCH),
    ("5 ft 6 in", 66 * INCH),
    ("5′ 6″", 66 * INCH),
    ("5’6 1/2”", Fraction(133, 2) * INCH),
    ("5'-6\"", 66 * INCH),
    ("1 1/2'", 18 * INCH),
    ("8'", 96 * INCH),
    ("8 feet", 96 * INCH),
]
OTHERS = [
    ("45 min", Fraction(45), TIME),
    ("1 h", Fraction(60), TIME),
    ("1 1/2 hours", Fraction(90), TIME),
    ("1 h 30 min", Fraction(90), TIME),
    ("2 days", Fraction(2880), TIME),
    ("90°", Fraction(90), ANGLE),
    ("7.5 degrees", Fraction(15, 2), ANGLE),
]


def amount(text: str, units: str = "mm") -> tuple[Sum, Findings]:
    notes, findings = parse(Source("a", f"units {units}\nlonger name = {text}"))
    line = notes.statements[-1]
    assert isinstance(line, ValueLine), findings
    return line.amount, findings


@pytest.mark.parametrize(("text", "value"), BARE)
def test_a_bare_number_is_exact_and_has_no_unit(text: str, value: Fraction) -> None:
    number, _ = amount(text, "inches")
    assert isinstance(number, Number)
    assert (number.value, number.quantity) == (value, None)
    assert number.span.text() == text


@pytest.mark.parametrize(
    ("text", "value", "kind"), [(text, value, LENGTH) for text, value in LENGTHS] + OTHERS
)
def test_a_number_with_a_unit_is_an_exact_quantity(text: str, value: Fraction, kind: Kind) -> None:
    number, findings = amount(text)
    assert isinstance(number, Number)
    assert number.quantity is not None
    assert (number.quantity.value, number.quantity.kind) == (value, kind)
    assert number.span.text() == text
    assert findings == ()


@pytest.mark.parametrize(("text", "sign"), [("17 - 3/4", "-"), ("3 / 4", "/"), ("2*3/4", "*")])
def test_blanks_or_signs_make_a_sum(text: str, sign: str) -> None:
    total, _ = amount(text)
    assert isinstance(total, Operation)
    assert total.sign == sign


def test_a_hyphened_fraction_in_a_metric_file_is_told() -> None:
    _, findings = amount("17-3/4")
    assert [(finding.code, finding.severity) for finding in findings] == [
        ("mixed-fraction", "notice")
    ]
    assert amount("17-3/4", "inches")[1] == ()
    assert amount('17-3/4"')[1] == ()


def test_a_decimal_comma_is_read_only_where_it_is_switched_on() -> None:
    number, findings = amount("12,5", "mm, decimal comma")
    assert isinstance(number, Number)
    assert (number.value, findings) == (Fraction(25, 2), ())
    number, _ = amount("1,220 m", "mm, decimal comma")
    assert isinstance(number, Number)
    assert number.quantity is not None
    assert number.quantity.value == 1220
    _, refused = parse(Source("a", "longer name = 12,5"))
    assert [finding.code for finding in refused] == ["comma-in-number"]


@pytest.mark.parametrize("text", ["9" * 10, "1/" + "9" * 10, "0." + "1" * 10])
def test_more_than_nine_digits_are_refused(text: str) -> None:
    _, findings = parse(Source("a", f"longer name = {text}"))
    assert [finding.code for finding in findings] == ["number-too-long"]
