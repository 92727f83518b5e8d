"""What a plan comes to, in words: the terminal and the front page of the booklet say the same."""

from __future__ import annotations

from collections.abc import Callable
from textwrap import wrap

from dryfit.plan.favour import WORTH
from dryfit.plan.plan import Plan, Totals

WIDE = 80
HOUR = 600
ENDED_IN_WORDS = (
    "the search for the order was ended by hand: this is the best order found by then, and another "
    "run may find another one"
)


def spent_in_words(totals: Totals) -> str:
    """Return work, set-up and waiting."""
    return (
        f"work {duration(totals.work)}, setting up {duration(totals.setup)}, "
        f"waiting {duration(totals.waiting)} in work hours"
    )


def done_in_words(plan: Plan) -> str:
    """Return when all is over, drying with it, and when the hands are done where that is sooner."""
    if plan.done is None or not plan.steps:
        return "nothing to do"
    hands = plan.steps[-1].ends
    words = f"done on {plan.done_on}, day {plan.done.day} at {plan.done.clock}"
    if hands.tenths >= plan.done.tenths:
        return words
    return f"{words}, when all is dry; the last work ends on {hands.on} at {hands.clock}"


def saved_in_words(totals: Totals, shown: Callable[[int], int] = int) -> str:
    """Return what the order saves against part by part: set-up, with walks and test cuts.

    `shown` rounds the set-up of both as it is told elsewhere: what is saved is the difference
    that a reader finds.
    """
    other = totals.part_by_part
    changes = "change of a setting" if totals.changeovers == 1 else "changes of a setting"
    now = f"{totals.changeovers} {changes}"
    saved = shown(other.setup) - shown(totals.setup)
    if saved <= 0:
        return f"{now}; {other.changeovers} if you made it part by part"
    return (
        f"{now} instead of {other.changeovers} if you made it part by part: "
        f"{duration(saved)} of setting up saved, walks and test cuts included"
    )


def bound_in_words(totals: Totals) -> str:
    """Return the minutes of changes beside the fewest possible, or the fewest found."""
    spent, over = exactly(totals.changeover), totals.over
    if totals.proven:
        return f"changing settings takes {spent}, the fewest possible over {over}: proved"
    found = totals.changeover if totals.fewest_found is None else totals.fewest_found
    if found == totals.fewest:
        return (
            f"changing settings takes {spent}; the fewest possible over {over} is "
            f"{exactly(found)}: proved"
        )
    beside = "" if found == totals.changeover else f"; the fewest found is {exactly(found)}"
    return (
        f"changing settings takes {spent}{beside}, at most {percent_above(found, totals.fewest)} % "
        f"above the best possible (no order, over {over}, takes less than "
        f"{exactly(totals.fewest)})"
    )


def spending_in_words(favour: str) -> str:
    """Return what set-up beyond the fewest is spent for."""
    worth = WORTH[favour]
    saves = "a minute" if worth == 1 else f"{worth} minutes"
    return f"a minute more of setting up is taken where it saves over {saves} of waiting ({favour})"


def percent_above(tenths: int, least: int) -> int:
    """Return by how many percent a time is above a bound, rounded up so that it stays true."""
    return -(-100 * (tenths - least) // least) if least else 100


def in_lines(words: str, indent: str = "") -> list[str]:
    """Return a sentence in lines of a terminal, all but the first one set in."""
    more = f"{indent}  "
    return wrap(words, WIDE, initial_indent=indent, subsequent_indent=more, break_on_hyphens=False)


def duration(tenths: int) -> str:
    """Return a time in hours and minutes, to the tenth: ``3.5 min``, ``1 h 46.5 min``.

    Nothing is rounded, so that what a reader adds up or subtracts comes out as it is told.
    """
    hours, rest = divmod(tenths, HOUR)
    if not hours:
        return exactly(rest)
    return f"{hours} h {rest // 10:02}{f'.{rest % 10}' if rest % 10 else ''} min"


def exactly(tenths: int) -> str:
    """Return minutes that two figures are compared by, to the tenth: ``74.5 min``."""
    return f"{tenths / 10:g} min"
