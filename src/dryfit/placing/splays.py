"""Splayed legs: how each copy leans, how long it is cut, and what keeps a leg from leaning.

They are placed and joined upright.  What can lean is a leg that goes up into something flat with a
round tenon right through it, and beside that meets stretchers across its lean (`ladders.py`): every
other joint of a splayed part, and every cut in it, would need angles that are not planned, and is
refused.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.geometry.frame import THICKNESS, WIDTH
from dryfit.geometry.lean import UP, Lean
from dryfit.joinery.cut import Placed
from dryfit.joinery.feature import Feature
from dryfit.joinery.splay import Sloped, sloped
from dryfit.kinds.roles import ROUND
from dryfit.piece.declared import SplayWords
from dryfit.placing.ladders import across_the_lean, leaned, not_first
from dryfit.placing.model import Assembly, Copy, Joint, Part
from dryfit.placing.site import Site
from dryfit.placing.sloping import sloping
from dryfit.placing.splay_words import list_splay
from dryfit.placing.splays_apart import report_in_the_way
from dryfit.placing.stages import copies_inside
from dryfit.quantities.units import INCH

_NEEDED = "a splayed leg goes up into its seat with a `through round tenon`"


def lean_of(site: Site, copy: Placed, level: Fraction) -> Lean | None:
    """Return how a copy leans, true at the height where its shoulder meets; None if it is plumb."""
    words = site.part(copy.part).splay
    return (
        None if words is None or words.boards else _lean(site, copy.part, copy.name, words, level)
    )


def splayed(
    site: Site,
    parts: tuple[Part, ...],
    joints: tuple[Joint, ...],
    assemblies: tuple[Assembly, ...],
) -> tuple[Part, ...]:
    """Return the parts, those that are splayed or slope with their leans and how they are cut.

    Findings: splay-way-unclear, splay-joint, splay-unlike, splay-in-the-way.
    """
    said = [(part.name, part.splay) for part in site.parts() if part.splay is not None]
    if any(splay.boards for _, splay in said):
        parts = sloping(site, parts, joints)
    words = {name: splay for name, splay in said if not splay.boards}
    if not words:
        return parts
    told = len(site.findings)
    for opening in site.declared.openings:
        for host in opening.between:
            if host.part in words:
                site.tell_once(
                    _error(
                        "splay-joint",
                        f"{opening.name}: between legs that lean an opening has no one width",
                        opening.span,
                        "bound it by what stands upright, or leave `splayed` out",
                    )
                )
    across = across_the_lean(parts, joints, words)
    done = tuple(
        _leaning(site, part, words[part.name], joints, across) if part.name in words else part
        for part in parts
    )
    if len(site.findings) == told:
        done = leaned(site, done, joints, across)
        for finding in not_first(done, joints, copies_inside(assemblies), across):
            site.tell_once(finding)
    if len(site.findings) == told:
        report_in_the_way(site, done, joints)
    if len(site.findings) == told:
        for part in done:
            if part.name in words:
                list_splay(site, part, words[part.name])
    return done


def not_squared(assemblies: tuple[Assembly, ...], parts: tuple[Part, ...]) -> tuple[Assembly, ...]:
    """Return the glue-ups, those with a leg that leans without diagonals to compare."""
    leaning = {copy.name for part in parts if part.sloped for copy in part.copies}
    if not leaning:
        return assemblies
    inside = copies_inside(assemblies)
    return tuple(
        replace(each, square=None) if leaning & set(inside[each.name]) else each
        for each in assemblies
    )


def _leaning(
    site: Site,
    part: Part,
    words: SplayWords,
    joints: tuple[Joint, ...],
    across: frozenset[str],
) -> Part:
    for finding in (*_no_way(site, part, words), *_not_planned(part, words, joints, across)):
        site.tell_once(finding)
        return part
    copies, figures = [], []
    for copy in part.copies:
        joint = next(each for each in joints if each.guest == copy.name)
        lean = _lean(site, part.name, copy.name, words, joint.region.low[UP])
        assert lean is not None
        copies.append(replace(copy, lean=lean))
        figures.append(_figures(site, part, copy, lean, joint))
    if len(set(figures)) > 1:
        site.tell_once(
            _error(
                "splay-unlike",
                f"{part.name}: not all of these lean alike, so they are not cut alike",
                words.span,
                "give those that stand at other places, or go into other parts, their own line",
            )
        )
        return part
    return replace(part, copies=tuple(copies), sloped=figures[0])


def _lean(site: Site, part: str, name: str, words: SplayWords, level: Fraction) -> Lean | None:
    seat = next(each for each in site.seats(part) if each.name == name)
    across, deep = (seat.side(axis) * rise for axis, rise in enumerate((words.across, words.deep)))
    return Lean((across, deep), level) if across or deep else None


def _figures(site: Site, part: Part, copy: Copy, lean: Lean, joint: Joint) -> Sloped:
    assert joint.tenon is not None
    sizes = (part.width, part.thickness)
    slopes = [abs(lean.per_down[copy.frame.axes[direction][0]]) for direction in (WIDTH, THICKNESS)]
    inches = site.declared.display.unit == "in"
    return sloped(
        lean,
        ((sizes[0], slopes[0]), (sizes[1], slopes[1])),
        (joint.region.low[UP] - copy.box.low[UP], joint.region.extent(UP)),
        joint.tenon.thickness,
        INCH / 8 if inches else Fraction(1),
    )


def _no_way(site: Site, part: Part, words: SplayWords) -> Iterator[Diagnostic]:
    """Yield that nothing tells to which side a copy leans, or that it stands at no such side."""
    for seat in site.seats(part.name):
        sides = [seat.side(axis) for axis in (0, 1)]
        wanted = [bool(words.across), bool(words.deep)]
        missing = [want and not side for want, side in zip(wanted, sides, strict=True)]
        if all(missing) or (any(missing) and not words.way_unsaid):
            yield _error(
                "splay-way-unclear",
                f"{seat.name}: nothing tells to which side it leans",
                words.span,
                "write `at corners`, or `at left and right` with `splayed ... to the sides`",
            )


def _not_planned(
    part: Part, words: SplayWords, joints: tuple[Joint, ...], across: frozenset[str]
) -> Iterator[Diagnostic]:
    """Yield what a splayed part has that is planned for upright ones only."""
    names = {copy.name for copy in part.copies}
    for feature in part.features:
        if feature.role != ROUND and feature.mate is None and not _along_an_edge(feature, part):
            yield _error(
                "splay-joint",
                f"{part.name}: cuts in splayed parts are not planned, and this is one "
                f"({feature.id})",
                feature.span or words.span,
                "long edges can be chamfered or rounded from end to end; leave the rest out, or "
                "leave `splayed` out",
            )
    own = [
        joint for joint in joints if {joint.guest, joint.host} & names and joint.guest not in across
    ]
    for joint in own:
        tenon = joint.tenon
        good = joint.kind == "round tenon" and joint.guest in names and tenon and tenon.through
        good = good and joint.glued
        if not good or joint.end != "R2":
            yield _error(
                "splay-joint",
                f"{part.name}: a {joint.kind} with a splayed part is not planned, since all its "
                "cuts would lean"
                if joint.kind != "round tenon"
                else f"{part.name}: the round tenon of a splayed part goes right through, glued",
                joint.span,
                f"{_NEEDED}, and between two that lean alike a stretcher can have a plain, "
                "glued tenon at both ends; leave other members out, or leave `splayed` out",
            )
    for copy in part.copies:
        if sum(joint.guest == copy.name for joint in own) != 1:
            yield _error(
                "splay-joint",
                f"{copy.name}: nothing holds it at its upper end that can lean",
                words.span,
                f"{_NEEDED}: `through round tenon into seat`",
            )
        if copy.box.low[UP] != 0:
            yield _error(
                "splay-joint",
                f"{copy.name}: it leans, and does not stand on the floor, where it is levelled",
                words.span,
                "write `up 0`, or leave `splayed` out",
            )
    if part.horns or part.measures or part.staves:
        yield _error(
            "splay-joint",
            f"{part.name}: with horns, staves or a size that is measured it cannot be splayed",
            words.span,
            "leave that out, or leave `splayed` out",
        )


def _along_an_edge(feature: Feature, part: Part) -> bool:
    """Return whether a cut eases an edge from end to end, which no slope changes."""
    whole = feature.along == (Fraction(0), part.length) and feature.surface not in {"R", "R2"}
    return whole and feature.role in {"chamfer", "round-over"}


def _error(code: str, message: str, span: Span, hint: str) -> Diagnostic:
    return Diagnostic(code, Severity.ERROR, message, span, hints=(Hint(hint),))
