"""How long a tenon may be: one range for H03 (longest), H04 (shortest) and H05 (its neighbours).

Every finding about a tenon's length gives its remedy from this range, so that no remedy of one
check is the mistake of another.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.joinery.proportions import glue_gap
from dryfit.quantities import Display
from dryfit.quantities.units import INCH

LEAST_BEHIND = Fraction(5)
"""What must stand behind a blind mortise at least (TRADE B3.1)."""

LEAST_BETWEEN = Fraction(3)
"""The least wall between two mortises (TRADE B3.5)."""


@dataclass(frozen=True, slots=True)
class TenonRange:
    """The lengths in mm that suit a tenon `thickness` thick in a host `depth` deep.

    `least` and `longest` lie on the steps that are printed; `longest` is less than `least` where
    no length suits.
    """

    least: Fraction
    longest: Fraction
    depth: Fraction
    thickness: Fraction


def tenon_range(
    depth: Fraction, thickness: Fraction, display: Display, neighbour: Fraction | None = None
) -> TenonRange:
    """Return the range; `neighbour` is how far in the next mortise across the way begins."""
    ends = [depth - LEAST_BEHIND]
    if neighbour is not None:
        ends.append(neighbour - LEAST_BETWEEN)
    longest = rounded_down(min(ends) - glue_gap(display), display)
    return TenonRange(least_tenon(thickness, display), longest, depth, thickness)


def shortest_tenon(thickness: Fraction, display: Display) -> Fraction:
    """Return the length with glue area enough: one and a half thicknesses, and 15 mm (H04).

    On inch pieces 9/16 in stands for the 15 mm.
    """
    shortest = display.either(Fraction(15), INCH * 9 / 16)
    return max(thickness * Fraction(3, 2), shortest)


def least_tenon(thickness: Fraction, display: Display) -> Fraction:
    """Return the shortest tenon with glue area enough, as a printed size."""
    return -rounded_down(-shortest_tenon(thickness, display), display)


def longest_words(allowed: TenonRange, display: Display) -> str:
    """Return how long a tenon may be in its host."""
    if allowed.longest <= 0:
        return "no tenon fits into it"
    return f"the longest is {display.shown(allowed.longest)}"


def length_remedy(allowed: TenonRange, length: Fraction, host: str, display: Display) -> str:
    """Return what to write instead of a tenon `length` long, or what else must change."""
    show = display.shown
    if allowed.least <= allowed.longest:
        better = allowed.longest if length > allowed.longest else allowed.least
        return f"write `tenon {show(better)} long`"
    shortest = least_tenon(Fraction(0), display)
    needed = allowed.depth + allowed.least - allowed.longest
    thicker = f"make the {host} at least {show(needed)} deep there"
    if allowed.longest < shortest:
        room = f"only {show(allowed.longest)} fit" if allowed.longest > 0 else "none fits"
        return f"{thicker}: a tenon needs {show(shortest)}, and {room}"
    thin = rounded_down(allowed.longest * 2 / 3, display)
    return (
        f"write `tenon {show(allowed.longest)} long` and make it at most {show(thin)} thick, or "
        f"{thicker}"
    )


def first_neighbour(
    tenon: Box, axis: int, host: Box, side: int, others: Iterable[Box]
) -> Fraction | None:
    """Return how far from the face that a tenon enters the first mortise in its way begins.

    `side` is the side of `host` along `axis` where it enters; `others` are the mortises that enter
    the host along other axes.
    """
    across = [each for each in range(3) if each != axis]
    starts = [
        other.low[axis] - host.low[axis] if side < 0 else host.high[axis] - other.high[axis]
        for other in others
        if all(
            other.low[each] < tenon.high[each] + LEAST_BETWEEN
            and tenon.low[each] < other.high[each] + LEAST_BETWEEN
            for each in across
        )
    ]
    return min(starts, default=None)


def rounded_down(length: Fraction, display: Display) -> Fraction:
    """Return the longest printed size that is not above a length."""
    step = display.step * (INCH if display.unit == "in" else 1)
    return length // step * step
