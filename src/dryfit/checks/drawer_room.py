"""TRADE B21.3, H31, H32, H76: the room of a drawer in its case."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.checks.regions import gap_beside
from dryfit.checks.runners import drawer_of
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.box import spanning
from dryfit.geometry.frame import LENGTH
from dryfit.joinery.drawer_room import ABOVE, BEHIND, BESIDE, room_above, usual_beside
from dryfit.kinds.joints import RUNNERS
from dryfit.placing.model import Joint, Model
from dryfit.quantities import Display

_UP = 2


def check_drawer_room(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for a runner, where its drawer has too little room.

    Findings: drawer-tight-above, drawer-tight-behind, drawer-without-play.
    """
    told: set[tuple[str, str]] = set()
    for joint in (each for each in model.joints if each.kind in RUNNERS):
        for each in _tight(model, joint):
            key = each.code, model.part_of(joint.guest).name
            if key not in told:
                told.add(key)
                yield each


def _tight(model: Model, joint: Joint) -> Iterator[Diagnostic]:
    drawer = {joint.host, *drawer_of(model, joint)}
    whole = spanning(tuple(model.copy(name).box for name in sorted(drawer)))
    others = [copy.box for part in model.parts for copy in part.copies if copy.name not in drawer]
    side = model.part_of(joint.host)
    run = model.copy(joint.guest).frame.axes[LENGTH][0]
    if run == _UP:
        return
    show = model.display
    height = whole.extent(_UP) if side.stock == "solid" else Fraction(0)
    needs = room_above(height, side.moving)
    above = gap_beside(whole, others, _UP, 1)
    if above is not None and above < needs:
        yield finding(
            "H31",
            "drawer-tight-above",
            Severity.WARNING,
            f"{joint.host} has {show.with_unit(above, fitted=True)} above it: its drawer needs "
            f"{show.with_unit(ABOVE, fitted=True)} and what its sides still swell, "
            f"{show.with_unit(needs, fitted=True)} in all",
            joint.span,
            figures={"gap": above, "least": needs},
            remedy="make the drawer lower, or its opening higher",
        )
    behind = gap_beside(whole, others, run, 1)
    if behind is not None and behind < BEHIND:
        yield finding(
            "H31",
            "drawer-tight-behind",
            Severity.WARNING,
            f"{joint.host} has {show.with_unit(behind, fitted=True)} behind it: a drawer needs "
            f"{show.with_unit(BEHIND)}, so that stops in front halt it and not the back",
            joint.span,
            figures={"gap": behind, "least": BEHIND},
            remedy="make the drawer less deep",
        )
    across = 3 - run - _UP
    gaps = [gap_beside(whole, others, across, way) for way in (-1, 1)]
    beside = min((gap for gap in gaps if gap is not None), default=BESIDE)
    words, remedy = _play_words(show)
    if beside < BESIDE:
        yield finding(
            "H31",
            "drawer-without-play",
            Severity.WARNING,
            f"{joint.host} has {show.with_unit(beside, fitted=True)} beside it: {words}",
            joint.span,
            figures={"gap": beside, "least": BESIDE},
            remedy=remedy,
        )


def _play_words(display: Display) -> tuple[str, str]:
    """Return what a drawer on runners needs beside it, and the gap to write for it."""
    least, usual = (display.shown(each, fitted=True) for each in (BESIDE, usual_beside(display)))
    needs = f"{least} to {display.with_unit(usual_beside(display), fitted=True)}"
    return f"a drawer on runners needs {needs} to run", f"give the drawer `gap {usual} across`"
