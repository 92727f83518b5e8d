"""One step on paper: its check boxes, how the work is held, tests, checks and waits."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.booklet.bench import Bench, CopyRow
from dryfit.booklet.cautions import Caution, for_step
from dryfit.booklet.drawing import Svg
from dryfit.booklet.glueing import GlueView, glue_view
from dryfit.booklet.settings import SettingsView, settings_view
from dryfit.booklet.text import Mark, Piece, Say, Text, capital, closed, joined, listed
from dryfit.booklet.wording import MARK_WORDS, clock, lag, many, minutes, roughly
from dryfit.placing.model import Coating, Model
from dryfit.plan.operation import MeasurePoint, Operation, Work
from dryfit.plan.plan import Step
from dryfit.plan.setting import Hold, Pass

LETTERS = "abcdefghijklmnopqrstuvwxyz"


@dataclass(frozen=True, slots=True)
class WorkView:
    """Which copies of which part, how they lie, and the passes in order."""

    letter: str
    part: str
    copies: tuple[CopyRow, ...]
    hold: Text
    passes: tuple[Text, ...]


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
    sentence: Text
    minutes: str
    works: tuple[WorkView, ...]
    details: tuple[Text, ...]
    check: str | None
    measure: MeasureView | None
    masks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class WaitView:
    """What a step waits for; `long` where time has to pass, not only work to be done."""

    long: bool
    text: str
    step: int


@dataclass(frozen=True, slots=True)
class StepView:
    """A step with its settings, drawing and boxes.

    `tests` is how many test cuts come first; `after` what has to rest when the step is done.
    """

    number: int
    starts: str
    settings: SettingsView
    drawing: Svg | None
    operations: tuple[OperationView, ...]
    tests: str | None
    cautions: tuple[Caution, ...]
    waits: tuple[WaitView, ...]
    after: str | None
    glue: GlueView | None


def step_view(step: Step, drawing: Svg | None, bench: Bench) -> StepView:
    """Return what is printed for a step; `drawing` is its picture, or None."""
    several = len(step.operations) > 1
    return StepView(
        number=step.number,
        starts=clock(step.starts),
        settings=settings_view(step, bench.plan, bench.shop, bench.say),
        drawing=drawing,
        operations=tuple(
            _operation(op, f"{step.number}{LETTERS[index % 26] if several else ''}", bench)
            for index, op in enumerate(step.operations)
        ),
        tests=_tests(step),
        cautions=for_step(step),
        waits=_waits(step),
        after=_after(step),
        glue=_glue(step, bench),
    )


def _operation(operation: Operation, number: str, bench: Bench) -> OperationView:
    return OperationView(
        id=operation.id,
        number=number,
        sentence=(closed(operation.sentence),),
        minutes=minutes(operation.tenths),
        works=tuple(_work(work, bench) for work in operation.work),
        details=tuple((closed(detail),) for detail in operation.details),
        check=operation.check,
        measure=_measure(operation.measure, bench),
        masks=_masks(operation, bench.model),
    )


def _work(work: Work, bench: Bench) -> WorkView:
    part = bench.part(work.part)
    return WorkView(
        letter=bench.labels.part(work.part),
        part=work.part if part is None else part.written,
        copies=bench.rows(work.copies),
        hold=() if work.hold is None else _hold(work.hold),
        passes=_passes(work.passes, bench.say),
    )


def _hold(hold: Hold) -> Text:
    rows = [
        _touching(mark, place)
        for mark, place in (
            (hold.down, "down on the table"),
            (hold.against_fence, "against the fence"),
            (hold.at_stop, "at the stop"),
        )
        if mark is not None
    ]
    text = joined(rows, ", ")
    if text and isinstance(text[0], str):
        return (capital(text[0]), *text[1:])
    return text


def _touching(mark: str, place: str) -> Text:
    return (f"{MARK_WORDS.get(mark, 'side')} ", Mark(mark), f" {place}")


def _passes(passes: tuple[Pass, ...], say: Say) -> tuple[Text, ...]:
    if passes in {(), (Pass(),)}:
        return ()
    limits = sum(not step.between for step in passes)
    return tuple(_pass(step, number, limits, say) for number, step in enumerate(passes, start=1))


def _pass(step: Pass, number: int, limits: int, say: Say) -> Text:
    if step.between:
        if limits > 1:
            return (f"Pass {number}: clear the wood left between these cuts, sliding the work.",)
        return (f"Pass {number}: clear the rest out to the end, sliding the work off the stop.",)
    if step.spacer is not None:
        spacer = say.setting_with_unit(step.spacer)
        return (f"Pass {number}: put the ", spacer, " spacer between stop and work.")
    if step.fence is not None:
        return (f"Pass {number}: move the fence to ", say.setting_with_unit(step.fence), ".")
    return (f"Pass {number}: work right up to the stop.",)


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


def _waits(step: Step) -> tuple[WaitView, ...]:
    """Return the reasons to wait: first those that take time, longest first, then the others."""
    rows: dict[str, WaitView] = {}
    for wait in sorted(step.waits_for, key=lambda wait: (-wait.lag, wait.step)):
        if wait.lag > 0:
            when = f"{lag(wait.lag)} after step {wait.step}"
            text = f"Not before {clock(step.starts)} ({when}): {wait.reason}"
        else:
            text = f"After step {wait.step}: {wait.reason}"
        rows.setdefault(wait.reason, WaitView(wait.lag > 0, text, wait.step))
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
