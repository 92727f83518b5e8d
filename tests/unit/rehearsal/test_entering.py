"""Can the parts of a glue-up be brought together?  Boxes by hand."""

from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.rehearsal.entering import locked_units


def box(*limits: int) -> Box:
    """A box by its limits: x from and to, y from and to, z from and to."""
    x, x2, y, y2, z, z2 = (Fraction(limit) for limit in limits)
    return Box((x, y, z), (x2, y2, z2))


RAIL = ("rail", (box(0, 100, 0, 20, 0, 20), box(-20, 0, 5, 15, 5, 15)))
POST = ("post", (box(-40, -20, 0, 20, 0, 20), box(-20, 0, 0, 20, 0, 5), box(-20, 0, 0, 20, 15, 20)))
CLOSED = (box(-20, 0, 0, 5, 5, 15), box(-20, 0, 15, 20, 5, 15))


def test_a_tenon_goes_in_along_the_rail() -> None:
    assert locked_units((RAIL, (POST[0], POST[1] + CLOSED))) == ()


def test_a_tongue_with_a_head_behind_a_wall_does_not() -> None:
    headed = ("rail", (*RAIL[1], box(-30, -20, 0, 20, 0, 20)))
    wall = ("post", (*POST[1][1:], *CLOSED))
    assert locked_units((headed, wall)) == ("rail", "post")


def test_open_at_the_top_it_goes_in_from_there() -> None:
    headed = (
        "rail",
        (box(0, 100, 5, 15, 5, 20), box(-20, 0, 5, 15, 5, 20), box(-30, -20, 0, 20, 5, 20)),
    )
    open_wall = (
        "post",
        (box(-20, 0, 0, 5, 0, 20), box(-20, 0, 15, 20, 0, 20), box(-20, 0, 5, 15, 0, 5)),
    )
    assert locked_units((headed, open_wall)) == ()


def test_the_last_rail_between_two_glued_posts_is_one_too_many() -> None:
    # Taken apart one by one the frame comes apart; with both posts as one unit nothing moves.
    left = (
        box(-40, -20, 0, 20, 0, 20),
        box(-20, 0, 0, 20, 0, 5),
        box(-20, 0, 0, 20, 15, 20),
        *CLOSED,
    )
    right = (
        box(120, 140, 0, 20, 0, 20),
        box(100, 120, 0, 20, 0, 5),
        box(100, 120, 0, 20, 15, 20),
        box(100, 120, 0, 5, 5, 15),
        box(100, 120, 15, 20, 5, 15),
    )
    rail = ("rail", (*RAIL[1], box(100, 120, 5, 15, 5, 15)))
    assert locked_units((("left", left), ("right", right), rail)) == ()
    assert locked_units((("posts", left + right), rail)) == ("posts", "rail")
