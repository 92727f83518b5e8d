"""What a glue-up and its dry fit list is what comes together in them (TRADE C1.5, C1.6, C3.5)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.geometry.box import Box, spanning
from dryfit.plan.operation import GlueUp
from dryfit.rehearsal.deeds import Deed, fault_of
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal, WantedAssembly
from dryfit.rehearsal.horns import with_horns
from dryfit.rehearsal.members import members_of

PLAY = Fraction(1, 100)
"""Of a diagonal: it is printed as a decimal figure; mm."""


def listing(deeds: Sequence[Deed], goal: Goal) -> Iterator[Fault]:
    """Yield dry fits and glue-ups that list other things than come together, or other diagonals."""
    assemblies = {assembly.name: assembly for assembly in goal.assemblies}
    for deed in deeds:
        assembly = assemblies.get(deed.subject)
        if assembly is None:
            continue
        if deed.operation.kind == "dry fit":
            yield from _same(deed, tuple(deed.copies), members_of(goal, assembly.name))
        elif deed.operation.kind == "glue up":
            yield from _same(deed, tuple(deed.copies), assembly.of)
            if deed.operation.glue_up is not None:
                yield from _printed(deed, deed.operation.glue_up, assembly, goal)


WITHOUT_COPIES = frozenset({"fit", "measure", "dry fit"})
"""Kinds of deeds that may name no copies: knobs are none, staves are tried by their panel."""


def rows(deeds: Sequence[Deed], goal: Goal) -> Iterator[Fault]:
    """Yield work on nothing, twice on one copy, or on the copies of another part than it names."""
    part_of = {copy.name: part.name for part in goal.parts for copy in part.copies}
    names = set(part_of.values())
    for deed in deeds:
        operation = deed.operation
        # What a cut of a board frees may be cut further, or be a spare.
        edge = operation.kind == "straight edge" and not operation.work
        told = operation.kind in WITHOUT_COPIES or operation.board_cuts or edge
        if not told and not (operation.work and all(row.copies for row in operation.work)):
            yield fault_of(deed, Reason.COUNT, "nothing is named that it is done to", "its copies")
        for row in operation.work:
            if len(set(row.copies)) < len(row.copies):
                yield fault_of(deed, Reason.COUNT, "a copy is named twice in it", "each copy once")
            of = {part_of[name] for name in row.copies if name in part_of}
            if row.part in names and of and of != {row.part}:
                yield fault_of(
                    deed,
                    Reason.COUNT,
                    f"{row.part} is named for copies of {', '.join(sorted(of))}",
                    "copies of the part that is named",
                )


def _printed(deed: Deed, said: GlueUp, assembly: WantedAssembly, goal: Goal) -> Iterator[Fault]:
    yield from _same(deed, said.parts, assembly.of)
    if said.stage != assembly.name:
        yield fault_of(deed, Reason.COUNT, f"it is called {said.stage}", assembly.name)
    members = set(members_of(goal, assembly.name))
    parts = zip(goal.parts, with_horns(goal).parts, strict=True)
    boxes = [
        (longer if longer.name in assembly.of else copy).box
        for part, horned in parts
        for copy, longer in zip(part.copies, horned.copies, strict=True)
        if copy.name in members
    ]
    if not boxes:
        return
    across = _squares(spanning(tuple(boxes)))
    for name, length in said.diagonals:
        exact = Fraction(length)
        if not any((exact - PLAY) ** 2 < each < (exact + PLAY) ** 2 for each in across):
            yield fault_of(
                deed,
                Reason.SIZE,
                f"{name} is said to be {float(exact):.1f}",
                "the diagonal of one of its sides",
            )


def _squares(box: Box) -> tuple[Fraction, ...]:
    """Return the squares of the diagonals of the three sides of a box."""
    long = [box.extent(axis) for axis in range(3)]
    return tuple(long[one] ** 2 + long[two] ** 2 for one, two in ((0, 1), (0, 2), (1, 2)))


def _same(deed: Deed, listed: tuple[str, ...], wanted: tuple[str, ...]) -> Iterator[Fault]:
    missing, strange = sorted(set(wanted) - set(listed)), sorted(set(listed) - set(wanted))
    if missing:
        yield fault_of(
            deed, Reason.COUNT, f"{', '.join(missing)} is not listed", "all that comes together"
        )
    if strange or len(set(listed)) < len(listed):
        what = ", ".join(strange) or "one of its parts"
        yield fault_of(
            deed, Reason.COUNT, f"{what} is listed too often", "each part once, and no other"
        )
