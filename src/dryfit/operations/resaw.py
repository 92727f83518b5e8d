"""Leaves of one slab, opened like a book: sawn on edge, numbered, stickered (TRADE A8)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.joinery.resawing import LEAVES, WARP, resaw_kerf, thickness_for
from dryfit.operations import setting_of
from dryfit.operations.machine_limits import BAND_SAW
from dryfit.operations.minutes import METRE, tenths, worked
from dryfit.operations.out_of_boards import OutOfBoards
from dryfit.operations.words import in_a_word, spoken
from dryfit.plan.operation import Detail, Operation, Rule
from dryfit.plan.setting import Setting
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank

WHY_LEAVES_FIRST = "the leaves have to be there"
WHY_STRIP_FIRST = "the strip has to be there"
WHY_STICKERED = "a fresh leaf cups towards its drier side, and is planed when it has come to rest"
STICKERED = 24 * 60 * 10
"""A day on stickers before the sawn face is planed (TRADE A8.3: 1 to 7), tenths of a minute."""


def resawn(
    blank: Blank, shop: Shop, out: OutOfBoards | None = None, then: str = ""
) -> tuple[Operation, tuple[Rule, ...]]:
    """Return the sawing of a slab into leaves, before any other work on them.

    Strips that come `out` of boards are freed by the cuts of those.  `then` is the first deed on
    the leaves, usually that a face is made true.  Where the slab is higher on
    edge than the band saw takes, it is sawn by hand (TRADE K9).
    """
    blade = next(iter(shop.cutters_at(BAND_SAW)), None)
    machine = shop.stations.get(BAND_SAW)
    deepest = machine.limits.get("depth") if machine is not None else None
    high = machine is None or (deepest is not None and blank.width > deepest)
    kerf = resaw_kerf(shop)
    leaves = LEAVES if out is None else out.leaves
    leaf, count = blank.thickness, blank.count + (0 if out is None else out.extra)
    strips = -(-count // leaves)
    cuts = strips * (leaves - 1)
    exact = worked(shop, "resaw", each=cuts, per_metre=blank.length * cuts / METRE)
    sentence = (
        f"Rip {spoken(strips, 'strip')} from {_slab(blank)}, true one face and one edge of "
        f"{'it' if strips == 1 else 'each'}, stand it on that edge and saw it into two leaves"
    )
    if out is not None:
        the = "the strip" if strips == 1 else f"the {spoken(strips, 'strip')}"
        sentence = (
            f"True one face and one edge of {the}, stand "
            f"{'it' if strips == 1 else 'each'} on that edge and saw it into "
            f"{in_a_word(leaves)} leaves"
        )
    settings: tuple[Setting, ...] = ()
    if blade is not None and not high:
        wanted = (
            setting_of.named("cutter", blade.name),
            setting_of.distance("fence", leaf, kerf, None),
        )
        settings = setting_of.known_to(shop, BAND_SAW, wanted)
    name = f"{blank.part.name} / resaw"
    operation = Operation(
        id=name,
        kind="resaw",
        station="bench" if high else BAND_SAW,
        part=blank.part.name,
        settings=settings,
        work=(),
        tenths=tenths(exact * (shop.by_hand if high else 1)),
        sentence=sentence + (" with a hand saw, to a gauge line all round" if high else ""),
        after_tenths=STICKERED,
        splittable=False,
        check="each leaf is as thick along one edge as along the other",
        details=_details(blank, leaves, thickness_for(leaves, leaf, Fraction(0), kerf)),
    )
    rested = Rule(name, then or f"{blank.subject} / face", WHY_STICKERED, STICKERED)
    if out is None:
        return operation, (Rule(name, f"{blank.subject} / rough length", WHY_LEAVES_FIRST), rested)
    return operation, (*(Rule(each, name, WHY_STRIP_FIRST) for each in out.freed), rested)


_NUMBERED = (
    "Number the leaves of a strip 1 and 2 as they come off; mark the same end of both, and the "
    "faces that were sawn apart"
)

_AGAIN = "After each leaf make the sawn face true again: it is what the next leaf is sawn from"

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


def _slab(blank: Blank) -> str:
    return "the slab" if blank.part.bookmatched else "thick boards"


def _details(blank: Blank, leaves: int, trued: Fraction) -> tuple[Detail, ...]:
    """Return what is told of strips: `trued` so thick, they give two leaves alike (A8.1).

    The fence stands at the leaf, not at half of the strip (A8.2): of a thicker strip the last leaf
    is as much thicker.
    """
    alike: Detail = (
        "Plane a strip that is thicker down to ",
        trued,
        " before it is sawn, so that the leaves come out alike; else the last one is thicker",
    )
    stacked: Detail = ("Stack them on stickers, air on all sides, for a day at least",)
    return (
        (
            "A strip is ",
            blank.width,
            " wide and at least ",
            trued + WARP,
            " thick before it is trued",
        ),
        *((alike,) if blank.part.bookmatched and leaves == LEAVES else ()),
        *(((_AGAIN,),) if leaves > LEAVES else ()),
        *(((_NUMBERED,),) if blank.part.bookmatched else ()),
        stacked,
    )


def opened_like_a_book() -> tuple[Detail, ...]:
    """Return how leaves lie side by side, before and while they are glued (TRADE A8.4, K11)."""
    return ((_OPENED,),)


def on_a_router_sled() -> Detail:
    """Return how a panel is flattened that is wider than the planer (TRADE A7.2)."""
    return _SLED
