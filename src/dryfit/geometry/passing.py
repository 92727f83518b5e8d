"""Which boxes go through a door, round a corner, and stand up under a ceiling; exact, mm.

Squares and one root are all that it takes.  A root is rounded up to 1/1000 mm, so that what is told
to pass does pass.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from math import isqrt

_STEPS = 1000
_HALVINGS = 40


def diagonal(one: Fraction, other: Fraction) -> Fraction:
    """Return the diagonal of a rectangle, rounded up to 1/1000 mm (Pythagoras)."""
    return root(one * one + other * other)


def stands_up(high: Fraction, deep: Fraction, ceiling: Fraction) -> bool:
    """Return whether what lies on its back can be tilted up: its diagonal turns under the ceiling.

    While it turns about its lower edge its highest corner runs on a circle with the diagonal for
    radius, and passes the top of it.  A case 2000 x 300 stands up under 2022.4 (M19).
    """
    return high * high + deep * deep <= ceiling * ceiling


def leaning_width(long: Fraction, thick: Fraction, height: Fraction) -> Fraction | None:
    """Return how wide a rectangle is that leans so far that it is just `height` high.

    None where it can lie under no such height, or need not lean at all.  With R the diagonal the
    width is (2 l t h + (l2 - t2) root(R2 - h2)) / R2: W. Carver's condition for a rectangle inside
    a rectangle (1957, from memory), which is also how long a box is in plan that is carried tilted.
    Rounded up to 1/1000 mm.
    """
    if not thick <= height < long:
        return None
    square = long * long + thick * thick
    over = root(square - height * height)
    return (2 * long * thick * height + (long * long - thick * thick) * over) / square


def goes_round(long: Fraction, thick: Fraction, first: Fraction, second: Fraction) -> bool:
    """Return whether a rectangle goes from a passage `first` wide into one `second` wide.

    They meet at a right angle.  Either it is pushed round without being turned, or it is turned:
    with both ends along the outer walls, at the angle a, the inner corner is
    first sin a + second cos a - long sin a cos a away from its inner side's line, and that must be
    `thick` at least at every angle (common practice; the ladder of calculus books has thick = 0).
    """
    if min(long, thick) > max(first, second):
        return False
    slid = (thick <= first and long <= second) or (long <= first and thick <= second)
    return slid or _turns(long, thick, first, second)


def longest_round(thick: Fraction, first: Fraction, second: Fraction) -> Fraction:
    """Return the longest whole mm of what is so thick and goes round; 0 where nothing does."""
    low, high = 0, int(first + second) * 2
    if not goes_round(Fraction(1), thick, first, second):
        return Fraction(0)
    while high - low > 1:
        middle = (low + high) // 2
        if goes_round(Fraction(middle), thick, first, second):
            low = middle
        else:
            high = middle
    return Fraction(low)


def root(square: Fraction) -> Fraction:
    """Return the square root, rounded up to 1/1000 mm."""
    scaled = square * _STEPS * _STEPS
    whole = -(-scaled.numerator // scaled.denominator)
    found = isqrt(whole)
    return Fraction(found if found * found == whole else found + 1, _STEPS)


def _turns(long: Fraction, thick: Fraction, first: Fraction, second: Fraction) -> bool:
    # With u = tan(a/2), from 0 to 1, the condition is a polynomial of degree four, less nothing
    # nowhere; its Bernstein coefficients bound it, and halving the range brings them close to it.
    powers = (
        second - thick,
        2 * (first - long),
        -2 * thick,
        2 * (first + long),
        -(second + thick),
    )
    return _not_negative(_bernstein(powers), _HALVINGS)


def _bernstein(powers: tuple[Fraction, ...]) -> tuple[Fraction, ...]:
    """Return the Bernstein coefficients over 0 to 1 of a polynomial of degree four."""
    choose = ((1,), (1, 1), (1, 2, 1), (1, 3, 3, 1), (1, 4, 6, 4, 1))
    return tuple(
        sum((powers[i] * Fraction(choose[k][i], choose[4][i]) for i in range(k + 1)), Fraction(0))
        for k in range(5)
    )


def _not_negative(row: tuple[Fraction, ...], halvings: int) -> bool:
    """Return whether a polynomial is nowhere negative; what is too close to tell is taken for so.

    The coefficients at both ends are its values there.
    """
    if min(row) >= 0:
        return True
    if min(row[0], row[-1]) < 0 or halvings == 0:
        return False
    left, right = [row[0]], [row[-1]]
    inner = list(row)
    while len(inner) > 1:
        inner = [(one + two) / 2 for one, two in pairwise(inner)]
        left.append(inner[0])
        right.insert(0, inner[-1])
    return _not_negative(tuple(left), halvings - 1) and _not_negative(tuple(right), halvings - 1)
