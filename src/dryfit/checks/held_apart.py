"""TRADE B21.3, G5, H72: parts that hold apart two rails while the board between them shrinks."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.frame import LENGTH, WIDTH
from dryfit.placing.model import Copy, Joint, Model, Part

_SHRINKS = Fraction(1)
"""Shrinking of a side that a glued runner may hold against, mm: a little less opens no joint (a
guess of ours)."""


def check_held_apart(model: Model) -> Iterator[Diagnostic]:
    """Yield what is glued at both ends between rails that one solid board carries across it.

    The board shrinks along it, and the part does not (TRADE B21.3, G5).
    Findings: ends-held-apart.
    """
    ends: dict[str, list[Joint]] = {}
    for joint in model.joints:
        if joint.kind == "mortise and tenon" and joint.patches:
            ends.setdefault(joint.guest, []).append(joint)
    told: set[str] = set()
    for guest, joints in ends.items():
        part, copy = model.part_of(guest), model.copy(guest)
        if part.name in told or len({joint.end for joint in joints}) < 2:
            continue
        board = _carrying_both(model, copy, joints)
        if board is None:
            continue
        shrinks = board.moving.shrinks(part.length)
        if shrinks < _SHRINKS:
            continue
        told.add(part.name)
        shown = model.display.movement(shrinks)
        yield finding(
            "H72",
            "ends-held-apart",
            Severity.WARNING,
            f"{part.name}: glued at both ends it holds apart what the {board.name} carries, which "
            f"may still shrink by {shown} along it",
            joints[0].span,
            figures={"shrinks": shrinks},
            remedy="write `glued at front` for it: the other end then floats, dry",
        )


def _carrying_both(model: Model, copy: Copy, joints: list[Joint]) -> Part | None:
    """Return a solid part, its width along the copy, in which both hosts of its ends are glued."""
    run = copy.frame.axes[LENGTH][0]
    hosts = {joint.host for joint in joints}
    carried: dict[str, set[str]] = {}
    for joint in model.joints:
        if joint.guest in hosts and joint.patches:
            carried.setdefault(joint.host, set()).add(joint.guest)
    for name, own in carried.items():
        part, board = model.part_of(name), model.copy(name)
        across = board.frame.axes[WIDTH][0] == run
        if own == hosts and len(hosts) > 1 and across and part.stock == "solid":
            return part
    return None
