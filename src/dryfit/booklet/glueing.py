"""A glue-up on paper: the clock, parts in order, clamps, diagonals, and what cures after it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.bench import Bench, CopyRow
from dryfit.booklet.text import Amount, Text, capital
from dryfit.booklet.titles import title
from dryfit.booklet.wording import deed, joints, lag, minutes
from dryfit.plan.operation import GlueUp, Operation
from dryfit.plan.plan import Step

_LAG_WORDS = {
    "out of clamps": "clamps off",
    "next stage": "next glue-up",
    "level": "level the joints",
    "machine": "plane or saw the glue line",
    "finish": "lay a finish over it",
}

DIAGONAL_TOLERANCE = Fraction(1, 1000)
"""Allowed difference of two diagonals: 1 mm per 1000 mm (TRADE C3.5, common practice)."""

_THIRTY_SECOND = Fraction(254, 10) / 32
"""1/32 in, in mm."""


@dataclass(frozen=True, slots=True)
class ClockCell:
    """One cell of the clock line: a label, the time in large type, and what to write down."""

    label: str
    value: str
    write: str


@dataclass(frozen=True, slots=True)
class ClampView:
    """Clamps of one kind: how many, how long they must open, where they go."""

    count: int
    opening: Text
    at: str
    fitting: str | None


@dataclass(frozen=True, slots=True)
class DiagonalView:
    """Two diagonals that must be equal: between what, how long, and how far they may differ."""

    name: str
    length: Text
    tolerance: Text


@dataclass(frozen=True, slots=True)
class GlueView:
    """One glue-up; `tight` when closing takes most of the open time.

    `lags` are the waits after it by what they allow, `meanwhile` steps that can be done while it
    is in clamps: the numbers of the first and the last of a row with one title, and that.
    """

    stage: str
    glue: str
    clock: tuple[ClockCell, ...]
    parts: tuple[CopyRow, ...]
    joints: str
    clamps: tuple[ClampView, ...]
    diagonals: tuple[DiagonalView, ...]
    lags: tuple[tuple[str, str], ...]
    closing: str
    tight: bool
    meanwhile: tuple[tuple[int, int, str], ...]


def glue_view(glue_up: GlueUp, operation: Operation, step: Step, bench: Bench) -> GlueView:
    """Return what is printed for a glue-up."""
    return GlueView(
        stage=operation.id.partition(" / ")[0],
        glue=capital(glue_up.glue),
        clock=_clock(glue_up),
        parts=bench.rows(glue_up.parts),
        joints=_joints(operation, bench),
        clamps=_clamps(glue_up, operation, bench),
        diagonals=tuple(_diagonal(name, mm, bench) for name, mm in glue_up.diagonals),
        lags=tuple((_lag_words(row.until, operation), lag(row.tenths)) for row in glue_up.lags),
        closing=minutes(glue_up.closing_tenths),
        tight=glue_up.closing_tenths * 10 > glue_up.limit_tenths * 9,
        meanwhile=_meanwhile(step.meanwhile, bench),
    )


def _lag_words(until: str, operation: Operation) -> str:
    glue_up = operation.glue_up
    if until == "out of clamps" and glue_up is not None and not glue_up.clamps:
        return "free"
    if until == "level" and deed(operation) == "lip":
        return "trim flush"
    return _LAG_WORDS.get(until, until)


def _meanwhile(numbers: Iterable[int], bench: Bench) -> tuple[tuple[int, int, str], ...]:
    """Return first step, last step and work; steps in a row with the same work are one entry."""
    rows: list[tuple[int, int, str]] = []
    for number in numbers:
        work = _work_of(number, bench)
        if rows and rows[-1][1:] == (number - 1, work):
            rows[-1] = (rows[-1][0], number, work)
        else:
            rows.append((number, number, work))
    return tuple(rows)


def _work_of(number: int, bench: Bench) -> str:
    steps = (step for step in bench.plan.steps if step.number == number)
    return title((op for step in steps for op in step.operations), bench)


def _clock(glue_up: GlueUp) -> tuple[ClockCell, ...]:
    off = next((row.tenths for row in glue_up.lags if row.until == "out of clamps"), None)
    clamped = bool(glue_up.clamps)
    last = "Last clamp shut within" if clamped else "All joints shut within"
    cells = [
        ClockCell("Open time", lag(glue_up.open_tenths), "first glue at"),
        ClockCell(last, lag(glue_up.limit_tenths), "shut at"),
    ]
    if off is not None and clamped:
        cells.append(ClockCell("In clamps", lag(off), "clamps off at"))
    elif off is not None:
        cells.append(ClockCell("Pressed", lag(off), "free at"))
    return tuple(cells)


def _joints(operation: Operation, bench: Bench) -> str:
    name = operation.id.partition(" / ")[0]
    for assembly in bench.model.assemblies:
        if assembly.name == name:
            kinds = [bench.model.joint(joint).kind for joint in assembly.joints]
            counts = {kind: kinds.count(kind) for kind in dict.fromkeys(kinds)}
            return ", ".join(joints(kind, count) for kind, count in counts.items())
    return ""


def _clamps(glue_up: GlueUp, operation: Operation, bench: Bench) -> tuple[ClampView, ...]:
    """Return the rows of clamps, each with those of the shop that are free for it."""
    opens = {clamp.name: clamp.opens for clamp in bench.shop.clamps}
    left = {held.resource: held.count for held in operation.held}
    names: dict[int, str | None] = {}
    # Shorter openings first, each with the shortest that will do: so the longer ones are left.
    for number, row in sorted(enumerate(glue_up.clamps), key=lambda each: each[1].length):
        fitting = sorted(
            (name for name in opens if opens[name] >= row.length), key=opens.__getitem__
        )
        taken: dict[str, int] = {}
        for name in fitting:
            taken[name] = min(left.get(name, 0), row.count - sum(taken.values()))
            left[name] = left.get(name, 0) - taken[name]
        kinds = [name for name, count in taken.items() if count]
        mixed = ", ".join(f"{taken[name]} {name}" for name in kinds)
        names[number] = mixed if len(kinds) > 1 else next(iter(kinds or fitting), None)
    return tuple(
        ClampView(row.count, (bench.say.size_with_unit(row.length),), row.at, names[number])
        for number, row in enumerate(glue_up.clamps)
    )


def _diagonal(name: str, length: float, bench: Bench) -> DiagonalView:
    """Return a diagonal to a tenth of a millimetre or 1/64 in: it is compared, not cut."""
    exact = Fraction(repr(length))
    allowed = _readable(exact * DIAGONAL_TOLERANCE, bench)
    return DiagonalView(
        bench.without_article(name), (bench.say.setting_with_unit(exact),), (allowed,)
    )


def _readable(tolerance: Fraction, bench: Bench) -> Amount:
    """Return a tolerance that a rule shows: in inches whole thirty-seconds, and at least one."""
    if bench.model.display.unit == "mm":
        return bench.say.setting_with_unit(tolerance)
    steps = max(1, round(tolerance / _THIRTY_SECOND))
    return bench.say.setting_with_unit(steps * _THIRTY_SECOND)
