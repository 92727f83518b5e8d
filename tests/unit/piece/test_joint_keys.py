"""Keys on a joint's line are cut in the glue-up that closes the joint."""

from tests.pieces.reading import changed, checked, codes, model_of

FRAME = """piece Frame
overall 400 wide, 30 deep, 500 high
timber ash
2 stiles, upright, 50 x 30, at left and right
2 rails, across, on edge, 50 x 30, at top and bottom
rails crossing stiles: half lap, keys 2 a corner, 3.2 thick, 25 deep
glue up frame: stiles, rails
"""


def test_they_are_those_of_a_line_of_their_own() -> None:
    own = changed(
        FRAME,
        (", keys 2 a corner, 3.2 thick, 25 deep", ""),
        ("glue up frame", "keys in frame: 2 a corner, 3.2 thick, 25 deep\nglue up frame"),
    )
    for part, other in zip(model_of(FRAME).parts, model_of(own).parts, strict=True):
        cuts = [(each.id, each.along, each.across, each.after) for each in part.features]
        assert cuts == [(each.id, each.along, each.across, each.after) for each in other.features]
        assert any(each.role == "key slot" for each in part.features)


def test_without_their_sizes_they_are_unfinished() -> None:
    assert codes(checked(changed(FRAME, (", 25 deep", "")))) == ["feature-unfinished"]


def test_parts_that_no_glue_up_brings_together_take_none() -> None:
    text = changed(FRAME, ("glue up frame: stiles, rails", "glue up frame: stiles"))
    assert "detail-not-for-joint" in codes(checked(text))
