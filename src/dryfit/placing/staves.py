"""From how many boards a panel is glued, and how wide each is (TRADE A9.1)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.joinery.staves import Staves
from dryfit.piece.declared import DeclaredPart
from dryfit.placing.lines import with_words
from dryfit.placing.site import Site


def staves_of(site: Site, declared: DeclaredPart, width: Fraction) -> Staves | None:
    """Return the boards of a panel so wide, None for one board.

    They are as many as its line says; else as few as no wider than the shop's widest make it, in
    pairs where they are opened like a book.
    """
    if declared.staves is None:
        return None
    together = width + site.shop.allowances["panel_width"]
    if declared.staves:
        return Staves(declared.staves, together / declared.staves)
    count = max(2, -(-together // site.shop.allowances["widest_stave"]))
    if any(wish.kind == "bookmatched" for wish in declared.wood):
        count += count % 2
    _listed(site, declared, count)
    return Staves(count, together / count, fixed=False)


def _listed(site: Site, declared: DeclaredPart, count: int) -> None:
    wish = next(each for each in declared.wood if each.kind in {"boards", "free widths"})
    come = " as they come" if wish.kind == "free widths" else ""
    known = site.declared.stock or site.declared.yard
    site.assume_line(
        f"the {declared.name} is glued from {count} boards"
        + (", or from more where that saves wood" if known else ""),
        declared.span,
        with_words(wish.span, f"glued from {count} boards{come}"),
    )
