"""Gaps that nobody wrote: what a door, drawer, shelf or lid usually has round it (TRADE C5.5).

Common practice; in inches the fractions that makers use in their place.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.piece.declared import Amount, DeclaredPart
from dryfit.placing.site import Site
from dryfit.quantities.units import INCH

_ACROSS, _UP = 0, 2
_DOWN_SIDE = -1
_WORDS = {_ACROSS: "across", _UP: "up and down"}


@dataclass(frozen=True, slots=True)
class _Gaps:
    """Gaps at either side, above, below, and between two of them, in mm; None: it touches."""

    side: Fraction
    above: Fraction | None
    below: Fraction | None
    between: Fraction


_MM = {
    "door": _Gaps(Fraction(2), Fraction(2), Fraction(2), Fraction(2)),
    "drawer": _Gaps(Fraction(1), Fraction(3, 2), Fraction(4, 5), Fraction(3)),
    "shelf": _Gaps(Fraction(1), None, None, Fraction(3)),
    "lid": _Gaps(Fraction(3, 2), Fraction(3, 2), Fraction(3, 2), Fraction(2)),
}
_INCHES = {
    "door": _Gaps(INCH / 16, INCH / 16, INCH / 16, INCH / 16),
    "drawer": _Gaps(INCH / 32, INCH / 16, INCH / 32, INCH / 8),
    "shelf": _Gaps(INCH / 32, None, None, INCH / 8),
    "lid": _Gaps(INCH / 16, INCH / 16, INCH / 16, INCH / 16),
}


def usual_gap(site: Site, part: DeclaredPart, axis: int, side: int) -> Amount | None:
    """Return the gap that such a part usually has at a side, or None where it has none."""
    gaps = _gaps_of(site, part)
    if gaps is None or axis not in _WORDS:
        return None
    if axis == _ACROSS:
        return Amount(gaps.side, part.span)
    size = gaps.below if side == _DOWN_SIDE else gaps.above
    return None if size is None else Amount(size, part.span)


def usual_apart(site: Site, part: DeclaredPart, axis: int) -> Amount | None:
    """Return how far two such parts usually stand apart, or None where nothing is usual."""
    gaps = _gaps_of(site, part)
    return Amount(gaps.between, part.span) if gaps is not None and axis in _WORDS else None


def list_usual_gaps(site: Site, part: DeclaredPart, axis: int) -> bool:
    """List the usual gaps of a part on an axis; return whether there are any."""
    found = [usual_gap(site, part, axis, side) for side in (-1, 1)]
    sizes = [each.value for each in found if each is not None]
    if not sizes:
        return False
    shown = " and ".join(dict.fromkeys(site.declared.display.shown(s, fitted=True) for s in sizes))
    kind = part.name.rpartition(" ")[2]
    site.assume(
        f"the {part.written} {'has' if part.count == 1 else 'have'} the usual gap of a {kind} "
        f"{_WORDS[axis]}, {shown}",
        part.span,
        f"gap {site.declared.display.shown(sizes[0], fitted=True)} {_WORDS[axis]}",
    )
    return True


def _gaps_of(site: Site, part: DeclaredPart) -> _Gaps | None:
    table = _INCHES if site.declared.display.unit == "in" else _MM
    return table.get(part.name.rpartition(" ")[2])
