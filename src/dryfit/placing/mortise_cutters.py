"""The cutters of the shop that make mortises, of which a usual tenon takes its thickness."""

from __future__ import annotations

from fractions import Fraction

from dryfit.placing.site import Site


def mortise_cutters(site: Site) -> tuple[Fraction, ...]:
    """Return the chisels in the maker's own units, which a line can name; else all of them, mm."""
    widths = tuple(cutter.narrowest for cutter in site.shop.cutters_at("mortiser"))
    own = tuple(width for width in widths if not site.declared.display.moved(width, fitted=True))
    return own or widths
