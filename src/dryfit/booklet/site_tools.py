"""What to bring to the site: tools by what is done there, and what is fitted there."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dryfit.booklet.bench import Bench
from dryfit.piece.declared import own_name
from dryfit.piece.declared.site import PlaceWords
from dryfit.placing.hanging import wall_load
from dryfit.placing.loads import Load
from dryfit.placing.model import Hardware

_FASTEN = ("screw", "bolt", "clip", "plate", "pin", "hinge")


_HOLDERS = ("bracket", "strap", "anchor", "angle")


def bring(place: PlaceWords, loads: tuple[Load, ...], bench: Bench) -> tuple[str, ...]:
    """Return a packing list: the loads, what fastens them, and the tools; a tick for each."""
    return tuple(dict.fromkeys(_all(place, loads, bench)))


def _all(place: PlaceWords, loads: tuple[Load, ...], bench: Bench) -> Iterator[str]:
    for load in loads:
        yield f"{load.count} × {load.title}" if load.count > 1 else load.title
    for part in bench.model.parts:
        if part.made:
            yield f"{len(part.copies)} {part.written.lower()}, in a bag"
    yield from _fastenings(loads, bench)
    yield "blankets and straps"
    yield "tape measure, level, square, pencil"
    yield "screwdrivers or a drill driver with its bits"
    if place.room is not None:
        yield "wedges and packing"
    if place.scribes:
        yield "compass, jigsaw or hand saw, block plane"
    if place.wall is not None:
        bought = " ".join(thing.name for thing in bench.model.bought)
        if not place.wall.hangs and not any(word in bought for word in _HOLDERS):
            yield "a bracket or a strap for its top"
        fixings = f"{wall_load(bench.model).fixings} fixings" if place.wall.hangs else "fixings"
        yield f"drill, {fixings} for the wall, and a detector for studs, pipes and cables"
    if place.built is not None:
        yield "clamps, glue, scrap blocks, damp rags"
    yield "finish and fine paper for scratches, a vacuum cleaner"


def _fastenings(loads: tuple[Load, ...], bench: Bench) -> Iterator[str]:
    """Yield what fastens the loads to one another, and what was bought; glue only where it must."""
    bought = {thing.written for thing in bench.model.bought}
    for thing in bench.model.bought:
        purpose = f", for {thing.purpose}" if thing.purpose else ""
        yield f"{thing.count} {thing.written}{purpose}"
    for row in bench.model.hardware:
        fastens = any(word in row.item for word in _FASTEN)
        if len(loads) > 1 and fastens and row.item not in bought and _across(row, loads, bench):
            yield f"{row.count} {row.item} {row.size}, {row.purpose}"


def _across(row: Hardware, loads: tuple[Load, ...], bench: Bench) -> bool:
    """Return whether a row of the list may fasten loads to one another.

    It names the parts that it holds: where both are of one load, it was driven in the shop.
    """
    load_of: dict[str, int] = {}
    for number, load in enumerate(loads):
        for part in {bench.model.part_of(name).name: 0 for name in load.copies}:
            written = bench.model.part(part).written
            for name in (part, written):
                load_of[own_name(name).lower()] = number
    named: list[int] = []
    purpose = row.purpose.lower()
    for name in sorted(load_of, key=lambda each: (-len(each), each)):
        purpose, found = re.subn(rf"\b{re.escape(name)}\b", "", purpose)
        named += [load_of[name]] * found
    return len(named) < 2 or len(set(named)) > 1
