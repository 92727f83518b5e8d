"""Wood that comes to rest while it is planed: much is never taken off in one go (TRADE A3.5, A3.7).

What is dried seldom holds the same moisture all through.  Where both faces lose alike, and the
pieces lie on stickers before their last pass, they move before they are true and not after.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.operations import setting_of
from dryfit.operations.machine_limits import PLANER, Piece, why_not_jointed_face
from dryfit.placing.model import Part
from dryfit.plan.operation import Detail, Operation
from dryfit.shop.resting import LEFT, in_words
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank

BOTH_FACES = Fraction(3)
"""mm: where more comes off, both faces lose alike (A3.5)."""
WHY_RESTED = "so much comes off that the wood moves, and it is planed true when it has come to rest"


def before_the_rest(
    last: Operation, all_in_one: Operation, blank: Blank, rest: int, shop: Shop
) -> Operation:
    """Return the planing to nearly the thickness that comes before `last`, with its rest.

    `all_in_one` is the planing to thickness as it would be without a rest.
    """
    nearly = (setting_of.plain("thickness", blank.to_thickness + LEFT),)
    said = all_in_one.sentence.replace("to thickness", "close to thickness")
    return replace(
        all_in_one,
        id=last.id.replace(" / thickness", " / rough thickness"),
        kind="rough thickness",
        settings=setting_of.known_to(shop, PLANER, nearly) if last.station == PLANER else (),
        tenths=all_in_one.tenths - last.tenths,
        sentence=said.replace(", all in one go", "").replace(", to a gauge line", ""),
        details=(*_close_to(last, blank), *both_faces(blank), stacked(rest)),
        after_tenths=rest,
        splittable=False,
    )


TURNED: Detail = (
    "Once both faces are clean turn each piece after every pass, so that both lose alike",
)


def _close_to(last: Operation, blank: Blank) -> tuple[Detail, ...]:
    """Return how thick it is left where no planer is set to it."""
    return () if last.station == PLANER else (("Leave them ", blank.to_thickness + LEFT, " thick"),)


def looked_at(rested: Blank, shop: Shop) -> Detail:
    """Return that what was true before its rest may not be true after it.

    It goes to the jointer only where that takes it as wide and as thin as it is by then.
    """
    piece = Piece(rested.length, rested.width, rested.thickness)
    jointed = why_not_jointed_face(piece, shop) is None
    where = "at the jointer" if jointed else "with a plane"
    return (f"What has moved in its rest gets one face true again {where} first",)


def stacked(rest: int) -> Detail:
    """Return how wood lies that rests for so many tenths of a minute."""
    days, more = divmod(rest, 24 * 60 * 10)
    time = f"{days} days" if days > 1 and not more else in_words(rest)
    return (f"Stack them on stickers for {time}, air on all sides",)


def leaves_rest(part: Part, shop: Shop) -> int:
    """Return how many tenths of a minute the leaves of a part lie on stickers (A8.3)."""
    return shop.rests.resawn if part.rested is None else part.rested


def both_faces(blank: Blank) -> tuple[Detail, ...]:
    """Return that both faces lose alike, where much is planed off."""
    if blank.thickness - blank.to_thickness <= BOTH_FACES:
        return ()
    return (TURNED,)
