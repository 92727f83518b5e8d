"""The times of a schedule, checked day by day against calendar, lags and resources."""

from collections.abc import Iterator

from dryfit.order.problem import Calendar, Problem, Task
from dryfit.order.result import Entry

MINUTES_OF_DAY = 24 * 60
TENTHS = 10


def time_violations(problem: Problem, entries: tuple[Entry, ...]) -> tuple[str, ...]:
    """What is wrong with the clock times of entries that stand in a valid order."""
    tasks = {task.id: task for task in problem.tasks}
    found: list[str] = []
    free = 0
    for entry in entries:
        found.extend(_wrong_hours(problem.calendar, tasks[entry.task], entry, free))
        free = entry.end
    return (
        *found,
        *_short_lags(problem, entries),
        *_wrong_pieces(problem, tasks, entries),
        *_overdrawn(problem, tasks, entries),
        *_short_of_hands(problem, entries),
    )


def _wrong_hours(calendar: Calendar, task: Task, entry: Entry, free: int) -> Iterator[str]:
    if not free <= entry.start <= entry.end:
        yield f"{task.id} starts at {entry.start} and ends at {entry.end}, free from {free}"
        return
    if entry.ready != free:
        yield f"{task.id}: the worker is free at {free}, not at {entry.ready}"
    setup = entry.changeover + entry.walk + entry.trial
    before = _open_time(calendar, free, entry.start)
    if entry.waiting < 0 or before != setup + entry.waiting:
        yield f"{task.id}: {before} before it, but set-up {setup} and waiting {entry.waiting}"
    if _open_time(calendar, entry.start, entry.end) != task.work:
        yield f"{task.id}: {task.work} of work do not lie between {entry.start} and {entry.end}"
    if not _open_time(calendar, entry.start, entry.start + 1):
        yield f"{task.id} starts outside working hours"
    if task.work and not _open_time(calendar, entry.end - 1, entry.end):
        yield f"{task.id} ends outside working hours"
    if not task.splittable and entry.end - entry.start != task.work:
        yield f"{task.id} is interrupted"


def _open_time(calendar: Calendar, since: int, until: int) -> int:
    """Tenths of a minute inside working hours between two clock times."""
    weekday = calendar.first_weekday
    while weekday in calendar.days_off:
        weekday = (weekday + 1) % 7
    total = 0
    day_length = MINUTES_OF_DAY * TENTHS
    for day in range(since // day_length, until // day_length + 1):
        if (weekday + day) % 7 not in calendar.days_off and day not in calendar.closed:
            opens = day * day_length
            closes = opens + calendar.closes - calendar.opens
            total += max(0, min(until, closes) - max(since, opens))
    return total


def _short_lags(problem: Problem, entries: tuple[Entry, ...]) -> Iterator[str]:
    placed = {entry.task: entry for entry in entries}
    for edge in problem.precedences:
        gap = placed[edge.after].start - placed[edge.before].end
        if gap < edge.lag:
            yield f"{edge.after} starts {gap} after {edge.before}, not {edge.lag} ({edge.reason})"


def _wrong_pieces(
    problem: Problem, tasks: dict[str, Task], entries: tuple[Entry, ...]
) -> Iterator[str]:
    """Pieces said to serve for others: they may, and there are no more of them than are asked."""
    serves = {resource.name: resource.instead for resource in problem.resources}
    for entry in entries:
        asked = {hold.resource: hold.count for hold in tasks[entry.task].holds}
        for name, kind, count in entry.instead:
            if kind not in serves.get(name, ()):
                yield f"{entry.task} takes {kind}, which does not serve for {name}"
            asked[name] = asked.get(name, 0) - count
            if count < 1 or asked[name] < 0:
                yield f"{entry.task} takes {count} of {kind} for {name}, more than it holds"


def _short_of_hands(problem: Problem, entries: tuple[Entry, ...]) -> Iterator[str]:
    """Workers do one thing at a time; that entries do not overlap is looked at by the hours."""
    workers = {task.id: task.workers for task in problem.tasks}
    for entry in entries:
        if workers[entry.task] > problem.workers:
            yield f"{entry.task} takes {workers[entry.task]} workers, there are {problem.workers}"


def _pieces(task: Task, entry: Entry) -> Iterator[tuple[str, int, int]]:
    """The kind of every piece that a task holds, its count, and the lag after which it is free."""
    for hold in task.holds:
        own = hold.count
        for name, kind, count in entry.instead:
            if name == hold.resource:
                own -= count
                yield kind, count, hold.lag
        yield hold.resource, own, hold.lag


def _overdrawn(
    problem: Problem, tasks: dict[str, Task], entries: tuple[Entry, ...]
) -> Iterator[str]:
    """What is held can only grow at a start, so the starts are looked at."""
    calendar = problem.calendar
    spans = [
        (kind, _taken(calendar, entry), entry.end + lag, count)
        for entry in entries
        for kind, count, lag in _pieces(tasks[entry.task], entry)
        if count
    ]
    for resource in problem.resources:
        taken = [span for span in spans if span[0] == resource.name]
        for moment in sorted({start for _, start, _, _ in taken}):
            held = sum(count for _, start, end, count in taken if start <= moment < end)
            if held > resource.capacity:
                yield f"{held} of {resource.name} are held at {moment}, of {resource.capacity}"


def _taken(calendar: Calendar, entry: Entry) -> int:
    """When an entry takes what it holds: at the first of its test cuts, which come just before."""
    moment, left = entry.start, entry.trial
    day_length = MINUTES_OF_DAY * TENTHS
    while left and moment > 0:
        morning = (moment - 1) // day_length * day_length
        open_time = _open_time(calendar, morning, moment)
        if open_time >= left:
            return morning + open_time - left
        left -= open_time
        moment = morning
    return moment
