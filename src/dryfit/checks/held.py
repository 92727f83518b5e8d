"""TRADE H-b, what holds what: H28, H27, and joints and parts in no glue-up."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from dryfit.checks.finding import finding
from dryfit.checks.regions import solid_parts
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.placing.model import Joint, Model, Part

_LOOSE = frozenset({"rest"})
_ENTERING = frozenset({"mortise and tenon", "housing"})


def check_held(model: Model) -> Iterator[Diagnostic]:
    """Yield what nothing holds, joints that lack their like, and what no glue-up closes.

    Findings: held-by-nothing, only-lies-there, mates-unequal, no-glue-up, in-no-glue-up.
    """
    names = {copy.name: part.name for part in model.parts for copy in part.copies}
    yield from _held(model, names)
    yield from _mates(model)
    yield from _in_a_stage(model, names)


def _held(model: Model, names: dict[str, str]) -> Iterator[Diagnostic]:
    """H28: every part is joined to another one."""
    if len(model.parts) < 2:
        return
    kinds: dict[str, set[str]] = {}
    for joint in model.joints:
        for copy in (joint.guest, joint.host):
            kinds.setdefault(names[copy], set()).add(joint.kind)
    buttoned = {fitting.part for fitting in model.fittings if fitting.kind == "buttons"}
    for part in solid_parts(model):
        own = kinds.get(part.name, set())
        if part.name in buttoned:
            continue
        if not own:
            yield _told(
                part,
                "held-by-nothing",
                Severity.ERROR,
                f"{part.name} is held by nothing",
                f"say what it is joined to, such as `{part.written} into ...: housing`",
            )
        elif own <= _LOOSE:
            yield _told(
                part,
                "only-lies-there",
                Severity.WARNING,
                f"{part.name} only lies there; nothing fastens it",
                "add `: screws` or `: buttons` to the line that lays it on",
            )


def _told(part: Part, code: str, severity: Severity, message: str, remedy: str) -> Diagnostic:
    span = part.spans[0] if part.spans else None
    return finding("H28", code, severity, message, span, figures={}, remedy=remedy)


def _mates(model: Model) -> Iterator[Diagnostic]:
    """H27: copies of one part enter equally many mates."""
    entered = Counter(joint.guest for joint in model.joints if joint.kind in _ENTERING)
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


def _in_a_stage(model: Model, names: dict[str, str]) -> Iterator[Diagnostic]:
    """A glued joint needs a glue-up that closes it, and a captured panel one that captures it."""
    need = [joint for joint in model.joints if joint.glued or joint.kind == "groove"]
    if need and not model.assemblies:
        written = dict.fromkeys(
            model.part(names[copy]).written for joint in need for copy in (joint.host, joint.guest)
        )
        yield finding(
            "H28",
            "no-glue-up",
            Severity.ERROR,
            "no line says what is glued up with what",
            need[0].span,
            figures={},
            remedy=f"add a line such as `glue up {_assembly_name(model)}: {', '.join(written)}`",
        )
        return
    told: set[tuple[str, str]] = set()
    for joint in need:
        pair = (names[joint.guest], names[joint.host])
        if pair not in told and not _closed(model, joint):
            told.add(pair)
            yield _not_closed(model, joint, pair)


def _assembly_name(model: Model) -> str:
    return next((word for word in ("frame", "base", "whole") if not _is_part(model, word)), "all")


def _is_part(model: Model, name: str) -> bool:
    return any(part.name == name for part in model.parts)


def _closed(model: Model, joint: Joint) -> bool:
    if joint.glued:
        return any(joint.id in assembly.joints for assembly in model.assemblies)
    inside: dict[str, frozenset[str]] = {}
    for assembly in model.assemblies:
        members = (inside.get(each, frozenset({each})) for each in assembly.of)
        inside[assembly.name] = frozenset().union(*members)
    return any({joint.guest, joint.host} <= members for members in inside.values())


def _not_closed(model: Model, joint: Joint, pair: tuple[str, str]) -> Diagnostic:
    guest, host = (model.part(name) for name in pair)
    glued = {name for assembly in model.assemblies for name in assembly.of}
    alone = next(
        (part for part in (guest, host) if not glued & {copy.name for copy in part.copies}), None
    )
    last = model.assemblies[-1].stage
    message = (
        f"{alone.name} is in no glue-up"
        if alone
        else f"no glue-up brings {guest.name} and {host.name} together"
    )
    missing = (alone or guest).written
    return finding(
        "H28",
        "in-no-glue-up",
        Severity.ERROR,
        message,
        (alone.spans[0] if alone and alone.spans else joint.span),
        figures={},
        remedy=f"add `{missing}` to a glue-up, such as `glue up {last}: ..., {missing}`",
    )
