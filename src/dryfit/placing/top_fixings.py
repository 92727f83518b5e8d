"""Where clips, figure-8 plates and slotted screws hold a top, and what is cut for them (B22)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.joinery.buttons import button_places, buttons_along
from dryfit.joinery.cut import Cut, Placed, bounded
from dryfit.joinery.top_fixings import (
    CLIPS,
    KINDS,
    PLATES,
    SLOTTED,
    UP,
    WIDEST_KERF,
    clip_kerf,
    head_room,
    kerf_sizes,
    plate_recess,
    plate_set,
    screw_slot,
    slot_length,
)
from dryfit.piece.declared import Contact
from dryfit.placing.button_findings import no_rail, stands_under
from dryfit.placing.fastenings import shoulders_of, side_movement
from dryfit.placing.found import Found
from dryfit.placing.lines import with_words
from dryfit.placing.not_fitting import not_fitting
from dryfit.placing.site import Site
from dryfit.placing.top_fixing_findings import (
    cut_there,
    lies_flat,
    moves_too_far,
    no_slot,
    too_thin,
)

_CODE = "top-fixing-does-not-fit"
_HOLD = Fraction(3)
"""How far a clip must stand in its kerf when the top has shrunk, mm (TRADE B22, as buttons)."""

_NEAR_TOP = Fraction(20)
"""A written groove further down is none for clips (common practice)."""

_HALF = Fraction(10)
"""Half of the stretch of a rail that a fixing takes, mm."""


@dataclass(frozen=True, slots=True)
class _Rail:
    """A rail under a top: the face that looks inwards, and the places of its fixings along it."""

    rail: Placed
    face: tuple[int, int]
    contact: Box
    places: tuple[Fraction, ...]


def clip_kerfs(site: Site, placed: Mapping[str, Placed], lone: Sequence[Cut]) -> tuple[Cut, ...]:
    """Return the kerfs of all clips in rails that have no groove for them; each is listed.

    Findings: top-fixing-does-not-fit.
    """
    kerfs: dict[str, Cut] = {}
    for contact, top in _tops(site, placed, (CLIPS,)):
        for rail in _rails(site, contact, top, placed):
            face = _inner_face(rail)
            own = [cut for cut in (*lone, *kerfs.values()) if cut.copy == rail.name]
            if any(_takes_clips(rail, face, cut) for cut in own):
                continue
            if rail.axes[2] == UP:
                not_fitting(site, contact, _CODE, lies_flat(rail))
                continue
            blades = [cutter.widest for cutter in site.shop.cutters_at("table saw")]
            sizes = kerf_sizes(rail.box.extent(rail.axes[2]), blades, site.declared.display)
            kerf = clip_kerf(rail, face, sizes, contact.span)
            if any(cut.box.overlap(kerf.box) is not None for cut in own):
                not_fitting(site, contact, _CODE, cut_there(rail))
                continue
            kerfs[rail.name] = kerf
            _assume_kerf(site, contact, rail, sizes)
            if sizes[1] - 2 * side_movement(site, top) < _HOLD:
                not_fitting(site, contact, _CODE, moves_too_far(site, top, rail))
    return tuple(kerfs.values())


def _takes_clips(rail: Placed, face: tuple[int, int], cut: Cut) -> bool:
    """Return whether a groove inside a rail is as narrow and as near the top as a clip's kerf."""
    near = rail.box.high[UP] - cut.box.high[UP] <= _NEAR_TOP
    narrow = cut.box.extent(UP) <= WIDEST_KERF
    return cut.role == "groove" and (cut.axis, cut.side) == face and near and narrow


def find_top_fixings(site: Site, placed: Mapping[str, Placed]) -> tuple[Found, ...]:
    """Return a joint for each fixing, and that each top lies on its rails.

    Findings: joint-without-contact, top-fixing-does-not-fit.
    """
    found: list[Found] = []
    for contact, top in _tops(site, placed, KINDS):
        rests = [(each, touch) for each, touch in _under(site, contact, top, placed)]
        found += [Found("rest", top.name, each.name, box, contact.span) for each, box in rests]
        rails = _spread(site, contact, top, placed)
        if not rails:
            no_rail(site, contact, top)
        for rail in rails:
            found += _fixings(site, contact, top, rail, _fixed_line(top, rails))
    return tuple(found)


def _tops(
    site: Site, placed: Mapping[str, Placed], kinds: Sequence[str]
) -> Iterator[tuple[Contact, Placed]]:
    for contact in site.declared.contacts:
        if contact.joint is not None and contact.joint.kind in kinds:
            for seat in site.guests(contact):
                yield contact, placed[seat.name]


def _under(
    site: Site, contact: Contact, top: Placed, placed: Mapping[str, Placed]
) -> Iterator[tuple[Placed, Box]]:
    (seat,) = (each for each in site.guests(contact) if each.name == top.name)
    for mate in site.mates(contact, seat):
        touch = placed[mate.name].box.contact(top.box)
        if touch is not None and touch[0] == UP:
            yield placed[mate.name], touch[1]


def _rails(
    site: Site, contact: Contact, top: Placed, placed: Mapping[str, Placed]
) -> tuple[Placed, ...]:
    under = [rail for rail, _ in _under(site, contact, top, placed)]
    return tuple(rail for rail in under if rail.axes[0] != UP)


def _inner_face(rail: Placed) -> tuple[int, int]:
    across = next(each for each in (0, 1) if each != rail.axes[0])
    return across, -rail.outward[across]


def _spread(
    site: Site, contact: Contact, top: Placed, placed: Mapping[str, Placed]
) -> tuple[_Rail, ...]:
    """Return the rails with the places of their fixings: as many as are written, or as usual."""
    assert contact.joint is not None
    rails, spans = _rails(site, contact, top, placed), {}
    upright = [each for each, _ in _under(site, contact, top, placed) if each not in rails]
    stands_under(site, contact, top, upright)
    for rail in rails:
        low, high = shoulders_of(site, rail, placed)
        along = rail.axes[0]
        spans[rail.name] = max(low, top.box.low[along]), min(high, top.box.high[along])
    kind = contact.joint.kind
    usual = [_usual(rail, top, spans[rail.name], kind) for rail in rails]
    written = contact.joint.count
    counts = usual if written is None else _shared(written, usual)
    if written is None and rails:
        words = f"{sum(counts)} {contact.joint.kind}"
        line = with_words(contact.joint.span, words)
        text = f"{words} hold the {site.written(contact.guest.part)}"
        site.assume_line(text, contact.joint.span, line)
    boxes = {each.name: box for each, box in _under(site, contact, top, placed)}
    return tuple(
        _Rail(rail, _inner_face(rail), boxes[rail.name], button_places(*spans[rail.name], count))
        for rail, count in zip(rails, counts, strict=True)
        if count
    )


def _usual(rail: Placed, top: Placed, span: tuple[Fraction, Fraction], kind: str) -> int:
    """Return how many fixings a rail takes; of slotted screws one is at the top's middle."""
    count = buttons_along(span[1] - span[0])
    across = rail.axes[0] == top.axes[1]
    return count + 1 if kind == SLOTTED and across and count % 2 == 0 else count


def _shared(count: int, usual: Sequence[int]) -> list[int]:
    """Return how many of `count` each rail takes: one each, then those that lack the most."""
    counts = [0] * len(usual)
    for _ in range(count if usual else 0):
        least = min(range(len(usual)), key=lambda at: (Fraction(counts[at], usual[at]), at))
        counts[least] += 1
    return counts


def _fixed_line(top: Placed, rails: Sequence[_Rail]) -> Fraction:
    """Return where across its grain a top is held fast: its middle, else at the first rail."""
    across = top.axes[1]
    middle = (top.box.low[across] + top.box.high[across]) / 2
    for each in rails:
        if each.rail.axes[0] == across and middle in each.places:
            return middle
    first = rails[0]
    if first.rail.axes[0] == across:
        return first.places[len(first.places) // 2]
    return (first.contact.low[across] + first.contact.high[across]) / 2


def _fixings(
    site: Site, contact: Contact, top: Placed, rail: _Rail, fixed: Fraction
) -> Iterator[Found]:
    assert contact.joint is not None
    kind, along = contact.joint.kind, rail.rail.axes[0]
    for place in rail.places:
        cuts = _cuts(site, contact, top, rail, (place, fixed))
        if cuts is None:
            return
        patch = bounded(rail.contact, along, place - _HALF, place + _HALF)
        yield Found(kind, top.name, rail.rail.name, patch, contact.span, cuts=cuts)


def _cuts(
    site: Site, contact: Contact, top: Placed, rail: _Rail, at: tuple[Fraction, Fraction]
) -> tuple[Cut, ...] | None:
    """Return what is cut for one fixing; None where it does not fit, which is told."""
    assert contact.joint is not None
    kind, (place, fixed) = contact.joint.kind, at
    if kind == CLIPS:
        return ()
    axis = rail.face[0]
    if kind == PLATES:
        inset = plate_set(rail.rail.box.extent(axis))
        if inset is None:
            not_fitting(site, contact, _CODE, too_thin(site, rail.rail, axis))
            return None
        return (plate_recess(rail.rail, rail.face, place, inset, top.part, contact.span),)
    middle = _screw_middle(rail, place)
    across = top.axes[1]
    length = slot_length(_moves(site, top, abs(middle[across] - fixed)))
    if not head_room(rail.rail, length, across):
        not_fitting(site, contact, _CODE, no_slot(site, rail.rail, axis))
        return None
    return screw_slot(rail.rail, middle, (across, length), top.part, contact.span)


def _screw_middle(rail: _Rail, place: Fraction) -> tuple[Fraction, Fraction]:
    axis = rail.face[0]
    at = (rail.contact.low[axis] + rail.contact.high[axis]) / 2
    return (at, place) if axis == 0 else (place, at)


def _moves(site: Site, top: Placed, reach: Fraction) -> Fraction:
    part = site.part(top.part)
    if part.stock == "sheet" or reach == 0:
        return Fraction(0)
    return site.moving(part).over_the_year(reach)


def _assume_kerf(
    site: Site, contact: Contact, rail: Placed, sizes: tuple[Fraction, Fraction, Fraction]
) -> None:
    wide, deep, down = (site.shown(size) for size in sizes)
    written = site.written(rail.part)
    said = f"{wide} wide, {deep} deep, {down} from top"
    text = f"the clips stand in a saw kerf along the inside of the {written}: {said}"
    site.assume_line(text, contact.span, f"groove in {written}: inside, {said}, through")
