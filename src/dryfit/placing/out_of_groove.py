"""TRADE H74: a solid panel that needs so much room to swell that it does not reach its grooves."""

from __future__ import annotations

from fractions import Fraction

from dryfit.piece.declared import Contact, DeclaredPart
from dryfit.placing.not_fitting import Wrong, not_fitting
from dryfit.placing.site import Site

_IN = Fraction(6)
"""How much should stand in a groove when it is made, mm: what it loses, and half of the groove;
ours."""


def tell_if_out(
    site: Site, part: DeclaredPart, contact: Contact, gap: Fraction, depth: Fraction
) -> None:
    """Tell that a gap is no smaller than the groove, or rabbet, is deep.  Finding: panel-comes-out.

    Only wood that swells across its grain asks for such gaps.
    """
    if gap < depth or part.stock == "sheet":
        return
    display = site.declared.display
    deeper = Fraction(-(-(gap + _IN) // 1))
    not_fitting(
        site,
        contact,
        "panel-comes-out",
        Wrong(
            f"{part.name}: its wood needs a gap of {display.with_unit(gap, fitted=True)} in each "
            f"groove to swell, and the groove is {display.with_unit(depth, fitted=True)} deep: it "
            "does not reach in",
            f"make it {display.shown(deeper, fitted=True)} deep, or take a quartersawn panel, or "
            "several boards with tongues between them",
            {"gap": gap, "depth": depth},
            "H74",
        ),
    )
