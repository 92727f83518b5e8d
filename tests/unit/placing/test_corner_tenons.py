"""Tenons whose length nobody wrote keep apart where they meet round the corner of a leg."""

from __future__ import annotations

from fractions import Fraction
from itertools import permutations

import pytest
from tests.pieces.reading import changed, checked, codes, errors, model_of

LEGS = "4 legs, upright, 45 x 45, at corners\n"
LONG = "2 long rails, across, on edge, 80 x 30, tenon into legs, set back 2\n"
SHORT = "2 short rails, front to back, on edge, 80 x 30, tenon into legs, set back 2\n"
BASE = f"""piece Bench base
units mm
overall 800 wide, 400 deep, 450 high
timber ash
{LEGS}{LONG}{SHORT}glue up 2 ends: 2 legs, 1 short rail
glue up base: ends, long rails
"""


@pytest.mark.parametrize("lines", list(permutations((LEGS, LONG, SHORT))))
def test_they_are_shorter_than_half_the_leg_where_thick_rails_meet(lines: tuple[str, ...]) -> None:
    """Each tenon, 10 thick, begins 45 - 2 - 30 + 10 = 23 in: less 3 of wall and 1 of glue, 19."""
    text = changed(BASE, (LEGS + LONG + SHORT, "".join(lines)))
    model = model_of(text)
    assert model.part("long rail").length == 800 - 2 * 45 + 2 * 19
    assert model.part("short rail").length == 400 - 2 * 45 + 2 * 19
    assert not {"mortises-collide", "mortises-close"} & set(codes(checked(text)))
    assert any(each.text == "the tenons of long rails are 19 long" for each in model.assumptions)


def test_they_are_half_the_leg_where_that_keeps_them_apart() -> None:
    """Rails 20 thick have tenons of 6, 45 - 2 - 20 + 7 = 30 in: 22 and 1 keep 7 apart."""
    model = model_of(changed(BASE, ("80 x 30", "80 x 20")))
    assert model.part("long rail").length == 800 - 2 * 45 + 2 * 22


def test_rails_at_unequal_heights_do_not_shorten_each_other() -> None:
    text = changed(BASE, (LONG, LONG.replace("back 2", "back 2, up 300")))
    model = model_of(changed(text, (SHORT, SHORT.replace("back 2", "back 2, up 60"))))
    assert model.part("long rail").length == 800 - 2 * 45 + 2 * 22


def test_what_is_a_little_short_is_made_so_and_told() -> None:
    """Tenons 8 thick in legs of 35 begin 35 - 2 - 24 + 8 = 17 in: 13 are left, 12 are needed."""
    text = changed(BASE, ("45 x 45", "35 x 35"), ("80 x 30", "80 x 24"))
    assert model_of(text).part("long rail").length == 800 - 2 * 35 + 2 * 13
    told = [each for each in checked(text).findings if each.code == "tenon-short"]
    # 15 long for both would leave 1 between their mortises, and 3 are needed.
    remedy = "make the leg at least 37 deep there: a tenon needs 15, and only 13 fit"
    assert [each.hints[0].message for each in told] == [remedy, remedy]


def test_what_is_short_by_a_millimetre_and_fills_its_room_is_made_so_and_not_told() -> None:
    """In legs of 36 they begin 18 in: 14 are left, and a leg 37 thick is nothing one can buy."""
    text = changed(BASE, ("45 x 45", "36 x 36"), ("80 x 30", "80 x 24"))
    assert model_of(text).part("long rail").length == 800 - 2 * 36 + 2 * 14
    assert "tenon-short" not in codes(checked(text))


def test_rails_that_nothing_places_are_taken_to_be_centred() -> None:
    """Rails 22 thick, centred on posts of 45: tenons of 8 begin 18.5 in, less 4 are 14.5."""
    text = changed(BASE, ("80 x 30", "60 x 22"), (", set back 2", ""))
    model = model_of(text)
    assert model.part("long rail").length == 800 - 2 * 45 + 2 * Fraction(29, 2)
    assert not {"mortises-collide", "mortises-close", "tenon-short"} & set(codes(checked(text)))


def test_what_would_be_too_short_to_hold_is_still_told() -> None:
    """In legs of 36 they begin 36 - 2 - 30 + 10 = 14 in: 10 would be left, and 15 are needed."""
    found = errors(checked(changed(BASE, ("45 x 45", "36 x 36"))))
    assert {each.code for each in found} == {"mortises-collide"}
    assert found[0].figures["overlap"] == Fraction(18 + 1 - 14)
