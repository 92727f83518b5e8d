"""Keys across glued corners: slots in a cradle, keys glued in, trimmed flush (TRADE B12.1, C4.6).

The frame stands on a corner in the V of a cradle, a face against the saw's fence.  A slot that
lies as far from the other face is cut with the frame turned over, at the same fence.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.frame import SURFACES
from dryfit.joinery.feature import Feature
from dryfit.operations import setting_of, through_cuts
from dryfit.operations.batch import Batch
from dryfit.operations.gluing.hardening import hard_first, with_all_inside
from dryfit.operations.members import all_copies, levelled, parts_of, work_inside
from dryfit.operations.minutes import tenths, worked
from dryfit.operations.ways.cross_cuts import A_HAIR
from dryfit.operations.words import spoken
from dryfit.placing.model import Assembly, Copy, Model, Part
from dryfit.plan.operation import Detail, Operation, Rule, Work
from dryfit.shop.shop import Shop

CRADLE = "cradle"
LARGEST = Fraction(900)
"""The longest side of a frame that a maker can stand on its corner on a saw: a guess of ours."""
_HOLDS = 4 * 60 * 10
"""What a mitre holds before its corner is sawn into, at least, tenths of a minute (B12.1)."""
_DRY = 2 * 60 * 10
"""From the glue of the keys to their trimming, tenths of a minute (B12.1)."""
WHY_CURED = "the mitres hold while their corner is sawn into"
WHY_SLOTS = "the keys are fitted to their slots"
WHY_DRY = "a key that is planed while its glue is soft is drawn out of its slot"
WHY_TRIMMED = "the keys stand proud until they are trimmed"


@dataclass(frozen=True, slots=True)
class _Slot:
    """A slot in one member: the feature, and the copies of one hand that carry it."""

    part: Part
    feature: Feature
    copies: tuple[Copy, ...]
    from_face: Fraction
    thick: Fraction
    deep: Fraction


def keyed(
    model: Model, glue_ups: Mapping[str, Operation], after: Iterable[Operation], shop: Shop
) -> Batch:
    """Return the slots, the keys and their trimming for every glue-up that has keys.

    `after` are the operations on surfaces: those on the frame's parts wait for the trimming.
    """
    surfaces = tuple(after)
    operations: list[Operation] = []
    rules: list[Rule] = []
    for assembly in model.assemblies:
        slots = _slots(assembly, model)
        if not slots:
            continue
        cuts = _cuts(assembly, slots, shop)
        glued = _glued(assembly, slots, model, shop)
        trimmed = _trimmed(assembly, slots, model, shop)
        operations += [*cuts, glued, trimmed]
        rules += _rules(assembly, (cuts, glued, trimmed), glue_ups, model)
        rules += _last(assembly, trimmed, glue_ups, surfaces, model)
    return Batch(tuple(operations), tuple(rules))


def _slots(assembly: Assembly, model: Model) -> tuple[_Slot, ...]:
    inside = set(all_copies(assembly, model))
    found = []
    for part in model.parts:
        for feature in part.features:
            if feature.role != "key slot" or feature.after not in {assembly.stage, assembly.name}:
                continue
            for hand in feature.hands:
                copies = tuple(c for c in part.copies if c.hand == hand and c.name in inside)
                if copies:
                    found.append(_slot(part, feature, copies))
    return tuple(found)


def _slot(part: Part, feature: Feature, copies: tuple[Copy, ...]) -> _Slot:
    sizes = dict(feature.form.sizes) if feature.form else {}
    whole = (part.length, part.width, part.thickness)
    ranges = feature.ranges(whole)
    thick, deep = sizes["thickness"], sizes["depth"]
    # Along its thickness the slot is as wide as the key, and it is not cut in from there.
    normal = SURFACES[feature.surface][0]
    way = next(
        each for each in range(3) if each != normal and ranges[each][1] - ranges[each][0] == thick
    )
    low, high = ranges[way]
    return _Slot(part, feature, copies, min(low, whole[way] - high), thick, deep)


def _cuts(assembly: Assembly, slots: tuple[_Slot, ...], shop: Shop) -> list[Operation]:
    """Return one cutting for each distance from the faces."""
    places = sorted({slot.from_face for slot in slots})
    rows = []
    for number, place in enumerate(places, start=1):
        own = tuple(slot for slot in slots if slot.from_face == place)
        name = f"{assembly.name} / key slots" + (f" / {number}" if len(places) > 1 else "")
        rows.append(_cut(name, assembly, own, shop))
    return rows


def _cut(name: str, assembly: Assembly, slots: tuple[_Slot, ...], shop: Shop) -> Operation:
    first = slots[0]
    count = _corners(slots)
    work = tuple(
        Work(slot.part.name, tuple(c.name for c in slot.copies), (slot.feature.id,), None, ())
        for slot in slots
    )
    many = spoken(count, "slot")
    cradle = _in_cradle(first, assembly, shop)
    if not cradle:
        return Operation(
            id=name,
            kind="key slot",
            station="bench",
            part=assembly.name,
            settings=(),
            work=work,
            tenths=tenths(worked(shop, "hand key slot", each=count)),
            sentence=f"Saw the {many} for keys across the corners of the {assembly.name} by hand",
            check="the slots lie square to the mitres, and none comes through on the inside",
            details=(_by_hand(first),),
        )
    blade, kerf = through_cuts.saw_blade(shop)
    base = shop.accessory(CRADLE)
    assert base is not None
    settings = (
        setting_of.named("cutter", blade),
        setting_of.named("accessory", CRADLE),
        setting_of.angle("tilt"),
        setting_of.height(first.deep + base.base),
        setting_of.distance("fence", first.from_face, kerf, None),
    )
    return Operation(
        id=name,
        kind="key slot",
        station=through_cuts.SAW,
        part=assembly.name,
        settings=setting_of.known_to(shop, through_cuts.SAW, settings),
        work=work,
        tenths=tenths(worked(shop, "key slot", each=count)),
        sentence=f"Saw the {many} for keys across the corners of the {assembly.name} in the cradle",
        tests=1,
        trial=f"{assembly.name} key slots",
        check="the slots lie square to the mitres, and none comes through on the inside",
        details=_standing(first),
    )


def _in_cradle(slot: _Slot, assembly: Assembly, shop: Shop) -> bool:
    """Return whether the saw's blade cuts a slot as wide as the key, the frame in a cradle."""
    base = shop.accessory(CRADLE)
    if base is None or not through_cuts.has_saw(CRADLE, shop):
        return False
    _, kerf = through_cuts.saw_blade(shop)
    high = slot.deep + base.base
    return (
        abs(kerf - slot.thick) <= A_HAIR
        and high <= shop.stations[through_cuts.SAW].limits["depth"]
        and max(assembly.box.extent(axis) for axis in range(3)) <= LARGEST
    )


def _standing(slot: _Slot) -> tuple[Detail, ...]:
    stand = "Stand each corner in the V of the cradle, a face of the frame against the fence"
    turn = " into the corner. Where a slot lies as far from the other face, turn the frame over"
    guard = "The guard is off for this cut: hold the frame by its far side, hands clear of the V"
    return (f"{stand}; the blade goes ", slot.deep, turn), (guard,)


def _by_hand(slot: _Slot) -> Detail:
    along = slot.feature.depth
    return (
        "Lines: across the outside of each corner, ",
        slot.from_face,
        " to ",
        slot.from_face + slot.thick,
        " from the face, ",
        along,
        " back from the corner on both sides, which is ",
        slot.deep,
        " deep; saw inside both lines with a tenon saw and clear between",
    )


def _glued(assembly: Assembly, slots: tuple[_Slot, ...], model: Model, shop: Shop) -> Operation:
    keys = spoken(_corners(slots), "key")
    of_a_strip = (
        f"Cut {keys} from a strip of offcuts, planed until it slides into a slot by hand, about "
    )
    grain = " thick: the grain runs along the slot, across the mitre; they stand proud all round"
    return Operation(
        id=f"{assembly.name} / keys",
        kind="keys",
        station="glue bench",
        part=assembly.name,
        settings=(),
        work=_every_copy(assembly, model),
        tenths=tenths(worked(shop, "glue key", each=_corners(slots))),
        sentence=f"Glue the {keys} into the corners of the {assembly.name}",
        check="each key down to the bottom of its slot",
        details=((of_a_strip, slots[0].thick, grain),),
    )


def _trimmed(assembly: Assembly, slots: tuple[_Slot, ...], model: Model, shop: Shop) -> Operation:
    return Operation(
        id=f"{assembly.name} / trim keys",
        kind="trim",
        station="bench",
        part=assembly.name,
        settings=(),
        work=_every_copy(assembly, model),
        tenths=tenths(worked(shop, "trim key", each=_corners(slots))),
        sentence=f"Trim the keys of the {assembly.name} flush",
        check="no key is felt under a finger",
        details=(
            ("Saw them off close, then plane from the corner inwards: outwards they break off",),
        ),
    )


def _corners(slots: Iterable[_Slot]) -> int:
    """Return how many keys slots are for: each key lies in two members."""
    return sum(len(slot.copies) for slot in slots) // 2


def _every_copy(assembly: Assembly, model: Model) -> tuple[Work, ...]:
    return work_inside(assembly, parts_of(all_copies(assembly, model), model), model)


def _rules(
    assembly: Assembly,
    deeds: tuple[list[Operation], Operation, Operation],
    glue_ups: Mapping[str, Operation],
    model: Model,
) -> list[Rule]:
    cuts, glued, trimmed = deeds
    waits = tuple(hard_first(with_all_inside(assembly, model), "next stage", glue_ups, model))
    rules = [
        Rule(before, cut.id, WHY_CURED, max(lag, _HOLDS)) for cut in cuts for before, lag in waits
    ]
    if assembly in levelled(model):
        rules += [
            Rule(f"{assembly.name} / level", cut.id, "slots are measured from levelled faces")
            for cut in cuts
        ]
    rules += [Rule(cut.id, glued.id, WHY_SLOTS) for cut in cuts]
    rules.append(Rule(glued.id, trimmed.id, WHY_DRY, _DRY))
    return rules


def _last(
    assembly: Assembly,
    trimmed: Operation,
    glue_ups: Mapping[str, Operation],
    surfaces: Iterable[Operation],
    model: Model,
) -> list[Rule]:
    """Return: what is done to the surfaces of the frame, and the next glue-up, come last."""
    inside = set(all_copies(assembly, model))
    rules = [
        Rule(trimmed.id, row.id, WHY_TRIMMED)
        for row in surfaces
        if row.kind in {"sand", "ease edges", "coat"}
        and inside & {name for work in row.work for name in work.copies}
    ]
    rules += [
        Rule(trimmed.id, glue_ups[outer.name].id, WHY_TRIMMED)
        for outer in model.assemblies
        if outer.name != assembly.name and inside < set(all_copies(outer, model))
    ]
    return rules
