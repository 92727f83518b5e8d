"""H28: a glue-up whose members nothing holds together comes out of the clamps in several pieces."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.notes.names import plural
from dryfit.placing.model import Assembly, Model
from dryfit.placing.stages import copies_inside

Group = frozenset[str]


def check_glued_apart(model: Model) -> Iterator[Diagnostic]:
    """Yield each stage that comes out in several pieces and that a larger glue-up takes in as one.

    What nothing takes in may well be two frames in one set of clamps.  Findings: glued-apart.
    """
    taken_in = {name for assembly in model.assemblies for name in assembly.of}
    told: set[str] = set()
    copies = copies_inside(model.assemblies)
    for assembly in model.assemblies:
        inside = {name: copies.get(name, frozenset({name})) for name in assembly.of}
        groups = [each for each in _groups(model, inside) if len(each) > 1]
        needed = assembly.name in taken_in and assembly.stage not in told
        if len(groups) > 1 and needed:
            told.add(assembly.stage)
            yield _apart(model, assembly, groups)


def _groups(model: Model, inside: Mapping[str, frozenset[str]]) -> list[Group]:
    """Return the members that joints hold together, each group in the order of the notes."""
    member_of = {copy: name for name, held in inside.items() for copy in held}
    group_of = {name: frozenset({name}) for name in inside}
    for joint in model.joints:
        pair = (member_of.get(joint.guest), member_of.get(joint.host))
        if pair[0] is None or pair[1] is None:
            continue
        both = group_of[pair[0]] | group_of[pair[1]]
        group_of.update(dict.fromkeys(both, both))
    return list(dict.fromkeys(group_of.values()))


def _apart(model: Model, assembly: Assembly, groups: Sequence[Group]) -> Diagnostic:
    counts = [_counted(model, assembly, group) for group in groups]
    remedy = "write a glue-up for each of them, and one that brings them together"
    if all(each == counts[0] for each in counts):
        items = ", ".join(
            f"{many} {plural(name) if many > 1 else name}" for name, many in counts[0].items()
        )
        many = len(groups)
        remedy = f"write `glue up {many} {plural(assembly.stage)}: {items}`"
    listed = " and ".join(
        " with ".join(f"{many} {plural(name) if many > 1 else name}" for name, many in each.items())
        for each in counts
    )
    return finding(
        "H28",
        "glued-apart",
        Severity.ERROR,
        f"glue up {assembly.stage}: no joint holds all of it together, so that {len(groups)} "
        f"pieces come out of it: {listed}",
        assembly.span,
        figures={},
        remedy=remedy,
    )


def _counted(model: Model, assembly: Assembly, group: Group) -> Counter[str]:
    """Return how many of each part, or of each earlier glue-up, are in the group."""
    stages = {each.name: each.stage for each in model.assemblies}
    return Counter(
        stages[name] if name in stages else model.part_of(name).name
        for name in assembly.of
        if name in group
    )
