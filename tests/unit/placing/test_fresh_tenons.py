"""A tenon five times as wide as it is thick may be narrow for its rail: that is asked."""

from __future__ import annotations

import pytest
from tests.pieces.reading import changed, checked, model_of

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


DOOR = """piece Door for the tea cupboard
units mm, to nearest 0.5
overall 380 wide, 22 deep, 560 high
timber walnut
2 stiles, upright, 55 x 22, at left and right
1 top rail, across, 55 x 22, tenon 35 long 8 thick into stiles, down 0
1 bottom rail, across, 75 x 22, tenon 35 long 8 thick into stiles, up 0
1 panel, facing front, 8 thick, inside stiles and top rail and bottom rail, groove 9
glue up door: stiles, top rail, panel, bottom rail
"""


@pytest.mark.parametrize(
    ("rail", "shoulder", "wide"),
    # 75 less the groove of 9 less the tenon of 40 is twice 13; 55 less 9 less 33 would be twice
    # 6 1/2, under the 12 that keep the end of the stile whole (TRADE H10): all 13 lie outside.
    [("bottom rail", 13, 40), ("top rail", 13, 33)],
)
def test_a_tenon_is_centred_in_what_a_groove_leaves(rail: str, shoulder: int, wide: int) -> None:
    joints = [j for j in model_of(DOOR).joints if j.kind == "mortise and tenon" and j.guest == rail]
    assert len(joints) == 2
    for joint in joints:
        low, high = joint.region.low[2], joint.region.high[2]
        assert high - low == wide
        assert (low if rail == "bottom rail" else 560 - high) == shoulder


def test_the_question_names_the_strips_as_they_will_be() -> None:
    (found,) = narrow(changed(DOOR, ("75 x 22", "150 x 22")))
    # 150 less 9 less 40 is twice 50.5, and the groove is above.
    assert "leaves 50.5 of the rail bare below it and 59.5 above it" in found.message


def test_narrow_strips_are_not_asked_about_and_a_thickness_is_one_that_can_be_read() -> None:
    text = changed(DOOR, ("55 x 22, tenon 35 long 8", "70 x 22, tenon 35 long 6"))
    assert narrow(text) == []
    # Of 10 mm and 3/8 in the one that metric notes print as it is; 5 x 10.
    (found,) = narrow(changed(DOOR, ("75 x 22, tenon 35 long 8", "120 x 22, tenon 35 long 6")))
    assert found.hints[0].message == "write `10 thick`, which gives 50, or write its width"
