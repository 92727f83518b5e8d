"""The two stops of a stopped groove at the router table, and when they are not yet there.

The work is fed from right to left along the fence, so it leaves a stop on the right and runs
against one on the left: each end of the part meets one stop only (common practice).
"""

from __future__ import annotations

from collections.abc import Iterable

from dryfit.operations.cut import Cut, Site
from dryfit.operations.ways.machines import ROUTER_TABLE
from dryfit.placing.model import Model
from dryfit.plan.operation import Detail, Operation, Rule
from dryfit.shop.shop import Shop

WHY_THROUGH_FIRST = "what is grooved from end to end would run against the stops"


def stops_in_words(site: Site, side: str) -> tuple[Detail, ...]:
    """Return where the stops stand and how the work goes on and off; `side` is that of end R.

    Each stop is told by the far side of the bit, seen from that stop: there the cut ends.  An end
    at which the groove runs out needs no stop.
    """
    start, end = site.feature.along
    length = site.part.length
    other = "right" if side == "left" else "left"
    stops = {
        side: (end < length, "R", end),
        other: (start > 0, "R2", length - start),
    }
    words: Detail = ()
    for where in ("right", "left"):
        wanted, touching, far = stops[where]
        if wanted:
            between = "; stop " if words else "Stop "
            words = (*words, f"{between}on the {where}, met by {touching}: ", far)
            words = (*words, " to the far side of the bit")
    return (words, (_feeding(on_right=stops["right"][0], on_left=stops["left"][0]),))


def within_reach(site: Site, shop: Shop) -> bool:
    """Return whether the fence is long enough for the stops of a groove."""
    start, end = site.feature.along
    length = site.part.length
    longest = shop.stations[ROUTER_TABLE].limits.get("longest_stop")
    ways = ((end < length, end), (start > 0, length - start))
    return longest is None or all(away <= longest for wanted, away in ways if wanted)


def _feeding(*, on_right: bool, on_left: bool) -> str:
    begin = (
        "Hold the work against the stop on the right and lower it onto the running bit"
        if on_right
        else "Begin at the open end"
    )
    end = "feed it to the left stop and lift it off there" if on_left else "feed it through"
    return f"{begin}, {end}"


def through_before_stopped(
    rows: Iterable[tuple[Operation, tuple[Cut, ...]]], model: Model
) -> tuple[Rule, ...]:
    """Return: in one visit, grooves from end to end come before the stops are clamped on.

    In another order the stops come off for them (`stops_off.py`), which is work for nothing.
    Left open where the notes order cuts themselves, and for parts that wait for a measurement.
    """
    if any(wish.first.verb in {None, "cut"} for wish in model.wishes):
        return ()
    grooves = tuple(
        row for row in rows if row[0].kind == "groove" and row[0].station == ROUTER_TABLE
    )
    return tuple(
        Rule(through.id, stopped.id, WHY_THROUGH_FIRST)
        for through, through_cuts in grooves
        for stopped, stopped_cuts in grooves
        if not _at_stops(through_cuts)
        and _at_stops(stopped_cuts)
        and through.together is not None
        and through.together == stopped.together
        and through_cuts[0].site.part.measure is None
    )


def _at_stops(cuts: tuple[Cut, ...]) -> bool:
    return any(cut.hold is not None and cut.hold.at_stop is not None for cut in cuts)
