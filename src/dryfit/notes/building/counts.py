"""Counts: of parts, boards, staves, buttons and coats."""

from __future__ import annotations

from collections.abc import Iterable

from dryfit.diagnostics import Hint
from dryfit.notes.building.draft import Draft, Node, spelled, tokens
from dryfit.notes.mistake import Repair

MOST = 999


def checked_count(nodes: Iterable[Node], draft: Draft) -> int | None:
    """Return the count among the nodes, or None; a count of 0 or beyond `MOST` is an error."""
    found = tokens(nodes, "INT")
    if not found:
        return None
    value = spelled(found[0]).value
    assert value is not None
    count = int(value)
    span = draft.span(found[0])
    if count == 0:
        start = draft.line.whole()
        opening = draft.line.span(*draft.line.offsets(start)[:1] * 2)
        draft.error(
            "count-out-of-range",
            "a count of 0 makes nothing",
            span,
            Repair("to set the line aside, put # in front", opening, "# "),
        )
    elif count > MOST:
        draft.error(
            "count-out-of-range",
            f"a count can be {MOST} at most",
            span,
            Hint("is it a size? then a count and a name must stand before it"),
        )
    return count
