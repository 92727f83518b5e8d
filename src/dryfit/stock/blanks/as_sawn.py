"""Parts as large as they are until their last trim: with horns, along a slope, to be planed in."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.placing.horns import with_its_horns
from dryfit.placing.model import Measure, Part


def as_sawn(part: Part) -> Part:
    """Return the part as large as it is sawn: with what is planed off it in its place."""
    length, width = (trimmed(part, size) for size in ("length", "width"))
    if not length and not width:
        return part
    staves = part.staves
    if staves is not None:
        staves = staves.wider(width)
    return replace(
        part,
        length=part.length + length,
        width=part.width + width,
        staves=staves,
        measures=tuple(_to_the_opening(each) for each in part.measures),
    )


def trimmed(part: Part, dimension: str) -> Fraction:
    """Return how much of a size is planed off in the opening, both edges together; mm."""
    measure = part.waits_for(dimension)
    return Fraction(0) if measure is None else measure.trim


def as_milled(part: Part) -> Part:
    """Return the part as long and wide as it is milled and cut to length: what a blank is for."""
    sloped = part.sloped
    part = with_its_horns(part)
    return as_sawn(part if sloped is None else replace(part, length=sloped.length))


def _to_the_opening(measure: Measure) -> Measure:
    return replace(measure, formula=measure.sawn_formula, worked=measure.sawn_worked)
