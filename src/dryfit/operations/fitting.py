"""What goes on after the finish: loose parts screwed or held by buttons (TRADE B17, B22, D10)."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from dryfit.operations.batch import Batch
from dryfit.operations.button_figures import button_details
from dryfit.operations.finishing import last_coats
from dryfit.operations.members import glued_copies
from dryfit.operations.minutes import tenths, worked
from dryfit.operations.words import counted
from dryfit.placing.model import Bought, Fitting, Model
from dryfit.plan.operation import Operation, Rule, Work
from dryfit.shop.shop import Shop

WHY_HARDENED = "a finish that has not hardened sticks to what is pressed on it"
WHY_MADE = "the buttons have to be made"
WHY_BELOW_FIRST = "what lies lower goes in while the way is open from above"
WHY_GLUED = "there is nothing to fit it on before"
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
    """Return the fitting of every loose part, the lower ones first.

    `operations` are the ids that exist so far; the fitting waits for the last coat of each.
    """
    coats = sorted(last_coats(model, shop))
    laid = [_fit(fitting, model, shop) for fitting in _from_below(model)]
    rows = (*laid, *(_fit_bought(thing, shop) for thing in model.bought))
    rules: list[Rule] = []
    for row in rows:
        rules += [Rule(coat, row.id, WHY_HARDENED, lag) for coat, lag in coats]
        if not coats:
            rules += _bare_rules(row, model, glue_ups, operations)
    for below, above in pairwise(laid):
        rules.append(Rule(below.id, above.id, WHY_BELOW_FIRST))
    for fitting in model.fittings:
        if fitting.kind == "buttons":
            rules += [
                Rule(f"{part.name} / make", f"{fitting.name} / fit", WHY_MADE)
                for part in model.parts
                if part.made
            ]
    return Batch(rows, tuple(rules))


def _from_below(model: Model) -> list[Fitting]:
    def lowest(fitting: Fitting) -> Fraction:
        return min(copy.box.low[2] for copy in model.part(fitting.part).copies)

    return sorted(model.fittings, key=lowest)


def _bare_rules(
    row: Operation, model: Model, glue_ups: tuple[Operation, ...], operations: frozenset[str]
) -> list[Rule]:
    eased = sorted(name for name in operations if name.endswith(" / ease edges"))
    rules = [Rule(name, row.id, WHY_GLUED) for name in eased]
    if glued_copies(model) and not eased:
        rules += [Rule(glue.id, row.id, WHY_GLUED) for glue in glue_ups]
    return rules


def fixings(fitting: Fitting, model: Model) -> int:
    """Return the screws or buttons that hold a fitting."""
    if fitting.kind == "buttons":
        return sum(len(part.copies) for part in model.parts if part.made)
    part = model.part(fitting.part)
    holes = [feature for feature in part.features if feature.role == "screw hole"]
    return len(holes) * len(part.copies)


def _fit_bought(thing: Bought, shop: Shop) -> Operation:
    where = f" {thing.purpose}" if thing.copies else f" to the {thing.purpose}"
    return Operation(
        id=f"{thing.name} / fit",
        kind="fit",
        station="bench",
        part=thing.name,
        settings=(),
        work=(Work(thing.name, tuple(copy.name for copy in thing.copies), (), None, ()),),
        tenths=tenths(worked(shop, "fit part", each=thing.count)),
        sentence=f"Fit the {thing.written}{where if thing.purpose else ''}",
        check="it works as it should",
    )


def _laid(fitting: Fitting, loose: str, many: int, screws: int) -> str:
    """Return how loose parts go to their place, with what holds them there."""
    if fitting.kind == "pinned":
        each = " each" if many > 1 else ""
        return f"Lay {loose} in place dry, and drive a pin at the middle{each}: no glue"
    if fitting.kind == "bolted":
        return f"Put {loose} in place dry, and pull the bolts tight: no glue"
    if fitting.kind in {"dry", "knock-down"}:
        again = ", so that it comes apart again" if fitting.kind == "knock-down" else ""
        return f"Put {loose} in place dry: no glue{again}"
    screwed = ", and drive the screws" if screws else ""
    spaced = " with spacers between" if many > 1 else ""
    return f"Lay {loose} in place{spaced}{screwed}"


def _fit(fitting: Fitting, model: Model, shop: Shop) -> Operation:
    part = model.part(fitting.part)
    count = fixings(fitting, model)
    names = tuple(copy.name for copy in part.copies)
    if fitting.kind == "buttons":
        exact = worked(shop, "fit top", each=1, per_fixing=count)
        sentence = (
            f"Lay the {part.name} in its place, even all round, bore a pilot hole for each screw, "
            "and screw the buttons to it: no glue, it has to move"
        )
    else:
        exact = worked(shop, "fit part", each=len(names)) + worked(shop, "screw", each=count)
        sentence = _laid(fitting, counted(part, len(names)), len(names), count)
    return Operation(
        id=f"{fitting.name} / fit",
        kind="fit",
        station="bench",
        part=part.name,
        settings=(),
        work=(Work(part.name, names, (), None, ()),),
        tenths=tenths(exact),
        sentence=sentence,
        check="overhang equal on both sides" if fitting.kind == "buttons" else "gaps equal",
    )
