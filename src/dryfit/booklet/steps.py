"""One step on paper: its check boxes, how the work is held, tests, checks and waits."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from dryfit.booklet.bench import Bench
from dryfit.booklet.blocks import Block, blocks
from dryfit.booklet.cautions import Caution, for_step
from dryfit.booklet.drawing import Svg
from dryfit.booklet.drawings import like_before, step_drawing
from dryfit.booklet.glueing import GlueView, glue_view
from dryfit.booklet.settings import SettingsView, settings_view
from dryfit.booklet.wording import clock, lag, many, roughly, steps_in_words
from dryfit.plan.plan import Step
from dryfit.plan.reasons_as_text import out_of_visit

TALL_MM = 105.0
"""Higher drawings reach below the column of figures beside them."""


NARROW_MM = 69.0
"""Drawings of what is made at the bench that are no wider stand beside the text."""


@dataclass(frozen=True, slots=True)
class StepView:
    """A step with its settings, drawing and boxes.

    `drawing` is None where none is needed, or where an earlier one of the visit serves; `serves`
    are the later steps which a drawing serves too, `like` the step whose drawing serves this one.
    `tests` is how many test cuts come first; `waits` say until when time has to pass before it,
    `reasons` why it stands after other steps, `after` what has to rest when it is done.
    """

    number: int
    minutes: str
    settings: SettingsView
    drawing: Svg | None
    serves: tuple[int, ...]
    like: int | None
    blocks: tuple[Block, ...]
    tests: str | None
    cautions: tuple[Caution, ...]
    waits: tuple[str, ...]
    reasons: tuple[str, ...]
    after: str | None
    glue: GlueView | None

    @property
    def aside(self) -> bool:
        """Whether a column of figures stands beside the text; else what is set is a line."""
        settings = self.settings
        beside = self.drawing is not None and bool(settings.fit or settings.keep)
        return bool(settings.change or beside or self.glue)

    @property
    def small(self) -> bool:
        """Whether the drawing leaves room for the text beside it."""
        narrow = self.drawing is not None and self.drawing.width_mm <= NARROW_MM
        return narrow and not self.aside

    @property
    def recheck(self) -> bool:
        """Whether a setting has stood over a night."""
        return any(kept.recheck for kept in self.settings.keep)

    @property
    def below(self) -> bool:
        """Whether the text stands below the drawing in the full width, and not beside figures."""
        tall = self.aside and self.drawing is not None and self.drawing.height_mm > TALL_MM
        return tall or self.glue is not None


def visit_steps(steps: Sequence[Step], bench: Bench) -> tuple[StepView, ...]:
    """Return what is printed for the steps of a visit; one drawing serves steps that are alike."""
    like = like_before(steps)
    served = {
        number: tuple(later for later, earlier in like.items() if earlier == number)
        for number in like.values()
    }
    found: dict[int, StepView] = {}
    told: set[str] = set()
    noted: set[str] = set()
    for index, step in enumerate(steps):
        drawing = None if step.number in like else step_drawing(step, steps[:index], bench, noted)
        noted |= {drawing.note} if drawing is not None else set()
        view = _step(step, drawing, served.get(step.number, ()), bench)
        if step.number in like:
            view = _but_for(view, found[like[step.number]])
        # What one step of a visit waits for, with the reason, is told where it first is one.
        anew = (reason for reason in view.reasons if reason not in told)
        found[step.number] = replace(view, reasons=(*anew, *_elsewhere(step, steps, bench)))
        told |= {*view.reasons}
    return tuple(found.values())


def _but_for(step: StepView, first: StepView) -> StepView:
    """Return the step without what stands at the `first` one, whose drawing serves it."""
    said = first.blocks[0]
    lean = tuple(
        replace(
            block,
            holding=None if block.holding == said.holding else block.holding,
            details=tuple(row for row in block.details if row not in said.details),
            checks=tuple(row for row in block.checks if row not in said.checks),
        )
        for block in step.blocks
    )
    known = {reason.partition(": ")[2] for reason in first.reasons}
    reasons = tuple(row for row in step.reasons if row.partition(": ")[2] not in known)
    return replace(step, like=first.number, blocks=lean, reasons=reasons)


def _step(step: Step, drawing: Svg | None, serves: tuple[int, ...], bench: Bench) -> StepView:
    return StepView(
        number=step.number,
        minutes=spent((step,)),
        settings=settings_view(step, bench),
        drawing=drawing,
        serves=serves,
        like=None,
        blocks=blocks(step.operations, bench),
        tests=_tests(step),
        cautions=for_step(step),
        waits=waits_in_words(step),
        reasons=_reasons(step),
        after=_after(step),
        glue=_glue(step, bench),
    )


def _tests(step: Step) -> str | None:
    if not step.tests:
        return None
    return f"{many(step.tests, 'test cut')} on scrap of the same thickness, before the first part"


def waits_in_words(step: Step) -> tuple[str, ...]:
    """Return until when time has to pass before the step, and after which step it counts."""
    wait = step.release
    if wait is None:
        return ()
    if wait.lag == 0:
        return (f"Begin about {clock(wait.opens)}: {wait.reason}",)
    when = f"{lag(wait.lag)} after step {wait.step}"
    if wait.opens != wait.over:
        when += f"; outside shop hours, so begin {clock(wait.opens)}"
    return (f"Not before about {clock(wait.over)} ({when}): {wait.reason}",)


def _reasons(step: Step) -> tuple[str, ...]:
    """Return the other reasons why the step stands where it stands, each once with its steps."""
    rows: dict[str, list[int]] = {}
    for wait in sorted(step.waits_for, key=lambda wait: wait.step):
        if wait.lag == 0:
            rows.setdefault(wait.reason, []).append(wait.step)
    return tuple(
        f"After {steps_in_words(tuple(dict.fromkeys(numbers)))}: {reason}"
        for reason, numbers in rows.items()
    )


def _elsewhere(step: Step, steps: Sequence[Step], bench: Bench) -> tuple[str, ...]:
    """Return what it would be to do the step in another visit than that of these steps."""
    why = bench.reasons.get(step.number)
    words = out_of_visit(why, [each.number for each in steps]) if why is not None else ""
    return (words,) if words else ()


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
