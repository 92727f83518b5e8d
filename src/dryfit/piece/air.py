"""What the notes say of moisture, from all their lines."""

from __future__ import annotations

from fractions import Fraction

from dryfit.notes.tree import MoistLine, Notes, PlaceLine, ShopAirLine, StandsAtLine
from dryfit.piece.declared import AirWords
from dryfit.piece.statements import first_line, lines_of

_ROOM = 20
"""Degrees Celsius of a shop or a room whose line says only how damp it is: common practice."""


_DAMP = ("heated", "unheated", "damp", "outdoors")
"""Words of a line about the place that tell how damp it is there."""


def air_of(notes: Notes) -> AirWords:
    """Return what is said of the wood, the shop's air and the place where the piece will stand."""
    wood, shop = first_line(notes, MoistLine), first_line(notes, ShopAirLine)
    figures = first_line(notes, StandsAtLine)
    place = next((each for each in lines_of(notes, PlaceLine) if each.kind in _DAMP), None)
    between = (figures.low, figures.high) if figures else None
    humid = figures is not None and figures.kind == "humidity"
    span = figures.span if figures else place.span if place else None
    warm = Fraction(_ROOM)
    return AirWords(
        wood=wood.percent if wood else None,
        wood_span=wood.span if wood else None,
        shop=(warm if shop.celsius is None else shop.celsius, shop.humidity) if shop else None,
        shop_span=shop.span if shop else None,
        place=place.kind if place else None,
        humidity=between if humid else None,
        celsius=(figures.celsius if figures and figures.celsius is not None else warm),
        moisture=None if humid else between,
        place_span=span,
    )
