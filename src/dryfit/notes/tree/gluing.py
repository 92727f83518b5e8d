"""Glue-ups and finishes, as written."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.diagnostics import Span
from dryfit.notes.tree.cuts import Surface
from dryfit.notes.tree.references import Reference
from dryfit.notes.tree.sums import Sum


@dataclass(frozen=True, slots=True)
class GlueItem:
    """``2 legs`` or ``side frames`` in a glue-up; count None means all of them."""

    count: int | None
    reference: Reference
    span: Span


@dataclass(frozen=True, slots=True)
class GlueLine:
    """``glue up 2 side frames: 2 legs, 1 short rail, with polyurethane, two people, cure 1 h``.

    `cure` and `glue` None: the shop's.  `pressed` is clamps (None), weights, tape or pins; `people`
    how many it takes.
    """

    count: int
    name: str
    written: str
    name_span: Span
    items: tuple[GlueItem, ...]
    cure: Sum | None
    span: Span
    glue: str | None = None
    pressed: str | None = None
    people: int | None = None


@dataclass(frozen=True, slots=True)
class CoatWords:
    """``milk paint 2 coats, 2 h apart``: one product of a finish."""

    product: str
    coats: int | None
    apart: Sum | None
    span: Span


@dataclass(frozen=True, slots=True)
class FinishLine:
    """``finish inside of boxes with primer 1 coat then milk paint 2 coats, 2 h apart``.

    Without `subjects` it is the finish of all that no other line names.  `surfaces` are the
    surfaces that it is for, all when empty.
    """

    subjects: tuple[Reference, ...]
    surfaces: tuple[Surface, ...]
    products: tuple[CoatWords, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class BareLine:
    """``no finish on runners`` and ``mask cleat seats``: what stays bare; `verb` is no or mask."""

    verb: str
    subjects: tuple[Reference, ...]
    surfaces: tuple[Surface, ...]
    span: Span
