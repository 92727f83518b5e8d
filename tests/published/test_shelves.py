"""Shelves that sag (TRADE H39) against a general beam solver, and against worked figures.

The solver of sympy integrates any loads on any supports as singularity functions, in exact
rationals: so that its answer and ours can be equal, not only near.
"""

from fractions import Fraction
from importlib import import_module

import pytest

from dryfit.wood.bending import NEWTONS, sag, stiffness
from dryfit.wood.weight import stiffness_of

# sympy has no types of its own that a check of ours could follow in reasonable time.
SYMPY = import_module("sympy")
BEAM = import_module("sympy.physics.continuum_mechanics.beam").Beam


def solved(load: Fraction, span: Fraction, bending_stiffness: Fraction) -> Fraction:
    """The sag in the middle of a beam on two supports by the general solver."""
    length, even, whole = (
        SYMPY.Rational(each.numerator, each.denominator) for each in (span, load, bending_stiffness)
    )
    left, right = SYMPY.symbols("left right")
    beam = BEAM(length, whole, 1)
    beam.apply_load(left, 0, -1)
    beam.apply_load(right, length, -1)
    beam.apply_load(-even, 0, 0, end=length)
    beam.bc_deflection = [(0, 0), (length, 0)]
    beam.solve_for_reaction_loads(left, right)
    middle = -beam.deflection().subs(beam.variable, length / 2)
    return Fraction(int(middle.p), int(middle.q))


SHELVES = [
    # timber, deep, thick, span, N/mm, mm, source
    # TRADE after H86, tests [calc]: 900 x 280 under 0.30 N/mm.
    ("sugar maple", 280, 19, 900, Fraction("0.30"), "1.27"),
    ("birch ply", 280, 18, 900, Fraction("0.30"), "2.09"),
    ("MDF", 280, 18, 900, Fraction("0.30"), "5.89"),
    # REFERENCE 3, another general solver (read): 30 kg/m on 900 x 300 x 19 of 12.5 GPa.
    ("red oak", 300, 19, 900, 30 * NEWTONS / 1000, "1.1726"),
]


@pytest.mark.parametrize(("timber", "deep", "thick", "span", "load", "sags"), SHELVES)
def test_a_shelf_sags_as_a_general_beam_solver_has_it(
    timber: str, deep: int, thick: int, span: int, load: Fraction, sags: str
) -> None:
    modulus = stiffness_of(timber)
    assert modulus is not None
    whole = stiffness(Fraction(deep), Fraction(thick), modulus)
    ours = sag(load, Fraction(span), whole)
    assert ours == solved(load, Fraction(span), whole)
    digits = len(sags.partition(".")[2])
    assert f"{float(ours):.{digits}f}" == sags


def test_a_lip_adds_its_own_stiffness() -> None:
    # TRADE after H86: "Glued solid lip 40 x 18 on the front edge: add I of lip."  By hand: 12.6 GPa
    # x (280 x 19^3 + 18 x 40^3) / 12 = 3.226e9 N mm2, and 0.30 x 900^4 x 5 / 384 over it: 0.794.
    modulus = Fraction("12.6")
    shelf = stiffness(Fraction(280), Fraction(19), modulus)
    lip = stiffness(Fraction(18), Fraction(40), modulus)
    both = sag(Fraction("0.30"), Fraction(900), shelf + lip)
    assert both == solved(Fraction("0.30"), Fraction(900), shelf + lip)
    assert f"{float(both):.3f}" == "0.794"
