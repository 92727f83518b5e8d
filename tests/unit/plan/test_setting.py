"""What a machine must stand at: which settings are one, and which have to be set again."""

from fractions import Fraction

from dryfit.plan.setting import Setting


def fence(near: str, far: str, origin: str = "E") -> Setting:
    """A fence by the two faces of the cutter, in mm."""
    return Setting("fence", Fraction(near), to="near", far=Fraction(far), origin=origin)


def test_the_edge_that_touches_does_not_move_the_fence() -> None:
    assert fence("7.5", "12.5", "E").token() == fence("7.5", "12.5", "E2").token()


def test_a_drill_of_another_width_needs_the_fence_set_again() -> None:
    # The middle of a 5 mm drill is 10 from the fence here, that of a 3 mm drill 9: a drill press
    # turns both about one middle, so that the fence has to be moved by 1 (TRADE 0.4).
    assert fence("7.5", "12.5").token() != fence("7.5", "10.5").token()
