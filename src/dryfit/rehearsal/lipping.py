"""Lips: a core of a sheet grows where strips or banding go on, which are then trimmed flush.

TRADE A10: the core is sawn less its lips; nothing is measured from an edge that is not lipped yet.
While a lip is on and not trimmed it stands proud, and nothing is cut, tried or glued.
"""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.geometry.frame import LENGTH, SURFACES, THICKNESS, WIDTH
from dryfit.plan.operation import Operation, Work
from dryfit.rehearsal.at_machines.milling import DEEDS
from dryfit.rehearsal.blank import Blank
from dryfit.rehearsal.fault import Fault, Reason, Trouble
from dryfit.rehearsal.goal import Ranges, WantedLip, WantedStrip
from dryfit.rehearsal.state import Place, State
from dryfit.shop.shop import Shop

BAND, TRIM = "band", "trim lip"
_ON_THE_CORE = (DEEDS - {"plane to fit"}) | {"rough length", "resaw", BAND, TRIM}
_AROUND = frozenset({"E", "E2", "R", "R2"})
_DIRECTIONS = {"ends": LENGTH, "edges": WIDTH}


def is_lipping(operation: Operation) -> bool:
    """Return whether a glue-up puts strips on a part; only its id tells."""
    return operation.id.split(" / ")[1:2] == ["lip"]


def tape_is_enough(strip: WantedStrip, shop: Shop) -> bool:
    """Return whether a strip is so thin that tape presses it on without clamps."""
    return strip.sizes[THICKNESS] <= shop.clamping["lip_taped"]


def lips_first(state: State, operation: Operation, work: Work, place: Place) -> None:
    """Tell of work on copies that still want a lip, or the trim of one."""
    if operation.kind in _ON_THE_CORE or is_lipping(operation):
        return
    for name in work.copies if state.bare else ():
        trouble = _unlipped(state, name)
        if trouble is not None:
            state.tell(place, trouble, name)


def _unlipped(state: State, name: str) -> Trouble | None:
    bare, proud = state.bare.get(name), state.proud.get(name)
    if bare:
        message = f"{_surfaces(bare)} is not lipped yet"
        return Trouble(Reason.ORDER, message, "all its lips, before anything else is done to it")
    if proud:
        message = f"its lip at {' and '.join(sorted(proud))} still stands proud"
        return Trouble(Reason.ORDER, message, "the lip trimmed before")
    return None


def _surfaces(lips: tuple[WantedLip, ...]) -> str:
    return " and ".join(lip.surface for lip in lips)


def glued_on(state: State, operation: Operation, place: Place) -> None:
    """Glue strips on the copies of a part; each strip is used up."""
    names = [name for work in operation.work for name in work.copies]
    hosts = [name for name in names if name not in state.strips]
    used: set[str] = set()
    for name in names:
        if name not in state.strips:
            continue
        copy, surface = state.strips[name].on
        if copy not in hosts:
            needed = f"the strip of one of {', '.join(hosts) or 'no parts'}"
            state.tell(place, Trouble(Reason.COUNT, f"it belongs on {copy}", needed), name)
            continue
        used.add(copy)
        for trouble in _with_strip(state, name, copy, surface):
            state.tell(place, trouble, name)
    for host in hosts:
        if host not in used:
            trouble = Trouble(Reason.COUNT, "no strip is glued on it", "a strip for each lip")
            state.tell(place, trouble, host)


def _with_strip(state: State, name: str, copy: str, surface: str) -> Iterator[Trouble]:
    strip, core = state.blanks.pop(name, None), state.blanks.get(copy)
    lip = next((lip for lip in state.bare.get(copy, ()) if lip.surface == surface), None)
    if core is None:
        yield Trouble(Reason.ORDER, f"{copy} is not there yet", "the core, sawn to its size")
        return
    if lip is None or lip.banded:
        yield Trouble(Reason.COUNT, f"{copy} takes no strip at {surface}", "one lip for each edge")
        return
    if strip is None:
        yield Trouble(Reason.ORDER, "it is not made yet, or used up", "the strip, made before")
    else:
        yield from _fits(strip, core, lip)
    yield from _grown(state, copy, core, lip)


def _fits(strip: Blank, core: Blank, lip: WantedLip) -> Iterator[Trouble]:
    along = WIDTH if SURFACES[lip.surface][0] == LENGTH else LENGTH
    rows = (
        ("long", strip.sizes[LENGTH], core.sizes[along]),
        ("wide", strip.sizes[WIDTH], core.sizes[THICKNESS]),
    )
    for word, has, needs in rows:
        if has < needs:
            message = f"the strip is {float(has):g} {word}, and what it covers {float(needs):g}"
            yield Trouble(Reason.SIZE, message, f"a strip {float(needs):g} {word} or more")
    thick = strip.sizes[THICKNESS]
    if strip.known[THICKNESS] and thick != lip.thickness:
        message = f"the strip is {float(thick):g} thick and should be {float(lip.thickness):g}"
        yield Trouble(Reason.SIZE, message, f"a strip planed to {float(lip.thickness):g}")


def banded(state: State, operation: Operation, place: Place) -> None:
    """Iron banding on all banded edges, or on those of the direction that the id tells."""
    direction = _DIRECTIONS.get(operation.id.rpartition(" / ")[2])
    for work in operation.work:
        for name in work.copies:
            lips = [
                lip
                for lip in state.bare.get(name, ())
                if lip.banded and direction in {None, SURFACES[lip.surface][0]}
            ]
            core = state.blanks.get(name)
            if not lips or core is None:
                needed = "a core with an edge to be banded"
                state.tell(place, Trouble(Reason.COUNT, "nothing of it is banded", needed), name)
                continue
            for lip in lips:
                for trouble in _grown(state, name, core, lip):
                    state.tell(place, trouble, name)


def _grown(state: State, name: str, core: Blank, lip: WantedLip) -> Iterator[Trouble]:
    """Put a lip on a core, yielding what is wrong with that."""
    proud = state.proud.setdefault(name, set())
    direction, side = SURFACES[lip.surface]
    if not core.true >= _AROUND - proud:
        yield Trouble(Reason.ORDER, "its core is not sawn to size yet", "width and length before")
    across = {surface for surface in proud if SURFACES[surface][0] != direction}
    if across:
        message = f"the lip at {' and '.join(sorted(across))} stands past {lip.surface} still"
        yield Trouble(Reason.ORDER, message, "that lip trimmed before")
    final = state.final(name)
    if final is not None and core.known[direction] and core.sizes[direction] != final[direction]:
        now, wanted = float(core.sizes[direction]), float(final[direction])
        word = ("long", "wide")[direction]
        message = f"its core is {now:g} {word} when {lip.surface} is lipped"
        yield Trouble(Reason.SIZE, message, f"{wanted:g}: its size less the lips that are to come")
    if name in state.glued:
        yield Trouble(Reason.ORDER, "it is glued in already", "its lips before any glue-up")
    core.resize(direction, core.sizes[direction] + lip.thickness)
    if side == 0:
        core.cuts = [_moved(cut, direction, lip) for cut in core.cuts]
    core.true.discard(lip.surface)
    proud.add(lip.surface)
    state.bare[name] = tuple(each for each in state.bare.get(name, ()) if each is not lip)


def _moved(cut: Ranges, direction: int, lip: WantedLip) -> Ranges:
    rows = list(cut)
    low, high = rows[direction]
    rows[direction] = (low + lip.thickness, high + lip.thickness)
    return rows[0], rows[1], rows[2]


def trimmed(state: State, name: str) -> Iterator[Trouble]:
    """Trim all lips of a copy that stand proud: their surfaces are true from then on."""
    proud, core = state.proud.get(name), state.blanks.get(name)
    if not proud or core is None:
        yield Trouble(Reason.ORDER, "no lip of it stands proud", "the lip glued on before")
    else:
        core.true |= proud
        proud.clear()


def never_lipped(state: State) -> Iterator[Fault]:
    """Yield lips that no step has put on, or that none has trimmed."""
    for name, lips in state.bare.items():
        if lips and name in state.blanks:
            yield Fault(Reason.COUNT, f"{name}: {_surfaces(lips)} is never lipped", "every lip")
    for name, proud in state.proud.items():
        if proud:
            where = " and ".join(sorted(proud))
            yield Fault(Reason.SIZE, f"{name}: its lip at {where} is never trimmed", "flush lips")
