"""How far a board bends that is held at its ends: beams under an even load (TRADE H39).

Lengths in mm, loads in N for each mm, moduli of elasticity in GPa, stiffnesses E I in N mm2; exact.
"""

from __future__ import annotations

from fractions import Fraction

NEWTONS = Fraction(980665, 100000)
"""Newtons of a kilogram: standard gravity (from memory)."""

CREEP = Fraction(3, 2)
"""What wood has sagged by in the end, for each mm at once: TRADE H39, common practice."""

_IN_MPA = 1000


def stiffness(width: Fraction, thickness: Fraction, modulus: Fraction) -> Fraction:
    """Return E I of a rectangular board that bends through its thickness: E b t^3 / 12."""
    return modulus * _IN_MPA * width * thickness**3 / 12


def sag(load: Fraction, span: Fraction, bending_stiffness: Fraction) -> Fraction:
    """Return the sag at the middle of a beam that lies on two supports: 5 q L^4 / (384 E I).

    A formula of every textbook; a housing or a pin holds hardly more than that it lies there.
    """
    return 5 * load * span**4 / (384 * bending_stiffness)
