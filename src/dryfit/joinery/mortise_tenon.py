"""Blind mortise and tenon with shoulders (TRADE B3)."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded, from_side


@dataclass(frozen=True, slots=True)
class TenonSizes:
    """Length, thickness, width of a tenon, glue gap, and where it sits; mm.

    `low_shoulder` is the edge shoulder at the low coordinate of the rail's width, `low_cheek`
    the cheek at the low coordinate of its thickness.
    """

    length: Fraction
    thickness: Fraction
    width: Fraction
    gap: Fraction
    low_shoulder: Fraction
    low_cheek: Fraction


def tenon_box(rail: Placed, region: Box, sizes: TenonSizes) -> Box:
    """Return the tenon's box inside the region that rail and host share."""
    _, wide, thick = rail.axes
    low = rail.box.low
    box = bounded(
        region, wide, low[wide] + sizes.low_shoulder, low[wide] + sizes.low_shoulder + sizes.width
    )
    start = low[thick] + sizes.low_cheek
    return bounded(box, thick, start, start + sizes.thickness)


def mortise_and_tenon(
    rail: Placed, host: Placed, region: Box, end: int, sizes: TenonSizes, span: Span | None
) -> tuple[Cut, ...]:
    """Return the mortise in the host, and cheeks and edge shoulders on the rail.

    `end` is -1 or 1: the rail's end, by coordinate, that enters the host.  The mortise is deeper
    than the tenon by the glue gap.
    """
    length, wide, thick = rail.axes
    tenon = tenon_box(rail, region, sizes)
    hole = (
        bounded(tenon, length, tenon.low[length] - sizes.gap, tenon.high[length])
        if end < 0
        else bounded(tenon, length, tenon.low[length], tenon.high[length] + sizes.gap)
    )
    mortise = Cut(host.name, hole, "mortise", "mortise", length, -end, "slip", rail.part, span)
    stub = from_side(rail.box, length, end, tenon.extent(length))
    return (
        mortise,
        *_sides(rail, host, stub, tenon, (thick, "end lap", "tenon cheek"), span),
        *_sides(rail, host, stub, tenon, (wide, "notch", "tenon shoulder"), span),
    )


def _sides(
    rail: Placed,
    host: Placed,
    stub: Box,
    tenon: Box,
    what: tuple[int, str, str],
    span: Span | None,
) -> tuple[Cut, ...]:
    axis, kind, role = what
    low = tenon.low[axis] - stub.low[axis]
    high = stub.high[axis] - tenon.high[axis]
    return tuple(
        Cut(
            rail.name,
            from_side(stub, axis, side, depth),
            kind,
            role,
            axis,
            side,
            "slip",
            host.part,
            span,
        )
        for side, depth in ((-1, low), (1, high))
        if depth > 0
    )
