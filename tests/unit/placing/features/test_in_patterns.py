"""Cuts inside a pattern, and in the parts of its instances: inside means inside the instance."""

from __future__ import annotations

from tests.unit.placing.features.where import bounds, cuts, placed

CRATES = """piece Two crates
units mm
overall 900 wide, 300 deep, 400 high
timber birch
pattern crate with width, depth, height
2 sides, upright, facing side, depth x 18, at left and right
1 bottom, flat, depth x 18, into sides, housing 6, flush bottom
1 top, flat, depth x 18, into sides, housing 6, flush top
groove in sides: outside, 13 wide, 6 deep, 64 from front, through
curve in bottom: front edge, width / 20 deep, from width / 4 from left to width / 4 from right
glue up crate: sides, bottom, top
chamfer on crate: front top edge, 2
end
2 crates, as crate, 400 wide, 300 deep, 400 high, at left and right
rabbet in crates' sides: back inside edge, 6 wide, 8 deep, through
"""


def test_a_line_of_the_pattern_holds_in_every_instance() -> None:
    model = placed(CRATES)
    assert cuts(model, "left crate > left side", "groove") == {bounds((0, 6), (64, 77), (0, 400))}
    assert cuts(model, "right crate > left side", "groove") == {
        bounds((500, 506), (64, 77), (0, 400))
    }


def test_the_parts_of_instances_are_reached_from_outside() -> None:
    model = placed(CRATES)
    inner = {
        "left crate > left side": (10, 18),
        "left crate > right side": (382, 390),
        "right crate > left side": (510, 518),
        "right crate > right side": (882, 890),
    }
    for copy, across in inner.items():
        assert cuts(model, copy, "rabbet") == {bounds(across, (294, 300), (0, 400))}


def test_sizes_lean_on_those_of_the_instance() -> None:
    # 400 / 20 = 20 deep; the bottom is 12 to 388 wide, and 100 from either end is 112 to 288.
    assert cuts(placed(CRATES), "left crate > bottom", "curve") == {
        bounds((112, 288), (0, 20), (0, 18))
    }


def test_what_is_glued_in_a_pattern_has_its_edges_too() -> None:
    model = placed(CRATES)
    # The housing has taken the sides from 12 inwards; there the top itself stands.
    assert cuts(model, "right crate > left side", "chamfer") == {
        bounds((500, 512), (0, 2), (398, 400))
    }
    assert cuts(model, "right crate > top", "chamfer") == {bounds((512, 888), (0, 2), (398, 400))}
