"""Openings: the faces of a space that has a name are the facing faces of what it lies between.

On an axis two hosts bound it that stand to either side: by their place words, or by where they lie
once that is known.  A board square to the axis that has no counterpart, such as a back, bounds one
side alone.  What nothing bounds runs from the outermost to the outermost face of the hosts that
bound the rest.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import partial

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.piece.declared import (
    PIECE_DIMENSIONS,
    PLACE_SIDE,
    DeclaredPart,
    Opening,
)
from dryfit.placing.measured_openings import measured_in, say_measured
from dryfit.placing.positions import Face, Reason
from dryfit.placing.seats import Seat
from dryfit.placing.site import SIDE_WORDS, Site, both, part_words

ZERO = Fraction(0)
DEPTH = 1
_WAYS = ("from side to side", "from front to back", "in height")


@dataclass(frozen=True, slots=True)
class Walls:
    """The hosts at the low and the high side of an opening on an axis; both may be empty."""

    low: tuple[Seat, ...]
    high: tuple[Seat, ...]

    def all(self) -> tuple[Seat, ...]:
        """Return the hosts of both sides."""
        return (*self.low, *self.high)

    def overlap(self) -> bool:
        """Return whether a host stands at both sides, as the middle ones of a row do."""
        return bool(set(self.low) & set(self.high))


@dataclass(frozen=True, slots=True)
class Bound:
    """The face where an opening begins or ends, and those it was the outermost or innermost of."""

    face: Face
    rivals: tuple[Face, ...] = ()


def state_openings(site: Site, openings: Sequence[Opening]) -> None:
    """Queue, for every opening and axis, where it begins and ends."""
    unclear: set[str] = set()
    for opening in openings:
        for axis in range(3):
            site.pending.append(partial(_say_bounds, site, opening, axis, unclear))


def lies_between_in_order(site: Site, part: DeclaredPart) -> bool:
    """Assume that an opening between a part and another lies in the order of their names.

    Only where both lie across one axis and their places hang on what stands in the opening, so
    that nothing else tells.
    """
    news = False
    for opening in site.declared.openings:
        hosts = hosts_of(site, opening)
        axes = {site.part(host.part).axes[2] for host in hosts}
        if len(hosts) != 2 or len(axes) != 1 or part.name not in {host.part for host in hosts}:
            continue
        (axis,) = axes
        if walls_on(site, opening, axis) is None:
            low, high = Bound(Face(hosts[0].name, axis, 1)), Bound(Face(hosts[1].name, axis, -1))
            if _say_from_to(site, opening, (low, high), assumed=True):
                _list_in_order(site, opening, hosts, axis)
                news = True
    return news


def _list_in_order(site: Site, opening: Opening, hosts: Sequence[Seat], axis: int) -> None:
    low, high = (
        f"{host.name} at its {SIDE_WORDS[axis, side]}"
        for host, side in zip(hosts, (-1, 1), strict=True)
    )
    site.assume_line(f"{opening.name} lies between {low} and {high}", opening.span, None)


def hosts_of(site: Site, opening: Opening) -> tuple[Seat, ...]:
    """Return the copies that an opening lies between."""
    return tuple(dict.fromkeys(seat for host in opening.between for seat in site.named(host)))


def _say_bounds(site: Site, opening: Opening, axis: int, unclear: set[str]) -> bool:
    walls = None if opening.name in unclear else walls_on(site, opening, axis)
    if walls is not None and walls.overlap():
        unclear.add(opening.name)
    if opening.name in unclear:
        return True  # where its hosts lie is known, so it will not get clearer: it is told at last
    bounds = bounds_on(site, opening, axis, walls)
    if bounds is None:
        return False
    _say_from_to(site, opening, bounds, assumed=False)
    return True


def _say_from_to(site: Site, opening: Opening, bounds: tuple[Bound, ...], *, assumed: bool) -> bool:
    news = False
    axis = bounds[0].face.axis
    measured = measured_in(site, opening, axis)
    if measured is not None:
        news |= say_measured(site, opening, axis, measured)
        bounds = bounds[:1]
    for bound, own in zip(bounds, both(opening.name, axis), strict=False):
        face = bound.face
        begins = "begins" if own.side < 0 else "ends"
        words = f"{opening.name} {begins} at the {SIDE_WORDS[axis, face.side]} of {face.owner}"
        label = f"{opening.name} at {face.owner}"
        also = _weighed(site, bound)
        reason = Reason("opening", label, words, opening.span, assumed=assumed, also=also)
        news |= site.positions.add(face, own, ZERO, reason)
    return news


def size_as_drawn(site: Site, opening: Opening, axis: int) -> Fraction | None:
    """Return how far apart what bounds an opening stands, whatever was measured; mm."""
    bounds = bounds_on(site, opening, axis, walls_on(site, opening, axis))
    if bounds is None:
        return site.positions.distance(*both(opening.name, axis))
    return site.positions.distance(bounds[0].face, bounds[1].face)


def wider_than_drawn(site: Site) -> dict[tuple[str, int], Fraction]:
    """Return how much wider an opening was measured than drawn, by each of its walls and axis."""
    found: dict[tuple[str, int], Fraction] = {}
    for opening in site.declared.openings:
        for axis in range(3):
            measured, drawn = measured_in(site, opening, axis), size_as_drawn(site, opening, axis)
            if measured is not None and drawn is not None and measured.taken > drawn:
                for host in hosts_of(site, opening):
                    found[host.name, axis] = measured.taken - drawn
    return found


def _weighed(site: Site, bound: Bound) -> tuple[Span, ...]:
    # That a face is the outermost rests on where the others lie from it.
    facts = (fact for rival in bound.rivals for fact in site.positions.chain(bound.face, rival))
    spans = (span for fact in facts for span in (fact.reason.span, *fact.reason.also))
    return tuple(dict.fromkeys(span for span in spans if span is not None))


def bounds_on(
    site: Site, opening: Opening, axis: int, walls: Walls | None
) -> tuple[Bound, Bound] | None:
    """Return where an opening begins and ends on an axis, or None while unknown."""
    if walls is None:
        return None
    if walls.low and walls.high:
        low, high = _innermost(site, walls.low, axis, 1), _innermost(site, walls.high, axis, -1)
    else:
        low, high = _open_bounds(site, opening, axis)
    return (low, high) if low and high else None


def walls_on(site: Site, opening: Opening, axis: int) -> Walls | None:
    """Return what stands to either side on an axis, both or neither, or None while unknown.

    What runs along the axis bounds nothing there.  Posts to the left and right leave the space
    between them free from front to back, so that nothing bounds it twice.
    """
    hosts = [host for host in hosts_of(site, opening) if not _runs_along(site, host, axis)]
    if axis == DEPTH:
        around = _around(site, opening, axis)
        if around is None:
            return None
        hosts = [host for host in hosts if host not in around]
    lows, highs = ([host for host in hosts if _side(host, axis) == side] for side in (-1, 1))
    others = [host for host in hosts if not _side(host, axis)]
    if lows and highs and not any(site.part(host.part).axes[2] == axis for host in others):
        return Walls(tuple(lows), tuple(highs))
    sided = {host.part for host in (*lows, *highs)}
    if len(sided) == 1 and len({host.part for host in others} - sided) == 1:
        # Of two parts one stands at a named side: the other is the one across.
        return Walls(tuple(lows or others), tuple(highs or others))
    return _walls_by_position(site, hosts, axis)


def _side(host: Seat, axis: int) -> int:
    # A top or a bottom that an opening lies between is that of the opening.
    own_axis, side = PLACE_SIDE.get(host.part.rsplit(" ", 1)[-1], (axis, 0))
    return host.side(axis) or (side if own_axis == axis else 0)


def _runs_along(site: Site, host: Seat, axis: int) -> bool:
    part = site.part(host.part)
    return part.instance is None and part.axes[0] == axis


def _walls_by_position(site: Site, hosts: Sequence[Seat], axis: int) -> Walls | None:
    spans: list[tuple[Fraction, Fraction, Seat]] = []
    for host in hosts:
        low, high = (site.positions.at(face) for face in both(host.name, axis))
        if low is None or high is None:
            return None
        spans.append((low, high, host))
    if not spans:
        return Walls((), ())
    first_end = min(high for _, high, _ in spans)
    last_start = max(low for low, _, _ in spans)
    if first_end >= last_start:
        return Walls((), ())
    low_walls = tuple(host for _, high, host in spans if high < last_start)
    high_walls = tuple(host for low, _, host in spans if low > first_end)
    return Walls(low_walls, high_walls)


def _innermost(site: Site, walls: Sequence[Seat], axis: int, side: int) -> Bound | None:
    faces = [Face(host.name, axis, side) for host in walls]
    if len({host.part for host in walls}) == 1 and len({host.side(axis) for host in walls}) == 1:
        return Bound(faces[0])
    return _furthest(site, faces, side)


def _furthest(site: Site, faces: Sequence[Face], side: int) -> Bound | None:
    known = [(side * at, face) for face in faces if (at := site.positions.at(face)) is not None]
    if not known or len(known) < len(faces):
        return None
    reach = max(at for at, _ in known)
    return Bound(next(face for at, face in known if at == reach), tuple(faces))


def _around(site: Site, opening: Opening, axis: int) -> list[Seat] | None:
    # What bounds an opening on the other two axes.
    around: list[Seat] = []
    for other in (each for each in range(3) if each != axis):
        walls = walls_on(site, opening, other)
        if walls is None:
            return None
        around += walls.all()
    return around


def _open_bounds(site: Site, opening: Opening, axis: int) -> tuple[Bound | None, Bound | None]:
    # Front and back of a case: its sides and shelves end there, and a back board closes one.
    around = _around(site, opening, axis)
    if around is None:
        return None, None
    low, high = (
        _furthest(site, [Face(host.name, axis, side) for host in around], side) for side in (-1, 1)
    )
    if low is None or high is None:
        return None, None
    for host in hosts_of(site, opening):
        if host in around or site.part(host.part).axes[2] != axis:
            continue
        inner = _inner_face(site, host, axis, (low.face, high.face))
        if inner is None:
            return None, None
        low, high = (Bound(inner), high) if inner.side == 1 else (low, Bound(inner))
    return low, high


def _inner_face(site: Site, host: Seat, axis: int, ends: tuple[Face, Face]) -> Face | None:
    places = [site.positions.at(face) for face in (*both(host.name, axis), *ends)]
    low, high, start, end = places
    if low is None or high is None or start is None or end is None:
        return None
    return Face(host.name, axis, 1 if low + high < start + end else -1)


def report_openings(site: Site) -> None:
    """Report each opening that is nothing, or that nothing bounds though its hosts are placed.

    Findings: opening-unbounded, opening-unclear, opening-empty.
    """
    for opening in site.declared.openings:
        hosts = hosts_of(site, opening)
        parts = dict.fromkeys(host.part for host in hosts)
        placed = all(site.is_placed(site.part(name)) for name in parts)
        finding = (_not_bounded(site, opening, hosts) if placed else None) or _empty(site, opening)
        if finding is not None:
            site.findings.append(finding)


def _not_bounded(site: Site, opening: Opening, hosts: Sequence[Seat]) -> Diagnostic | None:
    walls = [walls_on(site, opening, axis) for axis in range(3)]
    names = part_words(site, hosts) or "its hosts"
    for axis, found in enumerate(walls):
        if found is not None and found.overlap():
            rows = sorted({host.name for host in found.all()})
            return Diagnostic(
                "opening-unclear",
                Severity.ERROR,
                f"{opening.name}: between which of the {names} does it lie {_WAYS[axis]}?",
                opening.span,
                rule="H27",
                hints=(
                    Hint(f"name the two that it lies between, such as `{' and '.join(rows[:2])}`"),
                ),
            )
    if not any(found is not None and found.low for found in walls):
        return Diagnostic(
            "opening-unbounded",
            Severity.ERROR,
            f"{opening.name}: no two of the {names} stand apart with room between them",
            opening.span,
            rule="H28",
            hints=(Hint("name the parts to either side: left and right, or below and above"),),
        )
    return None


def _empty(site: Site, opening: Opening) -> Diagnostic | None:
    for axis, dimension in enumerate(PIECE_DIMENSIONS):
        faces = both(opening.name, axis)
        room = site.positions.distance(*faces)
        if room is not None and room <= 0:
            bounds = bounds_on(site, opening, axis, walls_on(site, opening, axis))
            ends = (bounds[0].face, bounds[1].face) if bounds else faces
            low, high = (face.owner for face in ends)
            return Diagnostic(
                "opening-empty",
                Severity.ERROR,
                f"{opening.name}: between {low} and {high} there is no room, {site.shown(room)}",
                opening.span,
                rule="H26",
                figures={dimension: room},
                hints=(Hint("check the places and sizes of the parts that it lies between"),),
            )
    return None
