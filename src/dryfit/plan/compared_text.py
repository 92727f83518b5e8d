"""Plans of one piece side by side for the terminal, with the same work part by part."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dryfit.plan.favour import WORTH
from dryfit.plan.plan import Moment, PartByPart, Plan, Totals
from dryfit.plan.totals_text import duration, exactly, in_lines, percent_above

_LABEL, _COLUMN = 20, 15
PART_BY_PART = "part by part"


def compared(plans: Sequence[Plan]) -> str:
    """Return a table of the plans, one a column, and what no order can go below.

    All plans are of the same work list, each made for another favour.
    """
    lines = [_row("favour", [*(plan.favour for plan in plans), PART_BY_PART])]
    lines += [_row(label, cells) for label, cells in _rows(plans)]
    lines.append("")
    for words in _remarks(plans):
        lines += in_lines(words)
    return "\n".join(lines) + "\n"


def _row(label: str, cells: Sequence[str]) -> str:
    return f"{label:{_LABEL}}{''.join(f'{cell:{_COLUMN}}' for cell in cells)}".rstrip()


def _rows(plans: Sequence[Plan]) -> Iterator[tuple[str, list[str]]]:
    other = plans[0].totals.part_by_part
    every: tuple[Totals | PartByPart, ...] = (*(plan.totals for plan in plans), other)
    yield "work", [duration(row.attended - row.setup) for row in every]
    yield "setting up", [duration(row.setup) for row in every]
    yield "  changes", [f"{row.changeovers}: {exactly(row.changeover)}" for row in every]
    yield "  walks", [exactly(row.walk) for row in every]
    yield "  test cuts", [exactly(row.tests) for row in every]
    yield "hands on", [duration(row.attended) for row in every]
    yield "waiting", [duration(row.waiting) for row in every]
    hands = [*(plan.steps[-1].ends if plan.steps else None for plan in plans), other.ends]
    done = [*(plan.done for plan in plans), other.done]
    if done != hands:
        yield "last work ends", [_moment(each) for each in hands]
    yield "done", [_moment(each) for each in done]
    if any(each is not None and each.name for each in done):
        yield "", [each.name if each is not None else "" for each in done]


def _moment(moment: Moment | None) -> str:
    return f"day {moment.day}, {moment.clock}" if moment is not None else ""


def _remarks(plans: Sequence[Plan]) -> Iterator[str]:
    orders: dict[tuple[object, ...], list[str]] = {}
    for plan in plans:
        orders.setdefault(tuple(step.operations for step in plan.steps), []).append(plan.favour)
    for alike in orders.values():
        if len(alike) > 1:
            yield f"The same order: {', '.join(alike[:-1])} and {alike[-1]}."
    worths = ", ".join(f"{plan.favour} {WORTH[plan.favour]}" for plan in plans)
    yield f"Minutes of waiting that a minute of set-up is worth: {worths}."
    yield from _bounds(plans)


def _bounds(plans: Sequence[Plan]) -> Iterator[str]:
    totals = [plan.totals for plan in plans]
    fewest, over = max(row.fewest for row in totals), totals[0].over
    known = [row.changeover for row in totals]
    known += [row.fewest_found for row in totals if row.fewest_found is not None]
    least = min(known)
    if least == fewest:
        yield f"The fewest minutes possible for changes, over {over}: {exactly(least)}, proved."
        return
    yield (
        f"The fewest minutes found for changes: {exactly(least)}, at most "
        f"{percent_above(least, fewest)} % above the best possible (no order, over {over}, takes "
        f"less than {exactly(fewest)})."
    )
