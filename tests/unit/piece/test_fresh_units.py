"""Millimetres for inches and inches for millimetres are noticed (TRADE H37)."""

from __future__ import annotations

import pytest
from tests.pieces.reading import FILES, changed, checked, text_of

from dryfit.diagnostics import Diagnostic, Severity

TABLE = """piece Bedside table
units inches to 1/16
overall 16" wide, 14" deep, 22" high
timber cherry
4 legs, upright, 1 3/8 x 1 3/8, at corners
2 long aprons, across, 3 1/2 x 3/4, tenon 9/16 long 1/4 thick into legs, set back 1/8
2 short aprons, front to back, 3 1/2 x 3/4, tenon 9/16 long 1/4 thick into legs, set back 1/8
glue up base: legs, long aprons, short aprons
"""


def slips(text: str) -> list[Diagnostic]:
    return [each for each in checked(text).findings if each.code in {"unit-slip", "unit-mixed"}]


def test_inches_read_as_millimetres_are_asked_about_with_both_readings() -> None:
    decimal = (("units inches to 1/16\n", ""), ("3/8", ".375"), ("1/2", ".5"), ("3/4", "0.75"))
    (found,) = slips(changed(TABLE, *decimal, (" .", "."), ("1/4", "0.25"), ("1/8", "0.125")))
    assert found.severity is Severity.QUESTION
    assert found.message == 'leg: is 1.38 mm wide meant, or 1 3/8"? (and 2 more like it)'
    assert "`units inches`" in found.hints[0].message
    assert found.span is not None
    assert found.span.line == 4


def test_millimetres_read_as_inches_are_asked_about() -> None:
    (found,) = slips(changed(TABLE, ("1 3/8 x 1 3/8", "35 x 35")))
    assert found.message == 'leg: is 35" wide meant, or 35 mm?'


def test_a_thickness_in_the_other_unit_is_asked_about() -> None:
    inches = "units inches to 1/16"
    (found,) = slips(changed(TABLE, ("3 1/2 x 3/4, tenon", "3 1/2 x 19, tenon")))
    assert found.message == 'long apron: is 19" thick meant, or 19 mm? (and 1 more like it)'
    metric = changed(TABLE, (inches, "units mm"), ("1 3/8 x 1 3/8", "35 x 0.75"))
    (found,) = slips(changed(metric, ("3 1/2 x 3/4", "90 x 20")))
    assert found.message == 'leg: is 0.75 mm thick meant, or 3/4"?'


@pytest.mark.parametrize(
    ("was", "written", "meant"),
    [("overall 420 wide", 'overall 420" wide', "420"), ("240 high", "240 inches high", "240")],
)
def test_an_overall_size_made_huge_by_a_foreign_unit_is_refused(
    was: str, written: str, meant: str
) -> None:
    found = checked(changed(text_of("step_stool"), (was, written)))
    (told,) = [each for each in found.findings if each.code == "unit-mixed"]
    assert told.severity is Severity.ERROR
    assert f"`{meant}`" in told.hints[0].message
    assert "size-huge" not in {each.code for each in found.findings}


def test_metres_in_metric_notes_are_meant() -> None:
    assert slips(changed(text_of("step_stool"), ("overall 420 wide", "overall 5.5 m wide"))) == []


@pytest.mark.parametrize("name", FILES)
def test_no_piece_of_ours_is_suspected(name: str) -> None:
    assert slips(text_of(name)) == []


LOW = """piece Low stand
overall 240 wide, 240 deep, 240 high
4 posts, upright, 2 1/2 x 1 1/4, at corners
2 rails, across, 40 x 18, tenon into posts
glue up stand: posts, rails
"""


def of_code(text: str, code: str) -> list[Diagnostic]:
    return [each for each in checked(text).findings if each.code == code]


@pytest.mark.parametrize("units", ["", "units mm\n"])
def test_bare_fractions_in_metric_notes_are_asked_about_once(units: str) -> None:
    text = changed(LOW, ("overall", f"{units}overall"))
    (found,) = of_code(text, "inch-fractions")
    assert found.severity is Severity.QUESTION
    assert found.span is not None
    assert found.span.text() == "2 1/2"
    assert "read as 2.5 mm" in found.message
    assert "`units inches`" in found.hints[0].message
    assert slips(text) == []


def test_fractions_of_sums_and_of_inches_are_no_slip() -> None:
    for size in ('2 1/2" x 1 1/4"', "overall width * 1/8 x 40 * 1/2", "37.5 x 30"):
        assert of_code(changed(LOW, ("2 1/2 x 1 1/4", size)), "inch-fractions") == []


def test_a_part_that_a_foreign_unit_makes_larger_than_the_piece_is_asked_about() -> None:
    found = of_code(changed(LOW, ("40 x 18", '140" x 18')), "size-huge")
    assert [each.severity for each in found] == [Severity.QUESTION]
    assert "write `140`" in found[0].hints[0].message
    assert of_code(changed(LOW, ("40 x 18", '2" x 18')), "size-huge") == []


def test_a_small_piece_with_posts_as_thin_as_veneer_is_asked_about() -> None:
    small = changed(LOW, ("2 1/2 x 1 1/4", "2.5 x 1.5"), ("240 deep", "140 deep"))
    (found,) = slips(small)
    assert "2.5 mm" in found.message
    assert slips(changed(small, ("2.5 x 1.5", "25 x 15"))) == []
