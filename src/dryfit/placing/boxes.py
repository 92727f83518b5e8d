"""Boxes of all copies from the settled positions, and what is wrong with them."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Note, Severity
from dryfit.geometry.box import Box
from dryfit.piece.declared import DeclaredPart
from dryfit.placing.copies import Seat
from dryfit.placing.positions import Clash, Face, Fact
from dryfit.placing.site import DIMENSIONS, Site

_AXIS_QUESTION = (
    "where it lies from side to side",
    "where it lies from front to back",
    "how high it stands",
)
_AXIS_HINT = (
    "add `120 from left`, or say between which parts it lies",
    "add `30 from front`, `set back 5`, or say between which parts it lies",
    "add `up 80`, or say what it lies onto",
)


def boxes_of(site: Site) -> Mapping[str, Box]:
    """Return the box of every copy that could be placed.

    Findings: sizes-clash, shoulder-length-given, place-unknown, copies-differ, size-not-positive.
    """
    for clash in site.positions.clashes:
        _report_clash(site, clash)
    boxes: dict[str, Box] = {}
    for part in site.parts():
        missing: set[int] = set()
        for seat in site.seats(part.name):
            box = _box(site, seat)
            if box is None:
                missing |= {axis for axis in range(3) if not _known(site, seat, axis)}
            else:
                boxes[seat.name] = box
        if missing:
            _report_unknown(site, part, missing)
        else:
            _report_sizes(site, part, boxes)
    return boxes


def _known(site: Site, seat: Seat, axis: int) -> bool:
    return site.known(seat, axis, -1) and site.known(seat, axis, 1)


def _box(site: Site, seat: Seat) -> Box | None:
    lows = [site.positions.at(Face(seat.name, axis, -1)) for axis in range(3)]
    highs = [site.positions.at(Face(seat.name, axis, 1)) for axis in range(3)]
    if any(value is None for value in (*lows, *highs)):
        return None
    low = tuple(value for value in lows if value is not None)
    high = tuple(value for value in highs if value is not None)
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _report_clash(site: Site, clash: Clash) -> None:
    fact, shown = clash.fact, site.shown
    shoulder = _shoulder_given(site, clash)
    if shoulder is not None:
        site.findings.append(shoulder)
        return
    difference = abs(clash.known - fact.distance)
    reasons = [step for step in clash.chain if step.reason.span is not None]
    site.findings.append(
        Diagnostic(
            "sizes-clash",
            Severity.ERROR,
            f"the sizes do not add up: {fact.reason.words}, but "
            f"{_said(reasons)}; they differ by {shown(difference)}",
            fact.reason.span,
            rule="H26",
            figures={"difference": difference},
            notes=tuple(Note(step.reason.words, step.reason.span) for step in reasons[:6]),
            hints=(Hint("change one of these sizes, or leave one out so that it is worked out"),),
        )
    )


def _said(chain: list[Fact]) -> str:
    words = list(dict.fromkeys(step.reason.words for step in chain if step.reason.words))
    return "; ".join(words[:3]) + ("; ..." if len(words) > 3 else "")


def _shoulder_given(site: Site, clash: Clash) -> Diagnostic | None:
    steps = (clash.fact, *clash.chain)
    sizes = [step for step in steps if step.reason.rule == "size"]
    for step in sizes:
        name = step.reason.figure or ""
        if not name.endswith(".length"):
            continue
        part = name.removesuffix(".length")
        enters = [
            abs(other.distance)
            for other in steps
            if other.reason.rule == "into" and _owner_part(site, other) == part
        ]
        adds = sum(enters, Fraction(0))
        if enters and adds == abs(clash.known - clash.fact.distance):
            given = abs(step.distance)
            needed = given + adds
            return Diagnostic(
                "shoulder-length-given",
                Severity.ERROR,
                f"{part} {site.shown(given)}: this looks like the length between its shoulders; "
                f"with its joints it is cut {site.shown(needed)}",
                step.reason.span,
                rule="H29",
                figures={"given": given, "cut length": needed},
                hints=(Hint(f"write {site.shown(needed)} long, or leave the length out"),),
            )
    return None


def _owner_part(site: Site, fact: Fact) -> str | None:
    for seat in site.seating.all():
        if seat.name in {fact.start.owner, fact.end.owner}:
            part = site.part(seat.part)
            if site.contacts(part.name, "into"):
                return part.name
    return None


def _report_unknown(site: Site, part: DeclaredPart, axes: set[int]) -> None:
    if part.name in site.declared.broken or site.declared.broken or _overall_missing(site):
        return
    first = min(axes)
    what = " and ".join(_AXIS_QUESTION[axis] for axis in sorted(axes))
    site.findings.append(
        Diagnostic(
            "place-unknown",
            Severity.ERROR,
            f"{part.name}: nothing says {what}",
            part.name_span,
            rule="H28",
            hints=(Hint(_AXIS_HINT[first]),),
        )
    )


def _overall_missing(site: Site) -> bool:
    return any(amount is None for amount in site.declared.overall)


def _report_sizes(site: Site, part: DeclaredPart, boxes: Mapping[str, Box]) -> None:
    seats = site.seats(part.name)
    for axis, dimension in zip(part.axes, DIMENSIONS, strict=True):
        sizes = {boxes[seat.name].extent(axis) for seat in seats}
        if min(sizes) <= 0:
            site.findings.append(
                Diagnostic(
                    "size-not-positive",
                    Severity.ERROR,
                    f"{part.name}: the {dimension} comes to {site.shown(min(sizes))}; a size must "
                    "be more than nothing",
                    part.span,
                    rule="H26",
                    hints=(Hint("check the sizes and set-ins that it is worked out from"),),
                )
            )
        if len(sizes) > 1:
            shown = " and ".join(site.shown(size) for size in sorted(sizes))
            site.findings.append(
                Diagnostic(
                    "copies-differ",
                    Severity.ERROR,
                    f"the copies of {part.name} do not come out alike: {dimension} {shown}",
                    part.span,
                    rule="H27",
                    hints=(Hint("write two lines with two names"),),
                )
            )
