"""Stretchers between legs that lean alike: where they stand, and what is refused."""

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, errors, mm, model_of, text_of

from dryfit.placing.ladders import as_sawn, from_end

BENCH = text_of("stretchered_bench")
STRETCHERS = "2 stretchers, front to back, 26 x 26, round tenon 24 long 12 thick into legs, up 150"
ROUND = "round tenon 24 long 12 thick"
LADDERS = "glue up 2 ladders: 2 legs, 1 stretcher\n"
ALL = "glue up bench: seat, ladders"


def test_a_stretcher_leans_with_its_legs_and_is_made_square() -> None:
    model = model_of(BENCH)
    for side, out in (("left", -1), ("right", 1)):
        lean = model.copy(f"{side} stretcher").lean
        assert lean is not None
        assert lean == model.copy(f"front {side} leg").lean == model.copy(f"back {side} leg").lean
        assert (*lean.per_down, lean.level) == (Fraction(out, 7), *mm(0, 404))
    stretcher = model.part("stretcher")
    assert stretcher.sloped is None
    # Between the legs 300 - 2 x 40 - 2 x 36 = 148, and a tenon of 24 at both ends.
    assert (stretcher.length, stretcher.cut_length) == mm(196, 196)
    assert all(not each.slopes for each in stretcher.features)


def test_its_hole_is_square_and_stands_along_the_slope() -> None:
    leg = model_of(BENCH).part("leg")
    (hole,) = (each for each in leg.features if each.role == "tenon hole")
    assert hole.slopes == ()
    assert hole.along == mm(157, 169)
    # By hand: the slope over 7 down and 1 aside is the root of 50, 7.0710678, so 1.0101525 a mm.
    # The block under the foot: 40 / 7 + 3 up to the next mm is 9; square to the leg the middle of
    # its foot is 40 / 7 / 2 higher: 9 x 1.0101525 - 2.857143 = 6.234 below the floor.  The middle
    # of the hole is 163 high: 163 x 1.0101525 = 164.655, so 170.889 from the end R.
    assert float(163 + from_end(leg, Fraction(163))) == pytest.approx(170.889, abs=0.0015)


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        # The legs lean both ways: the two of a side point apart.
        ("1 in 7 to the sides", "1 in 7", "splay-joint"),
        # In the plane of the lean its ends would be sawn aslant.
        (STRETCHERS, STRETCHERS.replace("front to back", "across"), "splay-joint"),
        # A row of tenons stands at level distances, and its mortises would at those of the slope.
        (STRETCHERS, STRETCHERS.replace(ROUND, "2 tenons 24 long 6 thick"), "splay-joint"),
        (STRETCHERS, STRETCHERS.replace(ROUND, "tenon 24 long 8 thick, pegged"), "splay-joint"),
        # Turned with the legs, 26 / 7 / 2 = 1.9 of it come up into the seat.
        (STRETCHERS, STRETCHERS.replace("up 150", "up 377"), "splay-in-the-way"),
        # Between legs that stand in the seat it cannot be sprung.
        (f"{LADDERS}{ALL}", "glue up bench: seat, legs, stretchers", "splay-joint"),
    ],
)
def test_what_does_not_lie_square_in_the_plane_is_refused(old: str, new: str, code: str) -> None:
    found = checked(changed(BENCH, (old, new)))
    assert code in codes(found), codes(found)
    assert errors(found)


def test_just_below_the_seat_it_is_clear() -> None:
    text = changed(BENCH, (STRETCHERS, STRETCHERS.replace("up 150", "up 376")))
    assert "splay-in-the-way" not in codes(checked(text))


RAILED = text_of("railed_bench")


def test_a_rail_has_its_mortises_square_in_the_leg_along_the_slope() -> None:
    leg = model_of(RAILED).part("leg")
    (mortise,) = (each for each in leg.features if each.kind == "mortise")
    assert (mortise.slopes, mortise.along) == ((), mm(162, 198))
    sawn = next(each for each in as_sawn(leg).features if each.kind == "mortise")
    # As for the hole above: 6.234 from R to the floor, and 180 x 1.0101525 = 181.827 to its middle
    # at 180; as long as the tenon is wide, half of 36 to both sides.
    assert [float(each) for each in sawn.along] == pytest.approx([170.061, 206.061], abs=0.0015)
    assert sawn.along[1] - sawn.along[0] == 36


def test_one_end_of_a_rail_may_float_dry() -> None:
    text = changed(RAILED, ("8 thick into legs", "8 thick into legs, glued at front"))
    assert not errors(checked(text))
