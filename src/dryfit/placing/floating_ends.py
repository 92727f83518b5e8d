"""Ends that float: dry in their mortise, the shoulder a little before the host (TRADE B21.3).

A part along the depth of solid sides is glued at one end; at the other it leaves room, so that
the sides can shrink towards it.
"""

from __future__ import annotations

from fractions import Fraction

from dryfit.piece.declared import Contact, DeclaredPart
from dryfit.piece.floating import floating_end
from dryfit.placing.gaps import gap_at
from dryfit.placing.lines import with_words
from dryfit.placing.site import SIDE_WORDS, Site
from dryfit.placing.tenon_words import is_through
from dryfit.quantities import Display
from dryfit.quantities.units import INCH

ZERO = Fraction(0)


def usual_float(display: Display) -> Fraction:
    """Return how far the shoulder of a floating end stands off: 3 mm, 1/8 in (B21.3: 2 to 3)."""
    return display.either(Fraction(3), INCH / 8)


def floats_by(site: Site, part: DeclaredPart, contact: Contact, axis: int, side: int) -> Fraction:
    """Return how far the shoulder at one end stands before its host: nothing where glue holds it.

    An end floats where the line glues a tenon at the opposite end alone; `gap` at that end says
    how far.
    """
    if floating_end(part, contact) != (axis, side) or is_through(contact.joint):
        return ZERO
    written = gap_at(part, axis, side, general=False)
    if written is not None:
        return written.value
    usual, words = usual_float(site.declared.display), SIDE_WORDS[axis, side]
    glued = contact.glue[0].span
    phrase = f"{glued.text()}, gap {site.shown(usual)} at {words}"
    site.assume_line(
        f"the {words} shoulders of {part.written} stand {site.shown(usual)} off: "
        "no glue holds them, and the wood can shrink there",
        glued,
        with_words(glued, phrase),
    )
    return usual
