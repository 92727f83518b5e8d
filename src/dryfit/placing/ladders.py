"""Stretchers between two legs that lean alike: a flat, square ladder that leans as a whole.

Legs that are splayed one way only stand in pairs in one plane.  What runs between such a pair lies
across their lean: in the plane everything is square, so that a stretcher is made as for upright
legs, and its holes are bored at right angles into the legs.  Only where they stand is counted along
the slope of the leg.  The ladder is glued first and driven into the seat as one, along its slope.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import replace
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.geometry.lean import UP, Lean
from dryfit.joinery.mortise_tenon import TenonSizes
from dryfit.placing.model import Copy, Joint, Part
from dryfit.placing.site import Site

_ENDS = 2


def across_the_lean(
    parts: tuple[Part, ...], joints: tuple[Joint, ...], splayed: Collection[str]
) -> frozenset[str]:
    """Return the copies that run level between two splayed legs with plain tenons, and no more.

    Whether the two lean alike is known only when their leans are (`leaned`).
    """
    part_of = {copy.name: part for part in parts for copy in part.copies}
    found = set()
    for name, part in part_of.items():
        if part.name in splayed or part.horns or part.measures or part.staves:
            continue
        own = [joint for joint in joints if name in {joint.guest, joint.host}]
        ends = [
            joint for joint in own if joint.guest == name and _in_a_leg(joint, part_of, splayed)
        ]
        hosts = {joint.host for joint in ends}
        held = any(joint.glued for joint in ends)
        if held and len(own) == len(ends) == len(hosts) == _ENDS:
            found.add(name)
    return frozenset(found)


def leaned(
    site: Site, parts: tuple[Part, ...], joints: tuple[Joint, ...], across: frozenset[str]
) -> tuple[Part, ...]:
    """Return the parts, what runs between legs that lean alike with their lean.

    Findings: splay-joint, splay-in-the-way.
    """
    copy_of = {copy.name: copy for part in parts for copy in part.copies}
    done = []
    for part in parts:
        copies = []
        for copy in part.copies:
            lean = None
            if copy.name in across:
                lean = _common(site, copy, [j for j in joints if j.guest == copy.name], copy_of)
            copies.append(replace(copy, lean=lean) if lean else copy)
        if any(each.lean for each in copies):
            text = (
                f"the {site.written(part.name)} lean with their legs and are square to them; the "
                "middle of each stands at the height of the notes"
            )
            site.assume_line(text, part.spans[0], None)
        done.append(replace(part, copies=tuple(copies)))
    return tuple(done)


def not_first(
    parts: tuple[Part, ...],
    joints: tuple[Joint, ...],
    inside: Mapping[str, frozenset[str]],
    across: frozenset[str],
) -> Iterator[Diagnostic]:
    """Yield what runs between legs and is not glued to them before they go into their seat."""
    sloped = {copy.name for part in parts if part.sloped for copy in part.copies}
    for name in sorted(across) if inside else ():
        ends = [joint for joint in joints if joint.guest == name]
        ladder = {name, *(joint.host for joint in ends)}
        seats = {joint.host for joint in joints if joint.guest in ladder & sloped}
        if any(ladder <= each and not seats & each for each in inside.values()):
            continue
        yield Diagnostic(
            "splay-joint",
            Severity.ERROR,
            f"{name}: it fits between its legs only before they stand in their seat",
            ends[0].span,
            hints=(
                Hint(
                    "glue it up with its two legs first: `glue up 2 ladders: 2 legs, 1 stretcher`"
                ),
            ),
        )


def from_end(part: Part, middle: Fraction) -> Fraction:
    """Return how much farther from R a place stands on a splayed part than in the design; mm.

    `middle` is where it stands in the design.  The way from the shoulder down is counted along the
    slope, in the middle of the leg, and rounded once, to 1/1000 mm.
    """
    copy = part.copies[0]
    assert copy.lean is not None
    assert part.sloped is not None
    down = copy.lean.level - copy.box.low[UP] - middle
    return part.sloped.shoulder - copy.lean.along(down) - middle


def as_sawn(part: Part) -> Part:
    """Return a splayed part as it lies at a machine: as long as it was sawn, cuts in their places.

    Any other part is returned as it is.
    """
    if part.sloped is None:
        return part
    long, shoulder = part.sloped.length, part.sloped.shoulder
    features = []
    for each in part.features:
        low, high = each.along
        if high == part.length:
            along = (shoulder if low else low, long)
        else:
            further = from_end(part, (low + high) / 2)
            along = (low + further, high + further)
        features.append(replace(each, along=along))
    return replace(part, length=long, features=tuple(features))


def _in_a_leg(joint: Joint, part_of: Mapping[str, Part], splayed: Collection[str]) -> bool:
    host, tenon = part_of.get(joint.host), joint.tenon
    if tenon is None or host is None or host.name not in splayed:
        return False
    if joint.kind == "round tenon":
        return joint.glued
    return joint.kind == "mortise and tenon" and _plain(tenon) and (joint.glued or tenon.floats > 0)


def _plain(tenon: TenonSizes) -> bool:
    """Return whether a tenon is one, and nothing but it: no haunch, wedges or pegs, not proud.

    At one end it may stay dry and float, where a solid seat shrinks above it.
    """
    more = (tenon.haunch, tenon.wedges, tenon.pegs, tenon.tongue, tenon.proud)
    return tenon.count == 1 and not any(more) and not any(tenon.plays)


def _common(site: Site, copy: Copy, ends: list[Joint], copy_of: Mapping[str, Copy]) -> Lean | None:
    """Return the lean of both legs that a copy runs between, told where it cannot have it."""
    along = copy.frame.axes[0][0]
    leans = {copy_of[joint.host].lean for joint in ends}
    lean = next(iter(leans))
    if len(leans) > 1 or lean is None or along == UP or lean.per_down[along]:
        site.tell_once(
            Diagnostic(
                "splay-joint",
                Severity.ERROR,
                f"{copy.name}: it runs between legs that lean apart, where its ends and all its "
                "cuts would lean",
                ends[0].span,
                hints=(
                    Hint(
                        "let it run across the lean, between two legs that lean alike and one way "
                        "only, or leave it out"
                    ),
                ),
            )
        )
        return None
    # Turned with the ladder, its upper outer edge comes up a little.
    side = 1 - along
    up = copy.box.extent(UP) / 2 + copy.box.extent(side) * abs(lean.per_down[side]) / 2
    middle = (copy.box.low[UP] + copy.box.high[UP]) / 2
    if middle + up > lean.level or middle - up < 0:
        site.tell_once(
            Diagnostic(
                "splay-in-the-way",
                Severity.ERROR,
                f"{copy.name}: it leans with its legs, and so reaches into the "
                f"{'seat' if middle + up > lean.level else 'floor'}",
                ends[0].span,
                hints=(Hint(f"keep it {site.shown(up - copy.box.extent(UP) / 2)} clear of that"),),
            )
        )
    return lean
