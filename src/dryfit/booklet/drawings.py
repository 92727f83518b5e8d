"""Where the drawings of a booklet are called for: the one place that knows the drawing room."""

from __future__ import annotations

from dryfit.booklet.bench import Bench
from dryfit.booklet.drawing import Svg, piece_drawing
from dryfit.booklet.drawing.glue_up import glue_up_drawing
from dryfit.booklet.drawing.setup import setup_drawing
from dryfit.booklet.drawing.timeline import timeline
from dryfit.plan.plan import Step


def cover_drawing(bench: Bench) -> Svg:
    """Return the piece as it will stand, each part lettered once."""
    return piece_drawing(bench.model, bench.labels.parts)


def step_drawing(step: Step, bench: Bench) -> Svg | None:
    """Return the setting of a machine or the glue-up of a step, or None."""
    model = bench.model
    for operation in step.operations:
        if operation.glue_up is not None:
            name = operation.id.partition(" / ")[0]
            for assembly in model.assemblies:
                if assembly.name == name:
                    return glue_up_drawing(model, assembly, bench.labels.copies, model.display)
    return setup_drawing(model, step, bench.shop.accessories, model.display)


def time_line(bench: Bench) -> Svg | None:
    """Return the days of work on a line, or None where there is no work."""
    return timeline(bench.plan) if bench.plan.steps else None
