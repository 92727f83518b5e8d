"""What was measured, done and spoiled, as written."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.diagnostics import Span
from dryfit.notes.tree.gluing import GlueItem
from dryfit.notes.tree.references import Reference
from dryfit.notes.tree.sums import Sum


@dataclass(frozen=True, slots=True)
class MeasuredLine:
    """``measured post.thickness = 29.6``, ``measured bay width = 624.1, 624.4``.

    One of these says what was measured: `part` with `dimension` (a part, a copy, an opening, an
    instance), `value`, `timber` with its `nominal` thickness, or `phrase` (``base length``, a
    measurement of the piece; canonical).
    """

    part: Reference | None
    dimension: str | None
    value: str | None
    timber: str | None
    nominal: Sum | None
    phrase: str | None
    amounts: tuple[Sum, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class DeedDone:
    """``3 of post / end lap``: an operation's id as written, and of how many copies."""

    count: int | None
    operation: str
    span: Span


@dataclass(frozen=True, slots=True)
class DoneLine:
    """``done: end frame 1 / glue up, on 2026-12-05 at 14:10``; `moment` as (date, clock)."""

    deeds: tuple[DeedDone, ...]
    moment: tuple[str, str | None] | None
    span: Span


@dataclass(frozen=True, slots=True)
class SpoiledLine:
    """``spoiled: 1 long rail``: copies that must be made again."""

    items: tuple[GlueItem, ...]
    span: Span
