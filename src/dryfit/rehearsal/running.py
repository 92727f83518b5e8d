"""Drawers on wooden runners: where they may be grooved, and whether they can run (TRADE B21)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.geometry.frame import LENGTH, THICKNESS
from dryfit.rehearsal.blank import left_of
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import WantedCopy, WantedJoint

RUNNING = "runner"
_BEFORE = Fraction(127, 20)
"""How far a groove may go on before its runner, mm: 1/4 in, a little over the usual 6 mm."""


def for_runner(joint: WantedJoint, guest: WantedCopy, host: WantedCopy) -> Iterator[Box]:
    """Yield where a drawer may be grooved for its runner, as wide as it plays and open behind."""
    if joint.kind == RUNNING:
        run = guest.frame.axes[LENGTH][0]
        low, high = list(joint.region.low), list(joint.region.high)
        for axis in {0, 1, 2} - {run}:
            low[axis], high[axis] = low[axis] - joint.clearance, high[axis] + joint.clearance
        low[run], high[run] = low[run] - _BEFORE, host.box.high[run]
        inside = Box((low[0], low[1], low[2]), (high[0], high[1], high[2])).overlap(host.box)
        if inside is not None:
            yield inside


def stuck(
    joint: WantedJoint, guest: WantedCopy, host: WantedCopy, cuts: Sequence[Box]
) -> Iterator[tuple[str, Trouble]]:
    """Yield that wood of the host stands in the way of the runner, `cuts` being what is cut there.

    The runner goes in from behind and needs its play before the bottom of the groove.
    """
    if joint.kind != RUNNING:
        return
    run, deep = guest.frame.axes[LENGTH][0], host.frame.axes[THICKNESS][0]
    low, high = list(joint.region.low), list(joint.region.high)
    high[run] = host.box.high[run]
    if guest.box.high[deep] > host.box.high[deep]:
        low[deep] -= joint.clearance
    else:
        high[deep] += joint.clearance
    way = Box((low[0], low[1], low[2]), (high[0], high[1], high[2])).overlap(host.box)
    if way is not None and left_of(way, cuts):
        yield (
            joint.host,
            Trouble(
                Reason.FIT,
                f"it does not run on {joint.guest}: wood stands in the way from behind",
                f"a groove open behind, with {float(joint.clearance):g} of play",
            ),
        )
