"""Wooden drawer runners: strips that run in grooves of what they carry (TRADE B21.1, B21.2).

Defaults are rounded to whole steps of the maker's ruler; lengths in mm, common practice.
"""

from __future__ import annotations

from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.joinery.cut import bounded
from dryfit.quantities import Display
from dryfit.quantities.units import INCH

UP = 2


def runner_play(display: Display) -> Fraction:
    """Return how much narrower and thinner than its groove a runner is: 0.8 mm, 1/32 in."""
    return display.either(Fraction(4, 5), INCH / 32)


def guide_play(display: Display) -> Fraction:
    """Return how much narrower than its guide a runner in the middle is: 0.5 mm, 1/64 in."""
    return display.either(Fraction(1, 2), INCH / 64)


def usual_centre_runner(display: Display) -> Fraction:
    """Return how wide a runner under the middle of a drawer is: 20 mm, 3/4 in (B21.2)."""
    return display.either(Fraction(20), INCH * 3 / 4)


def usual_bottom_runner(display: Display) -> Fraction:
    """Return how wide a runner below the side of a drawer is: 40 mm, 1 1/2 in (B21.3)."""
    return display.either(Fraction(40), INCH * 3 / 2)


def end_play(display: Display) -> Fraction:
    """Return how much shorter than its groove a runner is: 6 mm, 1/4 in."""
    return display.either(Fraction(6), INCH / 4)


def usual_groove_width(display: Display) -> Fraction:
    """Return the height of the groove in the side of a drawer: 12 mm, 1/2 in (12 to 16)."""
    return display.either(Fraction(12), INCH / 2)


def usual_groove_depth(thickness: Fraction, display: Display) -> Fraction:
    """Return how deep the groove is: half of the drawer's side, rounded down."""
    step = display.either(Fraction(1, 2), INCH / 16)
    return thickness / 2 // step * step


def usual_stop(display: Display) -> Fraction:
    """Return how far behind the front the groove stops, so that it does not show: 20, 3/4 in."""
    return display.either(Fraction(20), INCH * 3 / 4)


def usual_groove_top(height: Fraction, display: Display) -> Fraction:
    """Return how high the groove's upper edge is above the lower edge of a side: at mid height.

    There it is clear of the groove for the bottom (B21.1).
    """
    step = display.either(Fraction(1, 2), INCH / 16)
    return (height + usual_groove_width(display)) / 2 // step * step


def runner_groove(
    runner: Box, host: Box, run: int, surface: tuple[int, int], display: Display
) -> Box:
    """Return the groove for a runner that enters the face `surface` (axis, side) of its host.

    Along `run` it is longer by `end_play` in front, and open behind, where the drawer is pushed
    on; through where hardly a stop would be left.  A drawer hangs on the runner: the play of a
    level groove is below.
    """
    axis, side = surface
    play = runner_play(display)
    across = 3 - run - axis
    beside = guide_play(display) / 2
    below, above = (play, Fraction(0)) if across == UP else (beside, beside)
    box = bounded(host, across, runner.low[across] - below, runner.high[across] + above)
    start = max(host.low[run], runner.low[run] - end_play(display))
    box = bounded(box, run, start, host.high[run])
    if side < 0:
        return bounded(box, axis, host.low[axis], runner.high[axis] + play)
    return bounded(box, axis, runner.low[axis] - play, host.high[axis])
