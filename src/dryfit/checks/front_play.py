"""TRADE H31: doors, lids and fronts of drawers that have no play round them.

How solid boards swell across their grain is told by `checks.fronts`.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.checks.regions import gap_beside
from dryfit.checks.runners import drawer_of
from dryfit.checks.ways_out import moved_with
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.box import spanning
from dryfit.geometry.frame import THICKNESS, WIDTH
from dryfit.kinds.joints import RUNNERS
from dryfit.placing.model import Model
from dryfit.placing.site import SIDE_WORDS
from dryfit.placing.stages import copies_inside
from dryfit.quantities.units import INCH

_LEAST = Fraction(1, 2)
"""Less than this beside a door or a front, mm, and it binds (common practice: 1 to 2)."""


def check_front_play(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for a part, that what opens binds.  Findings: front-without-play."""
    told: set[str] = set()
    for name, moving in _opening(model):
        part = model.part_of(name)
        found = _tightest(model, name, moving) if part.name not in told else None
        if found is not None:
            told.add(part.name)
            yield _told(model, name, *found)


def _opening(model: Model) -> Iterator[tuple[str, frozenset[str]]]:
    """Yield each door, and each front that is fast to a drawer, with all that moves with it."""
    for joint in model.joints:
        if joint.kind == "hinges":
            yield joint.guest, moved_with(model, joint.guest, joint.host)
        elif joint.kind in RUNNERS:
            moving = moved_with(model, joint.host, joint.guest)
            drawer = {joint.host, *drawer_of(model, joint)}
            for name in sorted(moving - drawer):
                if model.part_of(name).opening:
                    yield name, moving


def _tightest(
    model: Model, name: str, moving: frozenset[str]
) -> tuple[Fraction, tuple[int, int]] | None:
    """Return the least gap beside what opens, where that is too small, and where it is."""
    part, copy = model.part_of(name), model.copy(name)
    wholes = [each for each in copies_inside(model.assemblies).values() if name in each]
    own = {name}.union(*wholes) & moving
    box = spanning(tuple(model.copy(each).box for each in sorted(own)))
    others = [one.box for each in model.parts for one in each.copies if one.name not in moving]
    beside = [axis for axis in range(3) if axis != copy.frame.axes[THICKNESS][0]]
    gaps = {
        (axis, way): gap
        for axis in beside
        for way in (-1, 1)
        if (gap := gap_beside(box, others, axis, way)) is not None
    }
    across = copy.frame.axes[WIDTH][0]
    swells = part.stock == "solid" and own == {name}
    if swells and any(gaps.get((across, way), _LEAST) < _LEAST for way in (-1, 1)):
        return None
    tight = [(gap, place) for place, gap in gaps.items() if gap < _LEAST]
    return min(tight, default=None)


def _told(model: Model, name: str, gap: Fraction, place: tuple[int, int]) -> Diagnostic:
    part, display = model.part_of(name), model.display
    usual = display.either(Fraction(2), INCH / 16)
    return finding(
        "H31",
        "front-without-play",
        Severity.WARNING,
        f"{name} has {display.with_unit(gap, fitted=True)} at its {SIDE_WORDS[place]}: it opens, "
        f"and binds with less than {display.with_unit(_LEAST, fitted=True)}",
        part.spans[0] if part.spans else None,
        figures={"gap": gap, "least": _LEAST},
        remedy=f"write `gap {display.shown(usual, fitted=True)}` on its line",
    )
