"""H39: shelves that sag; what they carry, what stiffens them, and what is quiet."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked

from dryfit.diagnostics import Diagnostic, Severity

CASE = """piece Book case
units mm
overall 936 wide, 280 deep, 700 high
timber birch ply
2 sides, upright, facing side, 280 x 18, at left and right
1 shelf, flat, 280 x 18, into sides: housing 6, up 300
glue up case: sides, shelf
"""
SHELF = "into sides: housing 6, up 300"


def sagging(text: str) -> list[Diagnostic]:
    found = checked(text)
    assert found.model is not None, [each.message for each in found.findings]
    return [each for each in found.findings if each.rule == "H39"]


def with_shelf(timber: str, words: str = "") -> str:
    return changed(CASE, ("birch ply", timber), (SHELF, f"{SHELF}{words}"))


@pytest.mark.parametrize(
    ("timber", "words", "severity"),
    [
        # 900 between housings, 280 deep, books of 30 kg/m (0.294 N/mm): TRADE's figures by 0.98.
        ("sugar maple", "", None),  # 1.46 of 18 thick, 2.2 in the end: under 900 / 300
        ("birch ply", "", Severity.WARNING),  # 2.05, 3.1 in the end
        ("MDF", "", Severity.WARNING),  # 5.77 at once, but nobody has said that books come on it
        ("MDF", ", carries books", Severity.ERROR),  # beyond 900 / 200
        ("MDF", ", carries clothes", Severity.WARNING),  # 2.9 at once
        ("MDF", ", carries 10 kg a metre", None),
        ("birch ply", ", carries 8 kg", None),  # all of it, which is 8.9 kg/m
        ("birch ply", ", carries 40 lb a foot", Severity.WARNING),  # 59.5 kg/m: 4.07
        ("teak", "", None),  # 10.7 GPa
        ("hardboard", "", None),  # no table tells
    ],
)
def test_a_shelf_under_its_load(timber: str, words: str, severity: Severity | None) -> None:
    found = sagging(with_shelf(timber, words))
    assert [each.severity for each in found] == ([severity] if severity else [])


def test_the_figures_and_the_remedies_of_a_shelf() -> None:
    (told,) = sagging(with_shelf("birch ply"))
    assert abs(told.figures["sag"] - Fraction("2.05")) < Fraction("0.01")
    assert told.figures["in the end"] == told.figures["sag"] * Fraction(3, 2)
    assert "over 900 mm it sags by 2.1 mm under books, 30 kg a metre, by 3.1 mm" in told.message
    remedy = told.hints[0].message
    # 3.08 x (18/19)^3 = 2.62, under 3.
    assert "make it 19 thick or more" in remedy
    assert "`carries clothes`" in remedy


def test_a_wood_that_no_table_knows_is_taken_as_limp_and_that_is_said() -> None:
    (told,) = sagging(with_shelf("mahogany", ", carries heavy books"))
    assert "as limp as 8 GPa" in told.message


def test_a_lipping_bears_its_share_and_banding_none() -> None:
    # By hand: of 280 wide 30 is sugar maple of 12.6 GPa beside 250 of MDF of 3.2, so that the
    # shelf is (250 x 3.2 + 30 x 12.6) / (280 x 3.2) = 1.315 times as stiff.
    (plain,) = sagging(with_shelf("MDF"))
    (lipped,) = sagging(with_shelf("MDF", ", lipped 30 of sugar maple at front"))
    ratio = plain.figures["sag"] / lipped.figures["sag"]
    assert abs(ratio - Fraction("1.315")) < Fraction("0.001")
    (banded,) = sagging(with_shelf("MDF", ", banded 1 of sugar maple at front"))
    assert banded.figures["sag"] == plain.figures["sag"]
    (across,) = sagging(with_shelf("MDF", ", lipped 10 of sugar maple at ends"))
    assert across.figures["sag"] == plain.figures["sag"]


def test_what_lies_along_a_shelf_stiffens_it() -> None:
    lip = "1 lip, across, on edge, 40 x 18, between sides, of maple\nlip under shelf: glue\n"
    text = changed(
        with_shelf("birch ply"),
        ("glue up case: sides, shelf", f"{lip}glue up case: sides, shelf, lip"),
    )
    assert [each.code for each in checked(text).findings if each.rule == "H39"] == []


def test_a_back_that_holds_its_edge_leaves_nothing_to_sag() -> None:
    back = "1 back, upright, facing front, 9 thick, between sides, 0 from back, up 0, down 0"
    text = changed(
        CASE,
        ("birch ply", "MDF"),
        (f"280 x 18, {SHELF}", f"275 x 18, {SHELF}, 0 from front"),
        ("glue up", f"{back}\nshelf back edge into back: housing 4\nglue up"),
        ("sides, shelf\n", "sides, shelf, back\n"),
    )
    assert sagging(text) == []


def test_a_support_in_the_middle_halves_the_way() -> None:
    post = "1 divider, upright, facing side, 280 x 18, under shelf: glue, 459 from left, up 0\n"
    text = changed(
        CASE,
        ("birch ply", "MDF"),
        ("glue up case: sides, shelf", f"{post}glue up case: sides, shelf, divider"),
    )
    assert sagging(text) == []


def test_what_is_no_shelf_is_asked_only_where_it_carries() -> None:
    text = with_shelf("MDF").replace("shelf", "board")
    assert sagging(text) == []
    assert [each.code for each in sagging(text.replace("up 300", "up 300, carries tools"))] == [
        "shelf-sags"
    ]


def test_inches_are_told_in_pounds_a_foot() -> None:
    text = """piece Shelf
units inches
overall 40 wide, 11 deep, 30 high
timber pine
2 sides, upright, facing side, 11 x 3/4, at left and right
1 shelf, flat, 11 x 5/8, into sides: housing 1/4, up 12
glue up case: sides, shelf
"""
    (told,) = sagging(text)
    assert "under books, 20 lb a foot" in told.message
