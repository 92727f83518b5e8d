"""How work lies on the machine, as a table that all parts held alike share, and the passes."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from dryfit.booklet.bench import Bench
from dryfit.booklet.text import Label, Mark, Piece, Say, Text, capital, joined
from dryfit.booklet.wording import MARK_WORDS, many
from dryfit.plan.operation import Operation, Work
from dryfit.plan.setting import Hold, Pass

PLACES = ("down", "at the fence", "at the stop")
ON_JIG = ("down", "at the cleat", "at the block")


@dataclass(frozen=True, slots=True)
class HoldRow:
    """One way of holding: for whom, where that differs, and the mark at each place or None."""

    whom: Text
    marks: tuple[Mark | None, ...]


@dataclass(frozen=True, slots=True)
class Holding:
    """The ways of holding in order; `places` are the columns in which any has a mark."""

    places: tuple[str, ...]
    rows: tuple[HoldRow, ...]

    @property
    def told(self) -> bool:
        """Whether the rows differ by whom they are for."""
        return any(row.whom for row in self.rows)

    def sentence(self) -> Text:
        """Return the only way of holding as a clause: ``Face F down, end R at the stop``."""
        row = self.rows[0]
        clauses: list[Text] = [
            (f"{MARK_WORDS.get(mark.sign, 'side')} ", mark, f" {place}")
            for place, mark in zip(self.places, row.marks, strict=True)
            if mark is not None
        ]
        first, *rest = clauses
        return joined([(capital(str(first[0])), *first[1:]), *rest], ", ")


_Ways = tuple[Hold, ...]


def holding(columns: Sequence[tuple[str, tuple[Operation, ...]]], bench: Bench) -> Holding | None:
    """Return how the operations are held; `columns` are headings with their operations.

    Copies that are held alike share their rows.  Where there are several columns their headings
    tell the rows apart, otherwise the copies do.
    """
    rows: list[tuple[Text, _Ways]] = []
    for heading, operations in columns:
        ways = _by_ways(work for operation in operations for work in _held(operation))
        for way, copies in ways.items():
            whom: list[Piece] = [heading] if len(columns) > 1 else []
            if len(ways) > 1:
                whom += [": ", *named(copies, bench)] if whom else named(copies, bench)
            rows.append((tuple(whom), way))
    cleat = any(s.axis == "jig" for _, own in columns for row in own for s in row.settings)
    return _table(rows, ON_JIG if cleat else PLACES)


def _held(operation: Operation) -> Iterable[Work]:
    """Yield how the work is held; between two stops of a router table no end rests at one.

    Which end meets which stop is then said beside it (`operations.router_stops`).
    """
    between = operation.station == "router table" and any(
        setting.axis == "stop" and setting.to == "both" for setting in operation.settings
    )
    for work in operation.work:
        if between and work.hold is not None:
            yield replace(work, hold=replace(work.hold, at_stop=None))
        else:
            yield work


def _by_ways(works: Iterable[Work]) -> dict[_Ways, tuple[str, ...]]:
    """Return the copies by how they are held, one way after the other."""
    lots: dict[tuple[str, ...], dict[Hold, None]] = {}
    for work in works:
        if work.hold is not None:
            lots.setdefault(work.copies, {})[work.hold] = None
    ways: dict[_Ways, tuple[str, ...]] = {}
    for copies, holds in lots.items():
        way = tuple(holds)
        ways[way] = (*ways.get(way, ()), *copies)
    return ways


def _table(rows: Sequence[tuple[Text, _Ways]], places: Sequence[str]) -> Holding | None:
    found = [
        (whom if first else (), (hold.down, hold.against_fence, hold.at_stop))
        for whom, way in rows
        for first, hold in zip((True, *(False for _ in way)), way, strict=False)
    ]
    used = [n for n in range(len(places)) if any(signs[n] for _, signs in found)]
    if not used:
        return None
    return Holding(
        tuple(places[n] for n in used),
        tuple(HoldRow(whom, tuple(_mark(signs[n]) for n in used)) for whom, signs in found),
    )


def _mark(sign: str | None) -> Mark | None:
    return None if sign is None else Mark(sign)


def named(names: tuple[str, ...], bench: Bench) -> Text:
    """Return copies by number, and their hand if all are of one: ``C1, C4 (hand A)``."""
    hands = {row.hand for row in bench.rows(names)}
    hand = next(iter(hands)) if len(hands) == 1 else None
    pieces = joined(
        ((Label(row.label or row.name),) for row in bench.by_part(names, named=False)), ", "
    )
    return (*pieces, f" (hand {hand})") if hand else pieces


def pass_lines(operations: Iterable[Operation], bench: Bench) -> tuple[Text, ...]:
    """Return the passes as sentences in order; nothing for a single cut at the stop.

    Where they are not the same for all copies, each says for which.
    """
    lots: dict[tuple[Pass, ...], dict[str, None]] = {}
    held = (work for operation in operations for work in operation.work if work.hold is not None)
    for work in held:
        lots.setdefault(work.passes, {}).update(dict.fromkeys(work.copies))
    several = len(lots) > 1
    rows: list[Text] = []
    for passes, copies in lots.items():
        whom: Text = (*named(tuple(copies), bench), ": ") if several else ()
        rows += [(*whom, *line) for line in _passes(passes, bench.say)]
    return tuple(rows)


def _passes(passes: tuple[Pass, ...], say: Say) -> tuple[Text, ...]:
    if passes in {(), (Pass(),)}:
        return ()
    limits = [step for step in passes if not step.between and step.moved is None]
    rows = [_limit(step, number, say) for number, step in enumerate(limits, start=1)]
    over_pin = sum(step.moved is not None for step in passes)
    if over_pin:
        words = many(over_pin, "pass", "passes")
        rows.append((f"Then {words}, each with the socket just cut over the pin.",))
    between = len(passes) - len(limits) - over_pin
    if between:
        rows.append((_cleared(between, slot=len(limits) > 1),))
    return tuple(rows)


def _limit(step: Pass, number: int, say: Say) -> Text:
    if step.spacer is not None:
        spacer = say.setting_with_unit(step.spacer)
        return (f"Pass {number}: the ", spacer, " spacer between stop and work.")
    if step.fence is not None:
        return (f"Pass {number}: fence at ", say.setting_with_unit(step.fence), ".")
    return (f"Pass {number}: right up to the stop.",)


def _cleared(count: int, *, slot: bool) -> str:
    where = "between these two cuts" if slot else "out to the end, away from the stop"
    return f"Then {many(count, 'pass', 'passes')} to clear the wood {where}."
