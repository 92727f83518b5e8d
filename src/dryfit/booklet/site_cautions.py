"""Which cautions belong to the place, the wall and the users of a piece."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.diagnostics import Findings
from dryfit.placing.model import Model

_TIPS = frozenset({"may-tip", "drawers-tip"})


def site_words(model: Model, findings: Findings) -> Iterator[str]:
    """Yield the words under which the table of cautions keeps them."""
    place = model.place
    if any(row.code in _TIPS for row in findings):
        yield "site:tip"
    if place is None:
        return
    if place.ways or place.room is not None:
        yield "site:carry"
    if place.wall is not None:
        yield "site:wall"
        yield from () if place.wall.hangs else ("site:tip",)
    if place.children is not None:
        yield "site:children"
