"""The line that says outright what was assumed reads to what was assumed."""

import pytest
from tests.pieces.reading import checked, codes, model_of

NOTES = """
piece Stand
units inches to 1/16
overall 20 wide, 14 deep, 16 high
timber cherry
4 legs, upright, 2 1/4 x 2 1/4, at corners
2 long rails, across, 3 x 7/8, {tenon} into legs, set back 1/8, flush with top of legs
2 short rails, front to back, 3 x 7/8, {tenon} into legs, set back 1/8, flush with top of legs
glue up base: legs, long rails, short rails
"""


@pytest.mark.parametrize("tenon", ["tenon 1", 'tenon 1"', "tenon 1 long", "tenon"])
def test_the_line_offered_for_a_tenon_says_its_thickness(tenon: str) -> None:
    """`tenon 1` and 5/16 thick is no tenon of 1 5/16 (by hand)."""
    notes = NOTES.format(tenon=tenon)
    model = model_of(notes)
    offered = [
        each.instead
        for each in model.assumptions
        if each.instead and "rails, " in each.instead and '5/16" thick' in each.instead
    ]
    assert offered
    lines = [
        next((line for line in offered if line[:8] == own[:8]), own) for own in notes.split("\n")
    ]
    again = model_of("\n".join(lines))
    assert codes(checked("\n".join(lines))) == codes(checked(notes))
    assert [part.length for part in again.parts] == [part.length for part in model.parts]
    assert [joint.tenon for joint in again.joints] == [joint.tenon for joint in model.joints]
