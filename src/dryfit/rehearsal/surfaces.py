"""Coats and levelling: every surface in its turn, while it can still be reached (TRADE D)."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from dryfit.kinds.joints import is_lapped
from dryfit.rehearsal.deeds import Deed, fault_of, glued_at
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal, WantedAssembly, WantedCoats
from dryfit.rehearsal.members import members_of
from dryfit.rehearsal.sanding import grit_of, is_whole
from dryfit.shop.shop import Shop


def surfaces(deeds: Sequence[Deed], goal: Goal, shop: Shop) -> Iterator[Fault]:
    """Yield what is levelled or coated too early, too late, or not at all."""
    for coats in goal.coats:
        yield from _coated(coats, deeds, goal, shop)
    yield from _levelled(deeds, goal)
    wanted = {coats.subject for coats in goal.coats}
    for deed in deeds:
        if deed.operation.kind == "coat" and deed.subject not in wanted:
            yield fault_of(deed, Reason.SURFACE, "it is coated", "bare wood, as the notes leave it")


def _coated(coats: WantedCoats, deeds: Sequence[Deed], goal: Goal, shop: Shop) -> Iterator[Fault]:
    wanted = _products(coats, shop)
    yield from _together(coats, deeds, goal, shop)
    own = [
        deed
        for deed in deeds
        if deed.operation.kind == "coat"
        and deed.subject == coats.subject
        and deed.copies <= set(coats.copies)
    ]
    for name in coats.copies:
        got = [str(_product(deed)) for deed in own if name in deed.copies]
        if sorted(got) != sorted(wanted) and not _shared(coats, goal):
            short = Counter(wanted) - Counter(got)
            over = Counter(got) - Counter(wanted)
            said = ", ".join(
                [f"{count} x {product} too few" for product, count in sorted(short.items())]
                + [f"{count} x {product} too many" for product, count in sorted(over.items())]
            )
            yield Fault(Reason.SURFACE, f"{name}: {said}", "the coats that the notes ask for")
        elif got != wanted and not _shared(coats, goal):
            yield Fault(
                Reason.ORDER,
                f"{name}: {' before '.join(dict.fromkeys(got))}",
                " before ".join(dict.fromkeys(wanted)),
            )
    if own:
        yield from _before_coats(coats, own[0], deeds, shop)
        yield from _beside_glue(coats, own, deeds, goal)


def _together(coats: WantedCoats, deeds: Sequence[Deed], goal: Goal, shop: Shop) -> Iterator[Fault]:
    """Yield each copy of a subject with several finishes whose coats do not add up."""
    rows = [other for other in goal.coats if other.subject == coats.subject]
    if rows[0] is not coats or len(rows) == 1:
        return
    for name in dict.fromkeys(name for row in rows for name in row.copies):
        wanted = Counter(
            product for row in rows if name in row.copies for product in _products(row, shop)
        )
        got = Counter(
            str(_product(deed))
            for deed in deeds
            if deed.operation.kind == "coat"
            and deed.subject == coats.subject
            and name in deed.copies
        )
        if got != wanted:
            yield Fault(
                Reason.SURFACE,
                f"{name}: {_counted(got)}",
                f"{_counted(wanted)}, as the notes ask for",
            )


def _counted(coats: Counter[str]) -> str:
    return " and ".join(f"{count} x {product}" for product, count in sorted(coats.items()))


def _products(coats: WantedCoats, shop: Shop) -> list[str]:
    wanted: list[str] = []
    for product, count, _ in coats.products:
        known = shop.finishes.get(product)
        wanted += [product] * (count or (known.coats if known else 1))
    return wanted


def _product(deed: Deed) -> object:
    return next((s.value for s in deed.operation.settings if s.axis == "product"), None)


def _shared(coats: WantedCoats, goal: Goal) -> bool:
    # One part with two finishes on different surfaces: its coats go by the same name.
    return sum(other.subject == coats.subject for other in goal.coats) > 1


def _before_coats(
    coats: WantedCoats, first: Deed, deeds: Sequence[Deed], shop: Shop
) -> Iterator[Fault]:
    for name in coats.copies:
        sanded = [
            deed
            for deed in deeds[: first.at]
            if deed.operation.kind == "sand" and name in deed.copies
        ]
        counted = [deed for deed in sanded if coats.surfaces or is_whole(deed)]
        missing = [grit for grit in shop.sanding.grits if grit not in map(grit_of, counted)]
        if missing:
            yield fault_of(
                first,
                Reason.SURFACE,
                f"{name} is coated but not sanded with {' and '.join(missing)}",
                "all grits before the first coat (D1)",
            )
        yield from _late(name, first, deeds)


def _late(name: str, first: Deed, deeds: Sequence[Deed]) -> Iterator[Fault]:
    eased = [d for d in deeds if d.operation.kind == "ease edges" and name in d.copies]
    if not any(deed.at < first.at for deed in eased):
        yield fault_of(
            first,
            Reason.SURFACE,
            f"the edges of {name} are not eased when it is coated",
            "edges eased before the first coat (D4)",
        )
    for deed in deeds:
        if deed.at < first.at or name not in deed.copies or first.operation is deed.operation:
            continue
        if deed.operation.kind in {"sand", "ease edges", "level"}:
            yield fault_of(
                deed,
                Reason.SURFACE,
                f"{deed.what} takes the first coat off {name} again",
                f"{deed.what} before the first coat",
            )
        elif any(work.features for work in deed.operation.work):
            yield fault_of(
                deed,
                Reason.ORDER,
                f"{name} is cut when it has its first coat",
                "cuts before the finish (D10)",
            )


def _beside_glue(
    coats: WantedCoats, own: list[Deed], deeds: Sequence[Deed], goal: Goal
) -> Iterator[Fault]:
    """Coats keep to the side of the glue-up on which the notes want them (D8, D9, H61)."""
    glued = glued_at(deeds, goal)
    for assembly in goal.assemblies:
        at = glued.get(assembly.name)
        inside = set(coats.copies) & set(members_of(goal, assembly.name))
        if at is None or not inside or not _gets_glue(inside, assembly.name, goal):
            continue
        early = coats.before in {assembly.name, assembly.stage}
        for deed in own:
            if early and deed.at > at:
                yield fault_of(
                    deed,
                    Reason.ORDER,
                    f"it is coated after the glue-up of {assembly.name}",
                    "coats before that glue-up, as the notes want it",
                )
            elif not early and deed.at < at and coats.before is None:
                yield fault_of(
                    deed,
                    Reason.SURFACE,
                    f"coats lie where the glue of {assembly.name} has to hold",
                    "coats after the glue-up, or a finish that the notes want before it",
                )


def _gets_glue(inside: set[str], assembly: str, goal: Goal) -> bool:
    whole = set(members_of(goal, assembly))
    return any(
        joint.patches and {joint.guest, joint.host} <= whole and {joint.guest, joint.host} & inside
        for joint in goal.joints
    )


def _levelled(deeds: Sequence[Deed], goal: Goal) -> Iterator[Fault]:
    """Laps and the ends of horns are planed level once glued, before the paper (B1, C2.4)."""
    glued = glued_at(deeds, goal)
    for assembly in goal.assemblies:
        levelled = _laps_closed(assembly.name, assembly.of, goal) or _horned(assembly, goal)
        if assembly.name not in glued or not levelled:
            continue
        level = [d for d in deeds if d.operation.kind == "level" and d.subject == assembly.name]
        if not level or level[0].at < glued[assembly.name]:
            step = level[0].step if level else None
            yield Fault(
                Reason.ORDER,
                f"{assembly.name} has joints that are not levelled after its glue-up",
                "a levelling between glue-up and sanding",
                step,
            )
            continue
        inside = set(members_of(goal, assembly.name))
        missing = inside - level[0].copies - _coated_before(assembly, goal)
        if missing:
            names = ", ".join(sorted(missing))
            yield fault_of(level[0], Reason.SURFACE, f"{names} is left out", "all of the frame")
        for deed in deeds[glued[assembly.name] : level[0].at]:
            if deed.operation.kind in {"sand", "ease edges", "coat"} and deed.copies & inside:
                yield fault_of(
                    deed,
                    Reason.ORDER,
                    f"{deed.what} comes before the joints of {assembly.name} are levelled",
                    "the levelling before",
                )


def _laps_closed(name: str, of: tuple[str, ...], goal: Goal) -> bool:
    whole = set(members_of(goal, name))
    units = [set(members_of(goal, each)) for each in of]
    return any(
        (is_lapped(joint.kind) or joint.stands_out)
        and {joint.guest, joint.host} <= whole
        and not any({joint.guest, joint.host} <= unit for unit in units)
        for joint in goal.joints
    )


def _horned(assembly: WantedAssembly, goal: Goal) -> bool:
    """Return whether a glue-up takes in parts whose horns are sawn off after it."""
    return any(
        part.horns and copy.name in assembly.of for part in goal.parts for copy in part.copies
    )


def _coated_before(assembly: WantedAssembly, goal: Goal) -> set[str]:
    """Return what has its finish by that glue-up, and is kept from the plane."""
    return {
        name
        for coats in goal.coats
        if coats.before in {assembly.name, assembly.stage}
        for name in coats.copies
    }
