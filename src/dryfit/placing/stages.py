"""Glue-ups: which copies go into which, which joints each closes, and what is squared."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.geometry.box import Box, spanning
from dryfit.piece.declared import PLACE_SIDE, Stage, StageItem
from dryfit.placing.copies import Seat
from dryfit.placing.model import Assembly, Joint
from dryfit.placing.site import Site

_Plane = tuple[int, int]

_FLAT = 3
"""An assembly counts as a flat frame when its least size is under a third of the next."""


def build_assemblies(
    site: Site, boxes: Mapping[str, Box], joints: Sequence[Joint]
) -> tuple[Assembly, ...]:
    """Return the glue-ups in the order of the notes, each with the joints that it closes.

    Findings: glued-more-than-there-are, stage-unclear, stage-without-joint, glued-twice.
    """
    built: dict[str, tuple[Assembly, ...]] = {}
    members: dict[str, frozenset[str]] = {
        seat.name: frozenset({seat.name}) for seat in site.seating.all()
    }
    closed: set[str] = set()
    used: dict[str, str] = {}
    for stage in site.declared.stages:
        groups = _groups(site, stage, built, members, joints)
        if groups is None:
            continue
        assemblies = []
        for number, group in enumerate(groups, start=1):
            name = stage.name if stage.count == 1 else f"{stage.name} {number}"
            _note_reuse(site, stage, group, used, name)
            inside = frozenset(copy for each in group for copy in members[each])
            members[name] = inside
            closes = tuple(
                joint.id
                for joint in joints
                if joint.glued and joint.id not in closed and {joint.guest, joint.host} <= inside
            )
            closed.update(closes)
            box = spanning(tuple(boxes[copy] for copy in sorted(inside)))
            axes = _square_axes(site, box, group, inside)
            assemblies.append(
                Assembly(
                    name=name,
                    stage=stage.name,
                    of=tuple(group),
                    joints=closes,
                    cure=stage.cure,
                    box=box,
                    square=(box.extent(axes[0]), box.extent(axes[1])),
                    square_axes=axes,
                    span=stage.span,
                )
            )
        built[stage.name] = tuple(assemblies)
    return tuple(assembly for assemblies in built.values() for assembly in assemblies)


def _square_axes(site: Site, box: Box, group: Sequence[str], inside: frozenset[str]) -> _Plane:
    # What is joined from ladders or runs three ways is squared in plan, where it can be out of
    # square although its ladders are not; a frame or a case in the plane that its parts run in.
    seats = [seat for seat in site.seating.all() if seat.name in inside]
    runs = sorted({site.part(seat.part).axes[0] for seat in seats})
    if set(group) <= inside and len(runs) == 2:
        return (runs[0], runs[1])
    sizes = sorted(range(3), key=lambda axis: (box.extent(axis), axis))
    if len(runs) < 2 or box.extent(sizes[0]) * _FLAT < box.extent(sizes[1]):
        flat = [axis for axis in range(3) if axis != sizes[0]]
        return (flat[0], flat[1])
    return (0, 1)


def _groups(
    site: Site,
    stage: Stage,
    built: Mapping[str, tuple[Assembly, ...]],
    members: Mapping[str, frozenset[str]],
    joints: Sequence[Joint],
) -> list[list[str]] | None:
    pools = [_pool(site, item, built) for item in stage.items]
    for item, pool in zip(stage.items, pools, strict=True):
        wanted = stage.count * (item.count if item.count is not None else 0)
        if wanted > len(pool):
            _too_many(site, stage, item, wanted, len(pool))
            return None
    if stage.count == 1:
        return [
            [
                name
                for item, pool in zip(stage.items, pools, strict=True)
                for name in pool[: item.count if item.count is not None else len(pool)]
            ]
        ]
    best: tuple[int, list[list[str]]] | None = None
    for axis in (0, 1, 2):
        groups = _split(site, stage, pools, members, axis)
        if groups is None:
            continue
        score = sum(
            1
            for group in groups
            for joint in joints
            if {joint.guest, joint.host} <= {copy for each in group for copy in members[each]}
        )
        if best is None or score > best[0]:
            best = (score, groups)
    if best is None:
        _unclear(site, stage)
        return None
    return best[1]


def _pool(site: Site, item: StageItem, built: Mapping[str, tuple[Assembly, ...]]) -> list[str]:
    if item.name in built:
        return [assembly.name for assembly in built[item.name]]
    return [seat.name for seat in site.seats(item.name) if set(item.places) <= set(seat.places)]


def _split(
    site: Site,
    stage: Stage,
    pools: Sequence[list[str]],
    members: Mapping[str, frozenset[str]],
    axis: int,
) -> list[list[str]] | None:
    sides = [word for word, (own, _) in PLACE_SIDE.items() if own == axis]
    if stage.count != len(sides):
        return None
    groups: list[list[str]] = []
    for word in sides:
        group: list[str] = []
        for item, pool in zip(stage.items, pools, strict=True):
            chosen = [name for name in pool if _on_side(site, members[name], word)]
            wanted = item.count if item.count is not None else len(chosen)
            if len(chosen) != wanted or not chosen:
                return None
            group += chosen
        groups.append(group)
    return groups


def _on_side(site: Site, copies: frozenset[str], word: str) -> bool:
    seats: list[Seat] = [seat for seat in site.seating.all() if seat.name in copies]
    return bool(seats) and all(word in seat.places for seat in seats)


def _note_reuse(
    site: Site, stage: Stage, group: Sequence[str], used: dict[str, str], name: str
) -> None:
    for each in group:
        if each in used:
            site.findings.append(
                Diagnostic(
                    "glued-twice",
                    Severity.ERROR,
                    f"{each} is already glued into {used[each]}",
                    stage.span,
                    rule="H27",
                    hints=(Hint(f"name `{used[each]}` here instead of its parts"),),
                )
            )
        used[each] = name


def _too_many(site: Site, stage: Stage, item: StageItem, wanted: int, there: int) -> None:
    site.findings.append(
        Diagnostic(
            "glued-more-than-there-are",
            Severity.ERROR,
            f"{stage.name}: {wanted} {item.name} are glued up, but the piece has {there}",
            item.span,
            rule="H27",
            hints=(Hint("write how many go into one glue-up, not into all together"),),
        )
    )


def _unclear(site: Site, stage: Stage) -> None:
    site.findings.append(
        Diagnostic(
            "stage-unclear",
            Severity.ERROR,
            f"{stage.count} {stage.name}: which copies go into which?",
            stage.span,
            rule="H27",
            hints=(Hint("write one line for each glue-up, with names such as `front left leg`"),),
        )
    )
