"""A tenon five times as wide as it is thick may be narrow for its rail: that is asked."""

from __future__ import annotations

from tests.pieces.reading import changed, checked

from dryfit.diagnostics import Diagnostic, Severity

TABLE = """piece Bedside table
units inches to 1/16
overall 16" wide, 14" deep, 22" high
timber cherry
4 legs, upright, 1 3/8 x 1 3/8, at corners
2 long aprons, across, 3 1/2 x 3/4, tenon 9/16 long 1/4 thick into legs, set back 1/8
2 short aprons, front to back, 3 1/2 x 3/4, tenon 9/16 long 3/8 thick into legs, set back 1/8
glue up base: legs, long aprons, short aprons
"""


def narrow(text: str) -> list[Diagnostic]:
    return [each for each in checked(text).findings if each.code == "tenon-narrow"]


def test_a_thin_tenon_in_a_wide_apron_is_asked_about_with_the_thickness_that_serves() -> None:
    (found,) = narrow(TABLE)
    assert found.severity is Severity.QUESTION
    assert found.span is not None
    assert found.span.line == 6
    # 5 x 1/4 of 3 1/2 leaves twice 1 1/8; 5 x 3/8 is 1 7/8, over half of it.
    assert '1 1/4" wide and leaves 1 1/8"' in found.message
    assert found.hints[0].message == 'write `3/8" thick`, which gives 1 7/8", or write its width'


def test_a_written_width_is_not_asked_about() -> None:
    assert narrow(changed(TABLE, ("1/4 thick", "1/4 thick 1 1/4 wide"))) == []


def test_a_tenon_of_half_the_rail_is_not_asked_about() -> None:
    assert narrow(changed(TABLE, ("1/4 thick", "3/8 thick"))) == []
