"""Boxes of all copies from the settled positions, and what is wrong with them."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.geometry.box import Box
from dryfit.piece.declared import PART_DIMENSIONS, PIECE_DIMENSIONS, DeclaredPart, amounts_of
from dryfit.placing.clashes import report_circles, report_clashes
from dryfit.placing.ends_told import report_no_room, report_unsaid_ends
from dryfit.placing.on_faces import report_lapping, report_unclear_faces
from dryfit.placing.openings import report_openings
from dryfit.placing.positions import Face
from dryfit.placing.ripped_boards import is_ripped
from dryfit.placing.seats import Seat
from dryfit.placing.site import Site, both, whole
from dryfit.placing.too_big import report_too_big
from dryfit.quantities.units import INCH

# What they make of sizes needs no word of its own.
_CAUSES = frozenset({"sizes-clash", "opening-empty", "no-room-between"})
_AXIS_QUESTION = (
    "where it lies from side to side",
    "where it lies from front to back",
    "how high it stands",
)
_AXIS_HINT = (
    "add `{120} from left`, or say between which parts it lies",
    "add `{30} from front`, `set back {5}`, or say between which parts it lies",
    "add `up {80}`, or say what it lies onto",
)

# Length, width and thickness as an example, in mm and in inches.
_USUAL = (200, 80, 20)
_USUAL_INCHES = (Fraction(8), Fraction(3), Fraction(3, 4))
_USUAL_BOX = (400, 350, 110)
_USUAL_BOX_INCHES = (Fraction(16), Fraction(14), Fraction(9, 2))


def boxes_of(site: Site) -> Mapping[str, Box]:
    """Return the box of every copy that could be placed.

    Findings: sizes-clash, shoulder-length-given, place-unknown, size-unknown, ends-unclear,
    face-unclear, lapping-over-nothing, lapping-too-far, no-room-between, copies-differ,
    size-not-positive, opening-unbounded, opening-unclear, opening-empty, too-big-for-opening.
    """
    report_clashes(site)
    report_no_room(site)
    report_openings(site)
    report_lapping(site)
    boxes: dict[str, Box] = {}
    missing: dict[str, set[int]] = {}
    for part in site.parts():
        axes: set[int] = set()
        for seat in site.seats(part.name):
            box = _box(site, seat)
            if box is None:
                axes |= {axis for axis in range(3) if not _known(site, seat, axis)}
            else:
                boxes[seat.name] = box
        if axes:
            missing[part.name] = axes
        else:
            _report_sizes(site, part, boxes)
    if not missing:
        report_too_big(site, boxes)
    if missing and not site.declared.broken and not site.findings:
        report_circles(site)
    if missing and not site.declared.broken and not site.findings:
        _report_missing(site, missing)
    return boxes


def _known(site: Site, seat: Seat, axis: int) -> bool:
    return site.known(seat, axis, -1) and site.known(seat, axis, 1)


def _box(site: Site, seat: Seat) -> Box | None:
    lows = [site.positions.at(Face(seat.name, axis, -1)) for axis in range(3)]
    highs = [site.positions.at(Face(seat.name, axis, 1)) for axis in range(3)]
    low = tuple(value for value in lows if value is not None)
    high = tuple(value for value in highs if value is not None)
    if len(low) < 3 or len(high) < 3:
        return None
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _report_missing(site: Site, missing: Mapping[str, set[int]]) -> None:
    # What waits only for another part that is told of needs no word of its own.
    told = report_unsaid_ends(site) | report_unclear_faces(site)
    for part in site.parts():
        if part.name in told:
            continue
        axes = {
            axis
            for axis in missing.get(part.name, ())
            if not any(axis in missing.get(mate, ()) for mate in _leans_on(site, part))
        }
        if axes:
            _report_unknown(site, part, min(axes))
            told |= {part.name}
    for part in site.parts() if not told else ():
        if part.name in missing:
            _report_unknown(site, part, min(missing[part.name]))


def _leans_on(site: Site, part: DeclaredPart) -> list[str]:
    own = [contact for contact in site.declared.contacts if contact.guest.part == part.name]
    named = [host.part for contact in own for host in contact.hosts]
    named += [lean.subject for amount in amounts_of(part) for lean in amount.leans]
    openings = [opening for name in named if (opening := site.opening(name))]
    return [*named, *(host.part for opening in openings for host in opening.between)]


def _report_unknown(site: Site, part: DeclaredPart, axis: int) -> None:
    at = part.axes.index(axis)
    sized = any(site.positions.extent(s.name, axis) is not None for s in site.seats(part.name))
    dimension = PART_DIMENSIONS[at] if part.instance is None else PIECE_DIMENSIONS[axis]
    what = _AXIS_QUESTION[axis] if sized else f"what {dimension} it has"
    hint = (
        site.declared.display.examples(_AXIS_HINT[axis])
        if sized
        else f"add its {dimension}, such as `{_usual(site, part, axis)}`"
        + _as_the_piece(site, part, axis)
    )
    site.findings.append(
        Diagnostic(
            "place-unknown" if sized else "size-unknown",
            Severity.ERROR,
            f"{part.name}: nothing says {what}",
            part.name_span,
            rule="H28",
            hints=(Hint(hint),),
        )
    )


def _as_the_piece(site: Site, part: DeclaredPart, axis: int) -> str:
    """Return how a width from front to back is written that is the whole depth, or nothing."""
    known = site.positions.distance(whole(axis, -1), whole(axis, 1))
    if part.instance is not None or PART_DIMENSIONS[part.axes.index(axis)] != "width":
        return ""
    if PIECE_DIMENSIONS[axis] != "depth" or not known:
        return ""
    return ", or `depth wide` where it is as deep as the piece"


def _usual(site: Site, part: DeclaredPart, axis: int) -> str:
    # A size that is easily right: it goes into the piece, and is told in the unit of the notes.
    # A pattern is a box: it is wide, deep and high, whatever way its parts lie.
    plain = part.instance is None
    at = part.axes.index(axis) if plain else axis
    display = site.declared.display
    inches = display.unit == "in"
    in_mm, in_inches = (_USUAL, _USUAL_INCHES) if plain else (_USUAL_BOX, _USUAL_BOX_INCHES)
    usual = in_inches[at] * INCH if inches else Fraction(in_mm[at])
    room = site.positions.distance(whole(axis, -1), whole(axis, 1))
    if room is not None and usual > room / 2 > 0:
        usual = display.rounded(room / 2)
    words = ("long", "wide", "thick") if plain else ("wide", "deep", "high")
    return f"{site.shown(usual)} {words[at]}"


def _report_sizes(site: Site, part: DeclaredPart, boxes: Mapping[str, Box]) -> None:
    seats = site.seats(part.name)
    if any(finding.code in _CAUSES for finding in site.findings):
        return
    for axis, dimension in zip(part.axes, PART_DIMENSIONS, strict=True):
        sizes = {boxes[seat.name].extent(axis) for seat in seats}
        if min(sizes) <= 0:
            words = [fact.reason.words for fact in site.positions.chain(*both(seats[0].name, axis))]
            site.findings.append(
                Diagnostic(
                    "size-not-positive",
                    Severity.ERROR,
                    f"{part.name}: the {dimension} comes to {site.shown(min(sizes))}, but a size "
                    "must be more than nothing",
                    part.span,
                    rule="H26",
                    figures={dimension: min(sizes)},
                    hints=(Hint(f"it is worked out so: {'; '.join(dict.fromkeys(words))}"),),
                )
            )
        if len(sizes) > 1 and not is_ripped(site, part, axis):
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
