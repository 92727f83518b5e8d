"""Every spelling of a number that the notes may hold, with its exact value."""

from fractions import Fraction as F

import pytest

from dryfit.diagnostics import Findings, Source
from dryfit.notes import parse
from dryfit.notes.tree import Number, Operation, Sum, ValueLine
from dryfit.quantities import ANGLE, LENGTH, TIME
from dryfit.quantities.kinds import Kind

# 1 in = 25.4 mm, 1 ft = 12 in: international yard and pound agreement of 1959.
INCH = F(254, 10)

BARE = [
    ("15", F(15)),
    ("0.75", F(3, 4)),
    (".75", F(3, 4)),
    ("12.5", F(25, 2)),
    ("3/4", F(3, 4)),
    ("1⁄2", F(1, 2)),
    ("½", F(1, 2)),
    ("⅞", F(7, 8)),
    ("17 3/4", F(71, 4)),
    ("17-3/4", F(71, 4)),
    ("17¾", F(71, 4)),
    ("17 ¾", F(71, 4)),
    ("17-¾", F(71, 4)),
    ("100/3", F(100, 3)),
]
LENGTHS = [
    ("12.5mm", F(25, 2)),
    ("12.5 mm", F(25, 2)),
    ("2.4 m", F(2400)),
    ("24 cm", F(240)),
    ('17 3/4"', F(71, 4) * INCH),
    ('17-3/4"', F(71, 4) * INCH),
    ("17-3/4″", F(71, 4) * INCH),
    ("17 3/4 in", F(71, 4) * INCH),
    ("17 ¾″", F(71, 4) * INCH),
    ("17¾ inches", F(71, 4) * INCH),
    ("0.75in", F(3, 4) * INCH),
    (".75 in", F(3, 4) * INCH),
    ('1⁄2"', F(1, 2) * INCH),
    ("3''", 3 * INCH),
    ("15 in", 15 * INCH),
    ("5' 6 1/2\"", F(133, 2) * INCH),
    ("5'6½\"", F(133, 2) * INCH),
    ("5 ft 6 in", 66 * INCH),
    ("5′ 6″", 66 * INCH),
    ("5’6 1/2”", F(133, 2) * INCH),
    ("5'-6\"", 66 * INCH),
    ("1 1/2'", 18 * INCH),
    ("8'", 96 * INCH),
    ("8 feet", 96 * INCH),
]
OTHERS = [
    ("45 min", F(45), TIME),
    ("1 h", F(60), TIME),
    ("1 1/2 hours", F(90), TIME),
    ("2 days", F(2880), TIME),
    ("90°", F(90), ANGLE),
    ("7.5 degrees", F(15, 2), ANGLE),
]


def amount(text: str, units: str = "mm") -> tuple[Sum, Findings]:
    notes, findings = parse(Source("a", f"units {units}\nlonger name = {text}"))
    line = notes.statements[-1]
    assert isinstance(line, ValueLine), findings
    return line.amount, findings


@pytest.mark.parametrize(("text", "value"), BARE)
def test_a_bare_number_is_exact_and_has_no_unit(text: str, value: F) -> None:
    number, _ = amount(text, "inches")
    assert isinstance(number, Number)
    assert (number.value, number.quantity) == (value, None)
    assert number.span.text() == text


@pytest.mark.parametrize(
    ("text", "value", "kind"), [(text, value, LENGTH) for text, value in LENGTHS] + OTHERS
)
def test_a_number_with_a_unit_is_an_exact_quantity(text: str, value: F, kind: Kind) -> None:
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
    assert (number.value, findings) == (F(25, 2), ())
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
