"""Tapers, curves and bevels: what the saw takes off, by its settings and by how the part lies.

Every figure is worked out from the settings and held against the marks, which say what the notes
ask for.  The jig runs left of the blade with its stop block on the maker's side; a tilted blade
leans away from the rip fence (common practice).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction
from math import pi, tan

from dryfit.geometry.frame import LENGTH, OPPOSITE, SURFACES
from dryfit.plan.operation import Operation, Work
from dryfit.plan.setting import Hold, Setting
from dryfit.rehearsal.at_machines.cutters import Toolbox
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.at_machines.sweeping import through
from dryfit.rehearsal.blank import ZERO, Arch, Blank, Slant
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import Mark, Range, Ranges
from dryfit.rehearsal.state import State

SHAPES = frozenset({"taper", "curve", "bevel"})
SPOILING = frozenset({"taper", "curve"})
"""Shapes after which a part lies no more on the surface: of a bevel or mitre its long side stays.
"""
FAIR = "fair"
BAND_SAW = "band saw"
JIG = "taper jig"
RIP_FENCE = "rip fence"
OFF = "off"
HAIR = Fraction(1, 50)
"""How far a shape may be off its mark, mm: angles are told to whole figures."""


def shaped(
    operation: Operation,
    work: Work,
    axes: Axes,
    blank: Blank,
    marks: tuple[Mark, ...],
    tools: Toolbox,
) -> tuple[Slant | Arch, ...] | Trouble:
    """Return the shapes that one row of work takes off a blank."""
    own = tuple(mark for mark in marks if mark.shape == operation.kind)
    if not own or len(own) < len(marks):
        return Trouble(Reason.CUT, f"no {operation.kind} is marked on it", "its marks")
    hold = work.hold
    if hold is None:
        return tuple(_as_marked(mark) for mark in own)
    if operation.station == BAND_SAW:
        return _beside_line(hold, axes, blank, own, tools)
    if operation.kind == "curve":
        return Trouble(
            Reason.MACHINE, f"the {operation.station} saws no curve", "the band saw, or a bow saw"
        )
    found = _sawn(operation, hold, axes, blank, tools)
    if isinstance(found, Trouble):
        return found
    (mark, *others) = own
    wrong = "two shapes of one row lie alike" if others else _beside_mark(found, mark)
    if wrong is not None:
        return Trouble(Reason.CUT, wrong, "what its marks say")
    return (_as_marked(mark),)


def _as_marked(mark: Mark) -> Slant | Arch:
    if mark.toward is None:
        return Arch(mark.ranges, mark.surface)
    return Slant(mark.ranges, mark.surface, mark.toward)


def _beside_line(
    hold: Hold, axes: Axes, blank: Blank, marks: tuple[Mark, ...], tools: Toolbox
) -> tuple[Slant | Arch, ...] | Trouble:
    """Return what the band saw cuts along lines: square to the face that lies on its table."""
    cutter, fence = axes.get("cutter"), axes.get("fence")
    mounted = tools.cutters.get(str(cutter.value)) if cutter else None
    if mounted is None or mounted.cutter.station != BAND_SAW:
        return Trouble(Reason.MACHINE, "no blade is in the band saw", "its blade")
    if fence is not None and fence.value != OFF:
        return Trouble(Reason.SETTING, "the fence stands in the way", "the fence set aside")
    if hold.down is None:
        return Trouble(Reason.HOLD, "no surface lies on the table", "a surface that lies there")
    for mark in marks:
        toward = mark.toward or _far_end(mark, blank)
        if SURFACES[hold.down][0] in {SURFACES[mark.surface][0], SURFACES[toward][0]}:
            return Trouble(
                Reason.HOLD, f"it lies on {hold.down}, on which {mark.id} shows no line",
                "a face square to the line",
            )  # fmt: skip
    return tuple(_as_marked(mark) for mark in marks)


def _far_end(mark: Mark, blank: Blank) -> str:
    """Return an end of the way along which a curve runs: it goes right through the third way."""
    normal = SURFACES[mark.surface][0]
    for direction, name in ((1, "E"), (2, "F"), (0, "R")):
        whole = (ZERO, blank.sizes[direction])
        if direction != normal and mark.ranges[direction] != whole:
            return name
    return "E" if normal == LENGTH else "R"


def _sawn(
    operation: Operation, hold: Hold, axes: Axes, blank: Blank, tools: Toolbox
) -> Slant | Trouble:
    """Return what a saw takes off that is set for a taper or a bevel."""
    accessory = axes.get("accessory")
    guide = accessory.value if accessory is not None else None
    if hold.down is None or hold.against_fence is None:
        where = "on the table" if hold.down is None else "against a fence or a cleat"
        return Trouble(Reason.HOLD, f"no surface lies {where}", "a surface that lies there")
    if operation.station == "table saw":
        low = through(axes, blank, hold.down, tools)
        if low is not None:
            return low
    if operation.kind == "taper":
        return _on_jig(hold, axes, blank, guide, tools)
    if operation.station == "table saw" and guide == RIP_FENCE:
        return _at_fence(hold, axes, blank)
    return _at_end(operation.station, hold, axes, blank)


def _on_jig(hold: Hold, axes: Axes, blank: Blank, guide: object, tools: Toolbox) -> Slant | Trouble:
    """Return the wedge beyond the jig's edge, on which the blade runs."""
    jig, stop, fence = axes.get("jig"), axes.get("stop"), axes.get("fence")
    if guide != JIG or JIG not in tools.accessories:
        return Trouble(Reason.MACHINE, f"it lies on no jig but the {guide}", f"the {JIG}")
    if fence is not None and fence.value != OFF:
        return Trouble(Reason.SETTING, "the strip is caught at the fence", "the fence taken off")
    left, full, run = _mm(jig), jig.far if jig is not None else None, _mm(stop)
    if left is None or full is None or run is None or full <= left or hold.at_stop is None:
        return Trouble(Reason.SETTING, "the jig is not set", "its cleat and its stop block")
    longest = tools.accessories[JIG].longest
    if longest is not None and blank.sizes[LENGTH] > longest:
        return Trouble(Reason.MACHINE, "it is longer than the jig", f"{float(longest):g} at most")
    assert hold.against_fence is not None
    cut = OPPOSITE[hold.against_fence]
    size = blank.sizes[SURFACES[cut][0]]
    # The edge crosses the surface where as much is left between it and the cleat as there is wood.
    long = run * (size - left) / (full - left)
    ranges = _whole(blank)
    ranges[LENGTH] = blank.measured_from(hold.at_stop, (ZERO, long))
    ranges[SURFACES[cut][0]] = blank.measured_from(cut, (ZERO, size - left))
    return Slant(_triple(ranges), cut, hold.at_stop)


def _at_fence(hold: Hold, axes: Axes, blank: Blank) -> Slant | Trouble:
    """Return the wedge beyond a blade that leans away from the fence, up from the table."""
    fence, rise = _mm(axes.get("fence")), _rise(axes.get("tilt"))
    if fence is None or rise is None:
        return Trouble(Reason.SETTING, "fence or tilt is not set", "both set")
    assert hold.against_fence is not None
    assert hold.down is not None
    cut = OPPOSITE[hold.against_fence]
    size, high = blank.sizes[SURFACES[cut][0]], blank.sizes[SURFACES[hold.down][0]]
    off = size - fence
    if abs(off - high * rise) > HAIR:
        return Trouble(
            Reason.CUT,
            f"with {float(off):g} off at the table the blade comes out {float(high * rise):g} "
            "further at the top",
            "a bevel from corner to corner",
        )
    ranges = _whole(blank)
    ranges[SURFACES[cut][0]] = blank.measured_from(cut, (ZERO, off))
    return Slant(_triple(ranges), cut, hold.down)


def _at_end(station: str, hold: Hold, axes: Axes, blank: Blank) -> Slant | Trouble:
    """Return the end that is sawn off aslant, its long point a full length from the stop."""
    rise = _rise(axes.get("angle" if station == "mitre saw" else "tilt"))
    long_side = hold.against_fence if station == "mitre saw" else hold.down
    stop = _mm(axes.get("stop"))
    if rise is None or long_side is None or SURFACES[long_side][0] == LENGTH:
        return Trouble(Reason.SETTING, "its cutter is not turned", "an angle that is set")
    if hold.at_stop is None:
        return Trouble(Reason.HOLD, "no end touches the stop", "an end at the stop")
    if stop != blank.sizes[LENGTH]:
        return Trouble(
            Reason.SIZE, "its long point is not a full length from the stop", "its full length"
        )
    toward = OPPOSITE[long_side]
    deep = blank.sizes[SURFACES[toward][0]] * rise
    ranges = _whole(blank)
    ranges[LENGTH] = blank.measured_from(hold.at_stop, (stop - deep, stop))
    return Slant(_triple(ranges), OPPOSITE[hold.at_stop], toward)


def _beside_mark(found: Slant, mark: Mark) -> str | None:
    """Return in what a shape is not the one that is marked, or None."""
    if (found.end, found.toward) != (mark.surface, mark.toward):
        return (
            f"it is cut into {found.end} toward {found.toward}, and {mark.id} into {mark.surface} "
            f"toward {mark.toward}"
        )
    for name, own, wanted in zip(
        ("along", "across", "deep"), found.ranges, mark.ranges, strict=True
    ):
        if any(abs(a - b) > HAIR for a, b in zip(own, wanted, strict=True)):
            return (
                f"{name} it goes from {float(own[0]):g} to {float(own[1]):g}, and {mark.id} from "
                f"{float(wanted[0]):g} to {float(wanted[1]):g}"
            )
    return None


def aslant(kind: str, hold: Hold, blank: Blank) -> Iterator[Trouble]:
    """Yield a surface by which a part is held though it is sawn off aslant (H63).

    The long side of a bevel or mitre still touches a fence or a stop, where that is counted on.
    """
    gone = {slant.end for slant in blank.slants} - blank.taped
    words = (
        ("lies on", hold.down),
        ("leans with", hold.against_fence),
        ("stops with", hold.at_stop),
    )
    for how, surface in words:
        stays = surface in {hold.against_fence, hold.at_stop} and surface != hold.down
        counted_on = kind in {"mitre", "bevel"} or (kind == "taper" and surface == hold.at_stop)
        if surface in gone and surface in blank.true and not (stays and counted_on):
            yield Trouble(
                Reason.REFERENCE, f"it {how} {surface}, which is sawn off aslant",
                f"this cut before the one that takes {surface} away",
            )  # fmt: skip


def taken_off(blank: Blank, shapes: tuple[Slant | Arch, ...], *, flat: bool) -> Iterator[Trouble]:
    """Take shapes off; a surface that is not `flat` after it is no reference any more (H63)."""
    if set(shapes) & {*blank.slants, *blank.arches}:
        yield Trouble(Reason.CUT, "nothing is left where it is cut", "each shape cut once")
    blank.slants += [each for each in shapes if isinstance(each, Slant)]
    blank.arches += [each for each in shapes if isinstance(each, Arch)]
    if not flat:
        blank.true -= {each.end for each in shapes}


def tape_back(state: State, name: str) -> Iterator[Trouble]:
    """Stick the strips of the tapers so far back where they came off."""
    blank = state.blanks.get(name)
    ends = {each.end for each in blank.slants if each.end not in blank.true} if blank else set()
    if blank is None or not ends:
        yield Trouble(Reason.CUT, "no strip has come off it", "a taper before")
        return
    blank.taped |= ends
    blank.true |= ends


def strips_off(kind: str, blank: Blank) -> None:
    """Take the strips off a blank for whatever is no taper."""
    if kind != "taper":
        blank.true -= blank.taped
        blank.taped.clear()


def fair(state: State, name: str) -> Iterator[Trouble]:
    """Bring what the band saw left of a copy to its lines."""
    own = {each for each in state.rough if each[0] == name}
    if not own:
        yield Trouble(Reason.CUT, "nothing on it is sawn beside a line", "what the saw left")
    if name in state.glued:
        yield Trouble(
            Reason.ORDER,
            f"it is glued into {state.glued[name]} when it is faired",
            "before the glue",
        )
    state.rough -= own


def _mm(setting: Setting | None) -> Fraction | None:
    if setting is None or setting.unit != "mm" or not isinstance(setting.value, Fraction):
        return None
    return setting.value


def _rise(setting: Setting | None) -> Fraction | None:
    """Return the tangent of an angle that is set, to about 15 digits."""
    if setting is None or setting.unit != "deg" or not isinstance(setting.value, Fraction):
        return None
    return Fraction(tan(float(setting.value) * pi / 180))


def _whole(blank: Blank) -> list[Range]:
    return [(ZERO, size) for size in blank.sizes]


def _triple(ranges: list[Range]) -> Ranges:
    return ranges[0], ranges[1], ranges[2]


AT_BENCH: Mapping[str, Callable[[State, str], Iterator[Trouble]]] = {
    FAIR: fair,
    "tape back": tape_back,
}
"""What is done at the bench with shapes, by the kind of its operation."""
