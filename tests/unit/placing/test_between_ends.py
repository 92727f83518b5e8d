"""What goes between parts that run past it lies midway along those, wherever they lie."""

from __future__ import annotations

from tests.pieces.reading import model_of

BOX = """piece Box
units mm
overall 400 wide, 320 deep, 100 high
timber oak
2 sides, front to back, on edge, 100 x 12, 300 long, at left and right, 20 from front
1 cross piece, across, on edge, 100 x 12, between sides, housing 6
1 front strip, across, on edge, 400 x 100 x 20, in front of sides, glue
glue up box: sides, cross piece, front strip
"""


def test_between_sides_it_is_centred_along_the_sides() -> None:
    model = model_of(BOX)
    # Sides from 20 to 320: midway is 170, and the piece is 12 thick.
    assert model.part("cross piece").copies[0].box.low[1] == 170 - 6
    (listed,) = [each for each in model.assumptions if each.text.startswith("the cross piece is c")]
    assert listed.text.endswith("centred between the ends of the sides from front to back")
    assert listed.instead is not None
    assert listed.instead.endswith(", 164 from front")
