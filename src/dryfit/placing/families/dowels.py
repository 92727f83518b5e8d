"""Butt joints with dowels (TRADE B5)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Placed
from dryfit.joinery.dowels import (
    DowelSizes,
    crowded,
    depth_in_face,
    dowel_boxes,
    dowel_holes,
    dowel_mouths,
    edge_distance,
    floor_of,
    glue_room,
    length_that_fits,
    usual_count,
    usual_diameter,
    usual_length,
)
from dryfit.joinery.loose_pieces import row_axis
from dryfit.piece.declared import Contact, JointWords
from dryfit.placing.families.finding import face_area, faced
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.lines import with_words
from dryfit.placing.not_fitting import Wrong, not_fitting
from dryfit.placing.row_places import assume_clear, row_clear_of_grooves
from dryfit.placing.site import Site
from dryfit.quantities import Display


def find(site: Site, contact: Contact, guest: Placed, host: Placed, around: Around) -> Found | None:
    """Return the dowels between two faces that touch."""
    touch, joint = faced(guest, host), contact.joint
    if touch is None or joint is None:
        return None
    region, (axis, side) = touch
    pair = guest, host
    sizes = _sizes(site, joint, pair, region, axis)
    usual = dowel_mouths(region, axis, sizes), max(sizes.in_guest, sizes.in_host)
    row = row_clear_of_grooves(around, pair, region, axis, usual)
    if row != region:
        sizes = _sizes(site, joint, pair, row, axis)
    wrong = _wrong(site, sizes, pair, row, axis)
    if wrong is not None:
        not_fitting(site, contact, "dowels-do-not-fit", wrong)
        return Found("dowels", guest.name, host.name, region, contact.span, glued=True)
    _assume(site, joint, pair, sizes)
    if row != region:
        assume_clear(site, joint, pair)
    return Found(
        "dowels",
        guest.name,
        host.name,
        region,
        contact.span,
        glued=True,
        area=face_area(region, axis),
        cuts=dowel_holes(guest, host, row, (axis, side), sizes, contact.span),
        loose_pieces=dowel_boxes(row, axis, side, sizes),
    )


def _sizes(
    site: Site, joint: JointWords, pair: tuple[Placed, Placed], region: Box, axis: int
) -> DowelSizes:
    """Return what is written of the dowels, and what is usual of the rest."""
    guest, host = pair
    display, along = site.declared.display, row_axis(region, axis)
    (across,) = {0, 1, 2} - {axis, along}
    faces = tuple(each.box.extent(axis) for each in pair if each.axes[0] != axis)
    diameter = joint.thickness or usual_diameter(region.extent(across), faces, display)
    length = joint.length or _length(pair, axis, diameter, display)
    row = region.extent(along)
    edge = edge_distance(row, display)
    count = joint.count or usual_count(row, edge)
    both = length + glue_room(display)
    if guest.axes[0] == axis:
        in_host = depth_in_face(diameter, host.box.extent(axis), display)
        in_guest = both - in_host
    elif host.axes[0] == axis:
        in_guest = depth_in_face(diameter, guest.box.extent(axis), display)
        in_host = both - in_guest
    else:
        shallow = min(placed.box.extent(axis) for placed in pair) - floor_of(display)
        in_guest = min(both / 2, shallow)
        in_host = both - in_guest
    return DowelSizes(count, diameter, length, in_guest, in_host, edge)


def _length(
    pair: tuple[Placed, Placed], axis: int, diameter: Fraction, display: Display
) -> Fraction:
    """Return the usual length of a dowel, or the longest that both members have room for."""
    room = Fraction(0)
    for placed in pair:
        wood = placed.box.extent(axis)
        into_a_face = placed.axes[0] != axis and any(each.axes[0] == axis for each in pair)
        room += depth_in_face(diameter, wood, display) if into_a_face else wood - floor_of(display)
    return length_that_fits(usual_length(diameter), room, display)


def _assume(site: Site, joint: JointWords, pair: tuple[Placed, Placed], sizes: DowelSizes) -> None:
    if None not in (joint.thickness, joint.length, joint.count):
        return
    shown = f"{site.shown(sizes.diameter)} thick {site.shown(sizes.length)} long"
    words = f"{sizes.count} {'dowel' if sizes.count == 1 else 'dowels'} {shown}"
    text = f"{pair[0].part} into {pair[1].part}: {words}"
    site.assume_line(text, joint.span, with_words(joint.head, words))


def _wrong(
    site: Site, sizes: DowelSizes, pair: tuple[Placed, Placed], region: Box, axis: int
) -> Wrong | None:
    """Return what keeps the dowels from being put in."""
    guest, host = pair
    along = row_axis(region, axis)
    (across,) = {0, 1, 2} - {axis, along}
    narrow, row = region.extent(across), region.extent(along)
    thick, long = site.shown(sizes.diameter), site.shown(sizes.length)
    if sizes.diameter > narrow / 2:
        wood = site.shown(narrow)
        return Wrong(
            f"dowels {thick} thick leave too little of {wood} between {guest.part} and {host.part}",
            f"write a dowel of {site.shown(narrow / 2)} at most: half of the thinner part",
            {"diameter": sizes.diameter, "wood": narrow},
            "H16",
        )
    for placed, depth in ((guest, sizes.in_guest), (host, sizes.in_host)):
        room = placed.box.extent(axis)
        if depth <= sizes.diameter / 2 or depth > room - floor_of(site.declared.display):
            return Wrong(
                f"a dowel {long} long finds no room in {placed.part}, {site.shown(room)} there",
                "write a shorter dowel, or a joint that needs less depth, such as `housing`",
                {"length": sizes.length, "wood": room},
                "H16",
            )
    if crowded(row, sizes):
        return Wrong(
            f"{sizes.count} dowels {thick} thick stand too near to one another, or to the edge, "
            f"in {site.shown(row)}",
            "write fewer or thinner dowels: three diameters from one to the next are usual",
            {"diameter": sizes.diameter, "row": row},
            "H16",
        )
    return None
