"""The stage: Model and shop -> every operation of the piece, with the rules between them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from dryfit.diagnostics import Findings
from dryfit.operations.batch import Batch, joined
from dryfit.operations.boards.waney import held_by_bark
from dryfit.operations.cuts.alternatives import alternatives_of
from dryfit.operations.cuts.cutting import NO_WAYS, Joinery, joinery_of
from dryfit.operations.cuts.splayed import with_slopes
from dryfit.operations.deed_kinds import CUTS
from dryfit.operations.fitting.doors_to_gaps import doors_fitted
from dryfit.operations.fitting.fit import WHY_BUTTON_SIZE, buttons_made, fitted
from dryfit.operations.gluing.hardening import hard_first, with_all_inside
from dryfit.operations.gluing.measuring import measured
from dryfit.operations.lips.lipping import hard_lips
from dryfit.operations.listing.circles import circle
from dryfit.operations.listing.coats_apart import coats_apart
from dryfit.operations.listing.hands import with_hands
from dryfit.operations.listing.progress import progress_findings
from dryfit.operations.listing.sections import sections_of
from dryfit.operations.listing.visits import one_visit
from dryfit.operations.members import all_copies, levelled
from dryfit.operations.stages.faired import faired
from dryfit.operations.stages.finishing import finished, sanded_subjects
from dryfit.operations.stages.keys import keyed
from dryfit.operations.stages.precedence import joinery_rules
from dryfit.operations.stages.shelves import shelves_sanded
from dryfit.operations.stages.staging import WHY_SAND_WHEN_CUT, staged
from dryfit.operations.stages.taped import taped
from dryfit.operations.ways.cautions import caution_keys
from dryfit.operations.ways.router_stops import through_before_stopped
from dryfit.operations.ways.slotted_holes import with_slotted_holes
from dryfit.operations.ways.stops_off import with_stops_off
from dryfit.operations.wishes import wished
from dryfit.placing.horns import with_horns
from dryfit.placing.model import Assembly, Model
from dryfit.placing.strips import strip_parts
from dryfit.plan.operation import Operation, Rule, WorkList
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import gangs_from_boards
from dryfit.stock.laid_out import LaidOut

WHY_AFTER_STAGE = "the notes want it cut in the glued frame, and the glue has to be hard for that"
WHY_BEFORE_IT_GROWS = "it is cut while the frame is no larger, before the next glue-up"
WHY_LEVEL_FIRST = "the cut is measured from faces that the plane has made one"


def work_list(
    model: Model, shop: Shop, ways: Mapping[str, str] = NO_WAYS, laid: LaidOut | None = None
) -> tuple[WorkList | None, Findings]:
    """Return the work list, or None when rules contradict one another.

    Operations stand in the order of the parts in the notes, then glue-ups, finish, fitting.
    `ways` name, by mating group as in `WorkList.alternatives`, a way to take in place of the
    rule's; one that this piece does not have is passed over.  Where boards are `laid` out, their
    cuts stand in place of the rough lengths and widths of the parts that come out of them.
    Findings: ``clamp-too-short`` (H58), ``too-few-clamps`` (H59),
    ``glue-time-short`` (H60), ``cannot-go-together`` (H57), ``finish-unknown``,
    ``wish-without-work``, ``order-circle`` (H81), and those of the lines
    done and spoiled.
    """
    shop = gangs_from_boards(model, shop)
    as_cut = with_horns(model)
    joinery = joinery_of(as_cut, shop, ways)
    sections = sections_of(with_slopes(as_cut), joinery, shop, laid)
    cutting = Batch(joinery.operations, joinery_rules(as_cut.parts, joinery, sections.chains))
    shelves = shelves_sanded(model, joinery, sections.chains.length, shop)
    fair = faired(joinery, as_cut, shop)
    strips = taped(joinery, as_cut, shop)
    made = joined((sections.batch, cutting, strips, fair, shelves, buttons_made(model, shop)))
    late = _late_cuts(joinery)
    last = _last_cuts(made, late)
    stages = staged(model, made, last, shop)
    glue_ups = _glue_ups(stages, model)
    measures = measured(model, tuple(glue_ups.values()), joinery.operations, shop)
    doors = doors_fitted(model, joinery, late, sections.chains.length, shop)
    surfaces = finished(model, glue_ups, last, shop)
    in_keys = keyed(model, glue_ups, surfaces.operations, shop)
    so_far = joined((made, stages, in_keys, measures, surfaces))
    ids = frozenset(operation.id for operation in so_far.operations)
    fits = fitted(model, tuple(glue_ups.values()), ids, shop)
    through_first = through_before_stopped(
        zip(joinery.operations, joinery.cuts, strict=True), model
    )
    marked = _marked_late(late, joinery, ids)
    late_rules = _late_rules({**late, **marked}, glue_ups, model, shop)
    for name, stage in doors.stages:
        late_rules += _late_rules({name: stage}, glue_ups, model, shop)
    hung = Batch(doors.operations, doors.rules)
    late_rules += _before_it_grows(late, joinery, model)
    late_rules += tuple(hard_lips(sections.lips, (*so_far.operations, *doors.operations)))
    extra = Batch(rules=(*_button_rules(model, joinery), *through_first, *late_rules))
    everything = joined((so_far, hung, fits, extra))
    work, findings = _finished_list(everything, joinery, model, shop)
    parted = None if work is None else coats_apart(model, work.operations, work.rules)
    if parted is not None:
        return work_list(parted, shop, ways, laid)
    if work is None or laid is None:
        return work, findings
    lacking = tuple(
        piece for blank in laid.blanks if blank.name not in laid.placed for piece in blank.pieces
    )
    return replace(work, boards=sections.boards, lacking=lacking), findings


def _finished_list(
    everything: Batch, joinery: Joinery, model: Model, shop: Shop
) -> tuple[WorkList | None, Findings]:
    operations = tuple(
        replace(operation, cautions=caution_keys(operation))
        for operation in one_visit(_by_part(everything.operations, model, shop), model)
    )
    operations = with_hands(with_stops_off(with_slotted_holes(operations, model)), model)
    wishes = wished(model, operations, everything.rules)
    rules = _distinct((*everything.rules, *wishes.rules))
    said = progress_findings(model, operations)
    findings = (*everything.findings, *wishes.findings, *said)
    if any(part.waney for part in model.parts):
        findings = (*findings, *held_by_bark(operations, model))
    contradiction = circle(rules, wishes.spans)
    if contradiction is not None:
        return None, (*findings, contradiction)
    return WorkList(operations, rules, alternatives_of(joinery)), findings


def _late_cuts(joinery: Joinery) -> dict[str, str]:
    """Return the operations that are cut after a glue-up, with the stage they wait for."""
    return {
        operation.id: cuts[0].site.feature.after
        for operation, cuts in zip(joinery.operations, joinery.cuts, strict=True)
        if cuts[0].site.feature.after is not None
    }


def _last_cuts(made: Batch, late: Mapping[str, str]) -> dict[str, tuple[str, ...]]:
    """Return, by part, the cuts that no other cut of the part follows."""
    of = {op.id: op.part for op in made.operations if op.kind in CUTS and op.id not in late}
    followed = {
        rule.before
        for rule in made.rules
        if of.get(rule.before) is not None and of.get(rule.before) == of.get(rule.after)
    }
    # The marking stands between length and the cuts, and says nothing that they do not say.
    through_marks = {rule.before for rule in made.rules if rule.after.endswith(" / lay out")}
    last: dict[str, list[str]] = {}
    for name, part in of.items():
        if name not in followed and name not in through_marks:
            last.setdefault(part, []).append(name)
    return {part: tuple(names) for part, names in last.items()}


def _glue_ups(stages: Batch, model: Model) -> dict[str, Operation]:
    by_id = {operation.id: operation for operation in stages.operations}
    return {each.name: by_id[f"{each.name} / glue up"] for each in model.assemblies}


def _button_rules(model: Model, joinery: Joinery) -> tuple[Rule, ...]:
    hosts = {name for fit in model.fittings if fit.kind == "buttons" for name in fit.onto}
    slots = [
        operation.id
        for operation, cuts in zip(joinery.operations, joinery.cuts, strict=True)
        if operation.part in hosts and cuts[0].site.feature.role in {"groove", "button slot"}
    ]
    made = [part.name for part in model.parts if part.made]
    return tuple(Rule(slot, f"{name} / make", WHY_BUTTON_SIZE) for slot in slots for name in made)


def _marked_late(late: Mapping[str, str], joinery: Joinery, ids: frozenset[str]) -> dict[str, str]:
    """Return the marking of parts that have late cuts only, with the stage that they wait for.

    Nothing is marked on what sits in clamps.
    """
    stages: dict[str, set[str | None]] = {}
    for operation in joinery.operations:
        stages.setdefault(operation.part, set()).add(late.get(operation.id))
    marked = {}
    for part, waits in stages.items():
        name = f"{part} / lay out"
        (stage, *others) = waits
        if name in ids and stage is not None and not others:
            marked[name] = stage
    return marked


def _late_rules(
    late: Mapping[str, str], glue_ups: Mapping[str, Operation], model: Model, shop: Shop
) -> tuple[Rule, ...]:
    rules: list[Rule] = []
    for name, stage in late.items():
        for assembly in model.assemblies:
            if stage in {assembly.stage, assembly.name}:
                glued = with_all_inside(assembly, model)
                waits = hard_first(glued, "machine", glue_ups, model)
                rules += [Rule(glue, name, WHY_AFTER_STAGE, lag) for glue, lag in waits]
                if assembly in levelled(model):
                    rules.append(Rule(f"{assembly.name} / level", name, WHY_LEVEL_FIRST))
                rules += _before_sanding(name, assembly, model, shop)
    return tuple(rules)


def _before_it_grows(late: Mapping[str, str], joinery: Joinery, model: Model) -> tuple[Rule, ...]:
    """Return what is cut in a glued frame before that goes into a larger one.

    Half of a joint is cut before the larger one is tried, what a machine cuts before it is glued.
    """
    rules = []
    for operation, cuts in zip(joinery.operations, joinery.cuts, strict=True):
        joined = cuts[0].site.feature.mate is not None
        if operation.id not in late or not (joined or operation.station != "bench"):
            continue
        stage = late[operation.id]
        frames = {each.name for each in model.assemblies if stage in {each.stage, each.name}}
        for outer in model.assemblies:
            if frames & set(outer.of):
                deed = "dry fit" if joined else "glue up"
                rules.append(Rule(operation.id, f"{outer.name} / {deed}", WHY_BEFORE_IT_GROWS))
    return tuple(rules)


def _before_sanding(cut: str, assembly: Assembly, model: Model, shop: Shop) -> list[Rule]:
    """Return: what is cut in a glued frame is cut before whatever takes its parts in is sanded."""
    inside = set(all_copies(assembly, model))
    return [
        Rule(cut, f"{subject.subject} / sand {shop.sanding.grits[0]}", WHY_SAND_WHEN_CUT)
        for subject in sanded_subjects(model)
        if inside & set(subject.copies) and assembly.name not in subject.glued_later
    ]


def _by_part(operations: Iterable[Operation], model: Model, shop: Shop) -> tuple[Operation, ...]:
    """Return the operations of each part together, parts in the order of the notes.

    The strips that lip a part stand right before it.
    """
    parts = [each for part in model.parts for each in (*strip_parts(part, shop.allowances), part)]
    order = {part.name: index for index, part in enumerate(parts)}
    return tuple(sorted(operations, key=lambda op: order.get(op.part, len(order))))


def _distinct(rules: Iterable[Rule]) -> tuple[Rule, ...]:
    """Return each pair once, with its longest lag; the first reason given stays."""
    kept: dict[tuple[str, str], Rule] = {}
    for rule in rules:
        known = kept.get((rule.before, rule.after))
        if known is None or rule.lag > known.lag:
            kept[rule.before, rule.after] = rule
    return tuple(kept.values())
