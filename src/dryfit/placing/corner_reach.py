"""How far a board reaches into the other at a corner that fingers or tails hold (TRADE B25)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.kinds.joints import kind_written
from dryfit.piece.declared import DeclaredPart, JointWords
from dryfit.placing.lines import with_words
from dryfit.placing.seats import Seat
from dryfit.placing.site import Site


def is_corner(joint: JointWords) -> bool:
    """Return whether a joint is one of fingers or tails."""
    kind = kind_written(joint.kind)
    return kind is not None and kind.corner


def reach_of(
    site: Site, part: DeclaredPart, joint: JointWords, host: Seat, axis: int
) -> Fraction | None:
    """Return how far the guest enters, or None while the host's size is unknown.

    Fingers and through tails reach to the outside; tails behind a lap as deep as they are written,
    or so that the usual lap stays.
    """
    thick = site.positions.extent(host.name, axis)
    if joint.kind != "half-blind dovetail":
        return thick
    if joint.depth is not None or thick is None:
        return joint.depth
    from dryfit.joinery.dovetails import usual_lap

    deep = thick - usual_lap(thick, site.declared.display)
    phrase = f"{site.shown(deep)} deep"
    site.assume_line(
        f"the tails of the {part.written} are {phrase}, behind a lap of {site.shown(thick - deep)}",
        joint.span,
        with_words(joint.head, f"{joint.head.text()} {phrase}"),
    )
    return deep
