"""Clear wood: the rectangles of a board that touch no zone."""

from collections.abc import Iterator, Sequence

from dryfit.cutting.problem import Area


def clear_rectangles(within: Area, zones: Sequence[Area]) -> tuple[Area, ...]:
    """Every rectangle that no zone touches and that can be made no larger without meeting one.

    A few that could be made larger may be among them; whatever fits clear wood fits one of them.
    """
    met = [zone for zone in zones if meet(zone, within)]
    starts = sorted({within.start, *(zone.end for zone in met if zone.end < within.end)})
    ends = sorted({within.end, *(zone.start for zone in met if zone.start > within.start)})
    return tuple(
        Area(start, end, low, high)
        for start in starts
        for end in ends
        if start < end
        for low, high in _gaps(Area(start, end, within.low, within.high), met)
    )


def _gaps(strip: Area, zones: Sequence[Area]) -> Iterator[tuple[int, int]]:
    """What lies between the zones of a strip, over its whole length."""
    low = strip.low
    for zone in sorted((zone for zone in zones if meet(zone, strip)), key=lambda zone: zone.low):
        if zone.low > low:
            yield low, zone.low
        low = max(low, zone.high)
    if low < strip.high:
        yield low, strip.high


def meet(one: Area, other: Area) -> bool:
    """Whether two areas share more than an edge."""
    return (
        one.start < other.end
        and other.start < one.end
        and one.low < other.high
        and other.low < one.high
    )


def shared(one: Area, other: Area) -> Area:
    """What two areas that meet have in common."""
    return Area(
        max(one.start, other.start),
        min(one.end, other.end),
        max(one.low, other.low),
        min(one.high, other.high),
    )
