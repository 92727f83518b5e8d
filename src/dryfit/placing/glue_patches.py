"""Where glue goes in a joint: all of it, or the patches that the notes name (TRADE G8, M5).

Everything that depends on glue follows from these patches: what a glue-up closes, the glue to buy,
what is taped before a coat, and whether solid wood can move.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Placed, bounded, from_side
from dryfit.joinery.mortise_tenon import tenon_boxes
from dryfit.piece.declared import PLACE_SIDE, Contact, GluePatch
from dryfit.placing.found import Found
from dryfit.placing.lines import with_words
from dryfit.placing.site import Site

FASTENED = frozenset({"knock-down", "bolted"})
"""Words for joints that come apart again, and hold without glue."""
_GLUED = frozenset({"middle", "place", "one edge", "edge"})
_USUAL_MIDDLE = Fraction(60)
"""Glue in the middle of a joint across the grain: 50 to 80 mm (TRADE G5, common practice)."""
_USUAL_FRONT = Fraction(75)
"""Glue at the front of a shelf or a side: 75 mm (TRADE G8, common practice)."""
_USUAL_STRIP = Fraction(20)
"""Glue along one edge of what is wider (common practice)."""
_PIN = Fraction(3)
"""A pin that lets a panel move from its middle is about 3 mm thick (common practice)."""


def says_glue(contact: Contact) -> bool:
    """Return whether the words of a contact put glue somewhere in it."""
    return any(patch.kind in _GLUED for patch in contact.glue)


def says_held(contact: Contact) -> bool:
    """Return whether the words of a contact say how it is without glue: dry, pinned, bolted..."""
    return any(patch.kind not in _GLUED for patch in contact.glue)


def with_glue(
    site: Site, contact: Contact, met: Sequence[Found], guest: Placed, hosts: Sequence[Placed]
) -> list[Found]:
    """Return the joints of one guest with their glue as its line says it.

    `hosts` are the copies that the joints of `met` are with, in their order.
    """
    if not contact.glue:
        return list(met)
    if not says_glue(contact):
        return [_without(joint, contact.glue, guest, host) for joint, host in _pairs(met, hosts)]
    wanted: dict[int, list[Box]] = {index: [] for index in range(len(met))}
    for patch in contact.glue:
        for index in _chosen(contact, patch, met, guest, hosts):
            box = _patch(site, contact, patch, met[index], guest, hosts[index])
            wanted[index].append(box)
    return [_glued(joint, guest, tuple(wanted[index])) for index, joint in enumerate(met)]


def _pairs(met: Sequence[Found], hosts: Sequence[Placed]) -> list[tuple[Found, Placed]]:
    return list(zip(met, hosts, strict=True))


def _without(joint: Found, words: Sequence[GluePatch], guest: Placed, host: Placed) -> Found:
    kinds = {patch.kind for patch in words}
    pin = _pin(joint.region, guest, host) if "pinned" in kinds else None
    fastened = next((kind for kind in sorted(FASTENED) if kind in kinds), None)
    return replace(
        joint,
        glued=False,
        area=Fraction(0),
        dry=True,
        pinned=pin,
        fastened=fastened,
    )


def _pin(region: Box, guest: Placed, host: Placed) -> Box:
    for axis in _face(region, guest, host):
        middle = (region.low[axis] + region.high[axis]) / 2
        half = min(_PIN, region.extent(axis)) / 2
        region = bounded(region, axis, middle - half, middle + half)
    return region


def _glued(joint: Found, guest: Placed, patches: tuple[Box, ...]) -> Found:
    if not patches:
        return replace(joint, glued=False, area=Fraction(0), dry=True)
    kind = "glued butt" if joint.kind == "rest" else joint.kind
    area = _tenon_area(joint, guest, patches)
    if area is None:
        share = sum((_share(patch, joint.region) for patch in patches), Fraction(0))
        area = (joint.area or _face_area(joint.region)) * min(share, Fraction(1))
    return replace(joint, kind=kind, glued=True, area=area, patches=patches)


def _tenon_area(joint: Found, guest: Placed, patches: tuple[Box, ...]) -> Fraction | None:
    """Return the area of both cheeks of the tenons inside the patches; None for other joints."""
    if joint.tenon is None:
        return None
    length, wide, _ = guest.axes
    tenons = tenon_boxes(guest, joint.region, joint.tenon)
    glued = (each for patch in patches for box in tenons if (each := box.overlap(patch)))
    return sum((2 * each.extent(length) * each.extent(wide) for each in glued), Fraction(0))


def _share(patch: Box, region: Box) -> Fraction:
    share = Fraction(1)
    for axis in range(3):
        if region.extent(axis):
            share *= patch.extent(axis) / region.extent(axis)
    return share


def _face_area(region: Box) -> Fraction:
    """Return the area of a contact on its broad side."""
    _, second, first = sorted(region.extent(axis) for axis in range(3))
    return first * second


def _chosen(
    contact: Contact,
    patch: GluePatch,
    met: Sequence[Found],
    guest: Placed,
    hosts: Sequence[Placed],
) -> list[int]:
    """Return which of a guest's joints a patch is for."""
    every = list(range(len(met)))
    if patch.kind == "middle" and contact.preposition == "inside":
        # Along the grain's own edges a panel must be free; at its ends the middle stays put.
        at_ends = [index for index in every if hosts[index].axes[0] != guest.axes[0]]
        return at_ends or every
    if len(met) < 2 or patch.kind == "middle":
        return every
    if patch.kind == "place" and PLACE_SIDE[patch.place or "front"][0] != guest.axes[0]:
        # Across the guest each joint has a front of its own; along it only one end is in front.
        return every
    if patch.kind == "one edge":
        along = [index for index in every if hosts[index].axes[0] == guest.axes[0]]
        return (along or every)[:1]
    axis, side = PLACE_SIDE[patch.place or "front"]
    middles = [_middle(joint.region, axis) for joint in met]
    if len(set(middles)) == 1:
        return every
    edge = max(middles) if side > 0 else min(middles)
    return [index for index in every if middles[index] == edge]


def _middle(box: Box, axis: int) -> Fraction:
    return box.low[axis] + box.high[axis]


def _patch(
    site: Site, contact: Contact, patch: GluePatch, joint: Found, guest: Placed, host: Placed
) -> Box:
    """Return the part of one joint's region that gets glue."""
    region = joint.region
    if patch.kind == "middle":
        axis = _face(region, guest, host)[0]
        wide = min(_amount(site, contact, patch, _USUAL_MIDDLE), region.extent(axis))
        middle = (region.low[axis] + region.high[axis]) / 2
        return bounded(region, axis, middle - wide / 2, middle + wide / 2)
    if patch.kind == "one edge":
        axis, side = guest.axes[1], guest.outward[guest.axes[1]]
        usual = _USUAL_STRIP
    else:
        axis, side = PLACE_SIDE[patch.place or "front"]
        usual = _USUAL_FRONT
    if region.extent(axis) <= usual and patch.amount is None:
        return region
    wide = min(_amount(site, contact, patch, usual), region.extent(axis))
    return from_side(region, axis, side, wide)


def _amount(site: Site, contact: Contact, patch: GluePatch, usual: Fraction) -> Fraction:
    if patch.amount is not None:
        return patch.amount
    shown = site.shown(usual)
    site.assume_line(
        f"`{patch.span.text()}` of the {site.written(contact.guest.part)} is {shown} of glue",
        patch.span,
        with_words(patch.span, f"{patch.span.text()} {shown}"),
    )
    return usual


def _face(region: Box, guest: Placed, host: Placed) -> list[int]:
    """Return the two axes of a joint's face, the one along which it is longer first."""
    normal = min(range(3), key=lambda axis: (region.extent(axis), axis == host.axes[0]))
    return sorted(
        (axis for axis in range(3) if axis != normal),
        key=lambda axis: (-region.extent(axis), axis != host.axes[0], axis != guest.axes[1]),
    )
