"""Room to move: a solid panel that floats in grooves, a solid top that is held by buttons.

All lengths in exact mm; coefficients as in `Species`.  The allowances are common practice.
"""

from __future__ import annotations

from fractions import Fraction

from dryfit.wood.moving import Moving

_SLACK = Fraction(1)
_LEAST_ENGAGEMENT = Fraction(5)
_BUTTON_CLEARANCE = Fraction(1, 2)


def panel_width(sight: Fraction, groove_depth: Fraction, wood: Moving) -> Fraction:
    """Return the width across the grain of a panel between grooves that are `sight` apart.

    It is the width whose `panel_gap` is just there on both sides.
    """
    space = sight + 2 * groove_depth - 2 * _SLACK
    return space / (1 + wood.swells(Fraction(1)))


def panel_gap(width: Fraction, wood: Moving) -> Fraction:
    """Return the gap wanted on each side: half of the swelling to come, and 1 mm."""
    return wood.swells(width) / 2 + _SLACK


def dry_engagement(width: Fraction, sight: Fraction, wood: Moving) -> Fraction:
    """Return how deep a centred panel still stands in each groove when it is driest."""
    return (width - wood.shrinks(width) - sight) / 2


def least_engagement(groove_depth: Fraction) -> Fraction:
    """Return the engagement that a panel must keep: half of the groove, and at least 5 mm."""
    return max(_LEAST_ENGAGEMENT, groove_depth / 2)


def button_stand_off(each_side: Fraction) -> Fraction:
    """Return how far the body of a button stands clear of the apron: the movement and 0.5 mm."""
    return each_side + _BUTTON_CLEARANCE
