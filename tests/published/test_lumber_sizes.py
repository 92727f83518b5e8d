"""What boards measure against public tables (`lumber_sizes.csv`), and a name read as a size."""

import csv
from fractions import Fraction
from pathlib import Path

import pytest
from tests.pieces.reading import checked

from dryfit.piece.nominal_sizes import QUARTERS, THICK, WIDE

ROWS = tuple(
    csv.DictReader(
        line
        for line in (Path(__file__).parent / "lumber_sizes.csv")
        .read_text(encoding="utf-8")
        .splitlines()
        if line[0] != "#"
    )
)
SOFT = [row for row in ROWS if row["kind"] == "softwood" and "-" not in row["name"]]
QUARTERED = [row for row in ROWS if row["kind"] == "hardwood" and row["name"].endswith("/4")]
LEGS = """piece Stand
units inches
overall 24 wide, 24 deep, 20 high
timber pine
4 legs, upright, {}, at corners
"""


def mixed(text: str) -> Fraction:
    return sum((Fraction(part) for part in text.split("-")), Fraction(0))


@pytest.mark.parametrize("row", SOFT, ids=lambda row: row["name"])
def test_dressed_softwood(row: dict[str, str]) -> None:
    thick, wide = (int(word) for word in row["name"].split(" x "))
    assert (THICK[thick], WIDE[wide]) == (mixed(row["thick"]), mixed(row["wide"]))
    for inches, printed in ((THICK[thick], row["thick_mm"]), (WIDE[wide], row["wide_mm"])):
        assert abs(inches * Fraction(254, 10) - int(printed)) <= Fraction(1, 2)


@pytest.mark.parametrize("row", QUARTERED, ids=lambda row: row["name"])
def test_hardwood_by_the_quarter(row: dict[str, str]) -> None:
    quarters = int(row["name"].partition("/")[0])
    if quarters > 3:  # 3/4 is a size.
        assert QUARTERS[quarters] == mixed(row["thick"])


@pytest.mark.parametrize(
    ("sizes", "measures"),
    [
        ("2 x 4", '1 1/2" x 3 1/2"'),
        ("2x4", '1 1/2" x 3 1/2"'),
        ("2 x 2", '1 1/2" x 1 1/2"'),
        ("2 x 4 x 20", '1 1/2" x 3 1/2"'),
        ("3 x 8/4", '2" rough and 1 3/4" planed'),
    ],
)
def test_the_name_of_a_board_is_asked_about_once(sizes: str, measures: str) -> None:
    found = [each for each in checked(LEGS.format(sizes)).findings if each.rule == "H37"]
    assert [each.code for each in found] == ["nominal-size"]
    assert measures in found[0].message


@pytest.mark.parametrize(
    "sizes", ["4 x 2", "2 thick, 4 wide", "3 1/2 x 1 1/2", "20 x 4 x 2", "1 3/4 x 1 3/4"]
)
def test_sizes_that_are_no_names_are_no_question(sizes: str) -> None:
    assert "nominal-size" not in {each.code for each in checked(LEGS.format(sizes)).findings}


def test_the_same_numbers_in_millimetres_are_no_names() -> None:
    text = LEGS.format("45 x 45").replace("units inches", "units mm").replace("24", "600")
    assert "nominal-size" not in {each.code for each in checked(text).findings}
