"""A solid top that is held along one side only is told, and what to do (TRADE B22)."""

from tests.pieces.reading import changed, checked, codes

STAND = """piece Hall stand
units mm
overall 600 wide, 300 deep, 500 high
timber oak
4 legs, upright, 40 x 40, at corners, set in 20
1 front rail, across, flat, 40 x 20, tenon 15 long into front legs, flush with top of legs
1 back apron, across, on edge, 90 x 20, tenon 15 long into back legs
2 side aprons, front to back, on edge, 90 x 20, tenon 15 long into legs
1 top, flat, across, 20 thick
top onto legs and back apron: 3 buttons
glue up base: legs, front rail, back apron, side aprons
"""
CODE = "top-held-on-one-side"


def test_buttons_in_the_back_apron_alone_leave_the_front_free() -> None:
    (told,) = [each for each in checked(STAND).findings if each.code == CODE]
    assert "held along the back only: at the front" in told.message
    line = "top onto front rail: slotted screws"
    assert f"`{line}`" in told.hints[0].message
    mended = changed(STAND, ("glue up", f"{line}\nglue up"))
    assert CODE not in codes(checked(mended))


def test_sides_that_hold_it_are_enough() -> None:
    whole = changed(STAND, ("back apron: 3 buttons", "back apron and side aprons: buttons"))
    assert CODE not in codes(checked(whole))


def test_why_a_rail_takes_no_button_is_said() -> None:
    blocks = "2 blocks, front to back, 90 x 60, on the inside of side aprons, glued\n"
    full = changed(
        STAND,
        ("back apron: 3 buttons", "back apron and side aprons: buttons"),
        ("glue up base:", f"{blocks}glue up base: blocks,"),
    )
    model = checked(full).model
    assert model is not None
    texts = [each.text for each in model.assumptions]
    assert "no button has room on the left side apron: the block is in the way" in texts
    assert CODE in codes(checked(full))
