"""Clamps at every moment: enough of them, and wide enough, over work and clamp time (TRADE C3)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.box import spanning
from dryfit.geometry.frame import LENGTH, SURFACES
from dryfit.kinds.joints import is_clamped_over
from dryfit.plan.operation import ClampRow, Operation
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal, WantedCopy, WantedJoint
from dryfit.rehearsal.lipping import is_lipping, tape_is_enough
from dryfit.rehearsal.times.deeds import Deed, standing_for
from dryfit.rehearsal.times.glue_lags import OUT_OF_CLAMPS, assembly_of, lags_after
from dryfit.rehearsal.times.working_hours import Hours, moment_in_words, spoken
from dryfit.shop.shop import Shop


@dataclass(frozen=True, slots=True)
class _Use:
    """Clamps of one kind in use, from the first minute of a glue-up until they come off."""

    deed: Deed
    clamp: str
    count: int
    off: int


def clamping(deeds: tuple[Deed, ...], goal: Goal, hours: Hours, shop: Shop) -> Iterator[Fault]:
    """Yield glue-ups with too few or too short clamps, and moments when too many are in use."""
    uses: list[_Use] = []
    for deed in deeds:
        if deed.kind == "glue up":
            yield from _rows(deed, goal, shop)
            yield from _held(deed, lags_after(deed.operation, goal, shop)[OUT_OF_CLAMPS], shop)
        off = _off(deed, goal, shop)
        uses += [_Use(deed, held.resource, held.count, off) for held in deed.operation.held]
    yield from _at_once(uses, hours, shop)


def _off(deed: Deed, goal: Goal, shop: Shop) -> int:
    """Return the clock time at which the clamps of an operation are free again."""
    if deed.kind == "glue up":
        return deed.ends + lags_after(deed.operation, goal, shop)[OUT_OF_CLAMPS]
    return deed.ends + max((held.lag for held in deed.operation.held), default=0)


def _at_once(uses: Sequence[_Use], hours: Hours, shop: Shop) -> Iterator[Fault]:
    count = {clamp.name: clamp.count for clamp in shop.clamps}
    for use in uses:
        begins = use.deed.begins
        together = [
            other
            for other in uses
            if other.clamp == use.clamp
            and (other is use or other.deed.begins <= begins < other.off)
        ]
        taken, there = sum(other.count for other in together), count.get(use.clamp, 0)
        if taken > there:
            free = max(other.off for other in together if other is not use or len(together) == 1)
            yield _fault(
                use.deed,
                f"{taken} clamps `{use.clamp}` are in use at once, the shop has {there}",
                f"{use.count} free ones: not before {moment_in_words(free, hours)}"
                if use.count <= there
                else f"at most {there} of them in one glue-up",
            )


def _held(deed: Deed, off: int, shop: Shop) -> Iterator[Fault]:
    """Yield where the clamps that are held are not those that the glue-up's rows ask for."""
    said = deed.operation.glue_up
    rows = said.clamps if said is not None else ()
    for each in deed.operation.held:
        if each.lag != off:
            yield _fault(
                deed,
                f"the clamps `{each.resource}` are kept for {spoken(each.lag)}",
                f"{spoken(off)} in the clamps",
            )
    opens = {clamp.name: clamp.opens for clamp in shop.clamps}
    # From the longest on: what a bar is missing for, no shorter clamp can hold.
    held = 0
    for length in sorted({row.length for row in rows}, reverse=True):
        there = sum(clamp.count for clamp in shop.clamps if clamp.opens >= length)
        asked = held + sum(row.count for row in rows if row.length == length)
        # With too few clamps in the shop a stage takes all there are; the notes are warned.
        held = min(asked, there)
        wide = [each for each in deed.operation.held if opens.get(each.resource, 0) >= length]
        taken = sum(each.count for each in wide)
        if taken < held or not there:
            yield _fault(
                deed,
                f"{taken} clamps that open {_mm(length)} are taken, {asked} are needed",
                f"{held or asked} clamps that open {_mm(length)} or more",
            )
    asked, taken = (sum(row.count for row in rows), sum(h.count for h in deed.operation.held))
    if taken > asked:
        yield _fault(deed, f"{taken} clamps are taken, {asked} are set", f"{asked} clamps")


def _rows(deed: Deed, goal: Goal, shop: Shop) -> Iterator[Fault]:
    """Yield rows of clamps that cannot close the joints (TRADE A9.4, C3.1, C3.2).

    What the notes want pressed by weights, tape or pins takes no clamps.
    """
    said, assembly = deed.operation.glue_up, assembly_of(deed.operation, goal)
    if said is None:
        return
    if is_lipping(deed.operation):
        yield from _lip_rows(deed, said.clamps, goal, shop)
    elif assembly is None:
        yield from _panel_rows(deed, said.clamps, goal, shop)
    elif not assembly.pressed:
        yield from _assembly_rows(deed, said.clamps, goal, shop)


def _panel_rows(deed: Deed, rows: tuple[ClampRow, ...], goal: Goal, shop: Shop) -> Iterator[Fault]:
    """Yield where a panel has too few clamps: at both ends, and no farther apart than allowed."""
    panels = _copies(standing_for(deed.subject, goal), goal)
    if not panels:
        return
    long = max(copy.box.extent(copy.frame.axes[0][0]) for copy in panels)
    wide = max(copy.box.extent(copy.frame.axes[1][0]) for copy in panels)
    gaps = (long - 2 * shop.clamping["panel_end"]) / shop.clamping["panel_spacing"]
    needed = 1 + max(1, -(-gaps.numerator // gaps.denominator))
    opening = _bar_for(wide, shop)
    there = sum(row.count for row in rows if row.length >= opening)
    if there < needed:
        yield _fault(
            deed,
            f"{there} clamps over {_mm(wide)} of width press a panel {_mm(long)} long",
            f"{needed} clamps that open {_mm(opening)} or more",
        )


def _lip_rows(deed: Deed, rows: tuple[ClampRow, ...], goal: Goal, shop: Shop) -> Iterator[Fault]:
    """Yield where strips are drawn on with tape that are too thick for it, or have few clamps.

    So they may be where the shop has not clamps enough for one part.
    """
    own = {name for row in deed.operation.work for name in row.copies}
    strips = [strip for strip in goal.strips if strip.name in own]
    if all(tape_is_enough(strip, shop) for strip in strips):
        return
    hosts = _copies(frozenset(strip.on[0] for strip in strips), goal)
    for copy in hosts:
        on = [strip for strip in strips if strip.on[0] == copy.name]
        axis = SURFACES[on[0].on[1]][0]
        opening = _bar_for(copy.box.extent(copy.frame.axes[axis][0]), shop)
        long = max(strip.sizes[LENGTH] for strip in on)
        gaps = (long - 2 * shop.clamping["panel_end"]) / shop.clamping["lip_spacing"]
        needed = 1 + max(1, -(-gaps.numerator // gaps.denominator))
        there = sum(clamp.count for clamp in shop.clamps if clamp.opens >= opening)
        set_for = sum(row.count for row in rows if row.length >= opening) // len(hosts)
        if set_for < needed <= there:
            yield _fault(
                deed,
                f"{set_for} clamps press a strip {_mm(long)} long on {copy.name}",
                f"{needed} clamps that open {_mm(opening)} or more",
            )


def _assembly_rows(
    deed: Deed, rows: tuple[ClampRow, ...], goal: Goal, shop: Shop
) -> Iterator[Fault]:
    """Yield where no bar spans what tenons pull together, or a lap has no clamp of its own."""
    closed = _closed(deed.operation, goal)
    if any(joint.kind not in _DRIVEN for joint in closed) and not rows:
        yield _fault(deed, "nothing presses its joints together", "clamps, or weights in the notes")
        return
    whole = spanning(tuple(copy.box for copy in _copies(standing_for(deed.subject, goal), goal)))
    frames = {copy.name: copy.frame for part in goal.parts for copy in part.copies}
    drawn = [joint for joint in closed if joint.kind in _DRAWN]
    axes = {frames[joint.guest].axes[0][0] for joint in drawn}
    longest = max((row.length for row in rows), default=Fraction(0))
    needed = max((_bar_for(whole.extent(axis), shop) for axis in axes), default=Fraction(0))
    if longest < needed:
        yield _fault(
            deed, f"no clamp is set that opens more than {_mm(longest)}", f"{_mm(needed)} or more"
        )
    guests, bars = len({joint.guest for joint in drawn}), sum(row.count for row in rows)
    if bars < guests:
        yield _fault(deed, f"{bars} clamps draw {guests} parts to their shoulders", f"{guests}")
    laps = sum(is_clamped_over(joint.kind) for joint in closed)
    if laps and sum(row.count for row in rows) < laps:
        yield _fault(
            deed,
            f"{sum(row.count for row in rows)} clamps are set for {laps} laps",
            f"a clamp over each lap, {laps} at least",
        )


_DRIVEN = frozenset({"round tenon"})
"""Joints that are driven home, and hold by their fit until the glue does."""
_DRAWN = frozenset({"mortise and tenon", "housing", "rabbet"})
"""Joints into which a bar along the guest draws it."""


def _closed(operation: Operation, goal: Goal) -> tuple[WantedJoint, ...]:
    """Return the joints that a glue-up closes: between what enters it, not inside of that."""
    assembly = assembly_of(operation, goal)
    entering = [standing_for(name, goal) for name in assembly.of] if assembly is not None else []
    whole = frozenset(copy for each in entering for copy in each)
    return tuple(
        joint
        for joint in goal.joints
        if joint.patches
        and {joint.guest, joint.host} <= whole
        and not any({joint.guest, joint.host} <= each for each in entering)
    )


def _copies(names: frozenset[str], goal: Goal) -> tuple[WantedCopy, ...]:
    return tuple(copy for part in goal.parts for copy in part.copies if copy.name in names)


def _bar_for(dimension: Fraction, shop: Shop) -> Fraction:
    """Return how far a bar must open over a dimension: two cauls and play (TRADE C3.2)."""
    return dimension + 2 * shop.clamping["caul"] + shop.clamping["screw_play"]


def _mm(length: Fraction) -> str:
    return f"{float(length):g} mm"


def _fault(deed: Deed, message: str, needed: str) -> Fault:
    name = deed.operation.id
    return Fault(Reason.RESOURCES, f"{name}: {message}", needed, deed.step.number, name)
