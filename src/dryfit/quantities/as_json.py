"""The contract's JSON objects for exact quantities."""

from __future__ import annotations

from fractions import Fraction

from dryfit.quantities.display import Display, exact


def length_json(
    length: Fraction, display: Display, *, fitted: bool = False
) -> dict[str, str | float]:
    """Return a length in mm as ``{"exact": "9017/20 mm", "mm": 450.85, "shown": '17 3/4"'}``.

    `fitted` shows it to the step of settings of fitted joints.
    """
    return length_object(length, display.plain.shown(length, fitted=fitted))


def length_object(length: Fraction, shown: str) -> dict[str, str | float]:
    """Return a length in mm with the text that stands for it on paper."""
    return {"exact": exact(length), "mm": float(length), "shown": shown}


def angle_json(degrees: Fraction) -> dict[str, str | float]:
    """Return an angle as ``{"exact": "15/2 deg", "deg": 7.5, "shown": "7.5"}``."""
    shown = str(degrees) if degrees.denominator == 1 else f"{float(degrees):.1f}"
    return {"exact": exact(degrees, "deg"), "deg": float(degrees), "shown": shown}
