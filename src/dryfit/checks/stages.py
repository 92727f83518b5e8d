"""Glue-ups: what none closes, what nothing glues there, and what waits for them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from dryfit.checks.finding import finding
from dryfit.checks.regions import solid_parts
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.notes.names import plural
from dryfit.placing.model import Assembly, Joint, Model, Part

Members = Mapping[str, frozenset[str]]


def check_stages(model: Model) -> Iterator[Diagnostic]:
    """Yield what is wrong with the glue-ups.

    Findings: no-glue-up, in-no-glue-up, glued-to-nothing, screwed-not-glued,
    waits-for-itself, waits-for-others.
    """
    members = _members(model)
    yield from not_closed(model, members)
    yield from glued_to_nothing(model, members)
    yield from waiting(model, members)


def _members(model: Model) -> Members:
    """Return the copies in each assembly, those of earlier assemblies among them."""
    inside: dict[str, frozenset[str]] = {}
    for assembly in model.assemblies:
        parts = (inside.get(each, frozenset({each})) for each in assembly.of)
        inside[assembly.name] = frozenset().union(*parts)
    return inside


def not_closed(model: Model, members: Members) -> Iterator[Diagnostic]:
    """H28: a glued joint needs a glue-up that closes it, a captured panel one that captures it."""
    names = {copy.name: part.name for part in model.parts for copy in part.copies}
    need = [joint for joint in model.joints if joint.glued or joint.kind == "groove"]
    if need and not model.assemblies:
        together = _joined_to({need[0].host}, need)
        written = dict.fromkeys(
            model.part(names[copy]).written
            for joint in need
            for copy in (joint.host, joint.guest)
            if copy in together
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
        if pair not in told and not _closed(model, members, joint):
            told.add(pair)
            yield _told(model, members, joint, pair, _joined_to({joint.guest}, need))


def _joined_to(copies: set[str], need: Sequence[Joint]) -> set[str]:
    """Return all copies that glue or grooves hold to these, by however many others between.

    A drawer in its opening is held to nothing that stands round it.
    """
    found, before = set(copies), 0
    while len(found) > before:
        before = len(found)
        for joint in need:
            if found & {joint.guest, joint.host}:
                found |= {joint.guest, joint.host}
    return found


def _assembly_name(model: Model) -> str:
    taken = {part.name for part in model.parts} | {each.stage for each in model.assemblies}
    return next((word for word in ("frame", "base", "whole") if word not in taken), "all")


def _closed(model: Model, members: Members, joint: Joint) -> bool:
    if joint.glued:
        return any(joint.id in assembly.joints for assembly in model.assemblies)
    return any({joint.guest, joint.host} <= inside for inside in members.values())


def _told(
    model: Model, members: Members, joint: Joint, pair: tuple[str, str], together: set[str]
) -> Diagnostic:
    guest, host = (model.part(name) for name in pair)
    glued = {name for assembly in model.assemblies for name in assembly.of}
    alone = next(
        (part for part in (guest, host) if not glued & {copy.name for copy in part.copies}), None
    )
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
        remedy=_glue_up_to_write(model, members, missing, together),
    )


def _glue_up_to_write(model: Model, members: Members, missing: str, together: set[str]) -> str:
    # Of several last glue-ups none may take the part: what joins them is missing.
    inner = {name for assembly in model.assemblies for name in assembly.of}
    own = [assembly for assembly in model.assemblies if members[assembly.name] & together]
    last = [assembly for assembly in own if assembly.name not in inner]
    if own and len(last) < 2:
        stage = own[-1].stage
        return f"add `{missing}` to a glue-up, such as `glue up {stage}: ..., {missing}`"
    counted = Counter(assembly.stage for assembly in last)
    stages = [plural(stage) if many > 1 else stage for stage, many in counted.items()]
    items = ", ".join((*stages, *_in_no_glue_up(model, together)))
    return f"add a line such as `glue up {_assembly_name(model)}: {items}`"


def _in_no_glue_up(model: Model, together: set[str]) -> Iterator[str]:
    glued = {name for assembly in model.assemblies for name in assembly.of}
    joined = {copy for joint in model.joints if joint.glued for copy in (joint.guest, joint.host)}
    for part in solid_parts(model):
        copies = {copy.name for copy in part.copies}
        if copies & joined & together and not copies & glued:
            yield part.written


def glued_to_nothing(model: Model, members: Members) -> Iterator[Diagnostic]:
    """H28: what a glue-up names is glued, or held in a groove, to something else in it."""
    for assembly in model.assemblies:
        joined = {
            copy
            for joint in model.joints
            if joint.glued or joint.dry or joint.kind == "groove"
            for copy in (joint.guest, joint.host)
            if {joint.guest, joint.host} <= members[assembly.name]
        }
        for part in solid_parts(model):
            loose = {copy.name for copy in part.copies} & set(assembly.of) - joined
            if loose:
                yield _loose(model, assembly, part, loose)


def _loose(model: Model, assembly: Assembly, part: Part, loose: set[str]) -> Diagnostic:
    screwed = any(
        joint.kind == "screws" and {joint.guest, joint.host} & loose for joint in model.joints
    )
    if screwed:
        return finding(
            "H28",
            "screwed-not-glued",
            Severity.QUESTION,
            f"glue up {assembly.stage}: the {part.name} is held by screws only, so it is fitted "
            "dry, after the finish; is that meant?",
            assembly.span,
            figures={},
            remedy="if so, leave it out of the glue-up; else join it with glue as well, such as "
            "with `tenon` or `housing`",
        )
    return finding(
        "H28",
        "glued-to-nothing",
        Severity.WARNING,
        f"glue up {assembly.stage}: nothing there is glued to the {part.name}",
        assembly.span,
        figures={},
        remedy="leave it out, or say how it is joined",
    )


def waiting(model: Model, members: Members) -> Iterator[Diagnostic]:
    """What waits for a glue-up stands outside it; what is cut in an assembly is part of it."""
    inside: dict[str, set[str]] = {}
    for assembly in model.assemblies:
        inside.setdefault(assembly.stage, set()).update(members[assembly.name])
    for part in solid_parts(model):
        copies = {copy.name for copy in part.copies}
        if part.measure and copies & inside.get(part.measure.stage, set()):
            yield finding(
                "C5",
                "waits-for-itself",
                Severity.ERROR,
                f"{part.name} is to be cut after glue up {part.measure.stage}, but is part of it",
                part.spans[0] if part.spans else None,
                figures={},
                remedy=f"take it out of that glue-up, or take `cut after` off the {part.name}",
            )
        for feature in part.features:
            own = {copy.name for copy in part.copies if copy.hand in feature.hands}
            if feature.after and not own <= inside.get(feature.after, set()):
                yield finding(
                    "B0.5",
                    "waits-for-others",
                    Severity.ERROR,
                    f"{feature.id} in {part.name} is to be cut after glue up {feature.after}, "
                    f"of which {part.name} is no part",
                    feature.span,
                    figures={},
                    remedy="name a glue-up that it goes into, or leave `after` out",
                )
