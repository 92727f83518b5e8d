"""Doors and lids hung on hinges that are let into both parts (TRADE B23)."""

from __future__ import annotations

from dataclasses import replace

from dryfit.joinery.cut import Cut, Placed
from dryfit.joinery.hinges import (
    DEEPEST,
    LEAST_WOOD,
    USUAL_DEEP,
    Hanging,
    Hinge,
    hanging,
    hinge_screw,
    middles,
    recesses,
    usual_count,
    usual_hinge,
)
from dryfit.piece.declared import Contact, JointWords
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.late_joints import first_stage_of
from dryfit.placing.lines import with_words
from dryfit.placing.not_fitting import Wrong, not_fitting
from dryfit.placing.site import Site

_CODE = "hinges-do-not-fit"


def find(site: Site, contact: Contact, guest: Placed, host: Placed, _: Around) -> Found | None:
    """Return the hinges between a door's part and what carries it, where the two are near."""
    joint, hung = contact.joint, hanging(guest, host)
    if joint is None or hung is None:
        return None
    long = hung.region.extent(hung.row)
    hinge = _hinge(site, joint, hung)
    count = joint.count or usual_count(long)
    bare = Found("hinges", guest.name, host.name, hung.region, contact.span)
    places = middles(hung.region, hung.row, count, hinge.length)
    wrong = _wrong(site, (guest, host), hung, hinge)
    if wrong is not None or places is None:
        not_fitting(site, contact, _CODE, wrong or _no_room(site, guest, count, hinge))
        return bare
    _assume(site, joint, (guest, host), hinge, count)
    cuts = recesses(guest, host, hung, hinge, places, contact.span)
    return replace(bare, cuts=tuple(_late(site, cut, (guest, host)) for cut in cuts))


def _late(site: Site, cut: Cut, pair: tuple[Placed, Placed]) -> Cut:
    """Return a recess as it is cut: once its own frame or case is glued, so that the door fits."""
    part = next(each.part for each in pair if each.name == cut.copy)
    return replace(cut, after=first_stage_of(site, part, cut.copy))


def _hinge(site: Site, joint: JointWords, hung: Hanging) -> Hinge:
    usual = _usual(site, hung)
    return Hinge(
        joint.length or usual.length, joint.width or usual.width, joint.thickness or usual.closed
    )


def _usual(site: Site, hung: Hanging) -> Hinge:
    across, long = hung.outer[0], hung.region.extent(hung.row)
    return usual_hinge(hung.region.extent(across), long, site.declared.display)


def _assume(
    site: Site, joint: JointWords, pair: tuple[Placed, Placed], hinge: Hinge, count: int
) -> None:
    if None not in (joint.count, joint.length, joint.width, joint.thickness):
        return
    shown = site.shown
    words = (
        f"{count} {'hinge' if count == 1 else 'hinges'} {shown(hinge.length)} long "
        f"{shown(hinge.width)} wide {shown(hinge.closed)} thick"
    )
    text = f"{pair[0].part} on {pair[1].part}: {words}, a leaf's width, and the hinge closed"
    sizes = (
        (joint.length, hinge.length, "long"),
        (joint.width, hinge.width, "wide"),
        (joint.thickness, hinge.closed, "thick"),
    )
    unsaid = (f"{shown(size)} {word}" for written, size, word in sizes if written is None)
    named = joint.head.text() if joint.count is not None else f"{count} hinges"
    site.assume_line(text, joint.span, with_words(joint.head, " ".join((named, *unsaid))))


def _wrong(site: Site, pair: tuple[Placed, Placed], hung: Hanging, hinge: Hinge) -> Wrong | None:
    shown, display, depth = site.shown, site.declared.display, hinge.depth(hung.gap)
    usual = _usual(site, hung)
    least, most = (display.shown(each, fitted=True) for each in USUAL_DEEP)
    thick = min(placed.box.extent(hung.axis) for placed in pair)
    if not 0 < depth <= min(DEEPEST, thick / 2):
        return Wrong(
            f"a hinge {shown(hinge.closed)} thick when closed, at a gap of "
            f"{display.with_unit(hung.gap, fitted=True)}, finds no recess: it would "
            f"be {display.with_unit(depth, fitted=True)} deep",
            f"write how thick the closed hinge is, such as `{shown(usual.closed)} thick`, or "
            f"another gap; {least} to {most} deep is usual",
            {"depth": depth, "gap": hung.gap},
            "H20",
        )
    if hinge_screw(thick) is None:
        thin = min(pair, key=lambda placed: placed.box.extent(hung.axis))
        return Wrong(
            f"no screw of a hinge stays inside of {thin.part}, {shown(thick)} there: its point "
            "would show, or split the wood",
            f"make {thin.part} {shown(LEAST_WOOD)} thick at least",
            {"wood": thick},
            "H20",
        )
    across, _ = hung.outer
    if not 0 < hinge.let_in < hung.region.extent(across):
        return Wrong(
            f"a leaf {shown(hinge.width)} wide does not lie on {shown(hung.region.extent(across))} "
            f"of {pair[0].part} and {pair[1].part}",
            f"write how wide a leaf is that does, such as `{shown(usual.width)} wide`, or leave it "
            "out",
            {"width": hinge.width},
            "H20",
        )
    return None


def _no_room(site: Site, door: Placed, count: int, hinge: Hinge) -> Wrong:
    return Wrong(
        f"{'one hinge' if count == 1 else f'{count} hinges'} {site.shown(hinge.length)} long "
        f"{'finds' if count == 1 else 'find'} no room on the {door.part}",
        "write fewer or shorter hinges",
        {"length": hinge.length},
        "B23",
    )
