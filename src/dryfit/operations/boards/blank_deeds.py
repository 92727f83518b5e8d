"""What is done to all pieces of a blank at once, and how sentences name them."""

from __future__ import annotations

from fractions import Fraction

from dryfit.operations.minutes import tenths
from dryfit.operations.words import all_of, spoken
from dryfit.plan.operation import Detail, Operation, Work
from dryfit.plan.setting import Hold, Setting
from dryfit.stock.blanks.blank import Blank


def operation(
    blank: Blank,
    what: str,
    station: str,
    settings: tuple[Setting, ...],
    exact: Fraction,
    sentence: str,
    hold: Hold | None = None,
    why: Detail = (),
) -> Operation:
    """Return one deed on all pieces of a blank; `exact` are its tenths before rounding.

    `why` says what keeps a machine from it, where the shop has one.
    """
    return Operation(
        id=f"{blank.subject} / {what}",
        kind=what,
        station=station,
        part=blank.part.name,
        settings=settings,
        work=(Work(blank.subject, blank.pieces, (), hold, ()),),
        tenths=tenths(exact),
        sentence=sentence,
        details=(why,) if why else (),
    )


def pieces_of(blank: Blank) -> str:
    """Return the blanks as a sentence names them."""
    if blank.leaves > 1:
        return f"the {spoken(blank.count, f'{blank.part.name} strip')}"
    if blank.staves:
        return f"the {spoken(len(blank.pieces), blank.subject)}"
    if blank.each == 1:
        return all_of(blank.part)
    return f"the {spoken(blank.count, f'{blank.subject} blank')}"
