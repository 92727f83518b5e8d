"""Banding ironed on, and lips trimmed flush: with a router held in the hand, or a plane."""

from __future__ import annotations

from fractions import Fraction

from dryfit.operations.lips.lip_stages import Stage
from dryfit.operations.minutes import tenths, worked
from dryfit.operations.ways.edges import HAND_ROUTER
from dryfit.operations.ways.machines import has_hand_router
from dryfit.operations.words import all_of
from dryfit.plan.operation import Detail, Operation, Work
from dryfit.shop.shop import Shop

HOT_IRON = "hot-iron"
"""The key of its caution."""
FLUSH = "no step under a finger nail across the line, and the face of the sheet is nowhere cut"


def ironed_on(stage: Stage, shop: Shop) -> Operation:
    """Return the ironing on of banding, all copies of a part in one go."""
    strips = len(stage.lips) * len(stage.part.copies)
    metres = stage.metres(len(stage.part.copies))
    return Operation(
        id=stage.named("band"),
        kind="band",
        station="bench",
        part=stage.part.name,
        settings=(),
        work=_all(stage),
        tenths=tenths(worked(shop, "iron on banding", each=strips, per_metre=metres)),
        sentence=f"Iron banding on {stage.where} of {all_of(stage.part)}",
        check="stuck all along: a finger nail lifts it nowhere",
        cautions=(HOT_IRON,),
        details=(
            _banding(stage),
            (
                (
                    "Keep the iron moving, then rub the banding down hard with a block until it is "
                    "cold: the glue holds when it has set"
                ),
            ),
        ),
    )


def _banding(stage: Stage) -> Detail:
    rows: list[str | Fraction] = []
    for lip in stage.lips:
        rows += [f"{'; ' if rows else ''}{lip.surface}: banding ", lip.thickness, " thick"]
    return (*rows, ", a little longer than the edge, standing over both faces alike")


def trimmed(stage: Stage, shop: Shop) -> Operation:
    """Return the trimming of strips or banding, flush with both faces and both ends."""
    strips = len(stage.lips) * len(stage.part.copies)
    metres = stage.metres(len(stage.part.copies))
    rate = "trim banding" if stage.banded else "trim lip"
    routed = has_hand_router(shop) and not stage.banded
    exact = worked(shop, rate, each=strips, per_metre=2 * metres)
    return Operation(
        id=stage.named("trim band" if stage.banded else "trim lip"),
        kind="trim lip",
        station="bench",
        part=stage.part.name,
        settings=(),
        work=_all(stage),
        tenths=tenths(exact if stage.banded or routed else exact * shop.by_hand),
        sentence=_sentence(stage, routed=routed),
        check=FLUSH,
        cautions=(HAND_ROUTER,) if routed else (),
        details=_BANDED if stage.banded else _ROUTED if routed else _PLANED,
    )


def _all(stage: Stage) -> tuple[Work, ...]:
    names = tuple(copy.name for copy in stage.part.copies)
    return (Work(stage.part.name, names, (), None, ()),)


def _sentence(stage: Stage, *, routed: bool) -> str:
    of = f"on {stage.where} of {all_of(stage.part)}"
    if stage.banded:
        return f"Trim the banding {of} flush with faces and ends"
    tool = "a router and a flush-trim bit" if routed else "a plane"
    strips, them = ("strips", "them") if stage.many else ("strip", "it")
    return f"Saw the ends of the {strips} {of} flush, then trim {them} to both faces with {tool}"


_SCRAPED: Detail = ("Scrape the glue off the faces first: bearing and plane run there",)
_SAWN: Detail = (
    "Saw the ends from the outside of the strip inwards, a hair long, and pare or plane them level",
)
_ROUTED: tuple[Detail, ...] = (
    _SCRAPED,
    _SAWN,
    (
        (
            "Clamp a batten beside the edge, so that the router does not tip; leave the last hair "
            "to a scraper"
        ),
    ),
)
_PLANED: tuple[Detail, ...] = (
    _SCRAPED,
    _SAWN,
    (
        (
            "Plane down to a hair above the face, the plane askew and half of it over the strip, "
            "then scrape level: the face veneer of a sheet is thinner than it looks"
        ),
    ),
)
_BANDED: tuple[Detail, ...] = (
    (
        (
            "Break the ends off with a file held flat on the end, then run a sharp chisel or a "
            "banding trimmer along both faces, its back flat on the sheet"
        ),
    ),
)
