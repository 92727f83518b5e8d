"""What a cut carves out of a copy, and the wood that its form leaves standing: for drawings.

A form is told in shares of its box, as in `joinery.form`: `a` how deep from the face that is cut
into, `b` how far from the surface beside it.  Round faces become facets.
"""

from __future__ import annotations

from fractions import Fraction
from math import cos, hypot, pi, sin

from dryfit.geometry.box import Box
from dryfit.geometry.carving import Carving
from dryfit.geometry.convex import Plane
from dryfit.geometry.frame import SURFACES, WIDTH, Frame
from dryfit.joinery.feature import Feature
from dryfit.joinery.form import SLANTS, Region, Side

_ROUND = 6
_ARCH = 24
"""Facets of a quarter round and of an arch: no corner of theirs shows on paper."""

_Planes = tuple[Plane, ...]


def carving_of(feature: Feature, outer: Box, frame: Frame) -> Carving | None:
    """Return what the cut takes from the copy with this box and frame.

    None for what is drilled, and for a moulding, of which only the box is known.
    """
    if feature.kind == "hole":
        return None
    if feature.flare is not None:
        return _socket(feature, outer, frame)
    return carving_in(feature.region(outer, frame))


def carving_in(region: Region) -> Carving | None:
    """Return what a cut takes, by its region in the piece; None where only its box is known."""
    if region.form is None:
        return Carving(region.box)
    if region.toward is None:
        return None
    if region.form in SLANTS:
        return Carving(region.box, ((_shares(region, region.toward, (-1.0, -1.0), -1.0),),))
    if region.form == "round-over":
        return Carving(region.box, (_quarter(region, region.toward),), curved=True)
    if region.form == "curve":
        return Carving(region.box, _arch(region, region.toward), curved=True)
    return None


def _quarter(region: Region, toward: Side) -> _Planes:
    """Return the facets of a quarter round: wood where (1-a)2 + (1-b)2 is at most 1."""
    found = []
    for step in range(_ROUND):
        middle = (step + 0.5) * pi / 2 / _ROUND
        right, up = cos(middle), sin(middle)
        reach = cos(pi / 4 / _ROUND)
        found.append(_shares(region, toward, (-right, -up), reach - right - up))
    return tuple(found)


def _arch(region: Region, toward: Side) -> tuple[_Planes, ...]:
    """Return the strips beyond an arch: wood where a is at least 1 - u2, u from -1 to 1.

    They overlap, so that no line shows between two; beyond their ends the chords stay outside the
    arch, so that nothing changes.
    """
    found = []
    for step in range(_ARCH):
        one, two = (2 * at / _ARCH - 1 for at in (step, step + 1))
        # a >= 1 - one2 + slope (u - one), and u = 2 b - 1.
        slope = -(one + two)
        chord = _shares(region, toward, (-1.0, 2 * slope), slope * (1 + one) - (1 - one * one))
        spare = 0.25 / _ARCH
        low = _shares(region, toward, (0.0, -1.0), spare - step / _ARCH)
        high = _shares(region, toward, (0.0, 1.0), spare + (step + 1) / _ARCH)
        found.append((chord, low, high))
    return tuple(found)


def _socket(feature: Feature, outer: Box, frame: Frame) -> Carving:
    """Return a socket with sloping sides: wood stays beyond either."""
    assert feature.flare is not None
    box = feature.box(outer, frame)
    across, sign = frame.axes[WIDTH]
    flare = feature.flare
    low, high = (flare.low, flare.high) if sign > 0 else (flare.high, flare.low)
    direction, far = SURFACES[flare.toward]
    axis, own = frame.axes[direction]
    toward: Side = axis, own if far else -own
    corners = [list(box.low), list(box.high)]
    corners[0][across] -= low
    corners[1][across] += high
    (x, y, z), (u, v, w) = corners
    wide = Box((x, y, z), (u, v, w))
    size = float(wide.extent(across))
    left = []
    for side, lean in ((-1, low), (1, high)):
        # A share of twice the lean at the narrow end, none of it at the wide one.
        share = 2 * float(lean) / size
        region = Region(wide, (across, side))
        left.append((_shares(region, toward, (1.0, share), share),))
    return Carving(wide, tuple(left))


def _shares(region: Region, toward: Side, factors: tuple[float, float], most: float) -> Plane:
    """Return the half of space where both shares, times their factors, come to `most` at most."""
    normal = [0.0, 0.0, 0.0]
    offset = most
    for (axis, side), factor in zip((region.face, toward), factors, strict=True):
        per_mm = -side * factor / float(region.box.extent(axis))
        edge: Fraction = region.box.low[axis] if side < 0 else region.box.high[axis]
        normal[axis] += per_mm
        offset += per_mm * float(edge)
    length = hypot(*normal)
    return Plane((normal[0] / length, normal[1] / length, normal[2] / length), offset / length)
