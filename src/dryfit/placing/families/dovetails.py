"""Dovetails: through, or half-blind behind a lap (TRADE B14, B15)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.diagnostics import Severity
from dryfit.geometry.box import Box
from dryfit.joinery.corner import Corner, corner_of
from dryfit.joinery.cut import Placed
from dryfit.joinery.dovetails import (
    HARDWOOD_SLOPE,
    SOFTWOOD_SLOPE,
    Tails,
    dovetail_sockets,
    glued_area,
    narrowest,
    pins_from,
    tail_width,
    usual_count,
    usual_pin,
    wanted_tail,
)
from dryfit.piece.declared import Contact, JointWords
from dryfit.placing.corners import no_corner
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.lines import with_words
from dryfit.placing.not_fitting import Wrong, not_fitting
from dryfit.placing.site import Site
from dryfit.placing.tenon_words import details
from dryfit.quantities import Display
from dryfit.quantities.units import INCH
from dryfit.wood import species

_CODE = "dovetails-do-not-fit"
_RULE = "B14"
_SIDEWAYS = 0
"""The axis that sides face along: of two boards the one that does carries the tails."""


def find(site: Site, contact: Contact, guest: Placed, host: Placed, _: Around) -> Found | None:
    """Return the dovetails of two boards that end in one another at a corner."""
    region, joint = guest.box.overlap(host.box), contact.joint
    if region is None or joint is None:
        return None
    bare = Found(joint.kind, guest.name, host.name, region, contact.span, shares=region, glued=True)
    corner = corner_of(guest, host, region)
    what = "half-blind dovetails" if joint.kind.startswith("half-blind") else "dovetails"
    wrong = no_corner(what, guest, host, corner, region) or _of_two_widths(
        site, guest, host, corner, region
    )
    if corner is None or wrong is not None:
        if wrong is not None:
            not_fitting(site, contact, _CODE, wrong)
        return bare
    with_tails, with_pins = boards(joint, guest, host)
    tails = _tails(site, joint, region.extent(corner.across), with_tails)
    deep = region.extent(with_tails.axes[0])
    wrong = _wrong(site, joint, tails, deep, with_pins)
    if wrong is not None:
        not_fitting(site, contact, _CODE, wrong)
        if wrong.severity is Severity.ERROR:
            return bare
    sliver = _sliver(site, with_tails, region, corner, tails)
    if sliver is not None:
        not_fitting(site, contact, _CODE, sliver)
    _assume(site, joint, (with_tails, with_pins), tails)
    return Found(
        joint.kind,
        guest.name,
        host.name,
        region,
        contact.span,
        shares=region,
        glued=True,
        area=glued_area(region, corner, tails.count),
        cuts=dovetail_sockets(with_tails, with_pins, region, corner, tails, contact.span),
        fingers=tails.count,
    )


def boards(joint: JointWords, guest: Placed, host: Placed) -> tuple[Placed, Placed]:
    """Return the board that carries the tails, and the one with the pins.

    As the line says; else behind a lap the board that ends there, through the one that faces
    sideways as the sides of a case or a drawer do (B14).
    """
    named = {each.part.part for each in details(joint, "tails") if each.part is not None}
    if guest.part in named or (joint.kind.startswith("half-blind") and not named):
        return guest, host
    if host.part in named:
        return host, guest
    return (host, guest) if host.axes[2] == _SIDEWAYS else (guest, host)


def _tails(site: Site, joint: JointWords, width: Fraction, board: Placed) -> Tails:
    display = site.declared.display
    pin = usual_pin(display)
    count = joint.count or usual_count(width, pin, wanted_tail(display))
    timber = site.part(board.part).timber or site.declared.timber
    known = species(timber) if timber else None
    slope = SOFTWOOD_SLOPE if known is not None and known.softwood else HARDWOOD_SLOPE
    return Tails(count, tail_width(width, count, pin, pin), pin, pin, slope)


def _of_two_widths(
    site: Site, guest: Placed, host: Placed, corner: Corner | None, region: Box
) -> Wrong | None:
    """Return what is wrong where neither board is whole in the corner, edge to edge."""
    if corner is None:
        return None
    wide = [placed.box.extent(corner.across) for placed in (guest, host)]
    if region.extent(corner.across) == min(wide):
        return None
    return Wrong(
        f"{guest.part} and {host.part} meet over {site.shown(region.extent(corner.across))} only: "
        "dovetails take the narrower board from edge to edge",
        "put the narrower one between the edges of the other, or flush with one of them",
        {"shared": region.extent(corner.across), "width": min(wide)},
        _RULE,
    )


def _wrong(
    site: Site, joint: JointWords, tails: Tails, deep: Fraction, with_pins: Placed
) -> Wrong | None:
    """Return what keeps the tails from being cut, or makes them weak."""
    shown = site.shown
    foot = narrowest(tails, deep)
    if tails.tail <= 0 or foot < tails.pin:
        words = "tail finds" if tails.count == 1 else "tails find"
        return Wrong(
            f"{tails.count} {words} no room: {shown(max(foot, Fraction(0)))} wide at the foot, "
            f"less than the pins of {shown(tails.pin)}",
            "write fewer of them, such as `2 dovetails`, or use wider boards",
            {"foot": foot, "pin": tails.pin},
            "H14",
        )
    lap = with_pins.box.extent(with_pins.axes[2]) - deep
    least = _least_lap(site.declared.display)
    if joint.kind.startswith("half-blind") and lap < least:
        left = f"leave a lap of {shown(lap)}" if lap > 0 else "leave no lap"
        return Wrong(
            f"half-blind tails {shown(deep)} deep {left} in {with_pins.part}",
            f"leave {shown(least)} at least: a quarter to a third of its thickness is usual; "
            "`into`, not `crossing`, says which board ends behind the lap",
            {"lap": lap, "least": least},
            "B15",
        )
    return None


def _sliver(site: Site, board: Placed, region: Box, corner: Corner, tails: Tails) -> Wrong | None:
    """Return what is said of a strip beside the outer pin that is thinner than the pin (H14)."""
    across = corner.across
    beside = (
        region.low[across] - board.box.low[across],
        board.box.high[across] - region.high[across],
    )
    thin = [each for each in beside if 0 < each < tails.pin]
    if not thin:
        return None
    return Wrong(
        f"a strip of {site.shown(thin[0])} stays of {board.part} beside the outer pin, and will "
        "break off",
        f"put the edges flush, or leave {site.shown(tails.pin)} or more",
        {"strip": thin[0], "pin": tails.pin},
        "H14",
        Severity.WARNING,
    )


def _least_lap(display: Display) -> Fraction:
    return display.either(Fraction(4), INCH * Fraction(5, 32))


def _assume(site: Site, joint: JointWords, pair: tuple[Placed, Placed], tails: Tails) -> None:
    with_tails, with_pins = pair
    said = f"slopes of 1 in {pins_from(tails.slope)}, pins {site.shown(tails.pin)} at their ends"
    if joint.count is None:
        noun = joint.kind if tails.count == 1 else f"{joint.kind}s"
        words = f"{tails.count} {noun}"
        if joint.depth is not None:
            words += f" {site.shown(joint.depth)} deep"
        text = f"{with_tails.part} into {with_pins.part}: {words}, with {said}"
        site.assume_line(text, joint.span, with_words(joint.head, words))
        return
    text = f"{with_tails.part} into {with_pins.part}: {said}"
    site.assume_line(text, joint.span, None)
