"""Glue-ups: which copies go into which, which joints each closes, and what is squared."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.geometry.box import Box, spanning
from dryfit.piece.declared import Stage
from dryfit.placing.grouping import groups_of
from dryfit.placing.model import Assembly, Joint
from dryfit.placing.site import Site

_Plane = tuple[int, int]
_FLAT = 3
"""An assembly counts as a flat frame when its least size is under a third of the next."""


def build_assemblies(
    site: Site, boxes: Mapping[str, Box], joints: Sequence[Joint]
) -> tuple[Assembly, ...]:
    """Return the glue-ups, each after those that go into it, with the joints that it closes.

    Findings: stages-in-a-circle, glued-twice, stage-without-joint, and those of grouping.
    """
    built: dict[str, tuple[Assembly, ...]] = {}
    members = {seat.name: frozenset({seat.name}) for seat in site.seating.all()}
    closed: set[str] = set()
    used: dict[str, str] = {}
    for stage in _in_order(site):
        groups = groups_of(site, stage, built, members, joints) or []
        assemblies = []
        for number, group in enumerate(groups, start=1):
            name = stage.name if stage.count == 1 else f"{stage.name} {number}"
            _note_reuse(site, stage, group, used, name)
            members[name] = frozenset(copy for each in group for copy in members[each])
            if members[name]:
                made = _assembly(site, stage, (name, group, members[name]), boxes, joints, closed)
                closed.update(made.joints)
                assemblies.append(made)
        built[stage.name] = tuple(assemblies)
        if assemblies and not any(each.joints for each in assemblies):
            inside = frozenset(copy for each in assemblies for copy in members[each.name])
            _nothing_joined(site, stage, _forgotten(site, joints, inside))
    return tuple(assembly for assemblies in built.values() for assembly in assemblies)


def copies_inside(assemblies: Sequence[Assembly]) -> Mapping[str, frozenset[str]]:
    """Return the copies in each glue-up by its name, those of the glue-ups inside it among them."""
    inside: dict[str, frozenset[str]] = {}
    for assembly in assemblies:
        inside[assembly.name] = frozenset(
            copy for each in assembly.of for copy in inside.get(each, frozenset({each}))
        )
    return inside


def _in_order(site: Site) -> list[Stage]:
    # A glue-up may be written before the one that it takes up.
    ordered: list[Stage] = []
    waiting = list(site.declared.stages)
    while waiting:
        names = {stage.name for stage in waiting}
        ready = [stage for stage in waiting if not names & {item.name for item in stage.items}]
        if not ready:
            _circle(site, waiting)
            return ordered
        ordered += ready
        waiting = [stage for stage in waiting if stage not in ready]
    return ordered


def _assembly(
    site: Site,
    stage: Stage,
    group: tuple[str, Sequence[str], frozenset[str]],
    boxes: Mapping[str, Box],
    joints: Sequence[Joint],
    closed: set[str],
) -> Assembly:
    name, entries, inside = group
    box = spanning(tuple(boxes[copy] for copy in sorted(inside)))
    axes = _square_axes(site, box, entries, inside)
    return Assembly(
        name=name,
        stage=stage.name,
        of=tuple(entries),
        joints=tuple(
            joint.id
            for joint in joints
            if joint.glued and joint.id not in closed and {joint.guest, joint.host} <= inside
        ),
        cure=stage.cure,
        box=box,
        square=(box.extent(axes[0]), box.extent(axes[1])),
        square_axes=axes,
        span=stage.span,
        glue=_glue(site, stage),
        pressed=stage.pressed,
        people=stage.people,
    )


def _glue(site: Site, stage: Stage) -> str | None:
    """Return the glue as named; inside a pattern, where no line can name it, that of the rest."""
    if stage.glue is not None or stage.span.used_by is None:
        return stage.glue
    stages = site.declared.stages
    named = sorted(each.glue for each in stages if each.glue and each.span.used_by is None)
    usual = site.shop.glues.get(site.shop.default_glue)
    if named:
        glue, why = named[0], "like the glue-ups that name one"
    elif site.declared.outdoors and usual is not None and not usual.outdoors:
        lasting = [each for each in site.shop.glues.values() if each.outdoors]
        if not lasting:
            return None
        glue, why = min(lasting, key=lambda each: each.close_within).name, "to last outdoors"
    else:
        return None
    site.assume_line(f"glue up {stage.name} takes {glue}, {why}", stage.span.used_by, None)
    return glue


def _square_axes(site: Site, box: Box, entries: Sequence[str], inside: frozenset[str]) -> _Plane:
    # What is joined from ladders or runs three ways is squared in plan, where it can be out of
    # square although its ladders are not; a frame or a case in the plane that its parts run in.
    seats = [seat for seat in site.seating.all() if seat.name in inside]
    runs = sorted({site.part(seat.part).axes[0] for seat in seats})
    if set(entries) <= inside and len(runs) == 2:
        return (runs[0], runs[1])
    sizes = sorted(range(3), key=lambda axis: (box.extent(axis), axis))
    if len(runs) < 2 or box.extent(sizes[0]) * _FLAT < box.extent(sizes[1]):
        flat = [axis for axis in range(3) if axis != sizes[0]]
        return (flat[0], flat[1])
    return (0, 1)


def _note_reuse(
    site: Site, stage: Stage, group: Sequence[str], used: dict[str, str], name: str
) -> None:
    for each in group:
        if each in used:
            finding = Diagnostic(
                "glued-twice",
                Severity.ERROR,
                f"{each} is already glued into {used[each]}",
                stage.span,
                rule="H27",
                hints=(Hint(f"name `{used[each]}` here instead of its parts"),),
            )
            if not any(
                other.code == "glued-twice" and other.span == stage.span for other in site.findings
            ):
                site.findings.append(finding)
        used[each] = name


def _forgotten(site: Site, joints: Sequence[Joint], inside: frozenset[str]) -> tuple[str, ...]:
    """Return the parts that no glue-up names although a copy inside this one is glued to them."""
    named = {item.name for stage in site.declared.stages for item in stage.items}
    part_of = {seat.name: seat.part for seat in site.seating.all()}
    mates = [
        mate
        for joint in joints
        if joint.glued
        for copy, mate in ((joint.guest, joint.host), (joint.host, joint.guest))
        if copy in inside
    ]
    parts = (part_of[mate] for mate in mates if mate in part_of)
    return tuple(dict.fromkeys(part for part in parts if part not in named))


def _nothing_joined(site: Site, stage: Stage, forgotten: Sequence[str]) -> None:
    if site.declared.broken or site.findings:
        return
    message, remedy = "", "say how they are joined, or take the line out"
    if forgotten:
        parts = " and ".join(site.written(part) for part in forgotten)
        verb = "is" if len(forgotten) == 1 and site.part(forgotten[0]).count == 1 else "are"
        message = f"; the {parts} that would hold them together {verb} in no glue-up"
        remedy = f"name the {parts} in a glue-up too"
    site.findings.append(
        Diagnostic(
            "stage-without-joint",
            Severity.ERROR,
            f"glue up {stage.name}: no joint of these is glued{message}",
            stage.span,
            rule="H28",
            hints=(Hint(remedy),),
        )
    )


def _circle(site: Site, stages: Sequence[Stage]) -> None:
    names = ", ".join(stage.name for stage in stages)
    site.findings.append(
        Diagnostic(
            "stages-in-a-circle",
            Severity.ERROR,
            f"these glue-ups take up one another: {names}",
            stages[0].name_span,
            rule="H27",
            hints=(Hint("name in each only parts and what is glued up before"),),
        )
    )
