"""What the notes say of moisture: what the wood holds now, the shop's air, where it will stand."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span

Between = tuple[Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class AirWords:
    """Moisture of wood in percent, relative humidity in percent, temperature in degrees Celsius.

    `wood` is what the wood holds now; `shop` temperature and humidity of the shop, to which it has
    come.  `place` is the kind of place where the piece will stand (heated, unheated, damp,
    outdoors), `humidity` what the air there comes to at `celsius`, `moisture` what wood comes to.
    Each is None where no line says it; the spans are those of the lines.
    """

    wood: Fraction | None = None
    wood_span: Span | None = None
    shop: tuple[Fraction, Fraction] | None = None
    shop_span: Span | None = None
    place: str | None = None
    humidity: Between | None = None
    celsius: Fraction | None = None
    moisture: Between | None = None
    place_span: Span | None = None
