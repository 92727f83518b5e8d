"""Butt joints with pocket screws (TRADE B16)."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Severity
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Placed
from dryfit.joinery.pocket_screws import (
    LEAST_APART,
    LEAST_EDGE,
    THICKEST,
    THINNEST,
    TIP,
    WIDE_FOR_TWO,
    Boring,
    boring,
    crowded,
    holds,
    penetration,
    places,
    pocket_holes,
    pocket_mouths,
    stays_inside,
    usual_count,
    usual_length,
)
from dryfit.piece.declared import PLACE_SIDE, Contact, JointWords
from dryfit.placing.families.finding import face_area, faced
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.lines import with_words
from dryfit.placing.not_fitting import Wrong, not_fitting
from dryfit.placing.row_places import assume_clear, row_clear_of_grooves
from dryfit.placing.site import Site
from dryfit.placing.tenon_words import details

_RULE = "B16"
_CODE = "pocket-screws-do-not-fit"
_OUTWARD = {"inside": -1, "outside": 1}


@dataclass(frozen=True, slots=True)
class _Screws:
    """How many screws, how long (None: none holds), and the face that they are bored from."""

    count: int
    length: Fraction | None
    face: int | None


def find(site: Site, contact: Contact, guest: Placed, host: Placed, around: Around) -> Found | None:
    """Return the pocket screws between two faces that touch."""
    touch, joint = faced(guest, host), contact.joint
    if touch is None or joint is None:
        return None
    region, (axis, side) = touch
    bare = Found("pocket screws", guest.name, host.name, region, contact.span, glued=True)
    bore = boring(guest, host, (axis, side))
    if bore is None:
        not_fitting(site, contact, _CODE, _face_on_face(guest, host))
        return bare
    screws = _screws(site, joint, bore, region)
    row = row_clear_of_grooves(
        around, (guest, host), region, axis, pocket_mouths(bore, region, screws.count)
    )
    if row != region:
        region, screws = row, _screws(site, joint, bore, row)
    wrong = _wrong_wood(site, bore, region) or _wrong_screws(site, bore, region, screws)
    if wrong is not None:
        not_fitting(site, contact, _CODE, wrong)
        if wrong.severity is Severity.ERROR:
            return bare
    if screws.length is None or screws.face is None:
        return bare
    _assume(site, joint, (guest, host), screws)
    if row != touch[0]:
        assume_clear(site, joint, (guest, host))
    middles = places(region, bore.row, screws.count)
    inch = site.declared.display.unit != "mm"
    cuts = pocket_holes(bore, screws.face, middles, screws.length, contact.span, inch=inch)
    return Found(
        "pocket screws",
        guest.name,
        host.name,
        touch[0],
        contact.span,
        glued=True,
        area=face_area(touch[0], axis),
        cuts=tuple(cuts),
    )


def _screws(site: Site, joint: JointWords, bore: Boring, region: Box) -> _Screws:
    """Return what is written of the screws, and what is usual of the rest."""
    mate = bore.mate.box.extent(bore.axis)
    length = joint.length
    if length is None and bore.thickness <= THICKEST:
        length = usual_length(bore.thickness, mate, site.declared.display)
    count = joint.count or usual_count(region.extent(bore.row))
    said = details(joint, "pockets")
    word = said[0].place if said and said[0].place else "inside"
    outward = bore.bored.outward[bore.deep]
    if word in _OUTWARD:
        return _Screws(count, length, _OUTWARD[word] * outward)
    axis, side = PLACE_SIDE[word]
    return _Screws(count, length, side if axis == bore.deep else None)


def _assume(site: Site, joint: JointWords, pair: tuple[Placed, Placed], screws: _Screws) -> None:
    placed = details(joint, "pockets")
    if joint.length is not None and joint.count is not None and placed:
        return
    assert screws.length is not None
    many = f"{screws.count} pocket {'screw' if screws.count == 1 else 'screws'}"
    words = f"{many} {site.shown(screws.length)} long"
    text = f"{pair[0].part} into {pair[1].part}: {words}"
    if not placed:
        words, text = f"{words}, pockets inside", f"{text}, bored from the inside face"
    site.assume_line(text, joint.span, with_words(joint.head, words))


def _face_on_face(guest: Placed, host: Placed) -> Wrong:
    return Wrong(
        f"{guest.part} and {host.part} lie face on face: no pocket reaches from one to the other",
        "pocket screws hold an end or an edge; write `screws` or `glue` here",
        {},
        _RULE,
    )


def _wrong_wood(site: Site, bore: Boring, region: Box) -> Wrong | None:
    """Return what keeps the part from being bored."""
    shown, part, thick = site.shown, bore.bored.part, bore.thickness
    if not THINNEST <= thick <= THICKEST:
        return Wrong(
            f"no pocket is bored in the {part}, which is {shown(thick)} thick",
            f"pocket jigs are made for {shown(THINNEST)} to {shown(THICKEST)}: write `dowels`",
            {"thickness": thick},
            _RULE,
        )
    middle = (bore.bored.box.low[bore.deep] + bore.bored.box.high[bore.deep]) / 2
    low, high = region.low[bore.deep], region.high[bore.deep]
    if middle - low < TIP or high - middle < TIP:
        return Wrong(
            f"a pocket comes out in the middle of the {part}, where the {bore.mate.part} is not",
            f"move the {part} so that the middle of it meets the {bore.mate.part}",
            {"thickness": thick},
            _RULE,
        )
    return None


def _wrong_screws(site: Site, bore: Boring, region: Box, screws: _Screws) -> Wrong | None:
    """Return what keeps the screws from being put in, or lets them hold badly."""
    shown, pair = site.shown, f"between {bore.bored.part} and {bore.mate.part}"
    row, mate = region.extent(bore.row), bore.mate.box.extent(bore.axis)
    if screws.face is None:
        return Wrong(
            f"the {bore.bored.part} has no broad face on the side that the pockets are asked for",
            "write `pockets inside` or `pockets outside`",
            {},
            _RULE,
        )
    if screws.length is None or not (stays_inside(screws.length, mate) and holds(screws.length)):
        reach = "" if screws.length is None else f" {shown(screws.length)} long"
        deep = None if screws.length is None else penetration(screws.length)
        goes = (
            f": it goes {site.declared.display.with_unit(deep, fitted=True)} into" if deep else ""
        )
        return Wrong(
            f"no pocket screw{reach} holds {pair}, and stays inside{goes}, "
            f"where the {bore.mate.part} is {shown(mate)} deep",
            "leave its length out for the usual one, or use a thicker mate, or `dowels`",
            {"mate": mate, **({"length": screws.length} if screws.length else {})},
            "H18",
        )
    if crowded(row, screws.count):
        many = (
            f"{screws.count} pocket screws find" if screws.count > 1 else "one pocket screw finds"
        )
        return Wrong(
            f"{many} no room in {shown(row)} {pair}",
            f"write fewer of them: {shown(LEAST_APART)} from one to the next and "
            f"{shown(LEAST_EDGE)} from the edges is the least",
            {"row": row},
            _RULE,
        )
    if screws.count == 1:
        return Wrong(
            f"one pocket screw alone lets the {bore.bored.part} turn {pair}",
            f"make it {shown(WIDE_FOR_TWO)} wide or more for two, or write `dowels`",
            {"row": row},
            _RULE,
            Severity.WARNING,
        )
    return None
