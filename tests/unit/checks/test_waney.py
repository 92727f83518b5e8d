"""Edges that the notes want left waney: what becomes of them, and where they may be."""

from tests.pieces.reading import checked

BOARD = """piece Board
units mm
overall 800 wide, 250 deep, 30 high
timber elm
1 board, {}
finish oil, 2 coats
"""


def codes_of(words: str) -> list[str]:
    """The codes of what is told of one board."""
    return [each.code for each in checked(BOARD.format(words)).findings]


def test_an_edge_that_the_plan_saws_off_is_told() -> None:
    panel = "across, flat, 30 thick, from 3 staves"
    assert codes_of(f"{panel}, waney at front") == ["waney-sawn-off"]
    assert codes_of(panel) == []
    # What is resawn out of a thick board is ripped to its width as a strip.
    two = BOARD.replace("250 deep", "600 deep").replace("1 board", "2 boards")
    text = two.format("across, flat, 250 x 30, at front and back, waney at front, resawn")
    assert "waney-sawn-off" in [each.code for each in checked(text).findings]
    assert codes_of("across, flat, 30 thick, waney at front") == []


def test_bark_is_neither_on_a_face_nor_at_an_end() -> None:
    assert codes_of("across, flat, 30 thick, waney at top") == ["waney-at-an-end"]
    assert codes_of("across, flat, 30 thick, waney at left") == ["waney-at-an-end"]


def test_the_other_edge_is_the_reference() -> None:
    # TRADE A2.6: nothing is measured from a waney edge.
    for words, waney, toward in (("front", ("E2",), 1), ("back", ("E2",), -1)):
        model = checked(BOARD.format(f"across, flat, 30 thick, waney at {words}")).model
        assert model is not None
        (part,) = model.parts
        assert part.waney == waney
        # E is where the width counts from: of a front edge under bark the rear one.
        assert part.copies[0].frame.axes[1] == (1, -toward)
    model = checked(BOARD.format("across, flat, 30 thick, waney at front and back")).model
    assert model is not None
    assert model.parts[0].waney == ("E", "E2")
