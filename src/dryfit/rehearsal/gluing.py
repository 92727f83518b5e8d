"""Dry fits and glue-ups: everything is there, has been tried, is free, and goes together."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.geometry.frame import LENGTH, THICKNESS, WIDTH
from dryfit.plan.operation import Operation
from dryfit.rehearsal.blank import ZERO, Blank
from dryfit.rehearsal.entering import locked
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.leaning import driven_apart
from dryfit.rehearsal.state import Place, State
from dryfit.rehearsal.together import put_together


def subject_of(operation: Operation) -> str:
    """Return what an operation is done to: the words of its id before the first stroke."""
    return operation.id.partition(" / ")[0]


def try_dry(state: State, operation: Operation, place: Place) -> None:
    """Put an assembly, or the staves of a panel, together without glue."""
    subject = subject_of(operation)
    state.tried.add(subject)
    names = state.members.get(subject)
    if names is None:
        for row in operation.work:
            for name in row.copies:
                if name not in state.blanks:
                    trouble = Trouble(Reason.ORDER, "it is not there yet", "the stave, jointed")
                    state.tell(place, trouble, name)
        return
    for who, trouble in put_together(state, names):
        state.tell(place, trouble, who)


def glue(state: State, operation: Operation, place: Place) -> None:
    """Glue an assembly of copies and earlier assemblies, or a panel of staves."""
    subject = subject_of(operation)
    if subject in state.closed:
        state.tell(place, Trouble(Reason.COUNT, "it is glued again", "one glue-up"), subject)
        return
    state.closed.add(subject)
    tried = subject in state.tried or _part_tried(state, subject)
    if not tried:
        needed = f"a dry fit of {subject} before"
        state.tell(place, Trouble(Reason.ORDER, "it is glued without a dry fit", needed), subject)
    names = state.members.get(subject)
    if names is None:
        _panel(state, operation, place)
        return
    for trouble in _not_free(state, subject):
        state.tell(place, trouble, subject)
    for who, trouble in put_together(state, names):
        state.tell(place, trouble, who)
    of = next(each.of for each in state.goal.assemblies if each.name == subject)
    for who, trouble in driven_apart(operation, state.goal):
        state.tell(place, trouble, who)
    stuck = locked(state, of)
    if stuck:
        trouble = Trouble(
            Reason.FIT,
            f"{', '.join(stuck)} cannot be brought together along straight lines",
            "a way in for every part",
        )
        state.tell(place, trouble, subject)
    for name in names:
        state.glued[name] = subject


def _part_tried(state: State, panel: str) -> bool:
    # The panels of several copies may be tried in one go, under the name of the part.
    part = state.part_of.get(panel)
    return part is not None and part.name in state.tried


def _not_free(state: State, subject: str) -> Iterator[Trouble]:
    assembly = next(each for each in state.goal.assemblies if each.name == subject)
    inner = {name for name in assembly.of if name in state.members}
    for name in inner - state.closed:
        yield Trouble(Reason.ORDER, f"{name} is not glued yet", f"the glue-up of {name} before")
    for name in assembly.of:
        home = state.glued.get(name)
        if name not in inner and home is not None:
            yield Trouble(Reason.ORDER, f"{name} is glued into {home} already", f"{name} free")


def _panel(state: State, operation: Operation, place: Place) -> None:
    subject = subject_of(operation)
    names = operation.glue_up.parts if operation.glue_up else ()
    staves = [state.blanks[name] for name in names if name in state.blanks]
    part = state.part_of.get(subject)
    if part is None or not part.staves:
        trouble = Trouble(Reason.COUNT, "the piece has no such glue-up", "a glue-up of the notes")
        state.tell(place, trouble, subject)
        return
    if len(staves) != part.staves or len(set(names)) != len(names):
        needed = f"{part.staves} staves, all jointed"
        message = f"{len(staves)} staves are there"
        state.tell(place, Trouble(Reason.COUNT, message, needed), subject)
    for name, stave in zip(names, staves, strict=False):
        if not {"F", "B", "E", "E2"} <= stave.true:
            needed = "both faces planed and both edges jointed"
            trouble = Trouble(Reason.ORDER, f"{name} is not jointed all round", needed)
            state.tell(place, trouble, subject)
    if not staves:
        return
    wide = sum((stave.sizes[WIDTH] for stave in staves), Fraction(ZERO))
    long = min(stave.sizes[LENGTH] for stave in staves)
    thick = min(stave.sizes[THICKNESS] for stave in staves)
    known = [all(stave.known[direction] for stave in staves) for direction in range(3)]
    final = state.final(subject) or (long, wide, thick)
    sizes = [
        size if sure else last
        for size, sure, last in zip((long, wide, thick), known, final, strict=True)
    ]
    state.blanks[subject] = Blank(part.name, (sizes[0], sizes[1], sizes[2]), known=known)
    for name in names:
        state.blanks.pop(name, None)
