"""What a machine cannot take: too short, too wide, too thin, or set too far (TRADE A6).

All limits are the shop's; one that a shop file does not give is no limit.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from dryfit.plan.operation import Operation
from dryfit.plan.setting import Setting
from dryfit.rehearsal.at_machines.cutters import Toolbox
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.blank import Sizes
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.shop.shop import Accessory, Station

Limits = Mapping[str, Fraction]
ON_END = frozenset({"R", "R2"})
EDGES = frozenset({"E", "E2"})
TENON_JIG = "tenon jig"
DIAGONAL = Fraction(99, 70)
"""How far a blade at 45 degrees runs through a board: a little more than the root of 2."""
PARTING = frozenset({"rip", "width", "bevel"})
"""Kinds of operations at the rip fence that saw right through."""


@dataclass(frozen=True, slots=True)
class Job:
    """A part of some sizes at a machine whose axes stand as they stand."""

    operation: Operation
    station: Station
    axes: Axes
    sizes: Sizes
    tools: Toolbox

    @property
    def limits(self) -> Limits:
        """Return the machine's limits in mm by name."""
        return self.station.limits

    def sets(self, axis: str) -> bool:
        """Return whether the work needs an axis, which it may only find standing."""
        return any(setting.axis == axis for setting in self.operation.settings)


def beyond(job: Job) -> Iterator[Trouble]:
    """Yield the limits that a part, or a setting, passes at a machine."""
    check = _CHECKS.get(job.station.name)
    if check is not None:
        yield from check(job)


def _mitre_saw(job: Job) -> Iterator[Trouble]:
    long, wide, thick = job.sizes
    yield from _least("length", long, job.limits, "shortest")
    if job.operation.kind in {"mitre", "bevel"} and _on_edge(job.operation):
        wide, thick = thick, wide
    if _turned(job.axes, "angle"):
        wide *= DIAGONAL
    yield from _most("width", wide, job.limits, "widest")
    yield from _most("thickness", thick, job.limits, "depth")
    if job.operation.kind in {"length", "mitre", "bevel"}:
        yield from _set_at_most(job.axes, "stop", job.limits, "longest_stop")


def _on_edge(operation: Operation) -> bool:
    downs = {work.hold.down for work in operation.work if work.hold is not None}
    return bool(downs) and downs <= {"E", "E2"}


def _turned(axes: Axes, axis: str) -> bool:
    """Return whether the cutter is turned out of square, so that it crosses the work slantwise."""
    setting = axes.get(axis)
    return setting is not None and isinstance(setting.value, Fraction) and setting.value != 0


def _band_saw(job: Job) -> Iterator[Trouble]:
    yield from _least("length", job.sizes[0], job.limits, "shortest")
    yield from _most("thickness", job.sizes[2], job.limits, "depth")
    if job.sets("fence"):
        yield from _set_at_most(job.axes, "fence", job.limits, "throat")


def _jointer(job: Job) -> Iterator[Trouble]:
    long, wide, thick = job.sizes
    yield from _least("thickness", thick, job.limits, "thinnest")
    if job.operation.kind in {"face", "strip face"}:
        yield from _least("length", long, job.limits, "shortest")
        yield from _least("width", wide, job.limits, "narrowest")
        yield from _most("width", wide, job.limits, "widest")
    else:
        yield from _least("length", long, job.limits, "shortest_edge")
        yield from _least("width", wide, job.limits, "narrowest_edge")


def _planer(job: Job) -> Iterator[Trouble]:
    long, wide, thick = job.sizes
    yield from _least("length", long, job.limits, "shortest")
    yield from _least("width", wide, job.limits, "narrowest")
    yield from _most("width", wide, job.limits, "widest")
    yield from _most("thickness", thick, job.limits, "thickest")
    setting = job.axes.get("thickness")
    if setting is not None and isinstance(setting.value, Fraction):
        yield from _least("thickness", setting.value, job.limits, "thinnest")


def _table_saw(job: Job) -> Iterator[Trouble]:
    long, _, thick = job.sizes
    yield from _least("thickness", thick, job.limits, "thinnest")
    cutter, accessory = job.axes.get("cutter"), job.axes.get("accessory")
    mounted = job.tools.cutters.get(str(cutter.value)) if cutter else None
    is_set = mounted is not None and mounted.cutter.kind == "set"
    yield from _set_at_most(job.axes, "height", job.limits, "dado_depth" if is_set else "depth")
    if _turned(job.axes, "tilt") and "depth" in job.limits:
        slope = {"depth": job.limits["depth"] / DIAGONAL}
        yield from _set_at_most(job.axes, "height", slope, "depth")
    own = job.tools.accessories.get(str(accessory.value)) if accessory else None
    if any(work.hold is not None and work.hold.down in ON_END for work in job.operation.work):
        yield from _least("length", long, job.limits, "shortest_crosscut")
        yield from _upright(own, job)
        return
    if own is None or own.longest is None:
        yield from _least("length", long, job.limits, "shortest_rip")
        yield from _set_at_most(job.axes, "fence", job.limits, "widest_rip")
        if job.operation.kind in PARTING:
            # A groove severs nothing: its cutter may stand in a strip of waste at the fence (B0).
            yield from _set_at_least(job.axes, "fence", job.limits, "narrowest_rip")
            yield from _turning(job)
        return
    yield from _least("length", long, job.limits, "shortest_crosscut")
    if job.sets("stop"):
        yield from _set_at_most(job.axes, "stop", {"longest": own.longest}, "longest")


def _upright(own: Accessory | None, job: Job) -> Iterator[Trouble]:
    """Yield a part that stands on its end with nothing to clamp it to, and tips at the blade.

    A board for finger joints is held by its face against the guide of a sled, an edge at the pin.
    """
    edges = all(work.hold is not None and work.hold.at_stop in EDGES for work in job.operation.work)
    if own is not None and own.longest is not None and edges:
        yield from _most("length", job.sizes[0], job.limits, "longest_on_end")
    elif own is not None and own.name == TENON_JIG:
        yield from _most("length", job.sizes[0], job.limits, "longest_on_jig")
    else:
        yield Trouble(
            Reason.MACHINE,
            f"it stands on its end at the {own.name if own else 'table saw'}",
            "a jig that it is clamped to upright",
        )


def _turning(job: Job) -> Iterator[Trouble]:
    """Yield a piece shorter along the fence than it is wide from it, which is thrown (A6.2)."""
    long, fence = job.sizes[0], job.axes.get("fence")
    if fence is None or not isinstance(fence.value, Fraction) or long >= fence.value:
        return
    yield Trouble(
        Reason.MACHINE,
        f"its length of {float(long):g} at the fence is less than its width of "
        f"{float(fence.value):g}: it turns at the blade",
        "a piece at least as long as wide, or another way",
    )


def _router_table(job: Job) -> Iterator[Trouble]:
    long, _, thick = job.sizes
    yield from _least("thickness", thick, job.limits, "thinnest")
    yield from _set_at_most(job.axes, "height", job.limits, "depth")
    stop = job.axes.get("stop") if job.sets("stop") else None
    if stop is not None and stop.to == "near":
        # Cut across on a mitre sled, which carries short parts and takes no long ones.
        yield from _most("length", long, job.limits, "longest")
    else:
        yield from _least("length", long, job.limits, "shortest")
    if stop is not None and stop.to == "both":
        yield from _pair_of_stops(job, stop)


def _pair_of_stops(job: Job, stop: Setting) -> Iterator[Trouble]:
    """Yield a stop that stands farther from the bit than the fence is long.

    An end meets its stop as the bit stands at the other limit of the cut.
    """
    long, start, end = job.sizes[0], stop.value, stop.far
    if not isinstance(start, Fraction) or end is None:
        return
    for wanted, away in ((end < long, end), (start > 0, long - start)):
        if wanted:
            yield from _most("way from the bit to a stop", away, job.limits, "longest_stop")


def _from_above(job: Job) -> Iterator[Trouble]:
    yield from _least("length", job.sizes[0], job.limits, "shortest")
    yield from _set_at_most(job.axes, "depth", job.limits, "depth")
    yield from _set_at_most(job.axes, "fence", job.limits, "throat")


_CHECKS: dict[str, Callable[[Job], Iterator[Trouble]]] = {
    "mitre saw": _mitre_saw,
    "band saw": _band_saw,
    "jointer": _jointer,
    "planer": _planer,
    "table saw": _table_saw,
    "router table": _router_table,
    "mortiser": _from_above,
    "drill press": _from_above,
}


def _least(word: str, size: Fraction, limits: Limits, limit: str) -> Iterator[Trouble]:
    least = limits.get(limit)
    if least is not None and size < least:
        yield Trouble(
            Reason.MACHINE,
            f"its {word} of {float(size):g} is less than the machine takes",
            f"a {word} of {float(least):g} at least, or another way",
        )


def _most(word: str, size: Fraction, limits: Limits, limit: str) -> Iterator[Trouble]:
    most = limits.get(limit)
    if most is not None and size > most:
        yield Trouble(
            Reason.MACHINE,
            f"its {word} of {float(size):g} is more than the machine takes",
            f"a {word} of {float(most):g} at most, or another way",
        )


def _set_at_most(axes: Axes, axis: str, limits: Limits, limit: str) -> Iterator[Trouble]:
    setting, most = axes.get(axis), limits.get(limit)
    if setting is None or most is None or not isinstance(setting.value, Fraction):
        return
    if setting.value > most:
        yield Trouble(
            Reason.MACHINE,
            f"the {axis} cannot be set to {float(setting.value):g}",
            f"a {axis} of {float(most):g} at most",
        )


def _set_at_least(axes: Axes, axis: str, limits: Limits, limit: str) -> Iterator[Trouble]:
    setting, least = axes.get(axis), limits.get(limit)
    if setting is None or least is None or not isinstance(setting.value, Fraction):
        return
    if setting.value < least:
        yield Trouble(
            Reason.MACHINE,
            f"the {axis} cannot be set to {float(setting.value):g}",
            f"a {axis} of {float(least):g} at least",
        )
