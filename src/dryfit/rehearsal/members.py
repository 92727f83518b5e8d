"""The copies in an assembly, those of the assemblies inside it among them."""

from __future__ import annotations

from dryfit.rehearsal.goal import Goal


def members_of(goal: Goal, name: str) -> tuple[str, ...]:
    """Return the copies in an assembly; of anything else, the name itself."""
    for assembly in goal.assemblies:
        if assembly.name == name:
            inside = (copy for each in assembly.of for copy in members_of(goal, each))
            return tuple(dict.fromkeys(inside))
    return (name,)
