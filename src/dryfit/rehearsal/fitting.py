"""What is not glued is fitted, once, and in the end everything hangs together."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from dryfit.rehearsal.deeds import Deed, fault_of
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.members import members_of


def fittings(deeds: Sequence[Deed], goal: Goal) -> Iterator[Fault]:
    """Yield what is fitted too early, twice or never (TRADE C4, D10)."""
    fits = [deed for deed in deeds if deed.operation.kind == "fit"]
    coats = [deed for deed in deeds if deed.operation.kind == "coat"]
    for deed in fits:
        late = [coat for coat in coats if coat.copies & deed.copies and coat.at > deed.at]
        if late:
            yield fault_of(
                deed,
                Reason.ORDER,
                "it is fitted before its last coat",
                f"{late[-1].operation.id} before",
            )
    fitted = Counter(name for deed in fits for name in deed.copies)
    for name, count in fitted.items():
        if count > 1:
            yield Fault(Reason.COUNT, f"{name} is fitted {count} times", "each part once")
    for name in goal.fitted:
        if name not in fitted:
            yield Fault(Reason.COUNT, f"{name} is bought and never fitted", "its place")
    for group in _apart(goal, set(fitted)):
        yield Fault(
            Reason.COUNT,
            f"{', '.join(group)}: neither glued nor fitted to the rest",
            "all parts joined to one piece",
        )


def _apart(goal: Goal, fitted: set[str]) -> list[tuple[str, ...]]:
    """Return the groups of copies that nothing holds to the piece.

    A glue-up holds its members; a copy that is fitted hangs on all that it has a joint with, and a
    group with a fitted copy stands in the piece, as a loose shelf or a tray does.  Two boxes with
    no joint from one to the other are two things that stand side by side.
    """
    groups = [set(members_of(goal, assembly.name)) for assembly in goal.assemblies]
    groups += [
        {joint.guest, joint.host} for joint in goal.joints if {joint.guest, joint.host} & fitted
    ]
    # What is made from offcuts, as buttons are, comes with what it holds.
    groups += [{copy.name} for part in goal.parts if not part.made for copy in part.copies]
    whole: list[set[str]] = []
    for group in groups:
        touching = [each for each in whole if each & group]
        whole = [each for each in whole if not each & group]
        whole.append(group.union(*touching))
    main = max(whole, key=len, default=set())
    others = [group for group in whole if group is not main and not group & fitted]
    return [tuple(sorted(group)) for group in others if len(group) == 1 or _joined(group, goal)]


def _joined(group: set[str], goal: Goal) -> bool:
    return any((joint.guest in group) != (joint.host in group) for joint in goal.joints)


def repeated(deeds: Sequence[Deed]) -> Iterator[Fault]:
    """Yield every operation that stands in the plan a second time."""
    seen: set[str] = set()
    for deed in deeds:
        if deed.operation.id in seen:
            yield fault_of(deed, Reason.COUNT, f"{deed.what} is done twice", "each deed once")
        seen.add(deed.operation.id)
