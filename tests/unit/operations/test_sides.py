"""How a part lies is a matter of directions in space, so it is checked against vectors by hand."""

import pytest

from dryfit.operations.sides import edge_at_fence_behind, edge_at_sled_fence, side_of_end


@pytest.mark.parametrize(
    ("down", "at_stop", "handedness", "fence"),
    [
        # Right-handed part, face down: thickness runs up.  Its end R on the left means that the
        # length runs right, so the width runs up x right = away from the maker: E is towards him.
        ("F", "R", 1, "E"),
        ("F", "R2", 1, "E2"),
        ("B", "R", 1, "E2"),
        ("B", "R", -1, "E"),
        ("F", "R", -1, "E2"),
        # On edge E, end R on the left: width runs up, length right, thickness right x up = to him.
        ("E", "R", 1, "B"),
        ("E2", "R", 1, "F"),
    ],
)
def test_the_edge_at_a_sled_s_fence(down: str, at_stop: str, handedness: int, fence: str) -> None:
    assert edge_at_sled_fence(down, at_stop, handedness) == fence


def test_mirror_images_want_their_stop_on_opposite_sides() -> None:
    # Face down: thickness up; E behind, so the width runs to the maker.  Right-handed: length =
    # width x thickness = to the maker x up, which points left: R is on the right.
    assert side_of_end("R", "F", "E", 1) == "right"
    assert side_of_end("R", "F", "E", -1) == "left"
    assert side_of_end("R2", "F", "E", 1) == "left"


def test_a_part_turned_until_its_end_is_on_the_left() -> None:
    assert edge_at_fence_behind("F", "R", 1) == "E2"
    assert edge_at_fence_behind("F", "R", -1) == "E"
