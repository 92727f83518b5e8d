"""Holes for pegs across a mortise and its tenon, moved where drawbored (common practice)."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded
from dryfit.joinery.mortise_tenon import TenonSizes, tenon_boxes

PEG_SLOT = "peg slot"
_FROM_SHOULDER = Fraction(3, 2)
"""A peg stands one and a half diameters from the shoulder, at most in the middle of the tenon."""


def peg_holes(
    rail: Placed, host: Placed, region: Box, end: int, sizes: TenonSizes, span: Span | None
) -> tuple[Cut, ...]:
    """Return the holes right through the host and through each tenon.

    `region` is what rail and host share, `end` the rail's end that enters.  In a drawbored joint
    the tenon's holes lie nearer to the shoulder by `sizes.drawn`, so that the pegs pull it shut.
    """
    thick = rail.axes[2]
    side = host.outward[thick]
    cuts: list[Cut] = []
    for middle, play in _middles(rail, region, end, sizes):
        for copy, shift in ((host, Fraction(0)), (rail, -end * sizes.drawn)):
            box = _around(copy.box, rail, middle, shift, sizes.peg)
            kind, role = "hole", "peg hole"
            if copy is rail and play:
                # The plank slides along its board end, and its hole with it.
                across = rail.axes[1]
                box = bounded(box, across, box.low[across] - play, box.high[across] + play)
                kind, role = "mortise", PEG_SLOT
            cuts.append(Cut(copy.name, box, kind, role, thick, side, None, None, span))
    return tuple(cuts)


def _middles(
    rail: Placed, region: Box, end: int, sizes: TenonSizes
) -> Iterator[tuple[tuple[Fraction, Fraction], Fraction]]:
    """Yield where pegs stand along the rail and across it, and how far their tenon slides."""
    length, wide, _ = rail.axes
    face = region.high[length] if end < 0 else region.low[length]
    along = face + end * min(region.extent(length) / 2, _FROM_SHOULDER * sizes.peg)
    plays = sizes.plays or (Fraction(0),) * sizes.count
    boxes = tenon_boxes(rail, region, sizes) if sizes.pegs else ()
    for tenon, play in zip(boxes, plays, strict=False):
        for number in range(sizes.pegs_each):
            share = Fraction(2 * number + 1, 2 * sizes.pegs_each)
            yield (along, tenon.low[wide] + sizes.width * share), play


def _around(
    outer: Box, rail: Placed, middle: tuple[Fraction, Fraction], shift: Fraction, peg: Fraction
) -> Box:
    length, wide, _ = rail.axes
    along, across = middle
    box = bounded(outer, length, along + shift - peg / 2, along + shift + peg / 2)
    return bounded(box, wide, across - peg / 2, across + peg / 2)
