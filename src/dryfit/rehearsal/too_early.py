"""What is done to a copy in vain, because its wood is worked afterwards (TRADE A3, C1.4, D4, H-d).

Marks are drawn from true edges and ends; planing takes off what is sanded; the reference edges are
eased last.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.rehearsal.at_machines.milling import DEEDS
from dryfit.rehearsal.deeds import Deed, fault_of
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal

ON_FINISHED = frozenset({"lay out", "sand", "ease edges", "level", "coat", "fit"})
"""Kinds of deeds that need a copy with its sizes."""
ON_CUT = frozenset({"ease edges", "fit"})
"""Kinds of deeds that need a copy with its cuts as well."""
ON_RIPPED = frozenset({"strip face", "face", "edge", "rough thickness", "thickness"})
"""Kinds of deeds that need a board ripped to its rough width (A2.1, A3)."""


def too_early(deeds: Sequence[Deed], goal: Goal, sawn: frozenset[str]) -> Iterator[Fault]:
    """Yield deeds that come before milling or cuts of the same copies, and unripped boards.

    What is `sawn` out of a board that is laid out is as wide as its cuts leave it.
    """
    for deed in deeds:
        if deed.operation.kind in ON_FINISHED:
            yield from _before_work(deed, deeds)
    # A slab with two waney edges is ripped nowhere.
    whole = (copy.name for part in goal.parts if len(part.waney) > 1 for copy in part.copies)
    yield from _unripped(deeds, sawn.union(whole))
    yield from _never_used(deeds, goal)


def _before_work(deed: Deed, deeds: Sequence[Deed]) -> Iterator[Fault]:
    for later in deeds[deed.at + 1 :]:
        kind = later.operation.kind
        cut = any(work.features for work in later.operation.work)
        spoils = kind in DEEDS or (cut and deed.operation.kind in ON_CUT)
        if spoils and deed.copies & later.copies:
            yield fault_of(
                deed,
                Reason.ORDER,
                f"{deed.what} comes before {later.operation.id}",
                f"{later.operation.id} before",
            )
            return


def _unripped(deeds: Sequence[Deed], sawn: frozenset[str]) -> Iterator[Fault]:
    ripped = set(sawn)
    for deed in deeds:
        if deed.operation.kind == "rip":
            ripped |= deed.copies
        elif deed.operation.kind in ON_RIPPED and deed.copies - ripped:
            names = ", ".join(sorted(deed.copies - ripped))
            yield fault_of(
                deed,
                Reason.ORDER,
                f"{names} is as wide as its board still",
                "ripped to its rough width before",
            )
            ripped |= deed.copies


def _never_used(deeds: Sequence[Deed], goal: Goal) -> Iterator[Fault]:
    """Yield what is made from offcuts, as buttons are, when what it holds is fitted already.

    Where nothing is fitted it holds what is glued, so that the last glue-up counts.
    """
    boxes = {copy.name: copy.box for part in goal.parts for copy in part.copies}
    made = {copy.name for part in goal.parts if part.made for copy in part.copies}
    fits = [deed for deed in deeds if deed.operation.kind == "fit" and deed.copies]
    glued = max((deed.at for deed in deeds if deed.operation.kind == "glue up"), default=-1)
    for deed in deeds:
        own = deed.copies & made
        if deed.operation.kind != "make" or not own:
            continue
        # A screw draws the top down to its buttons, which lie a little below it.
        used = min(fits, key=lambda fit: _way(fit.copies, own, boxes), default=None)
        if deed.at > (glued if used is None else used.at):
            yield fault_of(
                deed,
                Reason.ORDER,
                "it is made when what it holds is put together",
                "made before it is used",
            )


def _way(some: Iterable[str], others: Iterable[str], boxes: Mapping[str, Box]) -> Fraction:
    """Return how far apart in mm the nearest two are, along the axis in which they are farthest."""
    return min(
        max(
            max(boxes[one].low[axis], boxes[other].low[axis])
            - min(boxes[one].high[axis], boxes[other].high[axis])
            for axis in range(3)
        )
        for one in some
        for other in others
    )
