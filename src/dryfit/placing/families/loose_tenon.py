"""Butt joints with loose tenons (TRADE B4)."""

from __future__ import annotations

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Placed
from dryfit.joinery.loose_pieces import pockets, row_axis
from dryfit.joinery.loose_tenons import (
    LooseTenon,
    crowded,
    deepest,
    depths,
    least_depth,
    mortise_of,
    mouths_of,
    tenon_boxes,
    too_narrow,
    usual_count,
    usual_depth,
    usual_width,
)
from dryfit.joinery.proportions import glue_gap, usual_tenon_thickness
from dryfit.piece.declared import Contact, JointWords
from dryfit.placing.families.finding import face_area, faced
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.lines import with_words
from dryfit.placing.mortise_cutters import mortise_cutters
from dryfit.placing.not_fitting import Wrong, not_fitting
from dryfit.placing.site import Site

_RULE = "B4"
_FACES = 2


def find(site: Site, contact: Contact, guest: Placed, host: Placed, _: Around) -> Found | None:
    """Return the loose tenons between two faces that touch."""
    touch, joint = faced(guest, host), contact.joint
    if touch is None or joint is None:
        return None
    region, (axis, side) = touch
    display = site.declared.display
    tenon = _sizes(site, joint, (guest, host), region, axis)
    wrong = _wrong(site, tenon, (guest, host), region, axis)
    if wrong is not None:
        not_fitting(site, contact, "loose-tenon-does-not-fit", wrong)
        return Found("loose tenon", guest.name, host.name, region, contact.span, glued=True)
    _assume(site, joint, (guest, host), tenon)
    mouths = mouths_of(region, axis, tenon)
    cheeks = _FACES * tenon.count * tenon.width * tenon.length
    return Found(
        "loose tenon",
        guest.name,
        host.name,
        region,
        contact.span,
        glued=True,
        area=face_area(region, axis) + cheeks,
        cuts=pockets(guest, host, mouths, (axis, side), mortise_of(tenon), contact.span),
        loose_pieces=tenon_boxes(mouths, axis, side, tenon, display),
    )


def _sizes(
    site: Site, joint: JointWords, pair: tuple[Placed, Placed], region: Box, axis: int
) -> LooseTenon:
    """Return what is written of the tenons, and what is usual of the rest."""
    display = site.declared.display
    along = row_axis(region, axis)
    (across,) = {0, 1, 2} - {axis, along}
    row = region.extent(along)
    usual = usual_tenon_thickness(region.extent(across), mortise_cutters(site), display)
    thickness = joint.thickness or usual
    count = joint.count or usual_count(row)
    width = joint.width or usual_width(row, thickness, count, display)
    of_guest, of_host = (placed.box.extent(axis) for placed in pair)
    if joint.length is None:
        in_guest, in_host = usual_depth(of_guest, display), usual_depth(of_host, display)
        length = in_guest + in_host - 2 * glue_gap(display)
    else:
        length = joint.length
        in_guest, in_host = depths(length, of_guest, of_host, display)
    return LooseTenon(count, length, thickness, width, in_guest, in_host)


def _assume(site: Site, joint: JointWords, pair: tuple[Placed, Placed], tenon: LooseTenon) -> None:
    if None not in (joint.count, joint.length, joint.thickness, joint.width):
        return
    shown = site.shown
    words = (
        f"{tenon.count} loose {'tenon' if tenon.count == 1 else 'tenons'} "
        f"{shown(tenon.length)} long {shown(tenon.thickness)} thick {shown(tenon.width)} wide"
    )
    text = f"{pair[0].part} into {pair[1].part}: {words}"
    site.assume_line(text, joint.span, with_words(joint.head, words))


def _wrong(
    site: Site, tenon: LooseTenon, pair: tuple[Placed, Placed], region: Box, axis: int
) -> Wrong | None:
    """Return what keeps the tenons from being put in."""
    display, shown = site.declared.display, site.shown
    along = row_axis(region, axis)
    (across,) = {0, 1, 2} - {axis, along}
    row, thick = region.extent(along), region.extent(across)
    if tenon.thickness > thick / 2:
        return Wrong(
            f"a loose tenon {shown(tenon.thickness)} thick leaves too little of {shown(thick)} "
            f"between {pair[0].part} and {pair[1].part}",
            f"make it {shown(thick / 2)} thick at most; a third is usual",
            {"thickness": tenon.thickness, "wood": thick},
            _RULE,
        )
    for placed, depth in zip(pair, (tenon.in_guest, tenon.in_host), strict=True):
        extent = placed.box.extent(axis)
        if depth < least_depth(display) <= deepest(extent, display):
            least = least_depth(display)
            enough = tenon.length + 2 * (least - depth)
            return Wrong(
                f"the mortise of a loose tenon {shown(tenon.length)} long is only {shown(depth)} "
                f"deep in the {placed.part}",
                f"it needs {shown(least)} at least: write `{shown(enough)} long` or more",
                {"length": tenon.length, "depth": depth},
                _RULE,
            )
        if depth < least_depth(display) or depth > deepest(extent, display):
            return Wrong(
                f"a loose tenon {shown(tenon.length)} long finds no room in {placed.part}, "
                f"{shown(extent)} there",
                f"its mortise needs {shown(least_depth(display))} at least and some wood behind "
                "it; in thinner wood write `dowels`, `biscuits` or `housing`",
                {"length": tenon.length, "wood": extent},
                _RULE,
            )
    if too_narrow(tenon.width, tenon.thickness) or crowded(row, tenon, display):
        words = "a loose tenon finds" if tenon.count == 1 else f"{tenon.count} loose tenons find"
        wide = f", {shown(tenon.width)} wide," if tenon.width > 0 else ""
        return Wrong(
            f"{words} no room{wide} in {shown(row)} between {pair[0].part} and {pair[1].part}",
            "write fewer or narrower ones, at least twice as wide as they are thick, or `dowels`",
            {"width": tenon.width, "row": row},
            _RULE,
        )
    return None
