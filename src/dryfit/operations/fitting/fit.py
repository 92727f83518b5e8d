"""What goes on after the finish: loose parts screwed or held by buttons (TRADE B17, B22, D10)."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

from dryfit.operations.batch import Batch
from dryfit.operations.fitting.button_figures import button_details
from dryfit.operations.fitting.false_fronts import front_details, front_sentence, is_false_front
from dryfit.operations.fitting.fitting_bought import (
    WHY_MEASURED_THEN,
    WHY_ORDERED,
    before_the_cover,
    fit_bought,
    fitted_to_hung,
    ordered_by_measure,
)
from dryfit.operations.fitting.fitting_words import check_of, laid, place_details, screws_of
from dryfit.operations.fitting.let_in import pin_details
from dryfit.operations.fitting.loose_units import LooseUnit, fitted_units, free_units
from dryfit.operations.fitting.runners import RUNS, pushed_in, runner_details, runs_on_wood
from dryfit.operations.fitting.shims import gap_details
from dryfit.operations.fitting.under_tops import WHY_FROM_BELOW, screwed_under, under_details
from dryfit.operations.gluing.glue_up import lag_of
from dryfit.operations.members import glued_copies, outermost
from dryfit.operations.minutes import tenths, worked
from dryfit.operations.stages.finishing import last_coats
from dryfit.operations.ways.top_fixing_words import fixed_with, fixing_details, is_top_fixing
from dryfit.operations.words import counted
from dryfit.placing.model import Model
from dryfit.plan.operation import Detail, Operation, Rule, Work
from dryfit.shop.shop import Shop

WHY_HARDENED = "a finish that has not hardened sticks to what is pressed on it"
WHY_MADE = "the buttons have to be made"
WHY_BELOW_FIRST = "what lies lower goes in while the way is open from above"
WHY_RUNS = "the front is set to the gaps of a drawer that runs"
WHY_GLUED = "there is nothing to fit it on before"
WHY_CARRIED = "what holds it or carries it is in its place before"
WHY_BUTTON_SIZE = "the buttons are made to the groove as it was cut"


def buttons_made(model: Model, shop: Shop) -> Batch:
    """Return the making of parts that the tool added, a job for idle minutes at the bench."""
    operations: list[Operation] = []
    for part in model.parts:
        if not part.made:
            continue
        operations.append(
            Operation(
                id=f"{part.name} / make",
                kind="make",
                station="bench",
                part=part.name,
                settings=(),
                work=(
                    Work(
                        part.name,
                        tuple(copy.name for copy in part.copies),
                        tuple(feature.id for feature in part.features),
                        None,
                        (),
                    ),
                ),
                tenths=tenths(worked(shop, "button", each=len(part.copies))),
                sentence=f"Make {counted(part, len(part.copies))} from a board as wide as "
                "several of them: cut the tongue across its end, rip the end into buttons, then "
                "crosscut them off; again at the new end until there are enough",
                check="the tongue slides in the groove, and the body pulls down",
                details=button_details(part, model),
            )
        )
    return Batch(tuple(operations))


def fitted(
    model: Model, glue_ups: tuple[Operation, ...], operations: frozenset[str], shop: Shop
) -> Batch:
    """Return the fitting of all that is loose, the lower things first, what stands free last.

    `operations` are the ids that exist so far; the fitting waits for the last coat of each.
    """
    coats = sorted(last_coats(model, shop))
    all_units = fitted_units(model)
    fronts = tuple(each for each in all_units if is_false_front(each, model))
    units = tuple(each for each in all_units if each not in fronts)
    laid = [_fit(unit, model, shop) for unit in units]
    bought = [fit_bought(thing, shop) for thing in model.bought]
    ordered = ordered_by_measure(model, shop)
    free = free_units(model, all_units)
    freed = [
        _put_in(unit, model, shop)
        if runs_on_wood(unit, model)
        else _with_gaps(_put_in(unit, model, shop), gap_details(unit, free, model, shop))
        for unit in free
    ]
    shut = [_fit_front(unit, model, shop) for unit in fronts]
    rules: list[Rule] = []
    for row in (*laid, *bought, *freed, *shut):
        rules += [Rule(coat, row.id, WHY_HARDENED, lag) for coat, lag in coats]
        rules += _late_glue(row, model, glue_ups)
        if not coats:
            rules += _bare_rules(row, model, glue_ups, operations)
    for row in ordered:
        waits = _bare_rules(row, model, glue_ups, operations)
        rules += [replace(rule, reason=WHY_MEASURED_THEN) for rule in waits]
        rules.append(Rule(row.id, f"{row.part} / fit", WHY_ORDERED))
    rules += before_the_cover(model, units)
    rules += fitted_to_hung(model, units)
    carried = {f"{unit.name} / fit" for unit in units if unit.under}
    for below, above in pairwise((*laid, *freed)):
        why = WHY_FROM_BELOW if below.id in carried else WHY_BELOW_FIRST
        rules.append(Rule(below.id, above.id, why))
    rules += [Rule(row.id, front.id, WHY_RUNS) for row in freed for front in shut]
    rules += _carried(free, freed, model)
    for unit in (each for each in units if each.kind == "buttons"):
        made = dict.fromkeys(model.part_of(button).name for button in _buttons_of(unit))
        rules += [Rule(f"{name} / make", f"{unit.name} / fit", WHY_MADE) for name in made]
    return Batch((*ordered, *laid, *bought, *freed, *shut), tuple(rules))


def _carried(free: tuple[LooseUnit, ...], freed: list[Operation], model: Model) -> Iterator[Rule]:
    """Yield: hinges, pins and the like are on before the part that they are for goes in."""
    for unit, row in zip(free, freed, strict=True):
        parts = {model.part_of(name) for name in unit.copies}
        names = {name.lower() for part in parts for name in (part.name, part.written)}
        for thing in model.bought:
            if not thing.copies and set(thing.purpose.lower().split(" and ")) & names:
                yield Rule(f"{thing.name} / fit", row.id, WHY_CARRIED)


def _late_glue(row: Operation, model: Model, glue_ups: tuple[Operation, ...]) -> Iterator[Rule]:
    """Yield: what is glued up of parts that were finished before is waited for as well."""
    coated = {coating.subject for coating in model.coatings}
    late = {each.name for each in outermost(model)} - coated if coated else set()
    for glue in glue_ups:
        if glue.part in late:
            yield Rule(glue.id, row.id, WHY_GLUED, lag_of(glue, "next stage"))


def _bare_rules(
    row: Operation, model: Model, glue_ups: tuple[Operation, ...], operations: frozenset[str]
) -> list[Rule]:
    eased = sorted(name for name in operations if name.endswith(" / ease edges"))
    rules = [Rule(name, row.id, WHY_GLUED) for name in eased]
    if glued_copies(model) and not eased:
        rules += [Rule(glue.id, row.id, WHY_GLUED) for glue in glue_ups]
    return rules


def _with_gaps(row: Operation, gaps: tuple[Detail, ...]) -> Operation:
    return replace(row, details=(*row.details, *gaps))


def _put_in(unit: LooseUnit, model: Model, shop: Shop) -> Operation:
    runs = runs_on_wood(unit, model)
    return _operation(
        unit.name,
        unit.copies,
        worked(shop, "fit part", each=unit.many),
        pushed_in(unit, model) if runs else f"Put {unit.words} into {unit.onto}",
        RUNS if runs else "the gaps are equal all round, and nothing binds",
    )


def _fit(unit: LooseUnit, model: Model, shop: Shop) -> Operation:
    if unit.kind == "buttons":
        count = len(_buttons_of(unit))
        sentence = (
            f"Lay {unit.words} in its place, even all round, bore a pilot hole for each screw, "
            "and screw the buttons to it: no glue, it has to move"
        )
        exact = worked(shop, "fit top", each=1, per_fixing=count)
        return _operation(unit.name, unit.copies, exact, sentence, "overhang equal on both sides")
    if is_top_fixing(unit.kind):
        return _fit_top(unit, model, shop)
    screws = screws_of(unit.joints, model)
    exact = worked(shop, "fit part", each=unit.many) + worked(shop, "screw", each=screws)
    row = _operation(
        unit.name, unit.copies, exact, laid(unit, screws, model), check_of(unit, model)
    )
    details = (
        *pin_details(unit, screws, model),
        *place_details(unit, model),
        *runner_details(unit, model),
    )
    return replace(row, details=details)


def _fit_top(unit: LooseUnit, model: Model, shop: Shop) -> Operation:
    fixings = tuple(joint for joint in unit.joints if joint.kind == unit.kind)
    if unit.under is not None:
        exact = worked(shop, "fit part", each=unit.many) + worked(shop, "screw", each=len(fixings))
        sentence = screwed_under(unit, fixings)
        row = _operation(
            unit.name, unit.copies, exact, sentence, "they lie close, and stand square"
        )
        details = (*under_details(unit, model), *fixing_details(fixings, model))
        return replace(row, details=details)
    sentence = fixed_with(fixings[0].kind, unit.words, len(fixings))
    exact = worked(shop, "fit top", each=1, per_fixing=len(fixings))
    row = _operation(unit.name, unit.copies, exact, sentence, "overhang equal on both sides")
    return replace(row, details=fixing_details(fixings, model))


def _fit_front(unit: LooseUnit, model: Model, shop: Shop) -> Operation:
    screws = screws_of(unit.joints, model)
    exact = worked(shop, "fit part", each=unit.many) + worked(shop, "screw", each=screws)
    sentence = front_sentence(unit, screws, model)
    check = "shut, the gap is equal all round"
    row = _operation(unit.name, unit.copies, exact, sentence, check)
    return replace(row, details=front_details(unit, model, shop))


def _buttons_of(unit: LooseUnit) -> tuple[str, ...]:
    return tuple(joint.guest for joint in unit.joints if joint.kind == "buttons")


def _operation(
    name: str, copies: tuple[str, ...], exact: Fraction, sentence: str, check: str
) -> Operation:
    return Operation(
        id=f"{name} / fit",
        kind="fit",
        station="bench",
        part=name,
        settings=(),
        work=(Work(name, copies, (), None, ()),),
        tenths=tenths(exact),
        sentence=sentence,
        check=check,
    )
