"""What boards are ripped wider than the parts, in notes in inches and in others."""

from fractions import Fraction

from dryfit.shop import read_shop, rips_marked_in

INCH = Fraction(254, 10)


def test_what_is_left_for_ripping_is_whole_sixteenths() -> None:
    shop, _ = read_shop(None, {})
    assert shop is not None
    room = rips_marked_in(shop, "in").allowances
    # A quarter of an inch wider off the saw, an eighth of planed boards (TRADE A5): 3 and 5 mm
    # are 1.9 and 3.1 sixteenths.
    assert room["rough_width"] == room["rough_width_band_saw"] == INCH / 4
    assert room["hit_and_miss_width"] == INCH / 4
    assert room["planed_width"] == INCH / 8
    assert room["rough_length"] == shop.allowances["rough_length"]
    assert rips_marked_in(shop, "mm") is shop
