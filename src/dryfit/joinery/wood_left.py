"""What a cut carves out of a copy, and the wood that its form leaves standing: for drawings.

A form is told in shares of its box, as in `joinery.form`: `a` how deep from the face that is cut
into, `b` how far from the surface beside it.  Round faces become facets.
"""

from __future__ import annotations

from fractions import Fraction
from math import cos, hypot, pi, sin, sqrt

from dryfit.geometry.box import Box
from dryfit.geometry.carving import Carving
from dryfit.geometry.convex import Plane
from dryfit.geometry.frame import SURFACES, WIDTH, Frame
from dryfit.joinery.feature import Feature
from dryfit.joinery.form import SLANTS, Region, Side

_ROUND = 6
_ARCH = 20
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
    """Return the strips beyond an arch, each bounded by a chord of it."""
    half, rise = (float(region.box.extent(axis)) for axis in (toward[0], region.face[0]))
    places = [2 * at / _ARCH - 1 for at in range(_ARCH + 1)]
    deep = [_depth(at, half / 2, rise) for at in places]
    found = []
    for step in range(_ARCH):
        one, two = places[step : step + 2]
        slope = (deep[step + 1] - deep[step]) / (two - one)
        # a >= deep + slope (u - one), and u = 2 b - 1.
        most = slope * (1 + one) - deep[step]
        chord = _shares(region, toward, (-1.0, 2 * slope), most)
        low = _shares(region, toward, (0.0, -1.0), -step / _ARCH)
        high = _shares(region, toward, (0.0, 1.0), (step + 1) / _ARCH)
        found.append((low, high, chord))
    return tuple(found)


def _depth(place: float, half: float, rise: float) -> float:
    """Return how deep an arch is, as a share of its rise, at a share of half its span.

    It is a part of a circle, or by eye where it rises beyond a half circle.
    """
    if rise > half:
        return 1 - place * place
    radius = (half * half + rise * rise) / (2 * rise)
    return max(0.0, (sqrt(radius * radius - (half * place) ** 2) - radius + rise) / rise)


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
