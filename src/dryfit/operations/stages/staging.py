"""Around every glue-up: dry fit, inside faces sanded, then glue, then levelled (TRADE C1)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from dryfit.diagnostics import Diagnostic
from dryfit.kinds.joints import is_lapped
from dryfit.operations.batch import Batch
from dryfit.operations.gluing.feet import WHY_FEET_FIRST, WHY_FEET_LAST, feet_levelled, splayed_in
from dryfit.operations.gluing.glue_notes import dry_joints
from dryfit.operations.gluing.glue_up import glue_up, lag_of
from dryfit.operations.gluing.hardening import hard_first, with_all_inside
from dryfit.operations.gluing.levelling import WHY_LEVEL_LATER, level_inside
from dryfit.operations.gluing.pressing import SHUT_BY
from dryfit.operations.members import (
    all_copies,
    assembly_named,
    closed_joints,
    dry_fit_first,
    horned_parts,
    inner_assemblies,
    loose_copies,
    parts_of,
    work_inside,
)
from dryfit.operations.milling.horns import WHY_HORNS_LAST, WHY_HORNS_OFF, horns_off, planed_level
from dryfit.operations.minutes import tenths, worked
from dryfit.operations.stages.early_finish import but_not, finished_before
from dryfit.operations.stages.sanded_first import has_corners, sanded_first, without_corners
from dryfit.operations.stages.sanding import grit_rules, sanded
from dryfit.operations.stages.shelves import housed_copies
from dryfit.operations.stages.tenon_strips import strip_details, strips_milled
from dryfit.operations.tenon_deeds import before_the_glue, made_flush, stands_out
from dryfit.placing.horns import with_horns
from dryfit.placing.model import Assembly, Model
from dryfit.plan.operation import Operation, Rule, Work
from dryfit.shop.shop import Shop

WHY_ALL_CUT = "every part of the frame has to be cut before it can be tried"
WHY_DRY_FIRST = "what does not fit shows before the glue is on"
WHY_WHOLE_DRY_FIRST = "a fault of the whole is put right while its parts are still loose"
WHY_SAND_AFTER_FIT = "faces that meet are fitted before sanding rounds them"
WHY_SAND_BEFORE_FIT = "faces that housings are cut into are sanded before the shelves go in"
WHY_SAND_WHEN_CUT = "the part is sanded when nothing is cut from it any more"
WHY_SAND_INSIDE = "no sander reaches into the corners once the frame is glued"
WHY_CURED = "the glue holds the weight of the next stage by then"


def staged(
    model: Model, made: Batch, last_cuts: Mapping[str, tuple[str, ...]], shop: Shop
) -> Batch:
    """Return dry fit, sanding, glue-up and levelling of every assembly.

    `made` are the operations that make the parts, `last_cuts` those that finish each part.
    """
    operations: list[Operation] = []
    rules: list[Rule] = []
    findings: list[Diagnostic] = []
    glue_ups: dict[str, Operation] = {}
    for assembly in model.assemblies:
        whole = with_horns(model) if horned_parts(assembly, model) else model
        lies = assembly_named(whole, assembly.name) or assembly
        glue_ups[assembly.name], found = glue_up(lies, whole, shop)
        findings += found
    for assembly in model.assemblies:
        dry = _dry_fit(assembly, model, shop)
        inside = _inside(assembly, model, shop)
        glue = glue_ups[assembly.name]
        operations += [dry, *inside, glue]
        rules += _when_cut(assembly, dry, WHY_ALL_CUT, model, last_cuts)
        rules.append(Rule(dry.id, glue.id, WHY_DRY_FIRST))
        housed = any(model.joint(name).kind == "housing" for name in assembly.joints)
        corners = not housed and has_corners(assembly, made, model)
        rules += _sanding_rules(dry, inside, glue, before=housed or corners)
        if corners and inside:
            plain = without_corners(assembly, made, model)
            rules += sanded_first(assembly, inside, made, model)
            rules += [
                Rule(cut, inside[0].id, WHY_SAND_WHEN_CUT)
                for name in plain
                for cut in last_cuts.get(name, ())
            ]
        if housed and inside:
            rules += _when_cut(assembly, inside[0], WHY_SAND_WHEN_CUT, model, last_cuts)
        rules += _inner_rules(assembly, dry, glue_ups, model)
        rules += level_inside(assembly, glue_ups, model)
        level, horns = _level(assembly, model, shop), horns_off(assembly, model, shop)
        if level is not None:
            operations.append(level)
            waits = tuple(hard_first(with_all_inside(assembly, model), "level", glue_ups, model))
            rules += [Rule(glued, level.id, WHY_LEVEL_LATER, lag) for glued, lag in waits]
            feet = feet_levelled(assembly, model, shop)
            if feet is not None:
                operations.append(feet)
                rules += [Rule(glued, feet.id, WHY_FEET_LAST, lag) for glued, lag in waits]
                rules.append(Rule(feet.id, level.id, WHY_FEET_FIRST))
            if horns is not None:
                operations.append(horns)
                rules += [Rule(glued, horns.id, WHY_HORNS_LAST, lag) for glued, lag in waits]
                rules.append(Rule(horns.id, level.id, WHY_HORNS_OFF))
    return Batch(tuple(operations), tuple(rules), findings=tuple(findings))


def _dry_fit(assembly: Assembly, model: Model, shop: Shop) -> Operation:
    joints = tuple(model.joint(name) for name in assembly.joints)
    joints += dry_joints(assembly, model)
    return Operation(
        id=f"{assembly.name} / dry fit",
        kind="dry fit",
        station="bench",
        part=assembly.name,
        settings=(),
        work=(Work(assembly.name, all_copies(assembly, model), (), None, ()),),
        tenths=tenths(
            worked(shop, "dry fit", each=1, per_joint=len(assembly.joints))
            + strips_milled(joints, shop)
        ),
        sentence=f"Put the {assembly.name} together dry{_shut(assembly, model)}",
        check=_dry_check(assembly, model),
        details=(*strip_details(joints, model), *before_the_glue(joints, model)),
    )


def _shut(assembly: Assembly, model: Model) -> str:
    if splayed_in(assembly, model):
        return ", each leg in its own hole"
    return f", with {SHUT_BY.get(assembly.pressed or '', 'the clamps set')} as for the glue"


def _dry_check(assembly: Assembly, model: Model) -> str:
    if splayed_in(assembly, model):
        return "every shoulder shut, and all legs lean alike, seen from the front and from a side"
    clamps = "" if assembly.pressed else "; clamps laid out in their order"
    return f"every joint shut, diagonals equal, no twist{clamps}"


def _inside(assembly: Assembly, model: Model, shop: Shop) -> tuple[Operation, ...]:
    housed, coated = housed_copies(model), finished_before(assembly, model)
    loose = tuple(name for name in loose_copies(assembly, model) if name not in housed)
    copies = tuple(name for name in loose if name not in coated)
    if not copies:
        return ()
    area = sum((_surface(name, model) for name in copies), Fraction(0)) * shop.sanding.inside
    spared = but_not((name for name in loose if name in coated), model)
    sentence = f"Sand the faces inside the {assembly.name}, glue faces left bare{spared}"
    what = ("sand inside", sentence)
    return sanded(assembly.name, what, copies, area, shop)


def _surface(copy: str, model: Model) -> Fraction:
    part = model.part_of(copy)
    return 2 * part.length * (part.width + part.thickness)


def _level(assembly: Assembly, model: Model, shop: Shop) -> Operation | None:
    laps = [name for name in assembly.joints if is_lapped(model.joint(name).kind)]
    standing = [joint for joint in closed_joints(assembly, model) if stands_out(joint)]
    flush = made_flush(tuple(standing), model)
    horned = horned_parts(assembly, model)
    horns = planed_level(assembly, model)
    if not laps and not flush and not horns:
        return None
    coated = finished_before(assembly, model)
    bare = tuple(name for name in all_copies(assembly, model) if name not in coated)
    ends = 2 * sum(len(row.copies) for row in work_inside(assembly, horned, model))
    places = len({*laps, *(joint.id for joint in standing)}) + ends
    deed = "Plane level what stands out" if flush else "Make level the ends"
    deed = "Level the joints" if laps else deed
    return Operation(
        id=f"{assembly.name} / level",
        kind="level",
        station="bench",
        part=assembly.name,
        settings=(),
        work=(Work(assembly.name, bare, (), None, ()),),
        tenths=tenths(worked(shop, "level joint", each=places)),
        sentence=f"{deed} of the {assembly.name} with a plane, from the outside inwards",
        check="no step under a straight edge laid over any joint",
        details=(*flush, *horns),
    )


def _when_cut(
    assembly: Assembly,
    after: Operation,
    reason: str,
    model: Model,
    last_cuts: Mapping[str, tuple[str, ...]],
) -> list[Rule]:
    return [
        Rule(cut, after.id, reason)
        for part in parts_of(all_copies(assembly, model), model)
        for cut in last_cuts.get(part.name, ())
    ]


def _sanding_rules(
    dry: Operation, inside: tuple[Operation, ...], glue: Operation, *, before: bool
) -> list[Rule]:
    """Return where sanding stands: after the fit, or before it for housings, fingers and tails."""
    if not inside:
        return []
    if before:
        return [*grit_rules(inside), Rule(inside[-1].id, dry.id, WHY_SAND_BEFORE_FIT)]
    return [
        Rule(dry.id, inside[0].id, WHY_SAND_AFTER_FIT),
        *grit_rules(inside),
        Rule(inside[-1].id, glue.id, WHY_SAND_INSIDE),
    ]


def _inner_rules(
    assembly: Assembly,
    dry: Operation,
    glue_ups: Mapping[str, Operation],
    model: Model,
) -> list[Rule]:
    """Return the rules towards the assemblies that this one takes in."""
    rules: list[Rule] = []
    glue = glue_ups[assembly.name]
    for inner in inner_assemblies(assembly, model):
        first = glue_ups[inner.name]
        rules.append(Rule(first.id, glue.id, WHY_CURED, lag_of(first, "next stage")))
        if dry_fit_first(assembly, inner, model):
            rules += _dry_before(assembly, inner, dry, glue_ups, model)
        else:
            rules.append(Rule(first.id, dry.id, WHY_CURED, lag_of(first, "next stage")))
    return rules


def _dry_before(
    assembly: Assembly,
    inner: Assembly,
    dry: Operation,
    glue_ups: Mapping[str, Operation],
    model: Model,
) -> Iterator[Rule]:
    """Yield that a whole is tried before the glue of an assembly in it, and of those inside that.

    Else it could be tried while the glue of one of them is still soft.
    """
    yield Rule(dry.id, glue_ups[inner.name].id, WHY_WHOLE_DRY_FIRST)
    for deeper in inner_assemblies(inner, model):
        if dry_fit_first(assembly, deeper, model):
            yield from _dry_before(assembly, deeper, dry, glue_ups, model)
        else:
            glue = glue_ups[deeper.name]
            yield Rule(glue.id, dry.id, WHY_CURED, lag_of(glue, "next stage"))
