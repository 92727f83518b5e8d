"""TRADE H-b, what holds what: H28 and H27."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from dryfit.checks.finding import finding
from dryfit.checks.regions import solid_parts
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.kinds.joints import RUNNERS, joint_kind, lets_move
from dryfit.placing.model import Joint, Model, Part


def check_held(model: Model) -> Iterator[Diagnostic]:
    """Yield what nothing holds, and copies that are joined otherwise than their like.

    Findings: held-by-nothing, only-lies-there, mates-unequal.
    """
    names = {copy.name: part.name for part in model.parts for copy in part.copies}
    yield from _held(model, names)
    yield from _mates(model)


def _held(model: Model, names: dict[str, str]) -> Iterator[Diagnostic]:
    """H28: every part is joined to another one, or stands free in an opening as a door does."""
    if len(model.parts) < 2:
        return
    kinds: dict[str, set[str]] = {}
    for joint in model.joints:
        for copy in (joint.guest, joint.host):
            kinds.setdefault(names[copy], set()).add(_how(joint))
    sliding = {names[joint.guest] for joint in model.joints if joint.kind in RUNNERS}
    fast = {names[name] for joint in model.joints for name in _held_by(joint)}
    buttoned = {fitting.part for fitting in model.fittings if lets_move(fitting.kind)}
    for part in solid_parts(model):
        own = kinds.get(part.name, set())
        if part.name in buttoned or part.opening:
            continue
        if not own:
            yield _told(
                part,
                "held-by-nothing",
                Severity.ERROR,
                f"{part.name} is held by nothing",
                f"say what it is joined to, such as `{part.written} into ...: housing`",
            )
        elif part.name in sliding - fast:
            yield _told(
                part,
                "held-by-nothing",
                Severity.ERROR,
                f"{part.name} is held by nothing: the drawer slides on it",
                "add `screws` to its line, and on the inside of what, or a joint with the rails "
                "that it lies between",
            )
        elif own <= {"rest"} and not _is_hinged(model, part):
            yield _told(
                part,
                "only-lies-there",
                Severity.WARNING,
                f"{part.name} only lies there; nothing fastens it",
                "add `: screws` or `: buttons` to the line that lays it on",
            )


def _held_by(joint: Joint) -> tuple[str, ...]:
    """Return the copies that a joint may hold: none where a drawer slides on its runner."""
    return () if joint.kind in RUNNERS else (joint.guest, joint.host)


def _is_hinged(model: Model, part: Part) -> bool:
    """Return whether hinges are bought for it: a lid that is screwed to them does not come off."""
    names = {part.name, part.written.lower()}
    return any("hinge" in thing.name and thing.purpose.lower() in names for thing in model.bought)


def _how(joint: Joint) -> str:
    # What the notes keep dry is meant to lie there, or held by a pin or a bolt.
    return "kept dry" if joint.dry else joint.kind


def _told(part: Part, code: str, severity: Severity, message: str, remedy: str) -> Diagnostic:
    span = part.spans[0] if part.spans else None
    return finding("H28", code, severity, message, span, figures={}, remedy=remedy)


def _mates(model: Model) -> Iterator[Diagnostic]:
    """H27: copies of one part enter equally many mates."""
    entered = Counter(joint.guest for joint in model.joints if joint_kind(joint.kind).enters)
    for part in solid_parts(model):
        counts = {copy.name: entered[copy.name] for copy in part.copies}
        if len(set(counts.values())) < 2:
            continue
        least, most = min(counts, key=counts.__getitem__), max(counts, key=counts.__getitem__)
        yield finding(
            "H27",
            "mates-unequal",
            Severity.WARNING,
            f"{least} enters {counts[least]} other parts, but {most} enters {counts[most]}",
            part.spans[0] if part.spans else None,
            figures={},
            remedy="check the places of both, or write two lines with two names",
        )
