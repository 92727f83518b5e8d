"""Round tenons: the end of a leg rounded to a peg, in a hole bored for it (common practice).

The wood round it goes as four boxes, one from each side; what the corners of the square lose
besides is rounding, and the hole is the box around its bore.
"""

from __future__ import annotations

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded, from_side
from dryfit.joinery.mortise_tenon import TenonSizes, tenon_box
from dryfit.joinery.splay import PlacedSplay
from dryfit.kinds.roles import ROUND, TENON_HOLE


def round_tenon(
    pair: tuple[Placed, Placed],
    region: Box,
    end: int,
    sizes: TenonSizes,
    splay: PlacedSplay | None,
    span: Span | None,
) -> tuple[Cut, ...]:
    """Return the hole in the host, and what goes from each side of the leg's end.

    `pair` are leg and host, `region` what they share, `end` (-1 or 1) the leg's end that enters.
    `splay` is how the leg stands out: the hole leans so, and each shoulder line as its side does.
    """
    leg, host = pair
    axis, wide, thick = leg.axes
    tenon = tenon_box(leg, region, sizes)
    stub = from_side(leg.box, axis, end, region.extent(axis))
    low, high = tenon.low[axis], tenon.high[axis]
    hole = bounded(tenon, axis, *((low - sizes.gap, high) if end < 0 else (low, high + sizes.gap)))
    cuts = [Cut(host.name, hole, "hole", TENON_HOLE, axis, -end, None, leg.part, span, splay=splay)]
    for across, kind in ((thick, "end lap"), (wide, "notch")):
        depths = (
            (-1, tenon.low[across] - stub.low[across]),
            (1, stub.high[across] - tenon.high[across]),
        )
        line = _on_a_face(splay, across)
        cuts += [
            Cut(
                leg.name,
                from_side(stub, across, side, depth),
                kind,
                ROUND,
                across,
                side,
                "slip",
                host.part,
                span,
                splay=line,
            )
            for side, depth in depths
            if depth > 0
        ]
    return tuple(cuts)


def _on_a_face(splay: PlacedSplay | None, normal: int) -> PlacedSplay | None:
    """Return how a shoulder line falls that is drawn on a face across one axis."""
    slopes = tuple(each for each in splay.slopes if each[0][0] != normal) if splay else ()
    return PlacedSplay(slopes) if slopes else None
