"""From rough board to true section: rough length, rip, face, edge, thickness, width (TRADE A3)."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

from dryfit.operations import setting_of, through_cuts
from dryfit.operations.batch import Batch, chained
from dryfit.operations.blanks import Blank
from dryfit.operations.minutes import METRE, tenths, worked
from dryfit.operations.words import all_of, spoken
from dryfit.plan.operation import Operation, Work
from dryfit.plan.setting import Hold, Setting
from dryfit.quantities import Display
from dryfit.shop.shop import Shop

RIP_FENCE = "rip fence"

WHY_RIP_AFTER_CROSSCUT = "a shorter piece has less bow to lose, and is safer to rip"
WHY_FACE_AFTER_RIP = "a narrower piece has less cup to lose when its face is made true"
WHY_EDGE_AFTER_FACE = "the edge is made square to the true face"
WHY_THICKNESS_AFTER_EDGE = "the planer copies the face that lies down, so that face is true first"
WHY_WIDTH_AFTER_THICKNESS = "the width is sawn from two true faces and a true edge"
WHY_SECOND_EDGE = "a saw leaves marks, and a glue edge is jointed"


def milled(blank: Blank, rip_height: Fraction, display: Display, shop: Shop) -> Batch:
    """Return the chain for a blank; `rip_height` is the common height of cuts at the fence."""
    makers: list[Callable[[Blank, Shop], Operation]] = [_rough_length, _rip, _face, _edge]
    rows = [make(blank, shop) for make in makers]
    rows[0] = _with_size(rows[0], blank, display)
    rows += [_thickness(blank, display, shop), _width(blank, rip_height, shop)]
    reasons = [
        WHY_RIP_AFTER_CROSSCUT,
        WHY_FACE_AFTER_RIP,
        WHY_EDGE_AFTER_FACE,
        WHY_THICKNESS_AFTER_EDGE,
        WHY_WIDTH_AFTER_THICKNESS,
    ]
    if blank.staves:
        rows.append(_second_edge(blank, shop))
        reasons.append(WHY_SECOND_EDGE)
    return Batch(operations=tuple(rows), rules=chained(rows, reasons))


def operation(
    blank: Blank,
    what: str,
    station: str,
    settings: tuple[Setting, ...],
    exact: Fraction,
    sentence: str,
    hold: Hold | None = None,
) -> Operation:
    """Return one deed on all pieces of a blank; `exact` are its tenths before rounding."""
    return Operation(
        id=f"{blank.subject} / {what}",
        kind=what,
        station=station,
        part=blank.part.name,
        settings=settings,
        work=(Work(blank.subject, blank.pieces, (), hold, ()),),
        tenths=tenths(exact),
        sentence=sentence,
    )


def pieces_of(blank: Blank) -> str:
    """Return the blanks as a sentence names them."""
    if blank.staves:
        return f"the {spoken(len(blank.pieces), blank.subject)}"
    if blank.each == 1:
        return all_of(blank.part)
    return f"the {spoken(blank.count, f'{blank.subject} blank')}"


def _with_size(row: Operation, blank: Blank, display: Display) -> Operation:
    sizes = " x ".join(display.shown(size) for size in (blank.length, blank.width, blank.thickness))
    unit = " mm" if display.unit == "mm" else ""
    details = [f"Rough size of each: {sizes}{unit}"]
    if blank.each > 1:
        details.append(
            f"Each blank makes {blank.each}: short parts stay together, so that the planer bites "
            "deeper at two ends only"
        )
    return replace(row, details=tuple(details))


def _rough_length(blank: Blank, shop: Shop) -> Operation:
    station = "mitre saw" if "mitre saw" in shop.stations else "bench"
    kind = "rough crosscut" if station != "bench" else "hand crosscut"
    settings = setting_of.known_to(shop, station, (setting_of.angle("angle"),))
    return operation(
        blank,
        "rough length",
        station,
        settings,
        worked(shop, kind, each=blank.count),
        f"Cut {pieces_of(blank)} from the boards, to chalk marks",
    )


def _rip(blank: Blank, shop: Shop) -> Operation:
    metres = blank.length * blank.count / METRE
    sentence = f"Rip {pieces_of(blank)} to rough width"
    band_saw = shop.stations.get("band saw")
    if band_saw is not None and blank.width <= band_saw.limits["throat"]:
        exact = worked(shop, "rip at band saw", per_metre=metres)
        return operation(blank, "rip", "band saw", _band_saw(blank, shop), exact, sentence)
    exact = worked(shop, "rip at table saw", each=blank.count, per_metre=metres)
    if through_cuts.can_saw_through(blank.thickness, RIP_FENCE, shop):
        common = through_cuts.least_height(blank.thickness, RIP_FENCE, shop)
        settings = rip_settings(blank.thickness, common, blank.width, None, shop)
        said = f"{sentence}, against an edge that was made straight"
        return operation(blank, "rip", "table saw", settings, exact, said)
    said = f"{sentence} with a hand saw"
    return operation(blank, "rip", "bench", (), exact * BY_HAND, said)


def _band_saw(blank: Blank, shop: Shop) -> tuple[Setting, ...]:
    blade = next(iter(shop.cutters_at("band saw")), None)
    kerf = blade.widest if blade is not None else Fraction(0)
    settings = [setting_of.distance("fence", blank.width, kerf, None)]
    if blade is not None:
        settings.append(setting_of.named("cutter", blade.name))
    return setting_of.known_to(shop, "band saw", settings)


def rip_settings(
    thickness: Fraction, common: Fraction, width: Fraction, origin: str | None, shop: Shop
) -> tuple[Setting, ...]:
    """Return the table saw set to rip right through to a width, `origin` at the fence."""
    _, kerf = through_cuts.saw_blade(shop)
    settings = (
        *through_cuts.through_settings(thickness, common, RIP_FENCE, shop),
        setting_of.distance("fence", width, kerf, origin),
    )
    return setting_of.known_to(shop, "table saw", settings)


def _face(blank: Blank, shop: Shop) -> Operation:
    return _jointed(blank, shop, "face", "Make one face of {} true", width=blank.width)


def _edge(blank: Blank, shop: Shop) -> Operation:
    return _jointed(blank, shop, "edge", "Joint one edge of {} square to the true face")


def _second_edge(blank: Blank, shop: Shop) -> Operation:
    return _jointed(
        blank, shop, "second edge", "Joint the second edge of {}, each pair folded like a book"
    )


def _jointed(
    blank: Blank, shop: Shop, what: str, sentence: str, width: Fraction = Fraction(0)
) -> Operation:
    metres = blank.length * blank.count / METRE
    rate = "joint face" if what == "face" else "joint edge"
    said = sentence.format(pieces_of(blank))
    exact = worked(shop, rate, each=blank.count, per_metre=metres)
    jointer = shop.stations.get("jointer")
    if (
        jointer is None
        or width > jointer.limits["widest"]
        or blank.length < jointer.limits["shortest"]
    ):
        return operation(blank, what, "bench", (), exact * BY_HAND, f"{said} with a plane")
    settings = setting_of.known_to(
        shop,
        "jointer",
        (
            setting_of.plain("depth", shop.allowances["facing"] / 2),
            setting_of.angle("fence", Fraction(90)),
        ),
    )
    down = "F" if what == "face" else "E" if what == "edge" else "E2"
    hold = Hold(down, None if what == "face" else "F", None)
    return operation(blank, what, "jointer", settings, exact, said, hold)


def _thickness(blank: Blank, display: Display, shop: Shop) -> Operation:
    off = blank.thickness - shop.allowances["facing"] - blank.to_thickness
    bites = off / shop.allowances["planer_pass"]
    passes = max(1, -(-bites.numerator // bites.denominator))
    metres = blank.length * blank.count / METRE
    exact = worked(shop, "planer pass", each=blank.count, per_metre=metres) * passes
    sentence = f"Plane {pieces_of(blank)} to thickness"
    planer = shop.stations.get("planer")
    if (
        planer is None
        or blank.width > planer.limits["widest"]
        or blank.length < planer.limits["shortest"]
    ):
        return operation(
            blank,
            "thickness",
            "bench",
            (),
            exact * BY_HAND,
            f"{sentence} by hand, to a gauge line",
        )
    settings = setting_of.known_to(
        shop, "planer", (setting_of.plain("thickness", blank.to_thickness),)
    )
    said = f"{sentence}, all in one go"
    row = operation(blank, "thickness", "planer", settings, exact, said, Hold("F", None, None))
    return replace(row, details=_test_piece(display, shop))


def _test_piece(display: Display, shop: Shop) -> tuple[str, ...]:
    length = display.with_unit(shop.allowances["test_piece"])
    return (f"Send a test piece through with them, at least {length} long: joints are tried on it",)


def _width(blank: Blank, rip_height: Fraction, shop: Shop) -> Operation:
    metres = blank.length * blank.count / METRE
    sentence = f"Rip {pieces_of(blank)} to width"
    if not through_cuts.can_saw_through(blank.to_thickness, RIP_FENCE, shop):
        return operation(
            blank,
            "width",
            "bench",
            (),
            worked(shop, "joint edge", each=blank.count, per_metre=metres) * BY_HAND,
            f"Saw and plane {pieces_of(blank)} to width, to a gauge line",
        )
    settings = rip_settings(blank.to_thickness, rip_height, blank.sawn_width, "E", shop)
    exact = worked(shop, "rip at table saw", each=blank.count, per_metre=metres)
    hold = Hold("F", "E", None)
    return operation(blank, "width", "table saw", settings, exact, sentence, hold)


BY_HAND = 6
"""Hand planing and sawing against the machine's minutes (TRADE A7.4 and F1, common practice)."""
