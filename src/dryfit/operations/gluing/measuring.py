"""Figures that are taken from the piece: measured after the cure, cut after the measuring (C5)."""

from __future__ import annotations

from dryfit.operations.batch import Batch
from dryfit.operations.gluing.glue_up import lag_of
from dryfit.operations.minutes import tenths, worked
from dryfit.placing.model import Measure, Model
from dryfit.plan.operation import MeasurePoint, Operation, Rule
from dryfit.shop.shop import Shop

WHY_MEASURE_CURED = "the piece is measured when it is out of clamps and cannot shift any more"
WHY_CUT_MEASURED = "the size is taken from the piece, not from paper"

_PLACES = {"width": "heights", "height": "widths"}
"""Where an opening is measured, by its size (TRADE C5.3)."""


def measured(
    model: Model, glue_ups: tuple[Operation, ...], cuts: tuple[Operation, ...], shop: Shop
) -> Batch:
    """Return one operation for each measurement, with the sizes and `cuts` that wait for it."""
    waiting: dict[str, list[str]] = {}
    measures: dict[str, Measure] = {}
    for part in model.parts:
        for measure in part.measures:
            waiting.setdefault(measure.name, []).append(f"{part.name} / {measure.dimension}")
            measures.setdefault(measure.name, measure)
    for cut in cuts:
        for name in dict.fromkeys(each.measure for each in cut.settings if each.measure):
            waiting.setdefault(name, []).append(cut.id)
    operations: list[Operation] = []
    rules: list[Rule] = []
    for name, measure in measures.items():
        sets = tuple(waiting[name])
        operation = _measure(measure, sets, shop)
        operations.append(operation)
        # A case moves as its joints harden; along a base lies only what has to reach over it.
        cured = "level" if measure.walls else "out of clamps"
        rules += [
            Rule(glue.id, operation.id, WHY_MEASURE_CURED, lag_of(glue, cured))
            for glue in glue_ups
            if stage_of(glue, model) == measure.stage
        ]
        rules += [Rule(operation.id, size, WHY_CUT_MEASURED) for size in sets]
    return Batch(tuple(operations), tuple(rules))


def stage_of(glue_up: Operation, model: Model) -> str | None:
    """Return the declared stage that a glue-up belongs to, or None for a panel."""
    for assembly in model.assemblies:
        if glue_up.id == f"{assembly.name} / glue up":
            return assembly.stage
    return None


def _measure(measure: Measure, sets: tuple[str, ...], shop: Shop) -> Operation:
    last = measure.name.rpartition(" ")[2] if measure.walls else ""
    return Operation(
        id=f"{measure.name} / measure",
        kind="measure",
        station="bench",
        part=measure.stage,
        settings=(),
        work=(),
        tenths=tenths(worked(shop, "measure", each=1)),
        sentence=f"Measure the {measure.name}, {measure.along}, and write it down",
        splittable=False,
        check=f"measured at three {_PLACES.get(last, 'places')}; the smallest figure counts",
        measure=MeasurePoint(measure.name, measure.along, measure.nominal, sets, measure.taken),
    )
