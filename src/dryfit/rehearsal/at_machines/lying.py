"""How a blank lies while it is milled, at a machine that does such a deed (TRADE A2, A3, A6, 0.8).

A jointer trues what lies down on it, a planer copies it, a saw measures from what touches.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from dryfit.plan.operation import Operation, Work
from dryfit.plan.setting import Hold
from dryfit.rehearsal.blank import Blank
from dryfit.rehearsal.fault import Reason, Trouble

HAND = "bench"
MACHINES: Mapping[str, frozenset[str]] = {
    "rough length": frozenset({"mitre saw"}),
    "rip": frozenset({"band saw", "table saw"}),
    "resaw": frozenset({"band saw"}),
    "strip face": frozenset({"jointer"}),
    "strip edge": frozenset({"jointer"}),
    "strip thickness": frozenset({"planer"}),
    "face": frozenset({"jointer"}),
    "edge": frozenset({"jointer"}),
    "straight edge": frozenset({"jointer", "table saw"}),
    "second edge": frozenset({"jointer"}),
    "rough thickness": frozenset({"planer"}),
    "thickness": frozenset({"planer"}),
    "flatten": frozenset({"planer"}),
    "width": frozenset({"table saw"}),
    "length": frozenset({"table saw", "mitre saw"}),
}
"""Where a deed of milling can be done but by hand: a jointer makes no thickness, a planer no face.
"""
FREE = frozenset({"rough length", "rip", "straight edge"})
"""Deeds to a line, for which nothing of the blank has to be true yet."""
_TRUED = {
    "strip face": "F",
    "strip edge": "E",
    "face": "F",
    "edge": "E",
    "straight edge": "E",
    "second edge": "E2",
}
"""The surface that a jointer makes true."""
_AT_FENCE = frozenset(
    {"strip edge", "edge", "straight edge", "second edge", "width", "length", "resaw"}
)
"""Deeds that are square to, or measured from, what lies against a fence."""


def at_its_machine(operation: Operation) -> Iterator[Trouble]:
    """Yield where a deed of milling is done at a station that cannot do it."""
    able = MACHINES.get(operation.kind)
    if able is None or operation.station == HAND or operation.station in able:
        return
    yield Trouble(
        Reason.MACHINE,
        f"the {operation.station} does no work of the kind {operation.kind}",
        f"the {' or the '.join(sorted(able))}, or work by hand",
    )


def lying(operation: Operation, work: Work, blank: Blank) -> Iterator[Trouble]:
    """Yield what is wrong with how a blank lies at the machine that mills it."""
    hold, kind = work.hold, operation.kind
    if hold is None:
        if operation.station != HAND and kind not in FREE:
            yield Trouble(Reason.HOLD, "nothing says how it lies", "a hold at the machine")
        return
    yield from _lies_down(hold, kind, blank)
    if kind in _AT_FENCE and hold.against_fence is None:
        yield Trouble(Reason.HOLD, "nothing lies against the fence", "a surface at the fence")
    elif hold.against_fence is not None and hold.against_fence not in blank.true:
        yield _untrue(f"lies against the fence with {hold.against_fence}", hold.against_fence)


def _lies_down(hold: Hold, kind: str, blank: Blank) -> Iterator[Trouble]:
    worked = _TRUED.get(kind)
    if hold.down is None:
        yield Trouble(Reason.HOLD, "no surface lies on the table", "a surface that lies down")
    elif worked is not None and hold.down != worked:
        yield Trouble(
            Reason.REFERENCE,
            f"it lies on {hold.down}, which is trued instead of {worked}",
            f"{worked} on the knives",
        )
    elif worked is None and kind != "flatten" and hold.down not in blank.true:
        yield _untrue(f"lies on {hold.down}", hold.down)


def _untrue(how: str, surface: str) -> Trouble:
    return Trouble(
        Reason.REFERENCE,
        f"it {how}, which is not true yet",
        f"{surface} made straight, flat and square before",
    )
