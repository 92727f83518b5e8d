"""An error of places says how its parts were taken to lie."""

from __future__ import annotations

from tests.pieces.reading import changed, checked, errors

BENCH = """piece Boot bench
units mm
overall 900 wide, 350 deep, 450 high
timber beech
2 ends, upright, 300 x 25, at left and right, set in 60
1 seat, flat, 25 thick
1 tie, across, 90 x 25, up 335, 400 long, into ends, screws
seat onto ends: screws
glue up body: ends, tie
"""


def test_a_joint_that_does_not_meet_names_the_facing_that_was_assumed() -> None:
    text = changed(
        BENCH,
        ("into ends, screws", "250 from left"),
        ("seat onto ends: screws", "seat onto ends: screws\ntie into ends: screws"),
    )
    found = [each for each in errors(checked(text)) if each.notes]
    assert any(
        "end: it faces the front, not facing side" in note.message
        for each in found
        for note in each.notes
    ), [(each.code, each.message) for each in errors(checked(text))]


def test_a_word_on_the_line_leaves_nothing_to_note() -> None:
    text = changed(
        BENCH,
        ("2 ends, upright,", "2 ends, upright, facing front,"),
        ("1 tie, across", "1 tie, across, on edge"),
        ("1 seat, flat", "1 seat, flat, across"),
    )
    for each in errors(checked(text)):
        assert not any("taken for granted" in note.message for note in each.notes)
