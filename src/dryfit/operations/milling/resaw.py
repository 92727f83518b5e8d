"""Leaves sawn from strips on edge, numbered, stickered, and opened like a book (TRADE A8)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.joinery.resawing import resaw_kerf
from dryfit.operations import setting_of
from dryfit.operations.boards.blank_deeds import pieces_of
from dryfit.operations.machine_limits import BAND_SAW
from dryfit.operations.milling.resting import leaves_rest, stacked
from dryfit.operations.milling.strips import Strips
from dryfit.operations.minutes import METRE, tenths, worked
from dryfit.operations.words import in_a_word
from dryfit.plan.operation import Detail, Operation, Work
from dryfit.plan.setting import Hold, Setting
from dryfit.shop.shop import Shop

WHY_TRUED_FIRST = "the strip stands on its true edge, and its true face runs along the fence"
WHY_STICKERED = "a fresh leaf cups towards its drier side, and is planed when it has come to rest"


def resawn(strips: Strips, shop: Shop) -> Operation:
    """Return the sawing of strips into leaves, which then lie on stickers.

    Where a strip is higher on edge than the band saw takes, it is sawn by hand (TRADE K9).
    """
    blank = strips.blank
    blade = next(iter(shop.cutters_at(BAND_SAW)), None)
    machine = shop.stations.get(BAND_SAW)
    deepest = machine.limits.get("depth") if machine is not None else None
    high = machine is None or (deepest is not None and blank.width > deepest)
    cuts = blank.count * (strips.leaves - 1 + strips.sawn_off)
    exact = worked(shop, "resaw", each=cuts, per_metre=blank.length * cuts / METRE)
    again = cuts - blank.count
    exact += worked(shop, "joint face", each=again, per_metre=blank.length * again / METRE)
    each = "" if blank.count == 1 else ", each"
    sentence = (
        f"Saw {pieces_of(blank)}{each} into {in_a_word(strips.leaves)} leaves: on its true edge, "
        "the true face along the fence"
    )
    if high:
        sentence = (
            f"Saw {pieces_of(blank)}{each} into {in_a_word(strips.leaves)} leaves with a hand saw, "
            "to a gauge line all round from the true face"
        )
    settings: tuple[Setting, ...] = ()
    if blade is not None and not high:
        wanted = (
            setting_of.named("cutter", blade.name),
            setting_of.distance("fence", strips.leaf, resaw_kerf(shop), None),
        )
        settings = setting_of.known_to(shop, BAND_SAW, wanted)
    hold = None if high else Hold("E", "F", None)
    return Operation(
        id=f"{blank.part.name} / resaw",
        kind="resaw",
        station="bench" if high else BAND_SAW,
        part=blank.part.name,
        settings=settings,
        work=(Work(blank.subject, blank.pieces, (), hold, ()),),
        tenths=tenths(exact * (shop.by_hand if high else 1)),
        sentence=sentence,
        after_tenths=leaves_rest(blank.part, shop),
        splittable=False,
        check="each leaf is as thick along one edge as along the other",
        details=_details(strips, shop, by_hand=high),
    )


_NUMBERED: Detail = (
    (
        "Number the leaves of a strip 1 and 2 as they come off; mark the same end of both, and the "
        "faces that were sawn apart"
    ),
)
_AGAIN: Detail = (
    "After each leaf make the sawn face true again: it is what the next leaf is sawn from",
)
_OPENED = (
    "Open the two leaves of a strip like a book: sawn faces up, side by side the edges that lay on "
    "one another. Slide them until the figure meets"
)
_SLED: Detail = (
    "Quicker with a router on a sled over two rails: ",
    Fraction(1),
    " to ",
    Fraction(2),
    (
        " a layer, each pass on by three quarters of the bit; turn it over and shim it, then take "
        "the marks out with a plane"
    ),
)


def _details(strips: Strips, shop: Shop, *, by_hand: bool) -> tuple[Detail, ...]:
    """Return what is told of the leaves: the fence is set to one, not to half a strip (A8.2)."""
    told: list[Detail] = []
    if by_hand:
        told.append(("Each leaf is sawn ", strips.leaf, " thick"))
    if strips.leaves > 2 or strips.sawn_off:
        told.append(_AGAIN)
    if strips.sawn_off:
        told.append(("What is left of a strip after its last leaf is a thin board to keep",))
    if strips.blank.part.bookmatched:
        told.append(_NUMBERED)
    rest = leaves_rest(strips.blank.part, shop)
    if rest:
        told.append(stacked(rest))
    return tuple(told)


def opened_like_a_book() -> tuple[Detail, ...]:
    """Return how leaves lie side by side, before and while they are glued (TRADE A8.4, K11)."""
    return ((_OPENED,),)


def on_a_router_sled() -> Detail:
    """Return how a panel is flattened that is wider than the planer (TRADE A7.2)."""
    return _SLED
