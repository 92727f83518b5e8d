"""Pieces for children (M20): lids, air, latches, gaps for fingers and heads, sharp edges.

A reminder of what public guidance asks, no proof: the safety rules for toys and furniture of the
place where it stands come first.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.checks.gaps_for_fingers import check_gaps
from dryfit.diagnostics import Diagnostic, Severity, Span
from dryfit.piece.declared import thing_of
from dryfit.placing.model import Model, Part

_CLOSED = Fraction(31_000_000)
"""mm3: chests from 1.1 cubic feet on are looked at (ASTM F834 on toy chests; read, its scope)."""

_HOLDS = ("stay", "support", "damper", "soft")
_LATCHES = ("latch", "lock", "catch", "hasp")
_OPENS = frozenset({"hole", "slot", "notch", "curve", "finger hole"})
_SOFTENS = frozenset({"round-over", "chamfer", "profile", "curve"})


def check_children(model: Model, said: Span) -> Iterator[Diagnostic]:
    """Yield what public guidance on children's things would find.

    Findings: lid-may-fall, lid-latches, no-air, finger-gap, head-gap, edges-for-children.
    """
    lid = next((part for part in model.parts if "lid" in part.name.split()), None)
    if lid is not None:
        yield from _lid(model, lid)
    yield from check_gaps(model)
    kinds = {feature.kind for part in model.parts for feature in part.features}
    forms = {f.form.kind for part in model.parts for f in part.features if f.form is not None}
    if not (kinds | forms) & _SOFTENS:
        yield finding(
            "M20",
            "edges-for-children",
            Severity.NOTICE,
            "no edge is rounded in the notes: sanding only takes off its sharpness",
            said,
            figures={},
            remedy=model.display.examples(
                "round those that a child can fall on: `round-over on top: all top edges, {3} "
                "radius`"
            ),
        )


def _goes_on(purpose: str, lid: Part) -> bool:
    """Return whether a bought thing may be for the lid: its line says so, or says nothing."""
    return not purpose or "lid" in purpose.lower().split() or lid.written.lower() in purpose.lower()


def _is_of(model: Model, copy: str, lid: Part) -> bool:
    return thing_of(model.part_of(copy).name) == thing_of(lid.name)


def _lid(model: Model, lid: Part) -> Iterator[Diagnostic]:
    span = lid.spans[0] if lid.spans else None
    bought = {thing.name: thing.purpose for thing in model.bought}
    hung = any("hinge" in name and _goes_on(purpose, lid) for name, purpose in bought.items()) or (
        any(joint.kind == "hinges" and _is_of(model, joint.guest, lid) for joint in model.joints)
    )
    latch = next((name for name in bought if any(word in name for word in _LATCHES)), None)
    if hung and not any(word in name for name in bought for word in _HOLDS):
        yield finding(
            "M20",
            "lid-may-fall",
            Severity.WARNING,
            f"{lid.name}: hinged, and nothing keeps it from falling on a child's head or hand",
            span,
            figures={},
            remedy="add a stay that holds it in every position, sprung and not by friction: "
            "`bought 1 lid stay, for lid`; or let the lid lie loose",
        )
    if latch is not None:
        yield finding(
            "M20",
            "lid-latches",
            Severity.WARNING,
            f"{latch}: a child can be shut in a chest that latches",
            span,
            figures={},
            remedy="leave it out",
        )
    wide, deep, high = model.overall
    open_somewhere = any(
        feature.kind in _OPENS
        for part in model.parts
        for feature in part.features
        if part is not lid
    )
    if wide * deep * high >= _CLOSED and not open_somewhere:
        yield finding(
            "M20",
            "no-air",
            Severity.WARNING,
            "a child who climbs in and closes the lid has no air: nothing lets any in",
            span,
            figures={"width": wide, "depth": deep, "height": high},
            remedy=model.display.examples(
                "bore two holes that a wall cannot cover, such as `2 holes in front: front, "
                "{30} dia, through, {60} from top, {100} from each end`, or cut a finger notch at "
                "the lid"
            ),
        )
