"""Whether a machine takes a piece of wood, and if not, why not in words (TRADE A6).

All limits are the shop's; one that a shop file does not give is no limit.  Each function returns
None where the machine takes the piece, otherwise the reason as a detail of the work by hand: an
empty one where the shop has no such machine, which is no news to the maker.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from dryfit.operations import through_cuts
from dryfit.plan.operation import Detail
from dryfit.shop.shop import Shop

JOINTER, PLANER, BAND_SAW = "jointer", "planer", "band saw"
NO_MACHINE: Detail = ()


@dataclass(frozen=True, slots=True)
class Piece:
    """Length, width and thickness in mm of what is fed, as it is then."""

    length: Fraction
    width: Fraction
    thickness: Fraction


Bound = tuple[str, Fraction, str]
"""What is measured, how much of it the piece has, and the shop's name of the limit."""


def why_not_jointed_face(piece: Piece, shop: Shop) -> Detail | None:
    """Return why the jointer cannot make the face true."""
    least = (
        ("length", piece.length, "shortest"),
        ("width", piece.width, "narrowest"),
        ("thickness", piece.thickness, "thinnest"),
    )
    return _why_not(JOINTER, least, (("width", piece.width, "widest"),), shop)


def why_not_jointed_edge(piece: Piece, shop: Shop) -> Detail | None:
    """Return why the jointer cannot joint an edge, on which the piece stands by its width."""
    least = (
        ("length", piece.length, "shortest_edge"),
        ("width", piece.width, "narrowest_edge"),
        ("thickness", piece.thickness, "thinnest"),
    )
    return _why_not(JOINTER, least, (), shop)


def why_not_planed(piece: Piece, to: Fraction, shop: Shop) -> Detail | None:
    """Return why the planer cannot bring the piece to the thickness `to`."""
    least = (
        ("length", piece.length, "shortest"),
        ("width", piece.width, "narrowest"),
        ("thickness", to, "thinnest"),
    )
    most = (("width", piece.width, "widest"), ("thickness", piece.thickness, "thickest"))
    return _why_not(PLANER, least, most, shop)


def why_not_at_band_saw(piece: Piece, shop: Shop) -> Detail | None:
    """Return why the band saw cannot rip the piece along a line."""
    least = (("length", piece.length, "shortest"),)
    return _why_not(BAND_SAW, least, (("thickness", piece.thickness, "depth"),), shop)


def why_not_ripped(piece: Piece, to: Fraction, shop: Shop) -> Detail | None:
    """Return why the table saw cannot rip the piece right through to the width `to`.

    A piece that is shorter along the fence than it is wide from it turns at the blade, and is
    thrown (TRADE A6.2).
    """
    if not through_cuts.has_saw(through_cuts.RIP_FENCE, shop):
        return NO_MACHINE
    deepest = through_cuts.deepest(through_cuts.RIP_FENCE, shop)
    if piece.thickness > deepest:
        return _over(through_cuts.SAW, "thickness", piece.thickness, deepest)
    least: tuple[Bound, ...] = (
        ("length", piece.length, "shortest_rip"),
        ("width", to, "narrowest_rip"),
        ("thickness", piece.thickness, "thinnest"),
    )
    why = _why_not(through_cuts.SAW, least, (("width", to, "widest_rip"),), shop)
    if why is None and piece.length < to:
        return (
            "By hand: ",
            piece.length,
            " along the saw's fence is less than ",
            to,
            " from it, so the work would turn at the blade and be thrown",
        )
    return why


def grooved_at_saw(piece: Piece, fences: Iterable[Fraction], shop: Shop) -> bool:
    """Return whether the table saw grooves the piece with its fence at these places.

    Nothing is severed, so the fence may stand as near as it likes.
    """
    if through_cuts.SAW not in shop.stations:
        return False
    least = (
        ("length", piece.length, "shortest_rip"),
        ("thickness", piece.thickness, "thinnest"),
    )
    most = (("width", max(fences), "widest_rip"),)
    return _why_not(through_cuts.SAW, least, most, shop) is None


def why_not_on_sled(piece: Piece, accessory: str, shop: Shop) -> Detail | None:
    """Return why the table saw cannot cut the piece off on an accessory that slides."""
    if not through_cuts.has_saw(accessory, shop):
        return NO_MACHINE
    deepest = through_cuts.deepest(accessory, shop)
    if piece.thickness > deepest:
        return _over(through_cuts.SAW, "thickness", piece.thickness, deepest)
    least = (
        ("length", piece.length, "shortest_crosscut"),
        ("thickness", piece.thickness, "thinnest"),
    )
    return _why_not(through_cuts.SAW, least, (), shop)


def why_not_at_mitre_saw(piece: Piece, shop: Shop) -> Detail | None:
    """Return why the mitre saw cannot cut the piece off."""
    least = (("length", piece.length, "shortest"),)
    most = (("width", piece.width, "widest"), ("thickness", piece.thickness, "depth"))
    return _why_not("mitre saw", least, most, shop)


def routed_along(piece: Piece, station: str, shop: Shop) -> bool:
    """Return whether the router table takes the piece along its fence."""
    least = (("length", piece.length, "shortest"), ("thickness", piece.thickness, "thinnest"))
    return _why_not(station, least, (), shop) is None


def under_spindle(length: Fraction, middle: Fraction, station: str, shop: Shop) -> bool:
    """Return whether a mortiser or a drill press holds a part so long and reaches its cut.

    `middle` is how far the middle of the cut lies from the surface at the fence.
    """
    least = (("length", length, "shortest"),)
    return _why_not(station, least, (("width", middle, "throat"),), shop) is None


def _why_not(
    station: str, least: Iterable[Bound], most: Iterable[Bound], shop: Shop
) -> Detail | None:
    machine = shop.stations.get(station)
    if machine is None:
        return NO_MACHINE
    limits: Mapping[str, Fraction] = machine.limits
    for word, size, limit in least:
        if limit in limits and size < limits[limit]:
            return _under(station, word, size, limits[limit])
    for word, size, limit in most:
        if limit in limits and size > limits[limit]:
            return _over(station, word, size, limits[limit])
    return None


def _under(station: str, word: str, size: Fraction, limit: Fraction) -> Detail:
    return (f"By hand: the {station} takes a {word} of ", limit, " or more, and this is ", size)


def _over(station: str, word: str, size: Fraction, limit: Fraction) -> Detail:
    return (f"By hand: the {station} takes a {word} of ", limit, " or less, and this is ", size)
