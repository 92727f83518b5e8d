"""Choices made: what is left of a problem when one option of each choice is picked."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from itertools import chain, product
from math import prod

from dryfit.order.problem import Axis, Problem, Unsolvable

Picks = tuple[tuple[str, str], ...]
"""(choice, option) pairs in the order of the problem's choices."""


def picked(problem: Problem, picks: Mapping[str, str] | Picks) -> Problem:
    """The problem without choices that remains of some picks.

    picks  an option for every choice

    Raises
    ------
    Unsolvable
        no option, or an unknown one, is picked of a choice.
    """
    made = dict(picks)
    done = {task.id for task in problem.tasks} - _optional(problem)
    for choice in problem.choices:
        names = [option.name for option in choice.options]
        if made.get(choice.name) not in names:
            raise Unsolvable(f"{choice.name} is one of {', '.join(names)}", (choice.name,))
        done |= set(choice.options[names.index(made[choice.name])].tasks)
    return _reduced(problem, done)


def picks_of(problem: Problem, tasks: Iterable[str]) -> Picks:
    """The picks by which just these tasks are done; of equal options the first.

    Raises
    ------
    Unsolvable
        there are none.
    """
    left = set(tasks)
    picks = []
    for choice in problem.choices:
        known = {task for option in choice.options for task in option.tasks}
        fitting = [option for option in choice.options if set(option.tasks) == known & left]
        if not fitting:
            raise Unsolvable(f"no option of {choice.name} takes just these tasks", (choice.name,))
        picks.append((choice.name, fitting[0].name))
    return tuple(picks)


def combinations(problem: Problem) -> Iterator[Picks]:
    """All picks, the first options first."""
    names = [
        [(choice.name, option.name) for option in choice.options] for choice in problem.choices
    ]
    return product(*names)


def count(problem: Problem) -> int:
    """How many combinations there are."""
    return prod(len(choice.options) for choice in problem.choices)


def common(problem: Problem, picks: Mapping[str, str]) -> Problem:
    """The problem of the tasks that are done whatever is picked beside some picks.

    Where picks are left open, its axes still name the values of the tasks left out: a change may
    be cheaper by way of one of them in some combination, and must not be dearer here.
    """
    if len(picks) == len(problem.choices):
        return picked(problem, picks)
    done = {task.id for task in problem.tasks} - _optional(problem)
    for choice in problem.choices:
        options = [
            set(option.tasks)
            for option in choice.options
            if picks.get(choice.name, option.name) == option.name
        ]
        done |= set.intersection(*options)
    return _reduced(_naming_all_values(problem), done)


def changed(problem: Problem, picks: Picks) -> list[Picks]:
    """Picks that differ from some in one choice, or in all that one setting is the reason for.

    To share a setting pays only when several choices do, so for each setting there are two more:
    everything that can use it does, and nothing does that need not.
    """
    made = dict(picks)
    found = [
        {**made, choice.name: option.name}
        for choice in problem.choices
        for option in choice.options
    ]
    demanded = {
        task.id: [(task.station, *demand) for demand in task.demands] for task in problem.tasks
    }
    uses = {
        choice.name: {
            option.name: [setting for task in option.tasks for setting in demanded[task]]
            for option in choice.options
        }
        for choice in problem.choices
    }
    for setting in dict.fromkeys(chain.from_iterable(demanded.values())):
        for wanted in (True, False):
            other = dict(made)
            for choice_name, options in uses.items():
                fitting = [name for name, used in options.items() if (setting in used) == wanted]
                if fitting and made[choice_name] not in fitting:
                    other[choice_name] = fitting[0]
            found.append(other)
    every = dict.fromkeys(tuple(other.items()) for other in found)
    return [other for other in every if other != picks]


def require_choices(problem: Problem) -> None:
    """Nothing, or the first fault found in the choices themselves.

    Raises
    ------
    Unsolvable
        a choice without options; names that are unknown or doubled, in precedences too; a task
        in two choices.
    """
    known = {task.id for task in problem.tasks}
    for edge in problem.precedences:
        for name in (edge.before, edge.after):
            if name not in known:
                raise Unsolvable(f"a precedence names {name}, which is no task", (name,), (edge,))
    owner: dict[str, str] = {}
    for choice in problem.choices:
        names = [option.name for option in choice.options]
        if not names or len(set(names)) < len(names):
            raise Unsolvable(f"{choice.name} needs options of different names", (choice.name,))
        for option in choice.options:
            for task in option.tasks:
                if task not in known:
                    raise Unsolvable(f"{choice.name}: no task {task}", (choice.name, task))
                if owner.setdefault(task, choice.name) != choice.name:
                    message = f"{task} belongs to two choices, {owner[task]} and {choice.name}"
                    raise Unsolvable(message, (task, owner[task], choice.name))
    choices = [choice.name for choice in problem.choices]
    if len(set(choices)) < len(choices):
        raise Unsolvable("two choices have the same name", tuple(choices))


def _optional(problem: Problem) -> set[str]:
    return {
        task for choice in problem.choices for option in choice.options for task in option.tasks
    }


def _naming_all_values(problem: Problem) -> Problem:
    """The problem with each value demanded of an axis with `between` named there, at its cost."""
    demanded: dict[tuple[str, str], list[str]] = {}
    for task in problem.tasks:
        for axis, value in task.demands:
            if isinstance(value, str):
                demanded.setdefault((task.station, axis), []).append(value)

    def named(station: str, axis: Axis) -> Axis:
        first = {new for old, new, _ in axis.between if old is None}
        values = dict.fromkeys(demanded.get((station, axis.name), ()))
        rows = tuple((None, value, axis.change) for value in values if value not in first)
        return replace(axis, between=(*axis.between, *rows)) if axis.between else axis

    stations = tuple(
        replace(station, axes=tuple(named(station.name, axis) for axis in station.axes))
        for station in problem.stations
    )
    return replace(problem, stations=stations)


def _reduced(problem: Problem, done: set[str]) -> Problem:
    tasks = tuple(task for task in problem.tasks if task.id in done)
    tried = {task.trial for task in tasks}
    return replace(
        problem,
        tasks=tasks,
        precedences=tuple(
            edge for edge in problem.precedences if edge.before in done and edge.after in done
        ),
        trials={name: cost for name, cost in problem.trials.items() if name in tried},
        choices=(),
    )
