"""What is taken for granted about splayed legs, each with the line that says it outright."""

from __future__ import annotations

from fractions import Fraction

from dryfit.geometry.lean import UP
from dryfit.piece.declared import SplayWords
from dryfit.placing.lines import with_words
from dryfit.placing.model import Part
from dryfit.placing.site import Site

_WAYS = ("to the sides", "front and back")


def list_splay(site: Site, part: Part, words: SplayWords) -> None:
    """List which way legs lean, what an angle is taken for, where the feet stand, the section."""
    written = site.written(part.name)
    slopes = [
        max(
            (abs(copy.lean.per_down[axis]) for copy in part.copies if copy.lean),
            default=Fraction(0),
        )
        for axis in (0, 1)
    ]
    if words.way_unsaid:
        said = [(slope, way) for slope, way in zip(slopes, _WAYS, strict=True) if slope]
        way = "both ways" if len(said) > 1 else said[0][1]
        line = with_words(words.span, f"{words.span.text()} {way}")
        ways = " and ".join(way for _, way in said)
        site.assume_line(f"the {written} are splayed {ways}", words.span, line)
    for angle, slope in words.rounded:
        text = f"{plain(angle)} degrees is taken for a slope of {ratio(slope)}, rounded"
        site.assume_line(text, words.span, None)
    _list_feet(site, part, written, words)
    bar = max(part.width, part.thickness)
    lean = part.copies[0].lean
    if lean is not None:
        larger = site.declared.display.with_unit(lean.stretch(bar))
        text = (
            f"the {written} stay square in section: they are drawn as they meet the seat, where "
            f"a level cut through them is up to {larger} larger along the way they lean"
        )
        site.assume_line(text, words.span, None)


def _list_feet(site: Site, part: Part, written: str, words: SplayWords) -> None:
    """List how far apart the feet stand on the floor where that is more than is written."""
    points = [
        corner
        for copy in part.copies
        if copy.lean is not None
        for corner in copy.lean.corners(copy.box)
        if corner[UP] == copy.box.low[UP]
    ]
    sizes = [max(p[axis] for p in points) - min(p[axis] for p in points) for axis in (0, 1)]
    wide, deep = (site.shown(size) for size in sizes)
    text = (
        f"the overall size is counted without the splay: on the floor the feet of the {written} "
        f"stand {wide} x {deep} apart, from outside to outside"
    )
    site.assume_line(text, words.span, None)


def ratio(slope: Fraction) -> str:
    """Return a slope as it can be written: 1 in 8, or 122.785 in 1000 of a rounded angle."""
    run = 1 / slope
    if run.denominator == 1:
        return f"1 in {run}"
    return (
        f"{plain(slope * 1000)} in 1000"
        if 1000000 % slope.denominator == 0
        else f"{slope.numerator} in {slope.denominator}"
    )


def plain(number: Fraction) -> str:
    """Return a number as it is written in the notes."""
    return str(number) if number.denominator == 1 else f"{float(number):g}"
