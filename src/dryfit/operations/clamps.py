"""Clamps of a glue-up: how many, how long, and whether the shop has them (TRADE A9.4, C3)."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from math import ceil

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.plan.operation import ClampRow
from dryfit.shop.shop import Shop

Held = tuple[tuple[str, int], ...]
Found = tuple[Diagnostic, ...]


def opening(dimension: Fraction, shop: Shop) -> Fraction:
    """Return how far a bar must open for a dimension in mm: cauls and play added (TRADE C3.2)."""
    return dimension + 2 * shop.clamping["caul"] + shop.clamping["screw_play"]


def pad_opening(thickness: Fraction, shop: Shop) -> Fraction:
    """Return how far a C-clamp must open over a joint with a pad on either side."""
    return thickness + 2 * shop.clamping["pad"]


def along(length: Fraction, spacing: Fraction, shop: Shop) -> int:
    """Return how many clamps stand along a glued edge, no two farther apart than a spacing, mm."""
    return 1 + max(1, ceil((length - 2 * shop.clamping["panel_end"]) / spacing))


def for_panel(
    stage: str, width: Fraction, length: Fraction, span: Span | None, shop: Shop
) -> tuple[ClampRow, Held, Found]:
    """Return the clamps of an edge-glued panel, the clamps of the shop taken, and findings."""
    count = along(length, shop.clamping["panel_spacing"], shop)
    row = ClampRow(opening(width, shop), count, "across the staves, over and under in turn")
    held, found = taken(stage, (row,), span, shop)
    return row, held, found


def taken(
    stage: str, rows: Iterable[ClampRow], span: Span | None, shop: Shop
) -> tuple[Held, Found]:
    """Return which clamps of the shop a stage holds: the smallest that open far enough.

    Findings: ``clamp-too-short`` (H58) when no clamp opens far enough, ``too-few-clamps`` (H59)
    when there are fewer than the stage needs at once.
    """
    left = {clamp.name: clamp.count for clamp in shop.clamps}
    rows = tuple(rows)
    lent: dict[ClampRow, Held] = {}
    # Longest first: a short row leaves the long bars to those that need them.
    for row in sorted(set(rows), key=lambda each: (-each.length, each.at)):
        lent[row] = _lent(row, rows.count(row) * row.count, left, shop)
    held: dict[str, int] = {}
    findings: list[Diagnostic] = []
    for row in dict.fromkeys(rows):
        for name, count in lent[row]:
            held[name] = held.get(name, 0) + count
        missing = rows.count(row) * row.count - sum(count for _, count in lent[row])
        if all(clamp.opens < row.length for clamp in shop.clamps):
            findings.append(_too_short(stage, row, span, shop))
        elif missing:
            findings.append(_too_few(stage, row, missing, span, shop))
    return tuple(held.items()), tuple(findings)


def _lent(row: ClampRow, count: int, left: dict[str, int], shop: Shop) -> Held:
    """Return the smallest clamps still `left` that open far enough, and take them out of it."""
    found: list[tuple[str, int]] = []
    for clamp in sorted(shop.clamps, key=lambda each: each.opens):
        here = min(count, left[clamp.name])
        if clamp.opens >= row.length and here:
            found.append((clamp.name, here))
            left[clamp.name] -= here
            count -= here
    return tuple(found)


_LONGER = (
    "pipe clamps, a rope windlass or wedges against stops on a board do it too: list what you have "
    'in the shop file under [clamp], such as `pipe = {{ opens = "{} mm", count = 4 }}`'
)


def _too_short(stage: str, row: ClampRow, span: Span | None, shop: Shop) -> Diagnostic:
    longest = max((clamp.opens for clamp in shop.clamps), default=Fraction(0))
    return Diagnostic(
        "clamp-too-short",
        Severity.ERROR,
        f"{stage}: no clamp of the shop opens far enough {row.at}",
        span,
        rule="H58",
        figures={"needed": row.length, "longest": longest},
        hints=(Hint(_LONGER.format(ceil(row.length / 100) * 100)),),
    )


def _too_few(stage: str, row: ClampRow, missing: int, span: Span | None, shop: Shop) -> Diagnostic:
    short = sum(clamp.count for clamp in shop.clamps if clamp.opens < row.length)
    remedy = f"buy or borrow {missing} more that open as far"
    if short:
        remedy += f" (the other {short} open too little)"
    remedy += "; or glue up fewer joints at a time, or drive wedges against stops on a board"
    return Diagnostic(
        "too-few-clamps",
        Severity.WARNING,
        f"{stage}: {row.count} clamps are needed {row.at}, {row.count - missing} are there",
        span,
        rule="H59",
        figures={"opening": row.length},
        hints=(Hint(f"{remedy}; what you have belongs into the shop file"),),
    )
