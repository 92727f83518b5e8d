"""The way in (M19): what goes through the door and round the corner, and what must stay apart."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.passing import longest_round
from dryfit.piece.declared import own_name
from dryfit.piece.declared.site import PlaceWords, WayIn
from dryfit.placing.loads import Load, carried, last_glue_up, left_apart, titled
from dryfit.placing.model import Model


def check_way_in(model: Model, place: PlaceWords) -> Iterator[Diagnostic]:
    """Yield each load that does not get in, by the ways in one after the other.

    A load is taken for the box round it: legs and open frames may be threaded through where that
    box is not.  Findings: way-too-narrow, goes-in-apart.
    """
    if not place.ways:
        return
    loads = carried(model)
    for load in loads:
        stuck = [way for way, how in zip(place.ways, load.ways, strict=True) if how is None]
        if stuck:
            yield _stuck(model, place, load, stuck[0])
    if len(loads) > 1 and all(load.goes for load in loads):
        yield _apart(place, loads)


def _stuck(model: Model, place: PlaceWords, load: Load, way: WayIn) -> Diagnostic:
    shown = model.display.with_unit
    wide, deep, high = load.size
    return finding(
        "M19",
        "way-too-narrow",
        Severity.WARNING,
        f"{load.title}, {shown(wide)} x {shown(deep)} x {shown(high)}, does not go through the way "
        f"in: {_why(model, load, way)}",
        way.span,
        figures={"width": way.width, "height": way.height, "turn": way.turn or Fraction(0)},
        remedy=_remedy(model, place, load),
    )


def _why(model: Model, load: Load, way: WayIn) -> str:
    shown = model.display.with_unit
    small, middle, long = sorted(load.size)
    if small > min(way.width, way.height) or middle > max(way.width, way.height):
        return (
            f"its smallest side, {shown(small)} x {shown(middle)}, is larger than the opening of "
            f"{shown(way.width)} x {shown(way.height)}"
        )
    if way.turn is None:
        return f"the opening is {shown(way.width)} x {shown(way.height)}"
    # The longest that goes round, lying on the side that leaves the least across the passage.
    best = longest_round(small, way.width, way.turn)
    return (
        f"it is {shown(long)} long, and what is {shown(small)} thick goes round the corner, from "
        f"{shown(way.width)} into {shown(way.turn)}, up to {shown(best)}"
    )


def _remedy(model: Model, place: PlaceWords, load: Load) -> str:
    pieces = left_apart(load.copies, model, place)
    glue_up = last_glue_up(load.copies, model)
    if not pieces or glue_up is None:
        return "make it smaller, or find another way in: nothing that it is glued from gets through"
    names = Counter(titled(piece, model) for piece in pieces)
    listed = ", ".join(f"{count} x {name}" if count > 1 else name for name, count in names.items())
    kinds = {joint.kind for joint in model.joints if joint.id in glue_up.joints}
    stage = own_name(glue_up.stage)
    joints = " and ".join(sorted(kinds)) or "joints"
    return (
        f"{listed} get in one by one: make the {joints} of `{stage}` knock-down (write "
        "`knock-down` or `bolted` on their line), or glue it up there: `built in place`"
    )


def _apart(place: PlaceWords, loads: tuple[Load, ...]) -> Diagnostic:
    listed = ", ".join(
        f"{load.count} x {load.title}" if load.count > 1 else load.title for load in loads
    )
    site = "; what was left apart is glued there" if place.built is not None else ""
    return finding(
        "M19",
        "goes-in-apart",
        Severity.NOTICE,
        f"the piece goes in as {listed}{site}",
        place.ways[0].span,
        figures={},
        remedy="the booklet says how each is carried",
    )
