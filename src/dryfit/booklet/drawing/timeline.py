"""The order of work on a time line: a row a day with hands, clamps and drying."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from dryfit.booklet.drawing.canvas import FINE, OUTLINE, Canvas, Rect, Svg, width_of
from dryfit.booklet.drawing.lettering import SMALLEST
from dryfit.booklet.drawing.shapes import caption
from dryfit.plan.plan import Plan, Step

_DAY = 14400
_HOUR = 600
_LEFT = 17.0
_WIDE = 104.0
_BAR = 6.4
_ROW = 8.0
_LEAST = 0.5


@dataclass(frozen=True, slots=True)
class _Window:
    """The hours of the day that are drawn, in tenths of a minute since midnight."""

    opens: int
    closes: int

    def at(self, tenths: int) -> float:
        """Return where a time of day comes on paper, within the window."""
        inside = min(max(tenths, self.opens), self.closes)
        return _LEFT + _WIDE * (inside - self.opens) / (self.closes - self.opens)


@dataclass(frozen=True, slots=True)
class _Stretch:
    """A stretch of time in tenths since midnight of day 1, with the visit that it belongs to."""

    begin: int
    end: int
    visit: int


def timeline(plan: Plan) -> Svg:
    """Return every day on which there is work, hands solid, clamps and drying hatched.

    The figures in the solid bars are visits, as the pages are numbered.
    """
    hands = [_Stretch(_time(step), _end(step), step.visit) for step in plan.steps]
    clamps, drying = _waits(plan.steps)
    window = _window(hands)
    canvas = Canvas()
    y = _hours(canvas, window)
    last = 0
    for day in sorted({stretch.begin // _DAY for stretch in hands}):
        y = _skipped(canvas, last, day, y)
        last = day + 1
        y = _day(canvas, day, window, (hands, clamps, drying), y)
    note = "Solid: your hands, with the numbers of the visits. Hatched: in clamps or drying."
    caption(canvas, 0.0, y + 1.0, note)
    return canvas.finish("Order of work, day by day")


def _time(step: Step) -> int:
    hour, _, minute = step.starts.clock.partition(":")
    return (step.starts.day - 1) * _DAY + int(hour) * _HOUR + int(minute) * 10


def _end(step: Step) -> int:
    return _time(step) + step.ends.tenths - step.starts.tenths


def _waits(steps: Sequence[Step]) -> tuple[list[_Stretch], list[_Stretch]]:
    """Return how long clamps are on and how long anything else dries, from the end of each step."""
    clamps: list[_Stretch] = []
    drying: list[_Stretch] = []
    for step in steps:
        for operation in step.operations:
            if not operation.after_tenths:
                continue
            end = _end(step)
            wait = _Stretch(end, end + operation.after_tenths, step.visit)
            (clamps if operation.glue_up else drying).append(wait)
    return clamps, drying


def _window(hands: Sequence[_Stretch]) -> _Window:
    """Return whole hours round all work."""
    opens = min(stretch.begin % _DAY for stretch in hands)
    closes = max(stretch.end - stretch.begin // _DAY * _DAY for stretch in hands)
    return _Window(opens // _HOUR * _HOUR, -(-closes // _HOUR) * _HOUR)


def _hours(canvas: Canvas, window: _Window) -> float:
    hours = range(window.opens // _HOUR, window.closes // _HOUR + 1)
    each = _WIDE / max(1, len(hours) - 1)
    step = 1 if each > width_of("00") + 2 else 2
    for hour in hours[::step]:
        canvas.text((window.at(hour * _HOUR), SMALLEST / 2), str(hour))
    return SMALLEST + 2.5


def _skipped(canvas: Canvas, done: int, day: int, y: float) -> float:
    """Write a line for days without any work between two days that have some."""
    idle = day - done
    if done == 0 or idle < 1:
        return y
    words = f"Day {done + 1}" if idle == 1 else f"Days {done + 1} to {day}"
    canvas.text((_LEFT + 1.5, y + 2.6), f"{words}: nothing to do by hand", anchor="start")
    return y + SMALLEST + 3.0


def _day(
    canvas: Canvas,
    day: int,
    window: _Window,
    tracks: tuple[Sequence[_Stretch], ...],
    y: float,
) -> float:
    midnight = day * _DAY
    rows = []
    for index, track in enumerate(tracks):
        within = list(_on_day(track, midnight, window))
        if within or index == 0:
            rows.append((index, within))
    bottom = y + _ROW * len(rows)
    hours = range(window.opens // _HOUR, window.closes // _HOUR + 1)
    canvas.lines([((window.at(h * _HOUR), y), (window.at(h * _HOUR), bottom)) for h in hours], FINE)
    canvas.text((0.0, y + _ROW / 2), f"Day {day + 1}", anchor="start", bold=True)
    for row, (index, within) in enumerate(rows):
        top = y + row * _ROW + (_ROW - _BAR) / 2
        if index == 0:
            _work_bars(canvas, within, window, midnight, top)
        else:
            _wait_bars(canvas, within, window, midnight, top, ("clamps", "drying")[index - 1])
    return bottom + 3.0


def _on_day(track: Sequence[_Stretch], midnight: int, window: _Window) -> Iterator[_Stretch]:
    for stretch in track:
        begin = max(stretch.begin, midnight + window.opens)
        end = min(stretch.end, midnight + window.closes)
        if begin < end:
            yield _Stretch(begin, end, stretch.visit)


def _work_bars(
    canvas: Canvas, within: Sequence[_Stretch], window: _Window, midnight: int, top: float
) -> None:
    """Draw the visits as black bars, their numbers in as many of them as it takes to fit."""
    bars = _visits(within)
    for bar in bars:
        left, right = window.at(bar.begin - midnight), window.at(bar.end - midnight)
        right = max(right - 0.3, left + _LEAST)
        canvas.rect(Rect(left, top, right, top + _BAR), fill="black", pen=None)
    group: list[_Stretch] = []
    for index, bar in enumerate(bars):
        if group and bar.begin > group[-1].end:
            group = []
        group.append(bar)
        left, right = window.at(group[0].begin - midnight), window.at(bar.end - midnight)
        numbers = sorted({each.visit for each in group})
        words = str(numbers[0]) if len(numbers) == 1 else f"{numbers[0]}–{numbers[-1]}"
        if right - left >= width_of(words, bold=True) + 1.2 and _enough(
            bars[index + 1 :], bar, window, midnight
        ):
            _number(canvas, (left, right), top, words)
            group = []


def _number(canvas: Canvas, ends: tuple[float, float], top: float, words: str) -> None:
    middle = (ends[0] + ends[1]) / 2
    half = width_of(words, bold=True) / 2 + 0.4
    canvas.rect(Rect(middle - half, top, middle + half, top + _BAR), fill="black", pen=None)
    canvas.text((middle, top + _BAR / 2), words, bold=True, white=True)


def _enough(rest: Sequence[_Stretch], bar: _Stretch, window: _Window, midnight: int) -> bool:
    """Return whether what follows without a pause is wide enough to carry numbers of its own."""
    end = bar.end
    run = []
    for other in rest:
        if other.begin > end:
            break
        run.append(other)
        end = other.end
    if not run:
        return True
    words = f"{run[0].visit}–{run[-1].visit}" if len(run) > 1 else str(run[0].visit)
    return (
        window.at(end - midnight) - window.at(bar.end - midnight)
        >= width_of(words, bold=True) + 1.2
    )


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
    word: str,
) -> None:
    spans: list[tuple[int, int]] = []
    for stretch in sorted(within, key=lambda stretch: stretch.begin):
        if spans and stretch.begin <= spans[-1][1]:
            spans[-1] = spans[-1][0], max(spans[-1][1], stretch.end)
        else:
            spans.append((stretch.begin, stretch.end))
    for begin, end in spans:
        left, right = window.at(begin - midnight), window.at(end - midnight)
        rect = Rect(left, top, max(right, left + _LEAST), top + _BAR)
        canvas.rect(rect, fill="white", pen=None)
        canvas.hatch(rect, spacing=1.1)
        canvas.rect(rect, pen=OUTLINE)
        half = width_of(word) / 2 + 0.8
        if rect.width > 2 * half + 2:
            middle = rect.middle[0]
            canvas.rect(Rect(middle - half, top + 0.6, middle + half, top + _BAR - 0.6),
                        fill="white", pen=None)  # fmt: skip
            canvas.text(rect.middle, word)
