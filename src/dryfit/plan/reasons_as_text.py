"""The reasons of a step in words, for the terminal and the booklet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dryfit.plan.plan import Release, Step
from dryfit.plan.reasons import Bar, Elsewhere, StepReasons
from dryfit.plan.totals_text import duration

DAY = 14_400
_AS_IS = "all else as it stands"


def step_in_words(step: Step, why: StepReasons) -> str:
    """Return the step with all that is known of its place in the order."""
    operations = [operation.id for operation in step.operations]
    place = f"{step.station}, {step.starts.on} at {step.starts.clock}"
    told = (*_settings(step, why), *_bars(step, why), *_moves(why))
    return "\n".join(
        (
            f"step {step.number}: {operations[0]}",
            *(f"  and {name}" for name in operations[1:]),
            f"  {place}",
            *(f"  - {each}" for each in told),
        )
    )


def _settings(step: Step, why: StepReasons) -> Iterator[str]:
    if why.before is not None:
        yield f"finds {listed(why.before.axes)} as step {why.before.step} left it"
    if step.minutes.changeover:
        yield f"sets {listed(step.changed)}: {duration(step.minutes.changeover)}"
    if why.after is not None:
        yield f"leaves {listed(why.after.axes)} for step {why.after.step}"


def _bars(step: Step, why: StepReasons) -> Iterator[str]:
    wait = step.release
    told = wait is not None and wait.lag and Bar(wait.step, wait.operation, (wait.reason,))
    if why.held is not None and why.held != told:
        yield f"has to come after step {_bar(why.held)}"
    if wait is not None:
        yield _wait(wait)
    if why.until is not None:
        yield f"has to come before step {_bar(why.until)}"
    if why.visit is not None:
        yield f"belongs into one visit with {steps_listed(why.visit.steps)}: {why.visit.reason}"
    if why.fills is not None:
        yield f"fills the time until step {why.fills} can begin"


def _wait(release: Release) -> str:
    words = f"cannot begin before {release.opens.on} at {release.opens.clock}"
    if release.lag:
        words += f", {duration(release.lag)} after step {release.step} ({release.operation})"
    return f"{words}: {release.reason}"


def _bar(bar: Bar) -> str:
    return f"{bar.step} ({bar.operation}): {'; '.join(bar.reasons)}"


def _moves(why: StepReasons) -> Iterator[str]:
    ties = ties_in_words(why)
    if ties:
        yield f"stands here by a tie: {_AS_IS}, it takes the same time in sum {ties}"
    for place in (why.earlier, why.later):
        if place is not None and not place.same:
            yield f"{place.side} step {place.step} instead, {_AS_IS}: {cost(place)}"


def ties_in_words(why: StepReasons) -> str:
    """Return how far off a step takes the same time in sum; nothing where it does nowhere.

    Only the outermost places are named; `anywhere` where all between them do as well.
    """
    first = min(why.ties_before, default=why.step)
    last = max(why.ties_after, default=why.step)
    all_between = last - first == len({*why.ties_before, *why.ties_after})
    before = f"before step {first}" if first < why.step else ""
    after = f"after step {last}" if last > why.step else ""
    if before and after:
        return f"anywhere from {before} to {after}" if all_between else f"{before} or {after}"
    if all_between and last - first > 1:
        return f"anywhere back to {before}" if before else f"anywhere up to {after}"
    return before or after


def out_of_visit(why: StepReasons, steps: Sequence[int]) -> str:
    """Return in short what it is to do a step in another visit than that of the `steps`.

    Nothing where it can be done in no other, where the cheapest other place is in its own, or
    where it would cost no more than going there once more.
    """
    before = [each for each in why.ties_before if each < steps[0]]
    after = [each for each in why.ties_after if each > steps[-1]]
    ties = [f"before step {first}" for first in before[:1]]
    ties += [f"after step {last}" for last in after[-1:]]
    if ties:
        return f"Could as well be done {listed(ties, 'or')}"
    costs = [
        f"{_trade(place)} if done {place.side} step {place.step}"
        for place in (why.earlier, why.later)
        if place is not None and place.step not in steps and set(place.changes) - {"walk"}
    ]
    return ", ".join(costs)


def cost(place: Elsewhere) -> str:
    """Return what a place adds, in words: what it costs first, then what it saves for that."""
    words = _trade(place)
    if not words and not place.elapsed:
        return "the same time in sum"
    return ", ".join(filter(None, (words, _done(place.elapsed))))


def _trade(place: Elsewhere) -> str:
    """Return the set-up and the waiting that a place adds; one is given for the other."""
    setup = f"{_more(place.setup)} setting up{_of(place)}" if place.setup else ""
    waiting = f"{_more(place.waiting)} waiting" if place.waiting else ""
    if place.setup > 0 > place.waiting:
        return f"{setup} for {waiting}"
    if place.setup < 0 < place.waiting:
        return f"{waiting} for {setup}"
    return ", ".join(filter(None, (setup, waiting)))


def _more(tenths: int) -> str:
    return f"{duration(abs(tenths))} {'more' if tenths > 0 else 'less'}"


def _of(place: Elsewhere) -> str:
    walks = place.changes.count("walk")
    things = [axis for axis in place.changes if axis != "walk"]
    things += ["a walk" if walks == 1 else f"{walks} walks"] * (walks > 0)
    return f" ({listed(things)})" if things and place.setup > 0 else ""


def _done(tenths: int) -> str:
    if not tenths:
        return "done at the same time"
    days, rest = divmod(abs(tenths), DAY)
    words = ([f"{days} day{'s' if days > 1 else ''}"] if days else []) + [duration(rest)] * (
        rest > 0
    )
    return f"done {' and '.join(words)} {'later' if tenths > 0 else 'sooner'}"


def listed(names: Sequence[str], last: str = "and") -> str:
    """Return names as one list: ``height, fence and stop``."""
    if len(names) < 2:
        return "".join(names)
    return f"{', '.join(names[:-1])} {last} {names[-1]}"


def steps_listed(numbers: Sequence[int]) -> str:
    """Return numbers of steps as a list: ``steps 3, 4 and 9``."""
    return f"step{'s' if len(numbers) > 1 else ''} {listed([str(each) for each in numbers])}"
