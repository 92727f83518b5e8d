"""One step on paper: its check boxes, how the work is held, tests, checks and waits."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.booklet.bench import Bench
from dryfit.booklet.cautions import Caution, for_step
from dryfit.booklet.drawing import Svg
from dryfit.booklet.glueing import GlueView, glue_view
from dryfit.booklet.holding import WorkView, work_views
from dryfit.booklet.settings import SettingsView, settings_view
from dryfit.booklet.text import Piece, Text, capital, closed, listed
from dryfit.booklet.wording import clock, lag, many, minutes, roughly
from dryfit.placing.model import Coating, Model
from dryfit.plan.operation import MeasurePoint, Operation
from dryfit.plan.plan import Step

WIDEST_BESIDE_MM = 150.0
"""Wider drawings would be made too small to read beside the column of settings."""

TALL_MM = 120.0
"""Higher drawings may stand on another page than the boxes of their step."""

_TARGETS = {
    "length": ("length", "stop"),
    "width": ("width", "fence"),
    "thickness": ("thickness", "thickness"),
    "flatten": ("thickness", "thickness"),
}
"""By kind of operation: the size that it brings a part to, and the axis that would give it."""

LETTERS = "abcdefghijklmnopqrstuvwxyz"


@dataclass(frozen=True, slots=True)
class MeasureView:
    """A number to take from the piece: its name, the nominal figure, and who waits for it."""

    name: str
    formula: str
    nominal: Text
    sets: str


@dataclass(frozen=True, slots=True)
class OperationView:
    """One check box: `number` is the step's, with a letter where the step has several boxes."""

    id: str
    number: str
    lettered: bool
    sentence: Text
    minutes: str
    works: tuple[WorkView, ...]
    target: Text
    details: tuple[Text, ...]
    check: str | None
    measure: MeasureView | None
    masks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class StepView:
    """A step with its settings, drawing and boxes.

    `tests` is how many test cuts come first; `waits` say until when time has to pass before it,
    `reasons` why it stands after other steps, `after` what has to rest when it is done.
    """

    number: int
    starts: str
    settings: SettingsView
    drawing: Svg | None
    tall: bool
    operations: tuple[OperationView, ...]
    tests: str | None
    cautions: tuple[Caution, ...]
    waits: tuple[str, ...]
    reasons: tuple[str, ...]
    after: str | None
    glue: GlueView | None

    @property
    def prepared(self) -> bool:
        """Whether anything is to be set, seen or waited for before the first box."""
        settings = self.settings
        return bool(
            settings.fit
            or settings.change
            or settings.keep
            or self.drawing
            or self.glue
            or self.waits
            or self.tests
        )


def step_view(step: Step, drawing: Svg | None, bench: Bench) -> StepView:
    """Return what is printed for a step; `drawing` is its picture, or None."""
    several = len(step.operations) > 1
    column = drawing is not None and drawing.width_mm <= WIDEST_BESIDE_MM
    return StepView(
        number=step.number,
        starts=clock(step.starts),
        settings=settings_view(step, bench.plan, bench.shop, bench.say, column=column),
        drawing=drawing,
        tall=drawing is not None and drawing.height_mm > TALL_MM,
        operations=tuple(
            _operation(op, step.number, LETTERS[index % 26] if several else "", bench)
            for index, op in enumerate(step.operations)
        ),
        tests=_tests(step),
        cautions=for_step(step),
        waits=_waits(step),
        reasons=_reasons(step),
        after=_after(step),
        glue=_glue(step, bench),
    )


def _operation(operation: Operation, number: int, letter: str, bench: Bench) -> OperationView:
    return OperationView(
        id=operation.id,
        number=f"{number}{letter}",
        lettered=bool(letter),
        sentence=(closed(operation.sentence),),
        minutes=minutes(operation.tenths),
        works=() if operation.glue_up else work_views(operation.work, bench),
        target=_target(operation, bench),
        details=tuple((closed(capital(detail)),) for detail in operation.details),
        check=operation.check,
        measure=_measure(operation.measure, bench),
        masks=_masks(operation, bench.model),
    )


def _target(operation: Operation, bench: Bench) -> Text:
    """Return the size to reach where no setting gives it: by hand, or to a knife line."""
    name, _, _ = operation.id.partition(" / ")
    part = bench.part(name)
    if part is None or operation.kind not in _TARGETS:
        return ()
    size, axis = _TARGETS[operation.kind]
    if any(setting.axis == axis for setting in operation.settings):
        return ()
    lengths = {"length": part.length, "width": part.width, "thickness": part.thickness}
    return (f"To {size} ", bench.say.size_with_unit(lengths[size]), ".")


def _measure(point: MeasurePoint | None, bench: Bench) -> MeasureView | None:
    if point is None:
        return None
    waiting = [
        f"{name} (step {bench.plan.step_of(name).number})"
        for name in point.sets
        if any(op.id == name for step in bench.plan.steps for op in step.operations)
    ]
    nominal: list[Piece] = ["on paper ", bench.say.size_with_unit(point.nominal)]
    return MeasureView(point.name, point.formula, tuple(nominal), listed(waiting))


def _masks(operation: Operation, model: Model) -> tuple[str, ...]:
    """Return which glue faces stay bare when the subject is coated before it is glued."""
    if operation.kind != "coat":
        return ()
    subject = operation.id.partition(" / ")[0]
    rows = [_mask(coating, model) for coating in model.coatings if coating.subject == subject]
    return tuple(dict.fromkeys(line for row in rows for line in row))


def _mask(coating: Coating, model: Model) -> tuple[str, ...]:
    known = {joint.id: joint for joint in model.joints}
    return tuple(
        f"{known[name].kind}: {known[name].guest} and {known[name].host}"
        for name in coating.masks
        if name in known
    )


def _tests(step: Step) -> str | None:
    if not step.tests:
        return None
    return f"{many(step.tests, 'test cut')} on scrap of the same thickness, before the first part"


def _waits(step: Step) -> tuple[str, ...]:
    """Return what takes time before the step, the longest wait first."""
    rows: dict[str, str] = {}
    for wait in sorted(step.waits_for, key=lambda wait: (-wait.lag, wait.step)):
        if wait.lag > 0:
            when = f"{lag(wait.lag)} after step {wait.step}"
            text = f"Not before about {clock(step.starts)} ({when}): {wait.reason}"
            rows.setdefault(wait.reason, text)
    return tuple(rows.values())


def _reasons(step: Step) -> tuple[str, ...]:
    """Return the other reasons why the step stands where it stands, in the order of steps."""
    rows: dict[str, str] = {}
    for wait in sorted(step.waits_for, key=lambda wait: wait.step):
        if wait.lag == 0:
            rows.setdefault(wait.reason, f"After step {wait.step}: {wait.reason}")
    return tuple(rows.values())


def _after(step: Step) -> str | None:
    rest = max((op.after_tenths for op in step.operations), default=0)
    glued = any(op.glue_up is not None for op in step.operations)
    return None if rest == 0 or glued else f"Then let it rest for {lag(rest)}"


def _glue(step: Step, bench: Bench) -> GlueView | None:
    for operation in step.operations:
        if operation.glue_up is not None:
            return glue_view(operation.glue_up, operation, step, bench)
    return None


def spent(steps: tuple[Step, ...]) -> str:
    """Return the attended minutes of the steps, set-up and work together, in words."""
    total = sum(
        step.minutes.walk + step.minutes.changeover + step.minutes.tests + step.minutes.work
        for step in steps
    )
    return roughly(total)
