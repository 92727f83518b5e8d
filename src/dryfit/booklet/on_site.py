"""What is done on site (M18 to M20): in which order and why, and what to bring for it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from dryfit.booklet.bench import Bench
from dryfit.booklet.carrying import LoadRow, load_rows
from dryfit.booklet.measuring_sheet import SheetRow, measuring_sheet
from dryfit.booklet.owners_care import owners_care
from dryfit.booklet.put_together import put_together
from dryfit.booklet.site_tools import bring
from dryfit.booklet.text import Piece, Text, listed
from dryfit.booklet.wording import subject
from dryfit.piece.declared.site import OnWall, PlaceWords, Scribe
from dryfit.placing.hanging import UNTOLD, hangs_by, wall_load
from dryfit.placing.loads import Load, carried, copies_of
from dryfit.placing.model import Assembly
from dryfit.placing.scribing import scribed_copies
from dryfit.wood.weight import weight_words

_STUDS_APART = 1200
"""What is wider than twice the usual 600 mm meets two studs wherever it hangs (common practice)."""


@dataclass(frozen=True, slots=True)
class SiteView:
    """The sheet to fill, the loads, the steps on site in order, and what to bring."""

    sheet: tuple[SheetRow, ...]
    loads: tuple[LoadRow, ...]
    ways: tuple[Text, ...]
    steps: tuple[Text, ...]
    bring: tuple[str, ...]
    care: tuple[str, ...]


def site_view(place: PlaceWords, bench: Bench) -> SiteView:
    """Return what the booklet tells about the place and the way there."""
    loads = carried(bench.model)
    return SiteView(
        measuring_sheet(place, bench),
        load_rows(loads, bench),
        tuple(_way(n, place, bench) for n in range(len(place.ways))),
        tuple(_steps(place, loads, bench)),
        bring(place, loads, bench),
        owners_care(bench.model),
    )


def _way(number: int, place: PlaceWords, bench: Bench) -> Text:
    way, say = place.ways[number], bench.say
    turn: Text = (", then a turn into ", say.size_with_unit(way.turn)) if way.turn else ()
    return (say.size(way.width), " × ", say.size_with_unit(way.height), *turn)


def _steps(place: PlaceWords, loads: tuple[Load, ...], bench: Bench) -> Iterator[Text]:
    room = place.room
    if room is not None:
        again = "Measure the place once more, wall to wall at floor, middle and top"
        yield (f"{again}, before anything is unpacked.",)
    apart = _left_apart(loads, bench)
    for glue_up in apart:
        step = _step_of(glue_up.name, bench)
        where = f", step {step}," if step is not None else ""
        here = f"Glue up the {glue_up.name} here: leave that glue-up{where} for the site"
        yield (f"{here}, and bring clamps and glue. Dry-fit it in the shop all the same.",)
    glued = {name for glue_up in apart for name in copies_of(glue_up, bench.model)}
    others = (loads[0], *(load for load in loads[1:] if not glued.issuperset(load.copies)))
    yield from put_together(others, bench, loose=False)
    if room is not None and room.out:
        wedged = "Find the highest place of the floor under it, and wedge it level from there"
        first = ". Level first: what is scribed before that is cut wrong."
        most = bench.say.size_with_unit(room.out)
        yield (f"{wedged}, across and from front to back, by up to ", most, first)
    elif room is not None:
        yield ("Wedge it level, across and from front to back.",)
    for scribe in place.scribes:
        yield _scribe(scribe, bench)
    if place.wall is not None:
        yield from _to_the_wall(place.wall, bench)
    yield from put_together(others, bench, loose=True)


def _left_apart(loads: tuple[Load, ...], bench: Bench) -> tuple[Assembly, ...]:
    """Return the glue-ups that wait for the site: those that no single load holds whole."""
    holds = [set(load.copies) for load in loads]
    titles = {load.title for load in loads}
    return tuple(
        assembly
        for assembly in bench.model.assemblies
        if assembly.stage not in titles
        and not any(copies_of(assembly, bench.model) <= held for held in holds)
    )


def _step_of(glue_up: str, bench: Bench) -> int | None:
    for step in bench.plan.steps:
        if any(op.glue_up is not None and subject(op) == glue_up for op in step.operations):
            return step.number
    return None


def _scribe(scribe: Scribe, bench: Bench) -> Text:
    parts = listed(f"the {copy.name}" for copy in scribed_copies(bench.model, scribe))
    places = {"bottom": "floor", "top": "ceiling", "back": "wall behind"}
    against = places.get(scribe.side, f"{scribe.side} wall")
    compass = "set a compass to the widest gap and draw along with its pencil on the wood"
    cut = "Cut to the line, leaning a little under, plane the last of it and try it. Up to "
    most = bench.say.size_with_unit(scribe.amount)
    return (f"Scribe {parts} to the {against}: {compass}. {cut}", most, " may go.")


def _to_the_wall(wall: OnWall, bench: Bench) -> Iterator[Text]:
    behind = {
        "stud": "Find the studs and mark their middles",
        "masonry": "Sound the wall for firm brick or stone",
        "board": "Find what stands behind the boards",
    }.get(wall.wall or "", "Find out what the wall is made of")
    yield (f"{behind}; look for pipes and cables before you drill.",)
    if wall.wall == "stud" and bench.model.overall[0] < _STUDS_APART:
        apart = "16 or 24 in" if bench.model.display.unit == "in" else "400 or 600 mm"
        rail = "where only one lies behind it, screw a rail across two of them first"
        yield (f"Studs often stand {apart} apart: {rail}.",)
    if not wall.hangs:
        held = "Fix it to the wall near its top with a bracket or a strap, into what carries"
        yield (f"{held}, so that it cannot tip.",)
        return
    load, unit = wall_load(bench.model), bench.model.display.unit
    line: list[Piece] = ["Draw a level line"]
    if wall.up is not None:
        line += [": the lower edge hangs ", bench.say.size_with_unit(wall.up), " above the floor"]
    fixings = f"Take {load.fixings} fixings, each good for {weight_words(load.each, unit)} there"
    total = weight_words(load.total, unit)
    if load.guessed:
        total += f", its wood taken as heavy as {UNTOLD}, which no table tells"
    yield (*line, f". {fixings}: filled it weighs about {total}.")
    if any("cleat" in name for name in hangs_by(bench.model)):
        # Common practice: so the piece's half drops behind that of the wall, and cannot slip off.
        each = "each with its longer face away from what it is screwed to"
        yield (f"Screw the cleat's half to the wall on the line; both are ripped at 45°, {each}.",)
    yield ("Hang it, press it down and home, check with the level, and fasten it.",)
