"""A size or a place as worked out from a measurement of the piece, in words and lengths."""

from __future__ import annotations

from fractions import Fraction

from dryfit.quantities import Display

Worked = tuple[str | Fraction, ...]
"""Words with exact lengths in mm between them: ``("bay width - ", 4)``."""


def worked_out(name: str, share: Fraction, clearance: Fraction) -> Worked:
    """Return ``(bay width - 7) / 2``: `share` times the measurement `name` less `clearance`."""
    whole = clearance / share
    less: Worked = (name,)
    if whole:
        less = (f"{name} {'-' if whole > 0 else '+'} ", abs(whole))
    if share == 1:
        return less
    bracketed: Worked = ("(", *less, ")") if whole else less
    if share.numerator == 1:
        return (*bracketed, f" / {share.denominator}")
    return (f"{share} x ", *bracketed)


def in_words(worked: Worked, display: Display) -> str:
    """Return it as one string, lengths with their unit: ``(bay width - 7 mm) / 2``."""
    return "".join(
        each if isinstance(each, str) else display.with_unit(each, fitted=True) for each in worked
    )
