"""Free wood in a contact face: where a screw can stand beside what is cut away there; mm.

The face is seen along its normal, so that all is about rectangles; a rectangle here is a pair of
ranges.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import combinations

Range = tuple[Fraction, Fraction]
Rectangle = tuple[Range, Range]


def grown(rectangle: Rectangle, by: Fraction) -> Rectangle:
    """Return the rectangle with every side moved outwards; inwards for less than nothing."""
    (left, right), (low, high) = rectangle
    return (left - by, right + by), (low - by, high + by)


def is_free(place: tuple[Fraction, Fraction], taken: Sequence[Rectangle]) -> bool:
    """Return whether a point lies in none of the rectangles; on a border it is free."""
    return not any(
        all(low < at < high for at, (low, high) in zip(place, each, strict=True)) for each in taken
    )


def stoutest(
    face: Rectangle, taken: Sequence[Rectangle], outward: tuple[int, int]
) -> Rectangle | None:
    """Return the free rectangle in a face whose lesser side is the greatest, or None.

    Of two alike the larger, then the one nearer to the `outward` sides (-1 or 1), so that
    mirrored copies come out mirrored.  It may be flat.
    """
    near = [each for each in taken if not _apart(face, each)]
    free = [each for each in _rectangles(face, near) if all(_apart(each, one) for one in near)]
    return max(free, key=lambda each: _worth(each, outward), default=None)


def _rectangles(face: Rectangle, taken: Sequence[Rectangle]) -> Iterator[Rectangle]:
    # The sides of a largest free rectangle lie on sides of the face or of what is taken.
    sides: list[list[Range]] = []
    for axis in (0, 1):
        low, high = face[axis]
        if low > high:
            return
        marks = {low, high, *(mark for each in taken for mark in each[axis] if low < mark < high)}
        ordered = sorted(marks)
        sides.append([*combinations(ordered, 2), *((mark, mark) for mark in ordered)])
    for width in sides[0]:
        for height in sides[1]:
            yield width, height


def _apart(one: Rectangle, two: Rectangle) -> bool:
    # Rectangles that only touch are apart; a flat one on a border is, too.
    return any(
        first[1] <= second[0] or second[1] <= first[0]
        for first, second in zip(one, two, strict=True)
    )


def _worth(rectangle: Rectangle, outward: tuple[int, int]) -> tuple[Fraction, Fraction, Fraction]:
    (left, right), (low, high) = rectangle
    sides = (right - left, high - low)
    out = outward[0] * (left + right) + outward[1] * (low + high)
    return min(sides), max(sides), out
