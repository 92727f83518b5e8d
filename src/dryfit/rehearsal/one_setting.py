"""Cuts that have to agree come from one setting: a height found again is off by a tenth or two.

TRADE E3, H69, J12: both laps of a half lap and both cheeks of a tenon are cut before the cutter is
moved.  Laps of unequal depth stand at two heights, and cannot.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import groupby

from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.state import CutAt, State

AGREE = frozenset({"half lap", "bridle", "mortise and tenon"})


def one_setting(state: State) -> Iterator[Fault]:
    """Yield each joint whose cuts of one height were made with the cutter moved in between."""
    kinds = {joint.id: joint.kind for joint in state.goal.joints}
    rows = [row for row in state.set_for if kinds[row.joint] in AGREE]
    told: set[tuple[str, str]] = set()
    for _, group in groupby(sorted(rows, key=_setting), key=_setting):
        cuts = list(group)
        last = max(cuts, key=lambda row: row.turn)
        if len({row.turn for row in cuts}) > 1 and (last.operation, last.station) not in told:
            told.add((last.operation, last.station))
            yield Fault(
                Reason.SETTING,
                f"{last.copy}: the cutter was moved since the first cuts of {last.joint}",
                "all cuts that have to agree made before the height is changed",
                last.step,
                last.operation,
            )


def _setting(row: CutAt) -> tuple[str, str, Fraction, int]:
    # Cheeks and edge shoulders may be as deep as one another by chance.
    return row.joint, row.station, row.height, row.axis
