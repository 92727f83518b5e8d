"""Where the drawings of a booklet are called for: the one place that knows the drawing room."""

from __future__ import annotations

from collections.abc import Sequence
from collections.abc import Set as AbstractSet
from dataclasses import replace
from itertools import pairwise

from dryfit.booklet.bench import Bench
from dryfit.booklet.drawing import Svg, piece_drawing
from dryfit.booklet.drawing.exploded import exploded_drawing
from dryfit.booklet.drawing.glue_up import glue_up_drawing
from dryfit.booklet.drawing.lips import strip_drawing
from dryfit.booklet.drawing.marking_out import families, marking_out
from dryfit.booklet.drawing.part_sheet import part_sheets
from dryfit.booklet.drawing.setup import setup_drawing
from dryfit.booklet.drawing.timeline import timeline
from dryfit.booklet.machine_words import cutter_name
from dryfit.booklet.wording import deed
from dryfit.placing.horns import with_horns
from dryfit.placing.ladders import as_sawn
from dryfit.placing.model import Model
from dryfit.placing.strips import core_of, strip_name
from dryfit.plan.operation import Operation
from dryfit.plan.plan import Step

FROM_ABOVE = frozenset({"drill press", "mortiser"})
ONE_FIGURE = frozenset({"fence", "stop", "thickness"})
"""Axes of which one new figure makes no new picture."""

BESIDE = 89
"""Width in mm below which two drawings stand side by side; the templates know it too."""

FEW = 4
"""Copies below which a piece is not drawn taken apart."""

WITHOUT_PICTURE = frozenset({"thickness"})
"""Kinds whose picture is so plain that one serves a whole visit, whatever is held how."""


def cover_drawing(bench: Bench) -> Svg:
    """Return the piece as it will stand, each part lettered once."""
    return piece_drawing(bench.model, bench.labels.parts)


def apart_drawing(bench: Bench) -> Svg | None:
    """Return the piece taken apart, or None where it is of so few parts that the cover says all."""
    copies = sum(len(part.copies) for part in bench.model.parts)
    if copies < FEW:
        return None
    return exploded_drawing(bench.model, bench.labels.copies, bench.labels.parts)


def uncut_parts(bench: Bench) -> tuple[Svg, ...]:
    """Return the parts without a cut, of which the cut list says all: drawn in files only."""
    model = bench.model
    uncut = (part for part in model.parts if not part.features)
    return tuple(sheet for part in uncut for sheet in part_sheets(part, model, bench.labels))


def part_drawings(bench: Bench) -> tuple[Svg, ...]:
    """Return parts of one length laid together, then every part that is cut into."""
    model, labels = bench.model, bench.labels
    cut = [part for part in model.parts if part.features]
    together = (marking_out(family, model, labels) for family in families(cut))
    sheets = [sheet for part in cut for sheet in part_sheets(part, model, labels)]
    # Small ones stand two in a row, those that are as high as one another together.
    wide = [sheet for sheet in sheets if sheet.width_mm >= BESIDE]
    small = sorted((sheet for sheet in sheets if sheet not in wide), key=lambda s: -s.height_mm)
    return (*together, *wide, *small)


def step_drawing(
    step: Step, earlier: Sequence[Step], bench: Bench, noted: AbstractSet[str] = frozenset()
) -> Svg | None:
    """Return the setting of a machine or the glue-up of a step, or None.

    `earlier` are the steps before it in the visit: what a drawing of theirs shows of the height is
    not drawn again while the height stays, and what is `noted` below one is not said again.
    """
    model = bench.model
    if all(operation.kind == "resaw" for operation in step.operations):
        # Nothing is cut away: what is left beyond the blade is a leaf as well.
        return None
    for operation in step.operations:
        if operation.glue_up is not None:
            if deed(operation) == "lip":
                return _lips_glued(operation, step, bench)
            name = operation.id.partition(" / ")[0]
            whole = _glued(model, name)
            for assembly in whole.assemblies:
                if assembly.name == name:
                    return glue_up_drawing(whole, assembly, bench.labels.copies, model.display)
    front = not _height_shown(earlier, step)
    cutter = next((row for axis, row in step.settings if axis == "cutter"), None)
    return setup_drawing(
        as_it_is(model, step),
        step,
        bench.shop.accessories,
        model.display,
        cutter=cutter_name(cutter, bench),
        front=front,
        noted=noted,
    )


def as_it_is(model: Model, step: Step) -> Model:
    """Return the parts as long as they are at a step: with horns, but for cuts after a glue-up.

    A splayed leg lies at a machine as it was sawn, along its slope.
    """
    if step.station in FROM_ABOVE:
        model = replace(model, parts=tuple(as_sawn(part) for part in model.parts))
    cut = {name for op in step.operations for work in op.work for name in work.features}
    late = any(
        feature.after is not None and feature.id in cut
        for part in model.parts
        if part.horns
        for feature in part.features
    )
    if any(part.lips for part in model.parts) and _sizes_cores(step):
        model = replace(model, parts=tuple(core_of(part) for part in model.parts))
    return model if late else with_horns(model)


def _sizes_cores(step: Step) -> bool:
    return all(operation.kind in {"width", "length"} for operation in step.operations)


def _lips_glued(operation: Operation, step: Step, bench: Bench) -> Svg | None:
    """Return the edges of a part with their strips, as the glue-up of a step puts them on."""
    part = bench.part(operation.part)
    if part is None:
        return None
    used = {name for work in operation.work for name in work.copies}
    lips = tuple(
        lip
        for lip in part.lips
        if any(strip_name(copy.name, lip.surface) in used for copy in part.copies)
    )
    proud = bench.shop.allowances["lip_proud"]
    return strip_drawing(part, lips, proud, bench.say, f"{step.station}: {step.id}")


def _glued(model: Model, name: str) -> Model:
    """Return the parts as long as they are in a glue-up: with the horns of those it takes in."""
    taken = {each for assembly in model.assemblies if assembly.name == name for each in assembly.of}
    own = (part for part in model.parts if any(copy.name in taken for copy in part.copies))
    return with_horns(model) if any(part.horns for part in own) else model


def like_before(steps: Sequence[Step]) -> dict[int, int]:
    """Return the steps of a visit that need no drawing, with the step whose drawing serves them.

    Such a step saws through like the one before, held alike, with one other figure.  Joints are
    always drawn, and so is what waits for a measurement.
    """
    found: dict[int, int] = {}
    for before, step in pairwise(steps):
        if _one_figure(step) and _way(before) == _way(step):
            found[step.number] = found.get(before.number, before.number)
    return found


def _height_shown(earlier: Sequence[Step], step: Step) -> bool:
    """Whether a drawing before shows how deep this cut goes, and only the stop was set since.

    Where a view from above shows the fence, that too may have been set.
    """
    seen = {"stop", "fence"} if step.station in FROM_ABOVE else {"stop"}
    after = step
    for before in reversed(earlier):
        if not after.changed or not seen.issuperset(after.changed):
            return False
        if _cuts(before) and _surfaces_down(before) & _surfaces_down(step):
            return True
        after = before
    return False


def _surfaces_down(step: Step) -> set[str | None]:
    return {(work.hold.down if work.hold else None) for op in step.operations for work in op.work}


def _cuts(step: Step) -> bool:
    return all(work.features for operation in step.operations for work in operation.work)


def _one_figure(step: Step) -> bool:
    changed = frozenset(step.changed)
    measured = any(setting is not None and setting.measure for _, setting in step.settings)
    cut = any(work.features or operation.glue_up for operation in step.operations
              for work in operation.work)  # fmt: skip
    return len(changed) == 1 and changed <= ONE_FIGURE and not cut and not measured


def _way(step: Step) -> tuple[object, ...]:
    """Return what a picture of a cut right through shows beside its figure."""
    return tuple(sorted({_held(operation) for operation in step.operations}, key=repr))


def _held(operation: Operation) -> tuple[object, ...]:
    if operation.kind in WITHOUT_PICTURE:
        return (operation.kind,)
    features = any(work.features for work in operation.work)
    lying = {(work.hold.down, work.hold.at_stop) for work in operation.work if work.hold}
    return operation.kind, features, frozenset(lying)


def time_line(bench: Bench) -> Svg | None:
    """Return the days of work on a line, or None where there is no work."""
    return timeline(bench.plan, bench.shop) if bench.plan.steps else None
