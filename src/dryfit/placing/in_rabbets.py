"""Glass, mirrors and the like in the rabbet round an opening, not in the opening itself.

A pane as large as the light that it covers would fall through it: where the notes cut a rabbet
round the inside of all that an opening lies between, a bought thing in that opening lies in the
rabbet, against its floor (common practice), unless its line says where it lies or how large it is.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from dryfit.piece.declared import PLACE_SIDE, Amount, DeclaredFeature, DeclaredPart
from dryfit.placing.gaps import gap_at, is_sized, sides_said
from dryfit.placing.positions import Face, Reason
from dryfit.placing.seats import Seat
from dryfit.placing.site import Site
from dryfit.quantities.units import INCH

_INNER = frozenset({"inner", "inside"})
_PLAY = {"mm": Fraction(3, 2), "in": INCH / 16}
"""The room at each side of a pane in its rabbet: 1 to 2 mm, common practice."""


@dataclass(frozen=True, slots=True)
class _Rabbet:
    """A rabbet round an opening: how far it reaches beyond it, how deep, cut into which side."""

    width: Fraction
    depth: Fraction
    axis: int
    side: int
    owner: str


def lies_in_rabbet(site: Site, part: DeclaredPart, opening: str, seats: tuple[Seat, ...]) -> bool:
    """Tell that a bought thing lies in the rabbet round its opening; return whether there is one.

    That it does is listed as taken for granted, with its play where the line says none.
    """
    rabbet = _rabbet_round(site, opening) if part.bought is not None and len(seats) == 1 else None
    if rabbet is None:
        return False
    flat = [axis for axis in range(3) if axis != rabbet.axis]
    seat = seats[0]
    if any(is_sized(part, axis) for axis in flat):
        return False
    if any(sides_said(site, part, seat, axis) for axis in range(3)):
        return False
    words = f"{seat.name} lies in the rabbet of {rabbet.owner}"
    reason = Reason("assumed", f"rabbet of {rabbet.owner}", words, part.span, assumed=True)
    for axis in flat:
        for side in (-1, 1):
            _state_edge(site, part, (Face(opening, axis, side), seat), rabbet, reason)
    floor = Face(opening, rabbet.axis, rabbet.side)
    near = Face(seat.name, rabbet.axis, -rabbet.side)
    site.state(floor, near, rabbet.depth, reason, sign=-rabbet.side)
    _list(site, part, opening, rabbet)
    return True


def _state_edge(
    site: Site, part: DeclaredPart, faces: tuple[Face, Seat], rabbet: _Rabbet, reason: Reason
) -> None:
    opening, seat = faces
    written = gap_at(part, opening.axis, opening.side, general=True)
    own = Face(seat.name, opening.axis, opening.side)
    site.state(opening, own, _beyond(site, rabbet, written), reason, sign=opening.side)


def _beyond(site: Site, rabbet: _Rabbet, gap: Amount | None) -> Amount | Fraction:
    """Return how far a pane reaches beyond its opening: the rabbet less its play."""
    if gap is None:
        return rabbet.width - _PLAY[site.declared.display.unit]
    if not gap.leans:
        return rabbet.width - gap.value
    less = gap.times(Fraction(-1))
    return Amount(rabbet.width + less.value, less.span, less.behind, less.leans)


def _list(site: Site, part: DeclaredPart, opening: str, rabbet: _Rabbet) -> None:
    lies = f"the {part.written} {'lies' if part.count == 1 else 'lie'}"
    where = f"{lies} in the rabbet of {rabbet.owner} round {opening}, not in {opening} itself"
    if part.gaps:
        site.assume(f"{where}; its gap is that in the rabbet", part.span, None)
        return
    play = site.shown(_PLAY[site.declared.display.unit])
    site.assume(f"{where}, with {play} of play at each side", part.span, f"gap {play}")


def _rabbet_round(site: Site, opening: str) -> _Rabbet | None:
    space = site.opening(opening)
    around = {host.part for host in space.between} if space else set()
    for feature in site.declared.features:
        covered = {name for host in feature.parts for name in _members(site, host.part)}
        if feature.kind == "rabbet" and around and around <= covered:
            for rabbet in _rabbets(feature):
                return rabbet
    return None


def _rabbets(feature: DeclaredFeature) -> Iterator[_Rabbet]:
    sizes = dict(feature.sizes)
    for surface in feature.surfaces:
        sides = [PLACE_SIDE[word] for word in surface.words if word in PLACE_SIDE]
        if len(sides) == 1 and _INNER & set(surface.words) and {"width", "depth"} <= sizes.keys():
            owner = feature.parts[0].part
            yield _Rabbet(sizes["width"], sizes["depth"], *sides[0], owner)


def _members(site: Site, name: str, seen: frozenset[str] = frozenset()) -> frozenset[str]:
    """Return a part itself, or the parts that go into a glue-up."""
    names: set[str] = set()
    for stage in site.declared.stages:
        if stage.name == name and name not in seen:
            for item in stage.items:
                names |= _members(site, item.name, seen | {name})
    return frozenset(names or {name})
