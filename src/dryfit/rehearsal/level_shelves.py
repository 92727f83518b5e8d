"""Shelves on pins lie level: the pins at both ends are at one height (TRADE B19)."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.pin_rows import UP, pin_levels
from dryfit.rehearsal.state import State, cuts_in_piece


def askew(state: State) -> Iterator[Fault]:
    """Yield each shelf whose pins are not at one height in the uprights that carry it."""
    heights: dict[str, set[Fraction]] = {}
    for joint in state.goal.joints:
        guest, host = state.copies.get(joint.guest), state.copies.get(joint.host)
        if joint.kind != "shelf pins" or guest is None or host is None:
            continue
        if host.name in state.blanks:
            cuts = tuple(cuts_in_piece(host, state.blanks[host.name]))
            levels = pin_levels(joint, host, cuts)
            # The shelf lies on the highest pins that are not above it.
            under = [level for level in levels if level <= guest.box.low[UP]] or levels[:1]
            heights.setdefault(guest.name, set()).update(under[-1:])
    for name, found in heights.items():
        if len(found) > 1:
            yield Fault(
                Reason.FIT,
                f"{name}: the pins under it are {float(max(found) - min(found)):g} higher at one "
                "end than at the other",
                "rows of holes at the same heights in all uprights",
            )
