"""The order of work on a time line: a row a day with hands, clamps and drying."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from dryfit.booklet.drawing.canvas import FINE, OUTLINE, Canvas, Svg, width_of
from dryfit.booklet.drawing.lettering import SMALLEST
from dryfit.booklet.drawing.rect import Rect
from dryfit.booklet.drawing.shapes import caption
from dryfit.plan.plan import Moment, Plan, Step
from dryfit.shop.days import WEEK, first_weekday, short_name, single_days_off
from dryfit.shop.shop import Shop

_DAY = 14400
_HOUR = 600
_LEFT = 20.0
_WIDE = 100.0
_BAR = 5.6
_ROW = 6.8
_LEAST = 0.5
_PAUSE = 30
_EVENING = 2 * _HOUR


@dataclass(frozen=True, slots=True)
class _Window:
    """The hours of the day that are drawn, in tenths of a minute since midnight.

    They begin at `left` on the paper, beside the names of the days.
    """

    opens: int
    closes: int
    left: float

    def at(self, tenths: int) -> float:
        """Return where a time of day comes on paper, within the window."""
        inside = min(max(tenths, self.opens), self.closes)
        return self.left + _WIDE * (inside - self.opens) / (self.closes - self.opens)


@dataclass(frozen=True, slots=True)
class _Stretch:
    """A stretch of time in tenths since midnight of day 1, with the visit that it belongs to."""

    begin: int
    end: int
    visit: int


def timeline(plan: Plan, shop: Shop) -> Svg:
    """Return every day with work, and that on which all is dry: hands solid, waits hatched.

    The figures in the solid bars are visits, as the pages are numbered.
    """
    hands = [stretch for step in plan.steps for stretch in _working(step, shop)]
    clamps, drying = _waits(plan.steps)
    last_of_all = {_time(plan.done) // _DAY} if plan.done is not None else set[int]()
    days = sorted({stretch.begin // _DAY for stretch in hands} | last_of_all)
    names = {day: short_name(shop, day + 1) or f"Day {day + 1}" for day in days}
    widest = max(width_of(name, bold=True) for name in names.values())
    window = _window(hands, (*clamps, *drying), shop, max(_LEFT, widest + 2.0))
    canvas = Canvas()
    y = _hours(canvas, window)
    last = 0
    for day, name in names.items():
        y = _skipped(canvas, window.left, (last, day), y)
        last = day + 1
        y = _day(canvas, (day, name), window, (hands, clamps, drying), y)
    note = (
        "Solid: your hands, with the numbers of the visits. Hatched: in clamps or drying; open at "
        "an end: through the night."
    )
    caption(canvas, 0.0, y + 1.0, note)
    return canvas.finish("Order of work, day by day")


def _time(moment: Moment) -> int:
    """Return the tenths since midnight of day 1."""
    hour, _, minute = moment.clock.partition(":")
    return (moment.day - 1) * _DAY + int(hour) * _HOUR + int(minute) * 10


def _working(step: Step, shop: Shop) -> Iterator[_Stretch]:
    """Yield the work of a step day by day: it rests while the shop is closed."""
    begin, end = _time(step.starts), _time(step.ends)
    first, closed = first_weekday(shop), single_days_off(shop)
    for day in range(begin // _DAY, end // _DAY + 1):
        midnight = day * _DAY
        opens = begin if day == begin // _DAY else midnight + shop.opens
        closes = end if day == end // _DAY else midnight + shop.closes
        works = (first + day) % WEEK not in shop.days_off and day not in closed
        if (opens < closes or begin == end) and works:
            yield _Stretch(opens, closes, step.visit)


def _waits(steps: Sequence[Step]) -> tuple[list[_Stretch], list[_Stretch]]:
    """Return how long clamps are on and how long anything else dries, from the end of each step."""
    clamps: list[_Stretch] = []
    drying: list[_Stretch] = []
    for step in steps:
        for operation in step.operations:
            if not operation.after_tenths:
                continue
            end = _time(step.ends)
            wait = _Stretch(end, end + operation.after_tenths, step.visit)
            (clamps if operation.glue_up else drying).append(wait)
    return clamps, drying


def _window(
    hands: Sequence[_Stretch], waits: Sequence[_Stretch], shop: Shop, left: float
) -> _Window:
    """Return whole hours round all work, the hours of the shop, and what waits into the evening.

    A wait that ends later than that is left open: drawn to its end it would squeeze the day.
    """
    opens = min(shop.opens, *(stretch.begin % _DAY for stretch in hands))
    worked = [stretch.end - stretch.begin // _DAY * _DAY for stretch in hands]
    late = [stretch.end % _DAY for stretch in waits]
    evening = [end for end in late if end <= shop.closes + _EVENING]
    closes = max(shop.closes, *worked, *evening)
    return _Window(opens // _HOUR * _HOUR, -(-closes // _HOUR) * _HOUR, left)


def _hours(canvas: Canvas, window: _Window) -> float:
    hours = range(window.opens // _HOUR, window.closes // _HOUR + 1)
    each = _WIDE / max(1, len(hours) - 1)
    step = 1 if each > width_of("00") + 2 else 2
    for hour in hours[::step]:
        canvas.text((window.at(hour * _HOUR), SMALLEST / 2), str(hour))
    return SMALLEST + 2.5


def _skipped(canvas: Canvas, left: float, days: tuple[int, int], y: float) -> float:
    """Write a line for days without any work between two days that have some."""
    done, day = days
    idle = day - done
    if done == 0 or idle < 1:
        return y
    words = f"Day {done + 1}" if idle == 1 else f"Days {done + 1} to {day}"
    canvas.text((left + 1.5, y + 2.6), f"{words}: nothing to do by hand", anchor="start")
    return y + SMALLEST + 3.0


def _day(
    canvas: Canvas,
    named: tuple[int, str],
    window: _Window,
    tracks: tuple[Sequence[_Stretch], ...],
    y: float,
) -> float:
    day, name = named
    midnight = day * _DAY
    rows = []
    for index, track in enumerate(tracks):
        within = list(_on_day(track, midnight, window, whole=index > 0))
        if within or index == 0:
            rows.append((index, within))
    bottom = y + _ROW * len(rows)
    hours = range(window.opens // _HOUR, window.closes // _HOUR + 1)
    canvas.lines([((window.at(h * _HOUR), y), (window.at(h * _HOUR), bottom)) for h in hours], FINE)
    canvas.text((0.0, y + _ROW / 2), name, anchor="start", bold=True)
    for row, (index, within) in enumerate(rows):
        top = y + row * _ROW + (_ROW - _BAR) / 2
        if index == 0:
            _work_bars(canvas, within, window, midnight, top)
        else:
            canvas.text((0.0, top + _BAR / 2), ("clamps", "drying")[index - 1], anchor="start")
            _wait_bars(canvas, within, window, midnight, top)
    return bottom + 3.0


def _on_day(
    track: Sequence[_Stretch], midnight: int, window: _Window, *, whole: bool
) -> Iterator[_Stretch]:
    """Yield what is seen of a day in the window, cut off at its ends unless `whole`."""
    for stretch in track:
        begin = max(stretch.begin, midnight + window.opens)
        end = min(stretch.end, midnight + window.closes)
        if begin < end:
            yield stretch if whole else _Stretch(begin, end, stretch.visit)


def _work_bars(
    canvas: Canvas, within: Sequence[_Stretch], window: _Window, midnight: int, top: float
) -> None:
    """Draw the visits as black bars, their numbers in as many of them as it takes to fit."""
    bars = _visits(within)
    for bar in bars:
        left, right = window.at(bar.begin - midnight), window.at(bar.end - midnight)
        right = max(right - 0.3, left + _LEAST)
        canvas.rect(Rect(left, top, right, top + _BAR), fill="black", pen=None)
    unnumbered: int | None = None
    for run, following in _runs(bars):
        unnumbered = _number_run(canvas, (run, following), (window, midnight), top, unnumbered)


def _runs(bars: Sequence[_Stretch]) -> Iterator[tuple[list[_Stretch], int | None]]:
    """Yield the bars that follow one another without a pause, and when the next one begins."""
    run: list[_Stretch] = []
    for bar in bars:
        if run and bar.begin > run[-1].end + _PAUSE:
            yield run, bar.begin
            run = []
        run.append(bar)
    if run:
        yield run, None


def _number_run(
    canvas: Canvas,
    followed: tuple[Sequence[_Stretch], int | None],
    clock: tuple[_Window, int],
    top: float,
    unnumbered: int | None,
) -> int | None:
    """Number a run of bars: inside where the figures fit, together where they must, else after.

    `unnumbered` is the first visit of the runs before it that had no room for their figures: they
    are named with this one.  Returns the same for the next one, which is `followed` by the start
    of the run.
    """
    (run, following), (window, midnight) = followed, clock
    first = run[0].visit if unnumbered is None else unnumbered
    groups: list[tuple[str, list[_Stretch]]] = []
    begun: list[_Stretch] = []
    start = first
    for bar in run:
        begun.append(bar)
        figures = _numbers(start, bar.visit)
        if _width(begun, clock) >= _needed(figures):
            groups.append((figures, begun))
            begun, start = [], bar.visit + 1
    if begun and groups:
        _, bars = groups.pop()
        begun = bars + begun
        start = bars[0].visit if groups else first
        groups.append((_numbers(start, run[-1].visit), begun))
    if any(_width(bars, clock) < _needed(figures) for figures, bars in groups):
        groups = []
    for figures, bars in groups:
        left = window.at(bars[0].begin - midnight)
        middle = left + _width(bars, clock) / 2
        half = _needed(figures) / 2 - 0.3
        canvas.rect(Rect(middle - half, top, middle + half, top + _BAR), fill="black", pen=None)
        canvas.text((middle, top + _BAR / 2), figures, bold=True, white=True)
    if groups:
        return None
    figures = _numbers(first, run[-1].visit)
    end = window.at(run[-1].end - midnight) + 1.0
    right = end + width_of(figures, bold=True)
    if following is not None and right + 0.4 >= window.at(following - midnight):
        return first
    canvas.rect(Rect(end - 0.4, top, right + 0.4, top + _BAR), fill="white", pen=None)
    canvas.text((end, top + _BAR / 2), figures, bold=True, anchor="start")
    return None


def _width(bars: Sequence[_Stretch], clock: tuple[_Window, int]) -> float:
    window, midnight = clock
    return window.at(bars[-1].end - midnight) - window.at(bars[0].begin - midnight)


def _numbers(first: int, last: int) -> str:
    return str(first) if first == last else f"{first}–{last}"


def _needed(figures: str) -> float:
    return width_of(figures, bold=True) + 1.2


def _visits(within: Sequence[_Stretch]) -> list[_Stretch]:
    bars: list[_Stretch] = []
    for stretch in within:
        if bars and bars[-1].visit == stretch.visit and stretch.begin <= bars[-1].end + 10:
            bars[-1] = _Stretch(bars[-1].begin, stretch.end, stretch.visit)
        else:
            bars.append(stretch)
    return bars


def _wait_bars(
    canvas: Canvas,
    within: Sequence[_Stretch],
    window: _Window,
    midnight: int,
    top: float,
) -> None:
    """Draw the waits of a day hatched, open at an end that lies outside the window."""
    spans: list[tuple[int, int]] = []
    for stretch in sorted(within, key=lambda stretch: stretch.begin):
        if spans and stretch.begin <= spans[-1][1]:
            spans[-1] = spans[-1][0], max(spans[-1][1], stretch.end)
        else:
            spans.append((stretch.begin, stretch.end))
    bottom = top + _BAR
    for begin, end in spans:
        left, right = window.at(begin - midnight), window.at(end - midnight)
        right = max(right, left + _LEAST)
        rect = Rect(left, top, right, bottom)
        canvas.rect(rect, fill="white", pen=None)
        canvas.hatch(rect, spacing=1.1)
        sides = [((left, top), (right, top)), ((left, bottom), (right, bottom))]
        if begin >= midnight + window.opens:
            sides.append(((left, top), (left, bottom)))
        if end <= midnight + window.closes:
            sides.append(((right, top), (right, bottom)))
        canvas.lines(sides, OUTLINE)
