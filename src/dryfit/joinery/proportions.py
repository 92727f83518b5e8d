"""Default proportions of joints, used where the notes name none; lengths in mm.

Defaults are rounded to whole steps of the maker's ruler, so that what is printed can be set.
"""

from __future__ import annotations

from fractions import Fraction

from dryfit.quantities import Display
from dryfit.quantities.units import INCH


def usual_tenon_length(depth: Fraction, display: Display) -> Fraction:
    """Return the length of a blind tenon in a member `depth` mm deep along the tenon.

    Two thirds of the depth, at most 30 mm (TRADE B3.1, common practice: 2/3 to 3/4 of the depth,
    at least 20).
    """
    return min(display.down(depth * Fraction(67, 100)), Fraction(30))


def usual_tenon_length_at_a_corner(depth: Fraction, display: Display) -> Fraction:
    """Return the length of a blind tenon where another meets it at a right angle in one leg.

    Half of the depth at most, so that the two mortises keep apart (common practice; H05).
    """
    return min(usual_tenon_length(depth, display), display.down(depth / 2))


def usual_tenon_thickness(
    thickness: Fraction, cutters: tuple[Fraction, ...], display: Display
) -> Fraction:
    """Return a third of the rail's thickness, or the mortise cutter nearest to it.

    TRADE B3.1: "T_rail/3 to the nearest chisel/bit" (common practice).
    """
    third = thickness / 3
    fitting = [cutter for cutter in cutters if cutter <= thickness / 2]
    if fitting:
        return min(fitting, key=lambda cutter: (abs(cutter - third), cutter))
    return display.down(third)


def usual_tenon_width(
    rail_width: Fraction, thickness: Fraction, shoulders: Fraction, display: Display
) -> Fraction:
    """Return the usual width of a tenon: at most five times its thickness and 60 % of the rail.

    TRADE B3.1 and H09 (common practice); `shoulders` is what both edge shoulders need together.
    """
    return display.down(min(5 * thickness, rail_width * Fraction(6, 10), rail_width - shoulders))


def glue_gap(display: Display) -> Fraction:
    """Return the room for glue at the bottom of a mortise: 1 mm, 1/16 in on inch pieces.

    TRADE B3.1 (common practice).
    """
    return display.either(Fraction(1), INCH / 16)


def edge_shoulder(display: Display) -> Fraction:
    """Return the least edge shoulder that hides a mortise's end: 5 mm, 3/16 in (TRADE B3.1)."""
    return display.either(Fraction(5), INCH * 3 / 16)


LEAST_END_GRAIN = Fraction(12)
"""Less wood than this between a mortise and the end of its part may break out (TRADE H10)."""


def usual_housing_depth(thickness: Fraction, display: Display) -> Fraction:
    """Return a third of the housed member's thickness (TRADE B7.1, common practice)."""
    return display.down(thickness / 3)


def usual_groove_depth(display: Display) -> Fraction:
    """Return the depth of a panel groove: 8 mm, 3/8 in (TRADE B9, common practice 8 to 10)."""
    return display.either(Fraction(8), INCH * 3 / 8)
