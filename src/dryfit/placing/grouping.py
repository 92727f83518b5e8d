"""Which copies go into which glue-up, where several alike are glued."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.piece.declared import PLACE_SIDE, Stage, StageItem
from dryfit.placing.model import Assembly, Joint
from dryfit.placing.seats import counted
from dryfit.placing.site import Site

Members = Mapping[str, frozenset[str]]
"""The copies inside each copy or assembly, by its name."""


def groups_of(
    site: Site,
    stage: Stage,
    built: Mapping[str, Sequence[Assembly]],
    members: Members,
    joints: Sequence[Joint],
) -> list[list[str]] | None:
    """Return what goes into each of a stage's assemblies, or None when that cannot be told.

    What stands inside one copy of a pattern is glued up within it.  Copies that are joined to one
    another belong together; where that does not settle it, those at one side of the piece.
    Findings: glued-more-than-there-are, stage-unclear.
    """
    pools = [_pool(site, item, built) for item in stage.items]
    for item, pool in zip(stage.items, pools, strict=True):
        wanted = stage.count * (item.count if item.count is not None else 0)
        if wanted > len(pool):
            _too_many(site, stage, item, wanted, len(pool))
            return None
    groups: list[list[str]] = []
    inside = _by_instance(site, pools, members)
    for own in inside:
        one = replace(stage, count=stage.count // len(inside))
        found = _groups_of_one(site, one, own, members, joints)
        if found is None:
            if not site.declared.broken:
                _unclear(site, stage)
            return None
        groups += found
    return groups


def _groups_of_one(
    site: Site,
    stage: Stage,
    pools: Sequence[list[str]],
    members: Members,
    joints: Sequence[Joint],
) -> list[list[str]] | None:
    if stage.count == 1:
        taken = zip(stage.items, pools, strict=True)
        return [[name for item, pool in taken for name in _taken(item, pool)]]
    groups = _joined(stage, pools, members, joints)
    for axis in (0, 1, 2):
        groups = groups or _on_one_side(site, stage, pools, members, axis)
    return groups


def _by_instance(site: Site, pools: Sequence[list[str]], members: Members) -> list[list[list[str]]]:
    """Return the pools once for each copy of the pattern inside which all of them stand."""
    within = {seat.name: seat.within for seat in site.seating.all()}
    homes = {name: {within[copy] for copy in members[name]} for pool in pools for name in pool}
    instances = list(dict.fromkeys(home for own in homes.values() for home in sorted(own, key=str)))
    if None in instances or any(len(own) != 1 for own in homes.values()):
        return [list(pools)]
    return [
        [[name for name in pool if instance in homes[name]] for pool in pools]
        for instance in instances
    ] or [list(pools)]


def _pool(site: Site, item: StageItem, built: Mapping[str, Sequence[Assembly]]) -> list[str]:
    if item.name in built:
        return [assembly.name for assembly in built[item.name]]
    return [seat.name for seat in site.seats(item.name) if set(item.places) <= set(seat.places)]


def _taken(item: StageItem, pool: list[str]) -> list[str]:
    return pool if item.count is None else pool[: item.count]


def _joined(
    stage: Stage, pools: Sequence[list[str]], members: Members, joints: Sequence[Joint]
) -> list[list[str]] | None:
    entries = [name for pool in pools for name in pool]
    entry_of = {copy: name for name in entries for copy in members[name]}
    group_of = {name: name for name in entries}
    for joint in joints:
        one, two = entry_of.get(joint.guest), entry_of.get(joint.host)
        if joint.glued and one and two and group_of[one] != group_of[two]:
            old, new = group_of[two], group_of[one]
            group_of = {name: new if at == old else at for name, at in group_of.items()}
    groups = [
        [name for name in entries if group_of[name] == root]
        for root in dict.fromkeys(group_of[name] for name in entries)
    ]
    return groups if len(groups) == stage.count and _as_asked(stage, pools, groups) else None


def _as_asked(stage: Stage, pools: Sequence[list[str]], groups: Sequence[Sequence[str]]) -> bool:
    for item, pool in zip(stage.items, pools, strict=True):
        counts = {len(set(pool) & set(group)) for group in groups}
        wanted = {item.count} if item.count is not None else counts
        if counts != wanted or len(counts) != 1:
            return False
    return True


def _on_one_side(
    site: Site, stage: Stage, pools: Sequence[list[str]], members: Members, axis: int
) -> list[list[str]] | None:
    sides = [word for word, (own, _) in PLACE_SIDE.items() if own == axis]
    if stage.count != len(sides):
        return None
    places = {seat.name: seat.places for seat in site.seating.all()}
    groups = [
        [
            name
            for pool in pools
            for name in pool
            if all(word in places[copy] for copy in members[name])
        ]
        for word in sides
    ]
    return groups if _as_asked(stage, pools, groups) and all(groups) else None


def _too_many(site: Site, stage: Stage, item: StageItem, wanted: int, there: int) -> None:
    site.findings.append(
        Diagnostic(
            "glued-more-than-there-are",
            Severity.ERROR,
            f"glue up {stage.name}: {counted(wanted, item.name)} are glued up, but the piece has "
            f"{there}",
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
            f"{counted(stage.count, stage.name)}: which copies go into which?",
            stage.span,
            rule="H27",
            hints=(Hint("write one line for each glue-up, with names such as `front left leg`"),),
        )
    )
