"""Which copies are worked together, how they lie on the machine, and the passes in order."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby

from dryfit.booklet.bench import Bench, CopyRow
from dryfit.booklet.text import Mark, Say, Text, capital, joined
from dryfit.booklet.wording import MARK_WORDS, many
from dryfit.placing.model import Part
from dryfit.plan.operation import Work
from dryfit.plan.setting import Hold, Pass


@dataclass(frozen=True, slots=True)
class Lot:
    """Copies that are held alike, one way of holding after the other.

    `hand` is named when all of them are of one hand and the part has two.
    """

    copies: tuple[CopyRow, ...]
    hand: str | None
    holds: tuple[Text, ...]


@dataclass(frozen=True, slots=True)
class WorkView:
    """Lots of one part that all take the same passes."""

    part: str
    lots: tuple[Lot, ...]
    passes: tuple[Text, ...]


def work_views(works: tuple[Work, ...], bench: Bench) -> tuple[WorkView, ...]:
    """Return the works, those of one part and with the same passes drawn together."""
    grouped = groupby(works, key=lambda work: (work.part, work.passes))
    return tuple(_work(part, passes, tuple(row), bench) for (part, passes), row in grouped)


def _work(name: str, passes: tuple[Pass, ...], works: tuple[Work, ...], bench: Bench) -> WorkView:
    part = bench.part(name)
    lots: dict[tuple[str, ...], list[Work]] = {}
    for work in works:
        lots.setdefault(work.copies, []).append(work)
    return WorkView(
        part=capital(name if part is None else part.written),
        lots=tuple(_lot(copies, row, part, bench) for copies, row in lots.items()),
        passes=_passes(passes, bench.say),
    )


def _lot(copies: tuple[str, ...], works: list[Work], part: Part | None, bench: Bench) -> Lot:
    rows = bench.rows(copies)
    hands = {row.hand for row in rows}
    milled = not any(work.features or _at_stop(work) for work in works)
    holds = dict.fromkeys(_hold(work.hold) for work in works if work.hold is not None)
    return Lot(
        copies=bench.by_part(copies, named=part is None) if milled or part is None else rows,
        hand=next(iter(hands)) if len(hands) == 1 else None,
        holds=tuple(hold for hold in holds if hold),
    )


def _at_stop(work: Work) -> bool:
    return work.hold is not None and work.hold.at_stop is not None


def _hold(hold: Hold) -> Text:
    """Return how the work lies, as a clause: ``face F down on the table, end R at the stop``."""
    return joined(
        (
            (f"{MARK_WORDS.get(mark, 'side')} ", Mark(mark), f" {place}")
            for mark, place in (
                (hold.down, "down on the table"),
                (hold.against_fence, "against the fence"),
                (hold.at_stop, "at the stop"),
            )
            if mark is not None
        ),
        ", ",
    )


def _passes(passes: tuple[Pass, ...], say: Say) -> tuple[Text, ...]:
    if passes in {(), (Pass(),)}:
        return ()
    limits = [step for step in passes if not step.between]
    rows = [_limit(step, number, say) for number, step in enumerate(limits, start=1)]
    between = len(passes) - len(limits)
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
