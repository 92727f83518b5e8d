"""Screws beside other joints: in free wood, clear of one another, or none (TRADE H18, H19, H36).

A screw in the glue line of a lap holds in neither part, and two in one place split the wood.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.geometry.box import Box, Triple
from dryfit.joinery.cut import Cut, Placed, bounded
from dryfit.joinery.free_wood import Rectangle, grown, is_free, stoutest
from dryfit.joinery.screws import Driving, driving, longer_of, screw_holes, screw_places
from dryfit.placing.found import Found
from dryfit.placing.site import Site

_TIP = Fraction(3)
_APART = 3
"""Middles of two screws stand three diameters apart at least, so that their heads clear one
another and the wood does not split (common practice)."""
_CLEAR = Fraction(30)
"""How far a screw that had to move keeps from what it moved for, where there is room; in a stretch
under twice that it stands in the middle (a guess of ours)."""

CutsByCopy = dict[str, list[Cut]]


def with_screws_in_the_wood(
    site: Site, found: Sequence[Found], placed: Mapping[str, Placed], grooves: Sequence[Cut]
) -> tuple[Found, ...]:
    """Return the joints with every screw in free wood of its contact face.

    Screws whose usual places are free stay there.  Others go to the middle of the stoutest wood
    that is left, each in its own share of the length where that has any, perhaps one less.  Where
    none is left, or the face is narrower than two screws, the part only lies there.
    Findings: screw-in-joint.
    """
    made = _all_moved(found, placed, grooves)
    _report(site, found, made)
    return made


def clear_of_late_cuts(
    found: Sequence[Found], placed: Mapping[str, Placed], cuts: Sequence[Cut]
) -> tuple[Found, ...]:
    """Return the joints with screws clear of what is cut after a glue-up, where there is room."""
    made = _all_moved(found, placed, cuts)
    return tuple(
        after if after.kind == before.kind else before
        for before, after in zip(found, made, strict=True)
    )


def _all_moved(
    found: Sequence[Found], placed: Mapping[str, Placed], grooves: Sequence[Cut]
) -> tuple[Found, ...]:
    cuts: CutsByCopy = {}
    others = (cut for joint in found if joint.kind != "screws" for cut in joint.cuts)
    for cut in (*others, *grooves):
        cuts.setdefault(cut.copy, []).append(cut)
    made = list(found)
    # Where screws keep clear of screws, their places say which go first, not the order of lines.
    for at in sorted(range(len(found)), key=lambda at: _place(found[at])):
        joint = found[at]
        moved = _moved(joint, placed, cuts) if joint.kind == "screws" and joint.cuts else joint
        for cut in moved.cuts if moved.kind == "screws" else ():
            cuts.setdefault(cut.copy, []).append(cut)
        made[at] = moved
    return tuple(made)


def _place(joint: Found) -> tuple[Triple, Triple, str, str]:
    return joint.region.low, joint.region.high, joint.guest, joint.host


def _moved(joint: Found, placed: Mapping[str, Placed], cuts: CutsByCopy) -> Found:
    guest, host = placed[joint.guest], placed[joint.host]
    axis = next(each for each in range(3) if joint.region.extent(each) == 0)
    side = 1 if joint.region.low[axis] == guest.box.low[axis] else -1
    from_host = joint.cuts[0].copy == host.name
    driven = driving(guest, host, (axis, side), joint.region.low[axis], from_host=from_host)
    if driven is None:
        return joint
    flat = _flat(axis)
    if _is_narrow(joint.region, driven):
        return replace(joint, kind="rest", cuts=())
    taken = _taken(joint.region, driven, cuts)
    # As many as the family found room for: an odd number on a cleat across a broad board.
    usual = screw_places(joint.region, axis, middle_one=len(joint.cuts) // 2 % 2 == 1)
    if all(is_free((place[flat[0]], place[flat[1]]), taken) for place in usual):
        return joint
    places = _apart(_along(joint.region, driven, usual, taken), driven)
    if len(places) < min(2, len(usual)):
        places = _apart(_in_one_stretch(joint.region, driven, taken), driven)
    if not places:
        return replace(joint, kind="rest", cuts=())
    return replace(joint, cuts=screw_holes(driven, places, joint.span))


def _is_narrow(face: Box, driven: Driving) -> bool:
    """Return whether a hole would run out, or nearly, at the edge of what the parts share."""
    return min(face.extent(each) for each in _flat(driven.axis)) < 2 * driven.screw.diameter


def _along(
    face: Box, driven: Driving, usual: Sequence[Triple], taken: Sequence[Rectangle]
) -> list[Triple]:
    """Return a place in each share of the face's length that has free wood.

    So what holds a broad part is spread over it, and does not all stand at one end (B17).
    """
    longer = longer_of(face, driven.axis)
    share = face.extent(longer) / len(usual)
    inner = _inset(face, driven)
    middle = (face.low[longer] + face.high[longer]) / 2
    places = []
    for number, place in enumerate(usual):
        low = face.low[longer] + share * number
        bounds = max(low, inner.low[longer]), min(low + share, inner.high[longer])
        outward = list(driven.second.outward)
        if place[longer] != middle:
            outward[longer] = 1 if place[longer] > middle else -1
        part = bounded(inner, longer, *bounds)
        first, second = _flat(driven.axis)
        free = stoutest(_seen(part, driven.axis), taken, (outward[first], outward[second]))
        if free is not None:
            places.append(_near_usual(free, place, longer, driven.axis))
    return places


def _near_usual(free: Rectangle, usual: Triple, longer: int, axis: int) -> Triple:
    """Return the middle of free wood; along the row the usual place, or as near as is good."""
    at = list(usual)
    for each, (low, high) in zip(_flat(axis), free, strict=True):
        if each != longer:
            at[each] = (low + high) / 2
        elif not low <= usual[each] <= high:
            clear = min(_CLEAR, (high - low) / 2)
            at[each] = max(low + clear, min(high - clear, usual[each]))
    return at[0], at[1], at[2]


def _in_one_stretch(face: Box, driven: Driving, taken: Sequence[Rectangle]) -> Sequence[Triple]:
    """Return the places in the stoutest free wood of all the face."""
    axis = driven.axis
    first, second = _flat(axis)
    outward = (driven.second.outward[first], driven.second.outward[second])
    free = stoutest(_seen(_inset(face, driven), axis), taken, outward)
    if free is None:
        return ()
    return screw_places(_in_face(face, axis, grown(free, driven.screw.diameter)), axis)


def _inset(face: Box, driven: Driving) -> Box:
    return _in_face(face, driven.axis, grown(_seen(face, driven.axis), -driven.screw.diameter))


def _taken(face: Box, driven: Driving, cuts: CutsByCopy) -> list[Rectangle]:
    """Return where no middle of a screw may stand: near cuts that it would meet, and near screws.

    In the part that the screw passes every cut counts, in the other one those down to its tip.
    """
    axis, diameter = driven.axis, driven.screw.diameter
    plane = face.low[axis]
    deep = sorted((plane, driven.tip(plane) - driven.side * _TIP))
    taken = []
    passed = sorted((plane, plane + driven.side * driven.passes))
    for part, (low, high) in (
        (driven.first, (passed[0], passed[1])),
        (driven.second, (deep[0], deep[1])),
    ):
        for cut in cuts.get(part.name, ()):
            passes_by = cut.box.low[axis] >= high or cut.box.high[axis] <= low
            if passes_by or (cut.role == "lap" and cut.axis == axis):
                # Square through a lap a screw holds both halves.
                continue
            seen = _seen(cut.box, axis)
            if cut.kind == "hole" and cut.axis == axis:
                taken.append(grown(_middle(seen), _APART * diameter))
            else:
                taken.append(grown(seen, diameter))
    return taken


def _apart(places: Sequence[Triple], driven: Driving) -> list[Triple]:
    # Two in a short stretch of wood would stand too near to one another.
    kept: list[Triple] = []
    for place in places:
        near = kept and all(
            abs(two - one) < _APART * driven.screw.diameter
            for one, two in zip(kept[-1], place, strict=True)
        )
        if not near:
            kept.append(place)
    return kept


def _flat(axis: int) -> tuple[int, int]:
    first, second = (other for other in range(3) if other != axis)
    return first, second


def _seen(box: Box, axis: int) -> Rectangle:
    first, second = _flat(axis)
    return (box.low[first], box.high[first]), (box.low[second], box.high[second])


def _middle(seen: Rectangle) -> Rectangle:
    (left, right), (low, high) = seen
    x, y = (left + right) / 2, (low + high) / 2
    return (x, x), (y, y)


def _in_face(face: Box, axis: int, seen: Rectangle) -> Box:
    for each, (low, high) in zip(_flat(axis), seen, strict=True):
        face = bounded(face, each, low, high)
    return face


def _report(site: Site, found: Sequence[Found], made: Sequence[Found]) -> None:
    """Tell, once for two parts of a line, that no screw finds room between them."""
    held = {(joint.guest, joint.span) for joint in made if joint.kind == "screws" and joint.cuts}
    part_of = {seat.name: seat.part for seat in site.seating.all()}
    told: set[tuple[str, str]] = set()
    for before, after in zip(found, made, strict=True):
        parts = (part_of.get(before.guest, before.guest), part_of.get(before.host, before.host))
        if before.kind == after.kind or parts in told:
            continue
        told.add(parts)
        guest, host = parts
        sizes = sorted(size for axis in range(3) if (size := before.region.extent(axis)))
        loose = (after.guest, after.span) not in held
        site.findings.append(
            Diagnostic(
                "screw-in-joint",
                Severity.ERROR if loose else Severity.WARNING,
                f"{before.guest} and {before.host} touch over {site.shown(sizes[0])} x "
                f"{site.shown(sizes[1])}: beside the edges, their joints and other screws there is "
                "no room for a screw",
                before.span,
                rule="H36",
                figures={"width": sizes[0], "length": sizes[1]},
                hints=(
                    Hint(
                        f"make the {host} or the {guest} wider, or name another joint"
                        if loose
                        else f"leave the {host} out of this line, or make it wider"
                    ),
                ),
            )
        )
