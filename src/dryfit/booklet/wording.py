"""Words of the bench: durations, days, marks, counts, and what an operation is called.

Minutes of one step are whole minutes; sums are rounded to five, because planning numbers that
pretend to more are not believed.
"""

from __future__ import annotations

from collections.abc import Sequence

from dryfit.booklet.text import listed
from dryfit.kinds.joints import joint_kind
from dryfit.plan.operation import Operation
from dryfit.plan.plan import Moment

TENTHS_OF_A_MINUTE = 10

MARK_WORDS = {
    "R": "end",
    "R2": "end",
    "E": "edge",
    "E2": "edge",
    "F": "face",
    "B": "face",
}

WAY_WORDS = {"across": "side to side", "front to back": "front to back", "upright": "upright"}


def minutes(tenths: int) -> str:
    """Return a step's minutes as whole minutes: ``3 min``; less than one is one."""
    return f"{max(1, (tenths + 5) // TENTHS_OF_A_MINUTE)} min"


def roughly(tenths: int) -> str:
    """Return a sum of minutes, to five where it is ten or more: ``25 min``, ``9 h 50 min``."""
    return _hours(to_five(tenths) // TENTHS_OF_A_MINUTE)


def to_five(tenths: int) -> int:
    """Return the tenths that `roughly` tells: every sum of the booklet is rounded here."""
    whole = (tenths + 5) // TENTHS_OF_A_MINUTE
    if whole >= 10:
        whole = (whole + 2) // 5 * 5
    return whole * TENTHS_OF_A_MINUTE


def lag(tenths: int) -> str:
    """Return a waiting time as the label on the can says it: ``45 min``, ``24 h``."""
    return _hours((tenths + 5) // TENTHS_OF_A_MINUTE)


def _hours(whole: int) -> str:
    if whole < 60:
        return f"{whole} min"
    hours, rest = divmod(whole, 60)
    return f"{hours} h {rest:02} min" if rest else f"{hours} h"


def clock(moment: Moment) -> str:
    """Return the day and the time to five minutes: ``day 2, 10:15``, ``day 2 (Tue), 10:15``."""
    return f"{moment.on}, {time_of_day(moment)}"


def time_of_day(moment: Moment) -> str:
    """Return the time to five minutes: ``10:15``."""
    hours, rest = (int(part) for part in moment.clock.split(":"))
    whole = (hours * 60 + rest + 2) // 5 * 5
    return f"{whole // 60:02}:{whole % 60:02}"


def many(count: int, one: str, more: str | None = None) -> str:
    """Return a count with its noun: ``1 step``, ``4 steps``."""
    return f"{count} {one if count == 1 else more or one + 's'}"


def joints(kind: str, count: int) -> str:
    """Return how many joints of a kind: ``8 half laps``."""
    family = joint_kind(kind)
    return many(count, family.one, family.many)


def deed(operation: Operation) -> str:
    """Return what the operation is called in a heading: the second word of its id."""
    _, _, rest = operation.id.partition(" / ")
    return rest.partition(" / ")[0] or operation.kind


def subject(operation: Operation) -> str:
    """Return whom the operation is about: the first word of its id."""
    return operation.id.partition(" / ")[0]


def steps_in_words(numbers: Sequence[int]) -> str:
    """Return step numbers as a sentence names them: ``step 4``, ``steps 4, 5 and 7``."""
    return f"{'step' if len(numbers) == 1 else 'steps'} {listed(str(n) for n in numbers)}"
