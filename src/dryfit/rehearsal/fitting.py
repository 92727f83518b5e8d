"""What is not glued is fitted, once, and in the end every joint is closed."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from dryfit.geometry.box import Box, spanning
from dryfit.rehearsal.deeds import Deed, fault_of
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.members import members_of
from dryfit.rehearsal.running import RUNNING


def fittings(deeds: Sequence[Deed], goal: Goal) -> Iterator[Fault]:
    """Yield what is fitted too early, twice or never (TRADE C4, D10)."""
    fits = [deed for deed in deeds if deed.operation.kind == "fit"]
    coats = [deed for deed in deeds if deed.operation.kind == "coat"]
    for deed in fits:
        late = [coat for coat in coats if coat.copies & deed.copies and coat.at > deed.at]
        if late:
            yield fault_of(
                deed,
                Reason.ORDER,
                "it is fitted before its last coat",
                f"{late[-1].operation.id} before",
            )
        yield from _before_its_host(deed, deeds, goal)
        yield from _before_it_runs(deed, fits, goal)
    fitted = Counter(name for deed in fits for name in deed.copies)
    for name, count in fitted.items():
        if count > 1:
            yield Fault(Reason.COUNT, f"{name} is fitted {count} times", "each part once")
    by_line = {deed.subject for deed in fits}
    for name in goal.fitted:
        if name not in fitted and name not in by_line:
            yield Fault(Reason.COUNT, f"{name} is bought and never fitted", "its place")
    yield from _open(goal, set(fitted))


def _before_its_host(deed: Deed, deeds: Sequence[Deed], goal: Goal) -> Iterator[Fault]:
    """Yield what is fitted on parts that are glued or coated afterwards."""
    ends = {(joint.guest, joint.host) for joint in goal.joints}
    hosts = {b for each in ends for a, b in (each, each[::-1]) if a in deed.copies}
    for later in deeds[deed.at + 1 :]:
        kind = later.operation.kind
        touched = later.copies
        if kind == "glue up":
            touched = frozenset(members_of(goal, later.subject))
        if kind in {"glue up", "coat"} and touched & hosts and not touched & deed.copies:
            yield fault_of(
                deed,
                Reason.ORDER,
                f"it is fitted before {later.operation.id}, on which it lies",
                f"{later.operation.id} before",
            )
            return


def _before_it_runs(deed: Deed, fits: Sequence[Deed], goal: Goal) -> Iterator[Fault]:
    """Yield a front that is screwed to a drawer before that runs in its opening (TRADE C5.5)."""
    hosts = {j.host for j in goal.joints if j.kind == "screws" and j.guest in deed.copies}
    run = {name for j in goal.joints if j.kind == RUNNING for name in (j.guest, j.host)}
    for later in fits:
        own = later.copies
        if later.at > deed.at and own & hosts and own & run and not own & deed.copies:
            yield fault_of(
                deed,
                Reason.ORDER,
                f"it is screwed to what runs only after {later.operation.id}",
                f"{later.operation.id} before",
            )
            return


Unit = frozenset[str]


def _open(goal: Goal, fitted: set[str]) -> Iterator[Fault]:
    """Yield joints between units that no fitting closes, and units inside others never put in.

    The unit that lies on the other is the one that is fitted, unless it is the base of the piece:
    a frame is laid on the posts that stand under it.  What does not stand on the floor is put in
    its place itself, as the battens under a lid.
    """
    units = _units(goal)
    # Of units alike in size, the one is the base that nobody moves: cleats go under a lone board.
    base = max(units, key=lambda unit: (len(unit), not unit & fitted), default=None)
    unit_of = {name: unit for unit in units for name in unit}
    told: set[tuple[Unit, Unit]] = set()
    joined: set[Unit] = set()
    for joint in goal.joints:
        guest, host = unit_of.get(joint.guest), unit_of.get(joint.host)
        if guest is None or host is None or guest is host:
            continue
        joined |= {guest, host}
        closed = guest & fitted or (guest is base and host & fitted)
        if not closed and (guest, host) not in told:
            told.add((guest, host))
            yield Fault(
                Reason.COUNT,
                f"{joint.guest} and {joint.host} are neither glued nor fitted together",
                "every joint closed",
            )
    boxes = {unit: _around(unit, goal) for unit in units}
    floor = min((box.low[2] for box in boxes.values()), default=0)
    for unit in units:
        inside = any(boxes[each].contains(boxes[unit]) for each in units if each is not unit)
        # A tray in its case has no joint with it.
        if inside and unit not in joined and not unit & fitted:
            yield Fault(Reason.COUNT, f"{', '.join(sorted(unit))}: never put in", "its place")
        elif (
            unit in joined and unit is not base and not unit & fitted and boxes[unit].low[2] > floor
        ):
            yield Fault(Reason.COUNT, f"{', '.join(sorted(unit))}: never fitted", "its place")


def _units(goal: Goal) -> list[Unit]:
    """Return what is carried as one: outermost assemblies, and parts that are in none.

    What is made from offcuts, as buttons are, comes with what it holds.
    """
    inner = {name for assembly in goal.assemblies for name in assembly.of}
    outer = [
        frozenset(members_of(goal, each.name)) for each in goal.assemblies if each.name not in inner
    ]
    glued = {name for unit in outer for name in unit}
    alone = [
        frozenset((copy.name,))
        for part in goal.parts
        if not part.made
        for copy in part.copies
        if copy.name not in glued
    ]
    return outer + alone


def _around(unit: Unit, goal: Goal) -> Box:
    return spanning(
        tuple(copy.box for part in goal.parts for copy in part.copies if copy.name in unit)
    )


def repeated(deeds: Sequence[Deed]) -> Iterator[Fault]:
    """Yield every operation that stands in the plan a second time."""
    seen: set[str] = set()
    for deed in deeds:
        if deed.operation.id in seen:
            yield fault_of(deed, Reason.COUNT, f"{deed.what} is done twice", "each deed once")
        seen.add(deed.operation.id)
