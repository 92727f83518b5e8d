"""Notes in centimetres: a line to write instead of an assumption reads back to the same piece."""

from __future__ import annotations

from tests.pieces import reading

NOTES = """piece Bench
units cm
overall 100 wide, 36 deep, 45 high
timber ash
4 legs, upright, 5 x 5, at corners
2 long rails, across, on edge, 7 x 2.2, tenon 1.5 long 0.8 thick into legs, flush with top of legs
1 top, flat, 2 thick, glued from 3 boards, across
top onto long rails: buttons
glue up base: legs, long rails
"""


def test_each_line_that_says_an_assumption_can_be_taken_as_it_stands() -> None:
    model = reading.model_of(NOTES)
    sizes = [(part.length, part.width, part.thickness) for part in model.parts]
    told = [each for each in model.assumptions if each.span and " mm" in (each.instead or "")]
    lines = NOTES.splitlines()
    taken: set[int] = set()
    for each in told:
        assert each.span is not None
        assert each.instead is not None
        written = lines[each.span.line - 1]
        if each.instead.startswith("groove"):
            continue
        again = reading.model_of(NOTES.replace(written, each.instead))
        assert [(part.length, part.width, part.thickness) for part in again.parts] == sizes
        taken.add(each.span.line)
    assert taken == {6, 7}
    assert any(each.instead and "set back 14 mm" in each.instead for each in told)
