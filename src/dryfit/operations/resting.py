"""Wood that comes to rest while it is planed: much is never taken off in one go (TRADE A3.5, A3.7).

What is dried seldom holds the same moisture all through.  Where both faces lose alike, and the
pieces lie on stickers before their last pass, they move before they are true and not after.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.operations import setting_of
from dryfit.operations.machine_limits import PLANER
from dryfit.plan.operation import Detail, Operation
from dryfit.shop.resting import LEFT, in_words
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank

BOTH_FACES = Fraction(3)
"""mm: where more comes off, both faces lose alike (A3.5)."""
WHY_RESTED = "so much comes off that the wood moves, and it is planed true when it has come to rest"


def before_the_rest(last: Operation, all_in_one: Operation, blank: Blank, shop: Shop) -> Operation:
    """Return the planing to nearly the thickness that comes before `last`, with its rest.

    `all_in_one` is the planing to thickness as it would be without a rest.
    """
    nearly = blank.to_thickness + LEFT
    return replace(
        all_in_one,
        id=last.id.replace(" / thickness", " / rough thickness"),
        kind="rough thickness",
        settings=setting_of.known_to(shop, PLANER, (setting_of.plain("thickness", nearly),)),
        tenths=all_in_one.tenths - last.tenths,
        sentence=all_in_one.sentence.replace("to thickness, all in one go", "close to thickness"),
        details=(*both_faces(blank), _stacked(shop)),
        after_tenths=shop.rest,
        splittable=False,
    )


TURNED: Detail = (
    "Once both faces are clean turn each piece after every pass, so that both lose alike",
)
LOOKED_AT: Detail = ("What has moved in its rest gets one face true again at the jointer first",)


def _stacked(shop: Shop) -> Detail:
    return (f"Stack them on stickers for {in_words(shop.rest)}, air on all sides",)


def both_faces(blank: Blank) -> tuple[Detail, ...]:
    """Return that both faces lose alike, where much is planed off."""
    if blank.thickness - blank.to_thickness <= BOTH_FACES:
        return ()
    return (TURNED,)
