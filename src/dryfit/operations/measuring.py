"""Figures that are taken from the piece: measured after the cure, cut after the measuring (C5)."""

from __future__ import annotations

from dryfit.operations.batch import Batch
from dryfit.operations.gluing import lag_of
from dryfit.operations.minutes import tenths, worked
from dryfit.placing.model import Measure, Model, Part
from dryfit.plan.operation import MeasurePoint, Operation, Rule
from dryfit.shop.shop import Shop

WHY_MEASURE_CURED = "the piece is measured when it is out of clamps and cannot shift any more"
WHY_CUT_MEASURED = "the length is taken from the piece, not from paper"


def measured(model: Model, glue_ups: tuple[Operation, ...], shop: Shop) -> Batch:
    """Return one operation for each measurement, with the lengths that wait for it."""
    waiting: dict[str, list[Part]] = {}
    measures: dict[str, Measure] = {}
    for part in model.parts:
        if part.measure is not None:
            waiting.setdefault(part.measure.name, []).append(part)
            measures.setdefault(part.measure.name, part.measure)
    operations: list[Operation] = []
    rules: list[Rule] = []
    for name, measure in measures.items():
        lengths = tuple(f"{part.name} / length" for part in waiting[name])
        operation = _measure(measure, lengths, shop)
        operations.append(operation)
        rules += [
            Rule(glue.id, operation.id, WHY_MEASURE_CURED, lag_of(glue, "out of clamps"))
            for glue in glue_ups
            if stage_of(glue, model) == measure.stage
        ]
        rules += [Rule(operation.id, length, WHY_CUT_MEASURED) for length in lengths]
    return Batch(tuple(operations), tuple(rules))


def stage_of(glue_up: Operation, model: Model) -> str | None:
    """Return the declared stage that a glue-up belongs to, or None for a panel."""
    for assembly in model.assemblies:
        if glue_up.id == f"{assembly.name} / glue up":
            return assembly.stage
    return None


def _measure(measure: Measure, lengths: tuple[str, ...], shop: Shop) -> Operation:
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
        check="measured at three places; the smallest figure counts",
        measure=MeasurePoint(measure.name, measure.along, measure.nominal, lengths),
    )
