"""From rough board to true blank: each deed trues a surface or gives a blank one of its sizes.

TRADE A3: face, edge, thickness, width, length, each from what the one before has made true.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.geometry.frame import LENGTH, THICKNESS, WIDTH
from dryfit.plan.operation import Operation, Work
from dryfit.rehearsal.at_machines.cutters import Toolbox
from dryfit.rehearsal.at_machines.lying import lying
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.at_machines.sweeping import through
from dryfit.rehearsal.blank import Blank, Sizes
from dryfit.rehearsal.fault import Reason, Trouble

DEEDS = frozenset(
    {
        "bark",
        "rip",
        "face",
        "edge",
        "rough thickness",
        "thickness",
        "width",
        "length",
        "second edge",
        "flatten",
        "straight edge",
        "plane to fit",
        "strip face",
        "strip edge",
        "strip thickness",
    }
)
"""Kinds of operations that work a blank toward its sizes."""
STRIP = "strip "
"""Begins the kinds of deeds on what is resawn afterwards."""

_NEEDS = {
    "edge": "F",
    "rough thickness": "F",
    "thickness": "F",
    "width": "E",
    "second edge": "E",
    "length": "E",
    "straight edge": "F",
}
_NAMES = ("length", "width", "thickness")


def mill(
    operation: Operation, work: Work, axes: Axes, blank: Blank, final: Sizes | None, tools: Toolbox
) -> Iterator[Trouble]:
    """Work a blank by one deed, yielding what keeps it from coming out right.

    By hand, and where no axis stands at a size, it is worked to a line: to its `final` size.  A
    stave has none of its own, and keeps by hand what it has.
    """
    # A strip is trued as any blank is, but has no size of its own: it becomes leaves.
    kind = operation.kind.removeprefix(STRIP)
    if kind != operation.kind:
        final, blank.strip = None, True
    yield from lying(operation, work, blank)
    # By hand a board is planed to lines all round: each deed trues both of its sides.
    needed = _NEEDS.get(kind) if work.hold is not None else None
    if needed is not None and needed not in blank.true:
        yield Trouble(
            Reason.REFERENCE,
            f"{needed} is not true yet, from which the {_what(kind)} is worked",
            f"{needed} trued before",
        )
    if kind in _TO_A_LINE:
        yield from _TO_A_LINE[kind](operation, axes, blank, final)
    elif kind == "face":
        blank.true.add("F")
        _skimmed(operation, axes, blank, THICKNESS)
    elif kind in {"edge", "straight edge"}:
        blank.true.add("E")
        _skimmed(operation, axes, blank, WIDTH)
    elif kind in {"thickness", "flatten"}:
        blank.true |= {"F", "B"}
        size = _planed_to(operation, axes, final)
        yield from _to(blank, THICKNESS, size)
    elif kind == "width":
        blank.true |= {"E2"} if work.hold is not None else {"E", "E2"}
        yield from _sawn(operation, work, axes, blank, tools)
        yield from _to(blank, WIDTH, _sawn_to(operation, axes, "fence", final, WIDTH))
    elif kind == "second edge":
        blank.true.add("E2")
        taken = _at(axes, "depth") if operation.station == "jointer" else None
        if taken is not None and blank.known[WIDTH]:
            yield from _to(blank, WIDTH, blank.sizes[WIDTH] - taken)
        elif taken is None:
            yield from _to(blank, WIDTH, None if final is None else final[WIDTH])
    elif kind == "length":
        yield from _sawn(operation, work, axes, blank, tools)
        stop = "stop" if work.hold is not None and work.hold.at_stop is not None else ""
        yield from _to(blank, LENGTH, _sawn_to(operation, axes, stop, final, LENGTH))
        blank.true |= {"R", "R2"}


def _skimmed(operation: Operation, axes: Axes, blank: Blank, direction: int) -> None:
    """Take off what one pass over the jointer takes at least; to rough wood it takes more."""
    depth = _at(axes, "depth") if operation.station == "jointer" else None
    if depth is not None:
        blank.skimmed[direction] += depth


def _ripped(
    operation: Operation, axes: Axes, blank: Blank, final: Sizes | None
) -> Iterator[Trouble]:
    # A board wider than the band saw's fence can stand is ripped along a line.
    if all(setting.axis != "fence" for setting in operation.settings):
        return
    size = _at(axes, "fence")
    if size is not None and final is not None and size <= final[WIDTH]:
        needed = f"a rough width over {float(final[WIDTH]):g}"
        message = f"it is ripped to {float(size):g}, too narrow for {float(final[WIDTH]):g}"
        yield Trouble(Reason.SIZE, message, needed)
    if size is not None and size > blank.sizes[WIDTH]:
        message = f"it is {float(blank.sizes[WIDTH]):g} wide, less than the fence stands off"
        yield Trouble(Reason.SIZE, message, f"a blank over {float(size):g} wide")
    elif size is not None:
        blank.resize(WIDTH, size)


def _close(
    operation: Operation, axes: Axes, blank: Blank, _final: Sizes | None
) -> Iterator[Trouble]:
    """Plane a blank close to its thickness: it moves while it rests, so that B is not true yet."""
    blank.close = True
    yield from _to(blank, THICKNESS, _planed_to(operation, axes, None))


def _in_its_place(
    _operation: Operation, _axes: Axes, blank: Blank, final: Sizes | None
) -> Iterator[Trouble]:
    """Plane a blank in its opening, by the eye, to what its gaps leave of it."""
    for direction in (LENGTH, WIDTH):
        if final is not None and final[direction] < blank.sizes[direction]:
            yield from _to(blank, direction, final[direction])


_TO_A_LINE = {"rip": _ripped, "rough thickness": _close, "plane to fit": _in_its_place}
"""Deeds that stop at a line or at a gap: nothing is trued by them."""


def _what(kind: str) -> str:
    return {"edge": "edge", "thickness": "thickness"}.get(kind, kind)


def _planed_to(operation: Operation, axes: Axes, final: Sizes | None) -> Fraction | None:
    if operation.station == "planer":
        return _at(axes, "thickness")
    return None if final is None else final[THICKNESS]


def _sawn_to(
    operation: Operation, axes: Axes, axis: str, final: Sizes | None, direction: int
) -> Fraction | None:
    size = _at(axes, axis) if operation.station in {"table saw", "mitre saw"} else None
    return final[direction] if size is None and final is not None else size


def _sawn(
    operation: Operation, work: Work, axes: Axes, blank: Blank, tools: Toolbox
) -> Iterator[Trouble]:
    if operation.station == "table saw" and work.hold is not None and work.hold.down is not None:
        yield from parting(operation, axes, tools)
        trouble = through(axes, blank, work.hold.down, tools)
        if trouble is not None:
            yield trouble


def parting(operation: Operation, axes: Axes, tools: Toolbox) -> Iterator[Trouble]:
    """Yield where a saw is not set up to rip a blank, or to saw across it (TRADE 0.8)."""
    cutter, accessory = axes.get("cutter"), axes.get("accessory")
    mounted = tools.cutters.get(str(cutter.value)) if cutter is not None else None
    if mounted is None or mounted.cutter.station != "table saw" or mounted.cutter.kind == "set":
        name = cutter.value if cutter is not None else "no cutter"
        yield Trouble(Reason.MACHINE, f"{name} saws nothing through", "a blade in the saw")
    own = tools.accessories.get(str(accessory.value)) if accessory is not None else None
    on_sled = own is not None and own.longest is not None
    if on_sled != (operation.kind == "length"):
        yield Trouble(
            Reason.MACHINE,
            "it is sawn to length against the rip fence, where it jams"
            if operation.kind == "length"
            else "it is ripped on a sled",
            "a sled for the length, the rip fence for the width",
        )


def _at(axes: Axes, axis: str) -> Fraction | None:
    setting = axes.get(axis)
    return setting.value if setting is not None and isinstance(setting.value, Fraction) else None


def _to(blank: Blank, direction: int, size: Fraction | None) -> Iterator[Trouble]:
    """Give a blank a size; what is already as small cannot become it."""
    sure, blank.known[direction] = blank.known[direction], size is not None
    if size is None:
        return
    now, name = blank.sizes[direction], _NAMES[direction]
    if sure and size >= now - blank.skimmed[direction]:
        yield Trouble(
            Reason.SIZE,
            f"its {name} is {float(now):g} and cannot be brought to {float(size):g}",
            f"a blank with more {name} than {float(size):g}",
        )
    blank.resize(direction, min(size, now) if sure else size)
