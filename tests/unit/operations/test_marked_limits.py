"""Cuts that stand on marks are told from the marks that their surface has."""

from dataclasses import replace
from fractions import Fraction

from tests.unit.operations.worked import piece

from dryfit.joinery.feature import Feature
from dryfit.operations.cut import Site
from dryfit.operations.ways.by_hand import marked_limits

HOLE = Feature(
    id="pilot hole for slat",
    kind="hole",
    role="pilot hole",
    surface="R2",
    along=(Fraction(38), Fraction(40)),
    across=(Fraction(7), Fraction(9)),
    depth=Fraction(16),
    fit="free",
    mate="slat",
    hands=("A", "B"),
)


def site(feature: Feature) -> Site:
    post = piece().part("post")
    return Site(post, feature, post.copies[:1])


def test_a_hole_in_an_end_is_measured_from_edge_and_face_to_its_middle() -> None:
    said = marked_limits(site(HOLE))
    where = ("middle ", Fraction(39), " from E", " and ", Fraction(8), " from F")
    assert said == ("pilot hole for slat, in end R2: ", *where, ", ", Fraction(16), " deep")


def test_a_hole_in_a_face_is_measured_from_end_and_edge() -> None:
    said = marked_limits(site(replace(HOLE, surface="B")))
    assert said[0] == "pilot hole for slat, in face B: "
    assert said[1:6] == ("middle ", Fraction(39), " from R", " and ", Fraction(8))
    assert said[6] == " from E"


def test_a_mortise_in_an_edge_is_measured_by_its_limits() -> None:
    said = marked_limits(site(replace(HOLE, surface="E", kind="mortise")))
    assert said[:3] == ("pilot hole for slat, in edge E: ", Fraction(38), " to ")
    assert said[-4:] == (Fraction(7), " to ", Fraction(9), " from F")


def test_a_hole_that_only_one_hand_has_is_told_with_that_hand() -> None:
    # The posts are left and right hands, A and B.
    said = marked_limits(site(replace(HOLE, surface="B", hands=("B",))))
    assert said[0] == "pilot hole for slat, in face B, hand B: "
