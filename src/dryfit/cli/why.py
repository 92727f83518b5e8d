"""`why`: where a figure comes from, and why a step stands where it stands."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from difflib import get_close_matches
from types import MappingProxyType

from dryfit.cli.status import StoppedError
from dryfit.notes.names import canonical
from dryfit.placing.figures_told import figure_names, figures_told
from dryfit.placing.model import Model
from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan, Step
from dryfit.plan.reasons import StepReasons
from dryfit.plan.reasons_as_text import step_in_words

VERBS = ("finish", "glue up", "cut", "sand")


def needs_order(things: Sequence[str], model: Model, values: Mapping[str, str]) -> bool:
    """Return whether anything is asked that only the order of work can answer."""
    return not things or any(_figures(each, model, values) is None for each in things)


def _figures(thing: str, model: Model, values: Mapping[str, str]) -> str | None:
    return figures_told(thing, model) or values.get(canonical(thing))


def answers(
    things: Sequence[str],
    model: Model,
    plan: Plan | None,
    reasons: dict[int, StepReasons],
    values: Mapping[str, str] = MappingProxyType({}),
) -> str:
    """Return what is known of each thing; of every step where nothing is named.

    `values` are what is told of the values of the notes, by name.

    Raises
    ------
    StoppedError
        something is neither a step, nor an operation or deed, nor a figure; with the nearest names.
    """
    steps = plan.steps if plan is not None else ()
    if not things:
        return "\n\n".join(step_in_words(step, reasons[step.number]) for step in steps) + "\n"
    said: dict[str, None] = {}
    for thing in things:
        told = _figures(thing, model, values)
        found = [told] if told is not None else list(_of_steps(thing, steps, reasons))
        if not found:
            raise StoppedError(_unknown(thing, (*figure_names(model), *values), steps))
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
    """Return whether a step is meant: by its number, an operation, what is worked on, a deed."""
    number = _number(thing)
    if number is not None:
        return number == str(step.number)
    asked = canonical(thing)
    names = [operation.id for operation in step.operations]
    called = {canonical(name) for name in (*names, *(name.partition(" / ")[0] for name in names))}
    return asked in called or any(_is_deed(asked, operation) for operation in step.operations)


def _is_deed(asked: str, operation: Operation) -> bool:
    """Return whether an operation is meant as a wish of the notes names it: ``glue up base``."""
    verb = next((verb for verb in VERBS if asked.startswith(f"{verb} ")), None)
    if verb is None:
        return False
    from dryfit.operations.wishes import KINDS

    subject = operation.id.partition(" / ")[0]
    # Of several glue-ups that are alike each has a number, which the notes leave out.
    names = {subject, operation.part, subject.rstrip("0123456789").rstrip()}
    of = asked.removeprefix(f"{verb} ")
    return operation.kind in KINDS[verb] and of in {canonical(name) for name in names if name}


def _number(thing: str) -> str | None:
    """Return the number by which a step is asked for: ``37``, ``step 37``."""
    words = thing.lower().split()
    number = words[-1] if words and words[:-1] in ([], ["step"]) else ""
    return number if number.isdecimal() else None


def _unknown(thing: str, figures: Sequence[str], steps: Sequence[Step]) -> str:
    number = _number(thing)
    if number is not None:
        return f"there is no step {number}: the last one is step {len(steps)}"
    operations = [operation.id for step in steps for operation in step.operations]
    known = dict.fromkeys((*figures, *operations))
    near = get_close_matches(thing.lower(), list(known), n=3)
    meant = f": did you mean {' or '.join(f'`{name}`' for name in near)}?" if near else ""
    kinds = "" if near else "; `dryfit steps` and `dryfit parts` list what there is"
    return f"nothing here is called `{thing}`{meant}{kinds}"
