"""Which glue of the shop the notes mean: by its name, or by the word that tells it from others."""

from __future__ import annotations

from dryfit.shop.shop import Glue, Shop

_ALSO = {
    "pva": "white",
    "yellow": "white",
    "carpenter's": "white",
    "wood": "white",
    "pu": "polyurethane",
}
"""Other words for a kind of glue (common practice)."""


def usual_glue(shop: Shop, *, outdoors: bool) -> Glue:
    """Return the shop's usual glue; outdoors the quickest that lasts there, if it has one."""
    usual = shop.glues[shop.default_glue]
    lasting = [glue for glue in shop.glues.values() if glue.outdoors] if outdoors else []
    if lasting and not usual.outdoors:
        return min(lasting, key=lambda glue: glue.close_within)
    return usual


def glue_named(shop: Shop, name: str | None) -> Glue | None:
    """Return the shop's glue of that name, its usual one for None; None when it has no such glue.

    The word ``glue`` may be left out (``polyurethane``), and so may what no other glue of the shop
    is told by (``hide glue`` for ``liquid hide glue``).
    """
    if name is None:
        return shop.glues.get(shop.default_glue)
    wanted = _words(name)
    for exact in (glue for glue in shop.glues.values() if _words(glue.name) == wanted):
        return exact
    near = [glue for glue in shop.glues.values() if wanted and wanted <= _words(glue.name)]
    return near[0] if len(near) == 1 else None


def _words(name: str) -> frozenset[str]:
    words = name.lower().replace("-", " ").split()
    return frozenset(_ALSO.get(word, word) for word in words if word != "glue")
