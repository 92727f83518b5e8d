"""What it would be to do one step before another, for the terminal."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from dryfit.plan.chain import Link
from dryfit.plan.favour import price_of
from dryfit.plan.plan import Moment, Plan, Step
from dryfit.plan.totals_text import duration, in_lines

_BETTER = (
    "The plan as asked is the better one: the search did not come across it without the wish, so "
    "the wish makes the plan better."
)
_NO_LINE = (
    "The notes have no line for it: they order the gluing, finishing and sanding of things, and "
    "the cutting of parts."
)


def named(step: Step) -> str:
    """Return a step as it is spoken of: ``step 26 (post / end lap)``."""
    return f"step {step.number} ({step.id})"


def forbidden_text(first: Step, then: Step, chain: Iterable[Link]) -> str:
    """Return why a step cannot be done before another: rules that lead round in a circle."""
    lines = (f"  {link.told()}" for link in chain)
    return "\n".join((f"{named(first)} cannot be done before {named(then)}:", *lines)) + "\n"


def move_text(
    first: Step, then: Step, now: Plan, wished: Plan, line: str | None, with_line: Plan | None
) -> str:
    """Return both plans side by side, and the line of the notes that keeps the wish.

    The plan `with_line` is the one that the notes have with it.
    """
    head = ("", "as it is", "as asked", "difference")
    rows = [head, *_figures(now, wished)]
    widths = [max(len(row[column]) for row in rows) for column in range(len(head))]
    table = (
        "  ".join(
            (
                row[0].ljust(widths[0]),
                *(c.rjust(w) for c, w in zip(row[1:], widths[1:], strict=True)),
            )
        ).rstrip()
        for row in rows
    )
    asked = f"{named(first)} before {named(then)}, all else ordered anew:"
    better = in_lines(_BETTER) if price_of(wished) < price_of(now) else ()
    kept = _to_keep(line, now, with_line)
    return "\n".join((asked, "", *table, "", *better, *kept)) + "\n"


def _figures(now: Plan, wished: Plan) -> Iterator[tuple[str, str, str, str]]:
    a, b = now.totals, wished.totals
    yield (
        "changes of a setting",
        str(a.changeovers),
        str(b.changeovers),
        _signed(b.changeovers - a.changeovers),
    )
    for name, before, after in (
        ("setting up", a.setup, b.setup),
        ("waiting", a.waiting, b.waiting),
    ):
        yield name, duration(before), duration(after), _minutes(after - before)
    one, other = _over(now), _over(wished)
    later = _minutes(_shown(other) - _shown(one))
    yield "done", f"day {one.day}, {one.clock}", f"day {other.day}, {other.clock}", later


def _signed(count: int) -> str:
    return f"{count:+d}" if count else "same"


def _minutes(tenths: int) -> str:
    sign = "+" if tenths > 0 else "-"
    return f"{sign}{duration(abs(tenths))}" if tenths else "same"


def _over(plan: Plan) -> Moment:
    """Return when the last coat is dry, or the last step done where nothing dries after it."""
    return plan.done if plan.done is not None else plan.steps[-1].ends


def _shown(moment: Moment) -> int:
    """Return the tenths since midnight of day 1 that its clock tells: whole minutes.

    The difference of two moments is that of the clock times that stand beside it.
    """
    hours, _, minutes = moment.clock.partition(":")
    return (((moment.day - 1) * 24 + int(hours)) * 60 + int(minutes)) * 10


def _to_keep(line: str | None, now: Plan, plan: Plan | None) -> Iterator[str]:
    if line is None:
        yield _NO_LINE
        return
    yield f"To keep it, write in the notes: {line}"
    if plan is not None:
        figures = ", ".join(
            f"{name} {after}" + (f" ({more})" if more != "same" else "")
            for name, _, after, more in _figures(now, plan)
        )
        yield from in_lines(f"With that line, which orders all that it names: {figures}.")
