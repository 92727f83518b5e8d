"""Idle hours put to use: a job at a bench is done while something cures, not some day later.

The engine counts waiting in sum, and the sum is the same whenever a small job is done; a maker
who stands idle beside a job that he could do will do it.  It may cost the way there and back.
"""

from __future__ import annotations

from dryfit.order import Entry, Problem, Schedule, Task, Totals, Unsolvable, evaluate

WALKS = 2
WORTH = 4
"""A job is worth the way when it takes four times as long (the engine's own balance)."""
MOST_MOVES = 20


def filled(problem: Problem, schedule: Schedule, totals: Totals) -> tuple[Schedule, Totals]:
    """Return the schedule with bench jobs moved forward into idle time, where nothing suffers.

    A move is taken when the piece is not finished later and the job is worth the extra set-up.
    """
    for _ in range(MOST_MOVES):
        moved = _one_move(problem, schedule, totals)
        if moved is None:
            break
        schedule, totals = moved
    return schedule, totals


def _one_move(
    problem: Problem, schedule: Schedule, totals: Totals
) -> tuple[Schedule, Totals] | None:
    order = [entry.task for entry in schedule.entries]
    for place, entry in enumerate(schedule.entries):
        for task in _candidates(problem, schedule, place, entry):
            trial = [name for name in order if name != task.id]
            trial.insert(place, task.id)
            try:
                tried, sums = evaluate(problem, trial)
            except Unsolvable:
                continue
            dearer = sums.setup - totals.setup
            if dearer * WORTH <= task.work and sums.elapsed <= totals.elapsed:
                return tried, sums
    return None


def _candidates(problem: Problem, schedule: Schedule, place: int, gap: Entry) -> tuple[Task, ...]:
    """Return the jobs of later steps that fit into the idle time before an entry."""
    room = gap.waiting - WALKS * problem.walk
    if room <= 0:
        return ()
    later = {entry.task for entry in schedule.entries[place + 1 :]}
    benches = {station.name for station in problem.stations if not station.axes}
    return tuple(
        task
        for task in problem.tasks
        if task.id in later
        and task.id != gap.task
        and task.station in benches
        and task.work <= room
        and task.splittable
        and task.together is None
        and all(edge.before not in later for edge in problem.precedences if edge.after == task.id)
        and not any(edge.lag for edge in problem.precedences if edge.after == task.id)
    )
