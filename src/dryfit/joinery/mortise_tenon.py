"""Mortise and tenon with shoulders: blind or through, one or several, haunched (TRADE B3)."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded, from_side


@dataclass(frozen=True, slots=True)
class Haunch:
    """A short tongue beside a tenon, which keeps the rail from twisting at a corner; mm.

    `side` is -1 or 1: the edge of the rail, by coordinate, that it fills; `length` how far it goes
    into the host, `reach` how far from the tenon towards that edge.
    """

    side: int
    length: Fraction
    reach: Fraction


@dataclass(frozen=True, slots=True)
class TenonSizes:
    """Length, thickness, width of a tenon, glue gap, and where it sits; mm.

    `low_shoulder` is the edge shoulder at the low coordinate of the rail's width, `low_cheek`
    the cheek at the low coordinate of its thickness.  Of `count` tenons side by side each is
    `width` wide, with `between` of space from one to the next.  A `through` tenon comes out on the
    far side, `proud` of it.  `wedges` and `pegs` are how many a joint takes, `peg` the diameter,
    and `drawn` how much nearer to the shoulder the holes in the tenon are (drawbored).  A `tongue`
    so long runs between and beside the tenons; by its `plays` each can slide in its mortise.
    A `rounded` one is as wide as it is thick, and goes into a hole.
    Where no glue holds it the shoulder `floats`, so far before the host, and the mortise is as much
    deeper: wood can shrink there.
    """

    length: Fraction
    thickness: Fraction
    width: Fraction
    gap: Fraction
    low_shoulder: Fraction
    low_cheek: Fraction
    count: int = 1
    between: Fraction = Fraction(0)
    haunch: Haunch | None = None
    through: bool = False
    proud: Fraction = Fraction(0)
    wedges: int = 0
    pegs: int = 0
    peg: Fraction = Fraction(0)
    drawn: Fraction = Fraction(0)
    tongue: Fraction = Fraction(0)
    plays: tuple[Fraction, ...] = ()
    floats: Fraction = Fraction(0)
    rounded: bool = False

    @property
    def pegs_each(self) -> int:
        """Return how many pegs hold each tenon: twin tenons share them, and each gets one."""
        return max(1, self.pegs // self.count) if self.pegs else 0

    @property
    def all_pegs(self) -> int:
        """Return how many pegs the joint takes with all its tenons."""
        return self.pegs_each * self.count

    @property
    def whole_width(self) -> Fraction:
        """Return the width from the first tenon to the last."""
        return self.count * self.width + (self.count - 1) * self.between


def tenon_box(rail: Placed, region: Box, sizes: TenonSizes) -> Box:
    """Return the box of the tenons inside the region that rail and host share, gaps included."""
    _, wide, thick = rail.axes
    start = rail.box.low[wide] + sizes.low_shoulder
    box = bounded(region, wide, start, start + sizes.whole_width)
    cheek = rail.box.low[thick] + sizes.low_cheek
    return bounded(box, thick, cheek, cheek + sizes.thickness)


def tenon_boxes(rail: Placed, region: Box, sizes: TenonSizes) -> tuple[Box, ...]:
    """Return the box of each tenon, from the low coordinate of the rail's width on."""
    wide = rail.axes[1]
    whole = tenon_box(rail, region, sizes)
    starts = (
        whole.low[wide] + number * (sizes.width + sizes.between) for number in range(sizes.count)
    )
    return tuple(bounded(whole, wide, start, start + sizes.width) for start in starts)


def mortise_and_tenon(
    rail: Placed, host: Placed, region: Box, end: int, sizes: TenonSizes, span: Span | None
) -> tuple[Cut, ...]:
    """Return the mortises in the host, and cheeks and edge shoulders on the rail.

    `end` is -1 or 1: the rail's end, by coordinate, that enters the host.  A blind mortise is
    deeper than the tenon by the glue gap.
    """
    length, wide, thick = rail.axes
    whole = tenon_box(rail, region, sizes)
    stub = from_side(rail.box, length, end, region.extent(length) + sizes.proud + sizes.floats)
    beside = (wide, "notch", "tenon shoulder")
    return (
        *(
            _mortise(rail, host, widened, end, sizes.gap + sizes.floats, span)
            for widened in mortise_boxes(rail, region, sizes)
        ),
        *_socket(rail, host, whole, end, sizes, span),
        *_sides(rail, host, stub, whole, (thick, "end lap", "tenon cheek"), span),
        *(
            kept
            for cut in _sides(rail, host, stub, whole, beside, span)
            for kept in _beside_haunch(
                _beyond_tongue(cut, rail, end, sizes), rail, end, sizes.haunch
            )
        ),
        *(
            _beyond_tongue(cut, rail, end, sizes)
            for cut in _gaps(rail, stub, whole, end, sizes, span)
        ),
    )


def mortise_boxes(rail: Placed, region: Box, sizes: TenonSizes) -> tuple[Box, ...]:
    """Return the mouth of each mortise: the tenon's, and what it may slide to either side."""
    wide = rail.axes[1]
    plays = sizes.plays or (Fraction(0),) * sizes.count
    return tuple(
        bounded(box, wide, box.low[wide] - play, box.high[wide] + play)
        for box, play in zip(tenon_boxes(rail, region, sizes), plays, strict=True)
    )


def _beyond_tongue(cut: Cut, rail: Placed, end: int, sizes: TenonSizes) -> Cut:
    """Return what is cut beside a tenon, less the tongue that stays."""
    if not sizes.tongue:
        return cut
    axis = rail.axes[0]
    return _with_box(cut, from_side(cut.box, axis, end, cut.box.extent(axis) - sizes.tongue))


def _mortise(
    rail: Placed, host: Placed, tenon: Box, end: int, gap: Fraction, span: Span | None
) -> Cut:
    axis = rail.axes[0]
    hole = _deeper(tenon, axis, end, gap)
    return Cut(host.name, hole, "mortise", "mortise", axis, -end, "slip", rail.part, span)


def _deeper(box: Box, axis: int, end: int, gap: Fraction) -> Box:
    if end < 0:
        return bounded(box, axis, box.low[axis] - gap, box.high[axis])
    return bounded(box, axis, box.low[axis], box.high[axis] + gap)


def _socket(
    rail: Placed, host: Placed, tenon: Box, end: int, sizes: TenonSizes, span: Span | None
) -> tuple[Cut, ...]:
    """Return the shallow mortise in the host that takes the haunch."""
    haunch = sizes.haunch
    if haunch is None:
        return ()
    axis, wide, _ = rail.axes
    box = from_side(tenon, axis, -end, haunch.length)
    if haunch.side < 0:
        low = max(tenon.low[wide] - haunch.reach, host.box.low[wide])
        box = bounded(box, wide, low, tenon.low[wide])
    else:
        high = min(tenon.high[wide] + haunch.reach, host.box.high[wide])
        box = bounded(box, wide, tenon.high[wide], high)
    box = _deeper(box, axis, end, sizes.gap)
    return (Cut(host.name, box, "mortise", "haunch", axis, -end, "slip", rail.part, span),)


def _beside_haunch(cut: Cut, rail: Placed, end: int, haunch: Haunch | None) -> tuple[Cut, ...]:
    """Return what is cut of an edge shoulder: all of it, or what the haunch leaves."""
    if haunch is None or cut.side != haunch.side:
        return (cut,)
    axis = rail.axes[0]
    before = from_side(cut.box, axis, end, cut.box.extent(axis) - haunch.length)
    beyond = cut.box.extent(cut.axis) - haunch.reach
    cuts = [_with_box(cut, before)]
    if beyond > 0:
        strip = from_side(cut.box, axis, -end, haunch.length)
        cuts.append(_with_box(cut, from_side(strip, cut.axis, cut.side, beyond)))
    return tuple(cuts)


def _with_box(cut: Cut, box: Box) -> Cut:
    return Cut(cut.copy, box, cut.kind, cut.role, cut.axis, cut.side, cut.fit, cut.mate, cut.span)


def _gaps(
    rail: Placed, stub: Box, whole: Box, end: int, sizes: TenonSizes, span: Span | None
) -> tuple[Cut, ...]:
    """Return what is cut out between tenons that stand side by side."""
    axis, wide, thick = rail.axes
    slab = bounded(stub, thick, whole.low[thick], whole.high[thick])
    starts = (
        whole.low[wide] + number * (sizes.width + sizes.between) - sizes.between
        for number in range(1, sizes.count)
    )
    return tuple(
        Cut(
            rail.name,
            bounded(slab, wide, start, start + sizes.between),
            "notch",
            "tenon gap",
            axis,
            end,
            "free",
            None,
            span,
        )
        for start in starts
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
