"""Screws across the grain of a broad part: one row holds it, the others let it move (TRADE B17).

A board that is screwed fast at two places across its grain splits or bows (G8): the holes away
from one row are slots.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.frame import LENGTH, SURFACES, THICKNESS, WIDTH
from dryfit.joinery.feature import Feature, Range
from dryfit.joinery.screws import BROAD
from dryfit.placing.model import Copy, Joint, Part
from dryfit.placing.site import Site

_APART = Fraction(100)
"""Rows of screws in solid wood are fixed no further apart across its grain (TRADE B17)."""

_ROOM = Fraction(1)
_STEP = Fraction(1, 2)
_HOLES = frozenset({"screw hole", "pilot hole"})


@dataclass(frozen=True, slots=True)
class ScrewSlots:
    """Holes of which all but one row are slotted across the grain of `mover`; mm.

    `passed` is the part that the screws pass, which has the slots; `holes` are the ids of its
    features that are slotted: the row nearest to the middle is not.  `apart` is how far the rows
    furthest from one another are, `moves` what the wood between the fixed row and the furthest
    other moves over a year, `slot` how long the slots are.
    """

    mover: str
    passed: str
    holes: tuple[str, ...]
    apart: Fraction
    moves: Fraction
    slot: Fraction
    span: Span | None


def screw_slots(parts: Sequence[Part], joints: Sequence[Joint]) -> tuple[ScrewSlots, ...]:
    """Return the slots that broad solid parts need, in the order of the parts.

    Slats and sheets need none, nor does what is screwed to one board that moves as it does.
    """
    solid = [part for part in parts if part.stock == "solid" and not part.made]
    return tuple(
        slots
        for part in solid
        for slots in (
            *_of_slid_panel(part, joints),
            *(_slots_of(part, parts, joints) if part.width > BROAD else ()),
        )
    )


def _of_slid_panel(part: Part, joints: Sequence[Joint]) -> Iterator[ScrewSlots]:
    """Yield the slots of a solid panel that slides into its grooves across its grain.

    The groove at its front holds it, so that it moves away from that (TRADE B20): all its screws
    stand in slots.
    """
    holes = [each for each in part.features if each.role == "screw hole" and _in_a_face(each)]
    wide = part.copies[0].frame.axes[WIDTH][0]
    own = [each for each in joints if each.guest == part.copies[0].name]
    flat = [axis for axis, _ in part.copies[0].frame.axes[:THICKNESS]]
    stops = [
        each
        for each in own
        if each.kind == "slid panel" and min(flat, key=each.region.extent) == wide
    ]
    if len(stops) != 1 or not holes:
        return
    moves = part.moving.over_the_year(part.width)
    widest = max(each.across[1] - each.across[0] for each in holes)
    slot = -(-(widest + moves + _ROOM) // _STEP) * _STEP
    ids = tuple(each.id for each in holes)
    yield ScrewSlots(part.name, part.name, ids, Fraction(0), moves, slot, holes[0].span)


def assume_screw_slots(site: Site, parts: Sequence[Part], joints: Sequence[Joint]) -> None:
    """List the slots among what is taken for granted, with the movement that asks for them."""
    display = site.declared.display
    for slots in screw_slots(parts, joints):
        site.moved.add(slots.mover)
        moves = display.movement(slots.moves)
        if not slots.apart:
            site.assume_line(
                f"the {slots.mover} is solid and held by the groove that it slides up to: it grows "
                f"and shrinks by {moves} over the year at its other end, so that its screw holes "
                f"are slots {display.with_unit(slots.slot)} long that way",
                slots.span,
                None,
            )
            continue
        site.assume_line(
            f"the {slots.mover} is screwed to the {_other(slots, parts)} over "
            f"{display.shown(slots.apart)} across its grain, where it moves {moves} over the year: "
            f"one row of screws holds it, and the other holes in the {slots.passed} are slots "
            f"{display.with_unit(slots.slot)} long across that grain",
            slots.span,
            None,
        )


def _other(slots: ScrewSlots, parts: Sequence[Part]) -> str:
    if slots.passed != slots.mover:
        return slots.passed
    part = next(each for each in parts if each.name == slots.mover)
    mates = (each.mate for each in part.features if each.id in slots.holes and each.mate)
    return " and ".join(dict.fromkeys(mates))


def _slots_of(part: Part, parts: Sequence[Part], joints: Sequence[Joint]) -> Iterator[ScrewSlots]:
    holes = [feature for feature in part.features if _in_a_face(feature)]
    if not holes or _moves_along(part, parts, joints):
        return
    for passed, in_part, holes_passed in _groups(part, holes, parts):
        rows = sorted({_middle(feature.across) for feature in in_part})
        apart = rows[-1] - rows[0]
        if apart <= _APART:
            continue
        fixed = _nearest_to_middle(rows)
        front = _front_of_runner(passed, joints, parts)
        reach = max(rows[-1] - fixed, fixed - rows[0]) if front is None else apart
        moves = part.moving.over_the_year(reach)
        # TRADE B18: the movement either way, the screw and 1 mm.
        widest = max(feature.across[1] - feature.across[0] for feature in holes_passed)
        slot = -(-(widest + 2 * moves + _ROOM) // _STEP) * _STEP
        ids = _off_the_fixed_row(holes_passed, front, across=passed == part.name)
        yield ScrewSlots(part.name, passed, ids, apart, moves, slot, holes_passed[0].span)


def _off_the_fixed_row(
    holes: Sequence[Feature], front: int | None, *, across: bool
) -> tuple[str, ...]:
    """Return the ids of holes that are slotted; their rows lie along a cleat, or `across`.

    The row nearest to the middle is not; of a runner that at its `front` end (0 or -1 of the rows),
    so that the drawer's front stays flush (TRADE B21).
    """
    row_of = {each.id: _middle(each.across if across else each.along) for each in holes}
    rows = sorted(set(row_of.values()))
    fixed = _nearest_to_middle(rows) if front is None else rows[front]
    return tuple(name for name, row in row_of.items() if row != fixed)


def _front_of_runner(name: str, joints: Sequence[Joint], parts: Sequence[Part]) -> int | None:
    """Return which of a runner's holes, in order from R, is in front: 0 or -1; None for others."""
    copies = {copy.name: copy for part in parts if part.name == name for copy in part.copies}
    for joint in joints:
        if joint.kind == "runner" and joint.guest in copies:
            return 0 if copies[joint.guest].frame.axes[LENGTH][1] > 0 else -1
    return None


def _nearest_to_middle(rows: Sequence[Fraction]) -> Fraction:
    middle = (rows[0] + rows[-1]) / 2
    return min(rows, key=lambda row: (abs(row - middle), row))


def _in_a_face(feature: Feature) -> bool:
    return feature.role in _HOLES and SURFACES[feature.surface][0] == THICKNESS


def _middle(extent: Range) -> Fraction:
    return sum(extent, Fraction(0)) / 2


def _groups(
    part: Part, holes: Sequence[Feature], parts: Sequence[Part]
) -> Iterator[tuple[str, list[Feature], list[Feature]]]:
    """Yield what holds a part together: the part passed, the part's holes, and those to slot.

    Where the part itself is passed its mates hold it together; what it is held on by, as by
    cleats, holds it each for itself.
    """
    own = [feature for feature in holes if feature.role == "screw hole"]
    if own:
        yield part.name, own, own
    for other in parts:
        pilots = [each for each in holes if each.role == "pilot hole" and each.mate == other.name]
        theirs = [
            feature
            for feature in other.features
            if feature.role == "screw hole" and feature.mate == part.name
        ]
        if pilots and theirs:
            yield other.name, pilots, theirs


def _moves_along(part: Part, parts: Sequence[Part], joints: Sequence[Joint]) -> bool:
    """Return whether all that each copy is screwed to moves as it does across its grain.

    What runs another way may still swell along the same axis, as two sides of a box do; but what
    stands at two places across the grain, as two rails under a top, keeps its distance.
    """
    piece_of = {copy.name: (each, copy) for each in parts for copy in each.copies}
    for copy in part.copies:
        wide, at = copy.frame.axes[WIDTH][0], set[Fraction]()
        for joint in joints:
            if joint.kind != "screws" or copy.name not in {joint.guest, joint.host}:
                continue
            mate = piece_of.get(joint.host if joint.guest == copy.name else joint.guest)
            if mate is None:
                continue
            if _grain(*mate) in {None, wide}:
                return False
            at.add(joint.region.low[wide] + joint.region.high[wide])
        if len(at) > 1:
            return False
    return True


def _grain(part: Part, copy: Copy) -> int | None:
    return copy.frame.axes[LENGTH][0] if part.stock == "solid" else None
