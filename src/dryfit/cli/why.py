"""`why`: where a figure comes from, and why a step stands where it stands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from difflib import get_close_matches

from dryfit.cli.status import StoppedError
from dryfit.notes.names import canonical
from dryfit.placing.figures_told import figure_names, figures_told
from dryfit.placing.model import Model
from dryfit.plan.plan import Plan, Step
from dryfit.plan.reasons import StepReasons
from dryfit.plan.reasons_as_text import step_in_words


def needs_order(things: Sequence[str], model: Model) -> bool:
    """Return whether anything is asked that only the order of work can answer."""
    return not things or any(figures_told(each, model) is None for each in things)


def answers(
    things: Sequence[str],
    model: Model,
    plan: Plan | None,
    reasons: dict[int, StepReasons],
) -> str:
    """Return what is known of each thing; of every step where nothing is named.

    Raises
    ------
    StoppedError
        something is neither a step, nor an operation, nor a figure; with the nearest names.
    """
    steps = plan.steps if plan is not None else ()
    if not things:
        return "\n\n".join(step_in_words(step, reasons[step.number]) for step in steps) + "\n"
    said: dict[str, None] = {}
    for thing in things:
        told = figures_told(thing, model)
        found = [told] if told is not None else list(_of_steps(thing, steps, reasons))
        if not found:
            raise StoppedError(_unknown(thing, model, steps))
        said.update(dict.fromkeys(found))
    return "\n\n".join(said) + "\n"


def asked_steps(things: Sequence[str], steps: Sequence[Step]) -> tuple[Step, ...]:
    """Return the steps that are named, in order; all of them where nothing is."""
    if not things:
        return tuple(steps)
    return tuple(step for step in steps if any(_is_named(each, step) for each in things))


def _of_steps(thing: str, steps: Sequence[Step], reasons: dict[int, StepReasons]) -> Iterator[str]:
    for step in asked_steps((thing,), steps):
        yield step_in_words(step, reasons[step.number])


def _is_named(thing: str, step: Step) -> bool:
    """Return whether a step is meant: by its number, by an operation, by what is worked on."""
    if _is_number(thing):
        return thing.strip() == str(step.number)
    asked = canonical(thing)
    names = [operation.id for operation in step.operations]
    return any(asked in {canonical(name), canonical(name.partition(" / ")[0])} for name in names)


def _is_number(thing: str) -> bool:
    return thing.strip().isdecimal()


def _unknown(thing: str, model: Model, steps: Sequence[Step]) -> str:
    if _is_number(thing):
        return f"there is no step {thing}: the last one is step {len(steps)}"
    operations = [operation.id for step in steps for operation in step.operations]
    known = dict.fromkeys((*figure_names(model), *operations))
    near = get_close_matches(thing.lower(), list(known), n=3)
    meant = f": did you mean {' or '.join(f'`{name}`' for name in near)}?" if near else ""
    kinds = "" if near else "; `dryfit steps` and `dryfit parts` list what there is"
    return f"nothing here is called `{thing}`{meant}{kinds}"
