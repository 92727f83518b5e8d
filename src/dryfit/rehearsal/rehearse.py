"""Plays a whole plan, step by step, and looks at what came of it."""

from __future__ import annotations

from dryfit.geometry.frame import LENGTH
from dryfit.plan.operation import Operation, Work
from dryfit.plan.plan import Plan, Step
from dryfit.rehearsal import leaning, lipping
from dryfit.rehearsal.at_machines import milling, waney
from dryfit.rehearsal.at_machines.cutters import toolbox
from dryfit.rehearsal.at_machines.cutting import cut
from dryfit.rehearsal.at_machines.limits import Job, beyond
from dryfit.rehearsal.at_machines.lying import at_its_machine
from dryfit.rehearsal.at_machines.reading import misread
from dryfit.rehearsal.at_machines.shaping import AT_BENCH
from dryfit.rehearsal.at_machines.standing import unmet
from dryfit.rehearsal.at_machines.straight_line import sawn_straight
from dryfit.rehearsal.blank import Blank
from dryfit.rehearsal.deeds import deeds_of
from dryfit.rehearsal.ending import at_the_end
from dryfit.rehearsal.fault import Fault, Reason, Trouble
from dryfit.rehearsal.fitting import fittings, repeated
from dryfit.rehearsal.gluing import glue, try_dry
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.horns import sawn_off
from dryfit.rehearsal.listing import listing, rows
from dryfit.rehearsal.one_setting import one_setting
from dryfit.rehearsal.sanding import sanding
from dryfit.rehearsal.sawing.boards import boards_of
from dryfit.rehearsal.sawing.closing import boards_closed
from dryfit.rehearsal.sawing.cuts import before_freed, saw, sawn_with, straightened, whole_boards
from dryfit.rehearsal.sawing.planing import planed
from dryfit.rehearsal.sawing.resawing import resaw
from dryfit.rehearsal.state import UNKNOWN, Place, State, begin, sizes_of
from dryfit.rehearsal.surfaces import surfaces
from dryfit.rehearsal.times import times
from dryfit.rehearsal.too_early import too_early
from dryfit.rehearsal.zones import open_zones
from dryfit.shop.shop import Shop

_BY_HAND = {**AT_BENCH, lipping.TRIM: lipping.trimmed}
"""What is done to one copy after another at the bench, by kinds of operations."""
TRUE = ("F", "B", "E", "E2", "R", "R2")


def rehearse(plan: Plan, goal: Goal, shop: Shop) -> tuple[Fault, ...]:
    """Return everything that does not work, in the order of the steps; nothing for a sound plan."""
    tools, foreign = toolbox(plan, shop)
    state = begin(goal, shop, tools, boards_of(plan))
    state.faults += foreign
    state.faults += whole_boards(state)
    for step in plan.steps:
        state.faults += state.standing.change(step)
        for operation in step.operations:
            _play(state, step, operation)
    at_the_end(state)
    state.faults += boards_closed(state)
    state.faults += one_setting(state)
    deeds = deeds_of(plan)
    found = (
        *state.faults,
        *repeated(deeds),
        *listing(deeds, goal),
        *rows(deeds, goal),
        *too_early(deeds, goal, state.boards.names),
        *sanding(deeds, goal, shop),
        *surfaces(deeds, goal, shop),
        *fittings(deeds, goal),
        *times(plan, goal, shop),
    )
    return tuple(sorted(found, key=lambda fault: (fault.step is None, fault.step or 0)))


def _play(state: State, step: Step, operation: Operation) -> None:
    place = Place(step.number, operation.id)
    axes = state.standing.at(step.station)
    if operation.station != step.station:
        message = f"it belongs to the {operation.station}, not to the {step.station}"
        state.tell(place, Trouble(Reason.MACHINE, message, "its own machine"), operation.id)
    for axis, stands, needed in unmet(operation, axes):
        message = f"the {axis} stands at {stands}, not at {needed}"
        state.tell(place, Trouble(Reason.SETTING, message, f"{axis} at {needed}"), operation.id)
    for trouble in (*at_its_machine(operation), *misread(operation, axes, state.tools)):
        state.tell(place, trouble, operation.id)
    saw(state, operation, place)
    if operation.kind == "straight edge":
        for piece in straightened(state.boards, sawn_with(state, operation)):
            for trouble in sawn_straight(state, operation, axes, piece.sizes):
                state.tell(place, trouble, f"board {piece.board.label}")
    if operation.kind == "dry fit":
        try_dry(state, operation, place)
    elif operation.kind == "glue up" and lipping.is_lipping(operation):
        lipping.glued_on(state, operation, place)
    elif operation.kind == "glue up":
        glue(state, operation, place)
    elif operation.kind == lipping.BAND:
        lipping.banded(state, operation, place)
    for work in operation.work:
        lipping.lips_first(state, operation, work, place)
        _work(state, operation, work, place)


def _work(state: State, operation: Operation, work: Work, place: Place) -> None:
    if operation.kind == "rough length":
        _from_the_board(state, operation, work, place)
    elif operation.kind == "resaw":
        resaw(state, operation, work, place)
    elif operation.kind == "lay out":
        state.laid_out.update(work.copies)
    elif operation.kind in milling.DEEDS:
        _mill(state, operation, work, place)
    elif operation.kind == "horns":
        _horns_off(state, work, place)
    elif operation.kind in _BY_HAND:
        for name in work.copies:
            for trouble in _BY_HAND[operation.kind](state, name):
                state.tell(place, trouble, name)
    elif operation.kind == "feet":
        leaning.levelled(state, work, place)
    elif operation.kind == "make":
        _make(state, work, place)
    elif work.features:
        cut(state, operation, work, place)


def _from_the_board(state: State, operation: Operation, work: Work, place: Place) -> None:
    for name in work.copies:
        if name in state.boards.names:
            continue
        if name in state.blanks:
            state.tell(place, Trouble(Reason.COUNT, "it is cut a second time", "one blank"), name)
        elif operation.rough is not None and not operation.board_cuts:
            part = state.part_of.get(name)
            bark = part.waney if part is not None else frozenset[str]()
            state.blanks[name] = Blank(work.part, operation.rough, waney=bark)


def _mill(state: State, operation: Operation, work: Work, place: Place) -> None:
    axes = state.standing.at(operation.station)
    for name in work.copies:
        if name in state.boards.names and before_freed(state.boards, operation.kind, name):
            continue
        final = state.final(name)
        blank = state.blanks.get(name) or _sheet(state, name)
        if blank is None:
            state.tell(place, Trouble(Reason.ORDER, "there is no blank of it yet", "a blank"), name)
            continue
        if name in state.glued:
            trouble = Trouble(Reason.ORDER, "it is glued in already", "milling before glue")
            state.tell(place, trouble, name)
        station = state.shop.stations.get(operation.station)
        if station is not None:
            for trouble in beyond(Job(operation, station, axes, blank.sizes, state.tools)):
                state.tell(place, trouble, name)
        sawn = sawn_straight(state, operation, axes, blank.sizes)
        for trouble in (*planed(state, operation, axes, blank), *sawn):
            state.tell(place, trouble, name)
        for trouble in milling.mill(operation, work, axes, blank, final, state.tools):
            state.tell(place, trouble, name)
        for trouble in waney.kept(operation, blank, final):
            state.tell(place, trouble, name)
        if name in state.copies and state.copies[name].lean is not None:
            for trouble in leaning.stood_up(state, name, operation):
                state.tell(place, trouble, name)


def _horns_off(state: State, work: Work, place: Place) -> None:
    whole = {copy.name: (part, copy) for part in state.goal.parts for copy in part.copies}
    finished = open_zones(state.goal)
    for name in work.copies:
        blank = state.blanks.get(name)
        if name not in whole or blank is None:
            state.tell(place, UNKNOWN, name)
            continue
        part, copy = whole[name]
        long = sizes_of(copy)[LENGTH]
        trouble = sawn_off(blank, part.horns, long, glued=name in state.glued)
        if trouble is not None:
            state.tell(place, trouble, name)
            continue
        state.copies[name], state.part_of[name] = copy, part
        state.zones[name] = finished[name]


def _sheet(state: State, name: str) -> Blank | None:
    """Return a blank from sheet goods, whose faces and factory edges are true as they come."""
    part, final = state.part_of.get(name), state.final(name)
    if part is None or final is None or part.stock != "sheet":
        return None
    sawn = {each for names in state.boards.coming.values() for each in names}
    laid = not sawn.isdisjoint(copy.name for copy in part.copies)
    if name in state.boards.names or (laid and name not in state.boards.lacking):
        # All copies of a part come out of the sheets that are laid out, or lack their wood.
        return None
    # Where no sheet is laid out the piece that is cut off it is taken to be a little larger.
    long, wide, thick = final
    blank = Blank(part.name, (long + 10, wide + 10, thick), {"F", "B", "E", "R"})
    state.blanks[name] = blank
    return blank


def _make(state: State, work: Work, place: Place) -> None:
    for name in work.copies:
        final, part = state.final(name), state.part_of.get(name)
        if final is None or part is None:
            state.tell(place, UNKNOWN, name)
        elif name in state.blanks:
            state.tell(place, Trouble(Reason.COUNT, "it is made a second time", "one"), name)
        else:
            blank = Blank(part.name, final, set(TRUE))
            state.blanks[name] = blank
            for mark in state.marks(name, work.features):
                blank.take(mark.ranges, place.step)
                state.cut.add((name, mark.id))
