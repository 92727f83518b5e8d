"""Keys that a joint's line asks for: they are cut in the glue-up that closes the joint (M15)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.piece.declared import Contact, Declared, DeclaredFeature, Detail, Host, Stage
from dryfit.piece.names import Names
from dryfit.quantities import Display

_NEEDED = ("thickness", "depth")


def with_keys(declared: Declared, names: Names) -> Declared:
    """Return the piece with, once for a glue-up, the keys that the lines of its joints name.

    Keys of parts that no glue-up brings together are left to what looks after joints.
    Findings: feature-unfinished.
    """
    found: dict[tuple[str, Detail], DeclaredFeature] = {}
    stages = declared.stages
    for contact in declared.contacts:
        for detail in contact.joint.details if contact.joint else ():
            stage = _closing(contact, stages) if detail.kind == "keys" else None
            if stage is None or (stage.name, detail) in found:
                continue
            if all(each in dict(detail.sizes) for each in _NEEDED):
                found[stage.name, detail] = _feature(stage, detail)
            else:
                names.findings.append(_unfinished(detail, declared.display))
    return replace(declared, features=(*declared.features, *found.values()))


def _closing(contact: Contact, stages: Sequence[Stage]) -> Stage | None:
    """Return the first glue-up that brings a guest together with one of its hosts."""
    hosts = {host.part for host in contact.hosts}
    for stage in stages:
        inside = set(_parts_in(stage, stages, frozenset()))
        if contact.guest.part in inside and hosts & inside:
            return stage
    return None


def _parts_in(stage: Stage, stages: Sequence[Stage], seen: frozenset[str]) -> Iterator[str]:
    for item in stage.items:
        inner = next((each for each in stages if each.name == item.name), None)
        if inner is None:
            yield item.name
        elif inner.name not in seen:
            yield from _parts_in(inner, stages, seen | {stage.name})


def _feature(stage: Stage, detail: Detail) -> DeclaredFeature:
    return DeclaredFeature(
        kind="keys",
        parts=(Host(stage.name, (), detail.span),),
        surfaces=(),
        sizes=detail.sizes,
        ranges=(),
        places=(),
        extent=None,
        rows=(),
        count=detail.count,
        each="corner",
        profile=None,
        after=stage.name,
        span=detail.span,
    )


def _unfinished(detail: Detail, display: Display) -> Diagnostic:
    missing = [word for word in _NEEDED if word not in dict(detail.sizes)]
    return Diagnostic(
        "feature-unfinished",
        Severity.ERROR,
        f"keys: missing is {', '.join(missing)}",
        detail.span,
        hints=(Hint(display.examples("write such as `keys 2 a corner, {3.2} thick, {25} deep`")),),
    )
