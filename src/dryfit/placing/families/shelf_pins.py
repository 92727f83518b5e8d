"""Loose shelves on pins in rows of holes (TRADE B19)."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.diagnostics import Severity
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Placed, bounded
from dryfit.joinery.shelf_pins import (
    BEHIND,
    LEAST_DEEP,
    LEAST_PLAY,
    MOST_PLAY,
    PinSizes,
    heights,
    nearest,
    pin_holes,
    row_lines,
    usual_pins,
    usual_play,
)
from dryfit.piece.declared import Contact, JointWords
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.lines import with_words
from dryfit.placing.not_fitting import Wrong, not_fitting
from dryfit.placing.site import Site
from dryfit.placing.tenon_words import details

UP = 2
_CODE = "shelf-pins-do-not-fit"


def find(site: Site, contact: Contact, guest: Placed, host: Placed, around: Around) -> Found | None:
    """Return the holes in the upright beside one end of a shelf, and the pins that it lies on.

    The rows of all shelves of the line are one grid, bored with the first of them.
    """
    joint = contact.joint
    axis = guest.axes[0]
    side = _side(guest.box, host.box, axis)
    if joint is None or side is None or axis == UP:
        return None
    face = (axis, side)
    play = _play(guest.box, host.box, face)
    sizes = _sizes(site, joint, host, axis)
    wrong = _wrong(site, (guest, host), play, sizes, axis)
    if wrong is not None:
        not_fitting(site, contact, _CODE, wrong)
        if wrong.severity is Severity.ERROR:
            return Found("shelf pins", guest.name, host.name, guest.box, contact.span)
    shelves = [around.placed[seat.name] for seat in site.guests(contact)]
    own = [each for each in shelves if _beside(each.box, host.box, axis) is not None]
    across = next(each for each in (0, 1) if each != axis)
    lines = row_lines(host.box, guest.box, across, sizes)
    span = (host.box.low[UP], host.box.high[UP])
    middles = heights((each.box.low[UP] for each in own), span, sizes)
    _assume(site, contact, guest, (host, sizes, lines), len(middles))
    _off_the_grid(site, contact, guest, nearest(guest.box.low[UP], middles, sizes))
    plane = host.box.high[axis] if side > 0 else host.box.low[axis]
    region = bounded(guest.box, axis, plane, plane)
    region = bounded(region, UP, middles[0] - sizes.diameter, middles[-1] + sizes.diameter)
    cuts = pin_holes(host, face, (across, lines), (UP, middles), sizes, contact.span)
    first = guest.name == own[0].name
    return Found(
        "shelf pins",
        guest.name,
        host.name,
        region,
        contact.span,
        cuts=tuple(cuts) if first else (),
    )


def _side(shelf: Box, upright: Box, axis: int) -> int | None:
    """Return the side of the upright at which the shelf ends, if it ends beside it."""
    side = _beside(shelf, upright, axis)
    others = [each for each in range(3) if each != axis]
    apart = any(
        shelf.high[each] <= upright.low[each] or upright.high[each] <= shelf.low[each]
        for each in others
    )
    return None if apart else side


def _beside(shelf: Box, upright: Box, axis: int) -> int | None:
    if 0 <= shelf.low[axis] - upright.high[axis] <= 2 * MOST_PLAY:
        return 1
    if 0 <= upright.low[axis] - shelf.high[axis] <= 2 * MOST_PLAY:
        return -1
    return None


def _play(shelf: Box, upright: Box, face: tuple[int, int]) -> Fraction:
    axis, side = face
    if side > 0:
        return shelf.low[axis] - upright.high[axis]
    return upright.low[axis] - shelf.high[axis]


def _sizes(site: Site, joint: JointWords, host: Placed, axis: int) -> PinSizes:
    usual = usual_pins(site.declared.display)
    deepest = host.box.extent(axis) - BEHIND
    sizes = replace(usual, depth=min(usual.depth, deepest))
    apart = details(joint, "apart")
    pitch = dict(apart[0].sizes).get("length") if apart else None
    return replace(
        sizes,
        diameter=joint.thickness or sizes.diameter,
        depth=joint.depth or sizes.depth,
        pitch=pitch or sizes.pitch,
    )


def _wrong(
    site: Site, pair: tuple[Placed, Placed], play: Fraction, sizes: PinSizes, axis: int
) -> Wrong | None:
    (shelf, upright), shown, display = pair, site.shown, site.declared.display
    usual = usual_pins(display)
    thick = upright.box.extent(axis)
    if sizes.depth < LEAST_DEEP or sizes.depth > thick - BEHIND / 2:
        return Wrong(
            f"holes for shelf pins {shown(sizes.depth)} deep do not suit the {upright.part}, "
            f"{shown(thick)} thick",
            f"a pin needs {shown(usual.depth)} deep and {shown(BEHIND)} of wood behind it: use "
            "thicker wood",
            {"depth": sizes.depth, "thickness": thick},
            "B19",
        )
    if sizes.pitch < 2 * sizes.diameter:
        return Wrong(
            f"holes {shown(sizes.pitch)} apart leave no wood between them",
            f"write {shown(usual.pitch)} apart, or leave it out",
            {"pitch": sizes.pitch},
            "B19",
        )
    if not LEAST_PLAY <= play <= MOST_PLAY:
        return Wrong(
            f"the {shelf.part} ends {display.with_unit(play, fitted=True)} from the "
            f"{upright.part}: on pins it has to go in and out, and still lie on them",
            f"write `gap {display.shown(usual_play(display), fitted=True)} at ends` on the line of "
            "the shelf",
            {"play": play},
            "B19",
            Severity.WARNING,
        )
    return None


def _assume(
    site: Site,
    contact: Contact,
    shelf: Placed,
    rows: tuple[Placed, PinSizes, tuple[Fraction, Fraction]],
    count: int,
) -> None:
    joint = contact.joint
    assert joint is not None
    upright, sizes, lines = rows
    across = next(each for each in (0, 1) if each != shelf.axes[0])
    front = lines[0] - upright.box.low[across]
    back = upright.box.high[across] - lines[1]
    shown = site.shown
    edges = f"{shown(front)} and {shown(back)} from its edges"
    where = f"{shown(front)} from either edge" if front == back else edges
    apart = details(joint, "apart")
    unsaid = [
        (joint.thickness, f"{shown(sizes.diameter)} across"),
        (joint.depth, f"{shown(sizes.depth)} deep"),
        (apart, f"{shown(sizes.pitch)} apart"),
    ]
    line = f"shelf pins {shown(sizes.diameter)} dia {shown(sizes.depth)} deep"
    line = with_words(joint.head, line)
    if not apart:
        line = f"{line}, {shown(sizes.pitch)} apart"
    taken = [words for said, words in unsaid if not said]
    site.assume_line(
        f"{shelf.part} on pins: "
        + ", ".join([f"rows of {count} holes in each {upright.part}", *taken, where]),
        joint.span,
        line if taken else None,
    )


def _off_the_grid(site: Site, contact: Contact, shelf: Placed, lies: Fraction) -> None:
    off = lies - shelf.box.low[UP]
    if off:
        way = "higher" if off > 0 else "lower"
        site.assume_line(
            f"the nearest holes lay {shelf.name} {site.shown(abs(off))} {way} than it is drawn",
            contact.span,
            None,
        )
