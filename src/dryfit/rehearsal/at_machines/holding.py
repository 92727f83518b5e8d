"""How a part lies at a machine: on surfaces that are true, and not as its mirror image would.

Directions as the maker sees them: x to the right, y away from him, z up.  The sled's fence is on
his side and its stop on the left; every other fence stands behind the work (common practice).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.geometry.frame import SURFACES
from dryfit.plan.setting import Hold
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.blank import ZERO, Blank, box_of, left_of
from dryfit.rehearsal.fault import Reason, Trouble

Direction = tuple[int, int, int]
TAPER_JIG = "taper jig"
LEAST_CONTACT = Fraction(1, 4)
"""Share of a surface that has to be left for a part to lie on it steadily: a guess of ours.  At a
stop any bit of an end will do, such as that of a tenon."""


def untrue(hold: Hold, blank: Blank) -> Iterator[Trouble]:
    """Yield what is wrong with the surfaces on which a part is held."""
    words = (
        ("lies on", hold.down),
        ("lies against the fence with", hold.against_fence),
        ("touches the stop with", hold.at_stop),
    )
    for how, surface in words:
        if surface is None:
            continue
        if surface not in blank.true:
            yield Trouble(
                Reason.REFERENCE,
                f"it {how} {surface}, which is not true yet",
                f"{surface} made straight, flat and square before",
            )
        elif not _left_enough(surface, blank, at_stop=surface == hold.at_stop):
            yield Trouble(
                Reason.REFERENCE,
                f"it {how} {surface}, of which hardly anything is left",
                f"the cut before {surface} is cut away",
            )
    used = [surface for _, surface in words if surface is not None]
    if len({SURFACES[surface][0] for surface in used}) < len(used):
        yield Trouble(
            Reason.HOLD, "two of the surfaces it is held by are opposite", "three sides that meet"
        )


def _left_enough(surface: str, blank: Blank, *, at_stop: bool) -> bool:
    share = _left_share(surface, blank)
    return share > 0 if at_stop else share >= LEAST_CONTACT


def _left_share(surface: str, blank: Blank) -> Fraction:
    """Return what share of a surface no cut has taken; a cut that only ends there takes none."""
    direction, side = SURFACES[surface]
    low, high = [ZERO] * 3, list(blank.sizes)
    # A slice so thin that what a cut leaves of it is what it leaves of the surface.
    thin = blank.sizes[direction] / 1000
    if side:
        low[direction] = high[direction] - thin
    else:
        high[direction] = thin
    slice_ = Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))
    rest = left_of(slice_, (box_of(ranges) for ranges in blank.cuts))
    return sum((piece.volume() for piece in rest), ZERO) / slice_.volume()


def mirrored(station: str, axes: Axes, hold: Hold, handedness: int) -> bool:
    """Return whether a copy could lie so only as its mirror image.

    `handedness` is that of the copy's frame: +1 when along, across and deep turn right-handed.
    """
    if hold.down is None or hold.against_fence is None or hold.at_stop is None:
        return False
    return _turn(station, axes, hold) != handedness


def _turn(station: str, axes: Axes, hold: Hold) -> int:
    stop, accessory = axes.get("stop"), axes.get("accessory")
    if accessory is not None and accessory.value == TAPER_JIG:
        # The cleat is on the left, and the blade pushes the part against a block before the maker.
        return _turn_of(hold, (-1, 0, 0), (0, -1, 0))
    side = stop.side if stop is not None else None
    on_sled = station == "table saw" or (station == "router table" and side is None)
    fence = (0, -1 if on_sled else 1, 0)
    return _turn_of(hold, fence, (1 if side == "right" else -1, 0, 0))


def _turn_of(hold: Hold, at_fence: Direction, at_stop: Direction) -> int:
    outward: dict[str, Direction] = {
        str(hold.down): (0, 0, -1),
        str(hold.against_fence): at_fence,
        str(hold.at_stop): at_stop,
    }
    rows: list[Direction] = [(0, 0, 0)] * 3
    for surface, (x, y, z) in outward.items():
        direction, far = SURFACES[surface]
        rows[direction] = (x, y, z) if far else (-x, -y, -z)
    return _determinant(rows[0], rows[1], rows[2])


def _determinant(first: Direction, second: Direction, third: Direction) -> int:
    (a, b, c), (d, e, f), (g, h, i) = first, second, third
    return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
