"""The reasons of a step in words, for the terminal and the booklet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dryfit.plan.plan import Release, Step
from dryfit.plan.reasons import Bar, Elsewhere, StepReasons
from dryfit.plan.totals_text import duration, minutes

DAY = 14_400
_THINGS = {"walk": "a walk"}


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
        yield f"sets {listed(step.changed)}: {minutes(step.minutes.changeover)}"
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
        yield f"stands here by a tie: it takes the same time in sum {ties}"
    for place in (why.earlier, why.later):
        if place is not None and not place.same:
            yield f"{place.side} step {place.step} instead: {cost(place)}"


def ties_in_words(why: StepReasons) -> str:
    """Return where else a step takes the same time in sum; nothing where it does nowhere."""
    first = last = why.step
    before, after = set(why.ties_before), set(why.ties_after)
    while first - 1 in before:
        first -= 1
    while last + 1 in after:
        last += 1
    words = []
    if first < why.step and last > why.step:
        words.append(f"anywhere from before step {first} to after step {last}")
    elif first < why.step:
        words.append(_beside("before", range(first, why.step)))
    elif last > why.step:
        words.append(_beside("after", range(why.step + 1, last + 1)))
    words.append(_beside("before", sorted(each for each in before if each < first)))
    words.append(_beside("after", sorted(each for each in after if each > last)))
    return listed([each for each in words if each], "or")


def out_of_visit(why: StepReasons, steps: Sequence[int]) -> str:
    """Return in short what it is to do a step in another visit than that of the `steps`.

    Nothing where it can be done in no other, where the cheapest other place is in its own, or
    where it would cost no more than going there once more.
    """
    before = [each for each in why.ties_before if each < steps[0]]
    after = [each for each in why.ties_after if each > steps[-1]]
    ties = [each for each in (_beside("before", before), _beside("after", after)) if each]
    if ties:
        return f"Could as well be done {listed(ties, 'or')}"
    costs = [
        f"{_more(place.setup)} setting up{_of(place)} if done {place.side} step {place.step}"
        for place in (why.earlier, why.later)
        if place is not None and place.step not in steps and set(place.changes) - {"walk"}
    ]
    return ", ".join(costs)


def _beside(side: str, numbers: Sequence[int]) -> str:
    """Return the steps beside which it can stand: ``before step 2, 3 or 7 to 12``."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and runs[-1][-1] == number - 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    words = [
        word
        for run in runs
        for word in ([f"{run[0]} to {run[-1]}"] if len(run) > 2 else map(str, run))
    ]
    return f"{side} step {listed(words, 'or')}" if words else ""


def cost(place: Elsewhere) -> str:
    """Return what a place adds, in words; both what it costs and what it saves."""
    words = []
    if place.setup:
        words.append(f"{_more(place.setup)} setting up{_of(place)}")
    if place.waiting:
        words.append(f"{_more(place.waiting)} waiting")
    if not words and not place.elapsed:
        return "the same time in sum"
    words.append(_done(place.elapsed))
    return ", ".join(words)


def _more(tenths: int) -> str:
    return f"{minutes(abs(tenths))} {'more' if tenths > 0 else 'less'}"


def _of(place: Elsewhere) -> str:
    things = [_THINGS.get(axis, axis) for axis in place.changes]
    return f" ({listed(things)})" if things and place.setup > 0 else ""


def _done(tenths: int) -> str:
    if not tenths:
        return "done at the same time"
    days, rest = divmod(abs(tenths), DAY)
    words = ([f"{days} day{'s' if days > 1 else ''}"] if days else []) + [minutes(rest)] * (
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
