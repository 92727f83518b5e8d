"""Cutting to length: one end squared, then all at one stop (TRADE A3.3, maker's rule M26).

The sled takes what its stop reaches; longer parts go to the mitre saw with a stop clamped on the
bench; a panel too wide for that is sawn on the sled to a knife line; what no saw takes is sawn
and planed by hand.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.operations import setting_of, through_cuts
from dryfit.operations.boards.waney import NO_EDGE
from dryfit.operations.machine_limits import Piece, why_not_at_mitre_saw, why_not_on_sled
from dryfit.operations.milling.horns import horn_details
from dryfit.operations.minutes import tenths, worked
from dryfit.operations.sides import edge_at_fence_behind, edge_at_sled_fence
from dryfit.operations.words import all_of
from dryfit.placing.model import Part
from dryfit.plan.operation import Detail, Operation, Work
from dryfit.plan.setting import Hold, Setting
from dryfit.shop.shop import Shop

SLED = "sled"
MITRE_SAW = "mitre saw"
END_CHECK = "ends square, and all parts of one length when stood side by side"


@dataclass(frozen=True, slots=True)
class LengthWay:
    """Where a part is cut to length: the station, whether a stop is used, on an accessory.

    `why_not` says what keeps the saws from it where it is cut by hand.
    """

    station: str
    stop: bool
    accessory: str | None
    why_not: Detail = ()


def way_to_length(part: Part, fed: Fraction, shop: Shop) -> LengthWay:
    """Return the first way that the shop's machines allow; `fed` is the length of the blank."""
    if len(part.waney) > 1:
        return LengthWay("bench", stop=False, accessory=None, why_not=NO_EDGE)
    piece = Piece(fed, part.width, part.thickness)
    sled = shop.accessory(SLED)
    why_not = why_not_on_sled(piece, SLED, shop)
    reach = sled.longest if sled is not None else None
    if why_not is None and (reach is None or part.length <= reach):
        return LengthWay("table saw", stop=True, accessory=SLED)
    not_at_mitre_saw = why_not_at_mitre_saw(piece, shop)
    if not_at_mitre_saw is None:
        longest = shop.stations[MITRE_SAW].limits.get("longest_stop")
        at_stop = longest is None or part.length <= longest
        return LengthWay(MITRE_SAW, stop=at_stop, accessory=None)
    if why_not is None:
        return LengthWay("table saw", stop=False, accessory=SLED)
    return LengthWay("bench", stop=False, accessory=None, why_not=why_not or not_at_mitre_saw)


def cut_to_length(part: Part, way: LengthWay, each: int, shop: Shop) -> Operation:
    """Return the operation; `each` copies come out of one blank."""
    blanks = -(-len(part.copies) // each)
    cuts = len(part.copies) + blanks
    rate = "hand crosscut" if way.station == "bench" else "crosscut"
    return Operation(
        id=f"{part.name} / length",
        kind="length",
        station=way.station,
        part=part.name,
        settings=setting_of.known_to(shop, way.station, _settings(part, way, shop)),
        work=_works(part, way),
        tenths=tenths(worked(shop, rate, each=cuts)),
        sentence=_sentence(part, way),
        check=END_CHECK if len(part.copies) > 1 else "ends square",
        details=(
            *horn_details(part.horns),
            *_along_its_slope(part),
            *((way.why_not,) if way.why_not else ()),
            *(() if way.stop else setting_of.by_formula(part.measure)),
        ),
    )


def _along_its_slope(part: Part) -> tuple[Detail, ...]:
    """Return why a splayed part is longer than the piece is high."""
    if part.sloped is None:
        return ()
    return (
        (
            "It leans, so that it is longer than upright; both ends are square for now, ",
            part.sloped.over,
            " of height is left for levelling its foot, and the tenon stands out by about ",
            part.sloped.stands_out,
        ),
    )


def _works(part: Part, way: LengthWay) -> tuple[Work, ...]:
    """Return one entry for each hand: with R at the stop, mirrored copies turn other edges."""
    hands: dict[Hold | None, list[str]] = {}
    for copy in part.copies:
        hold = _hold(part, copy.frame.handedness(), way)
        hands.setdefault(hold, []).append(copy.name)
    return tuple(Work(part.name, tuple(names), (), hold, ()) for hold, names in hands.items())


def _hold(part: Part, handedness: int, way: LengthWay) -> Hold | None:
    if way.station == "bench":
        return None
    if not way.stop:
        return Hold("F", "E", None)
    at_fence = edge_at_sled_fence if way.accessory == SLED else edge_at_fence_behind
    edge = at_fence("F", "R", handedness)
    if edge in part.waney:
        # It lies on its other face, so that its straight edge comes to the fence.
        return Hold("B", at_fence("B", "R", handedness), "R")
    return Hold("F", edge, "R")


def _settings(part: Part, way: LengthWay, shop: Shop) -> list[Setting]:
    rows: list[Setting] = []
    if way.accessory is not None:
        rows += through_cuts.through_settings(part.thickness, way.accessory, shop)
    if way.station == MITRE_SAW:
        rows.append(setting_of.angle("angle"))
    if way.stop:
        rows += setting_of.waiting((_stop(part, _kerf(way, shop)),), "stop", part.measure)
    return rows


def _stop(part: Part, kerf: Fraction) -> Setting:
    return setting_of.distance("stop", part.length, kerf, "R")


def _kerf(way: LengthWay, shop: Shop) -> Fraction:
    if way.station == MITRE_SAW:
        blade = next(iter(shop.cutters_at(MITRE_SAW)), None)
        return blade.widest if blade is not None else Fraction(0)
    return through_cuts.saw_blade(shop)[1]


def _sentence(part: Part, way: LengthWay) -> str:
    if way.stop:
        where = "" if way.accessory else ", the stop clamped on the bench or the saw's fence"
        waits = "measured " if part.measure is not None else ""
        return (
            f"Square one end of {all_of(part)}, then cut to {waits}length, squared end at the stop"
            f"{where}"
        )
    if way.station == "bench":
        waits = "measured " if part.measure is not None else ""
        return (
            f"Knife the {waits}length of {all_of(part)} all round, saw beside the line, plane to it"
        )
    measured = "measured " if part.measure is not None else ""
    return f"Square one end of {all_of(part)}, then cut to a knife line at the {measured}length"
