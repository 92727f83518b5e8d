"""Glue-ups, finishes and wishes, as declared."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.diagnostics import Span
from dryfit.piece.declared.cuts import SurfaceWords
from dryfit.piece.declared.hosts import Host


@dataclass(frozen=True, slots=True)
class StageItem:
    """``2 legs`` in a glue-up; count None takes all; a part or an earlier assembly."""

    count: int | None
    name: str
    places: tuple[str, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Stage:
    """``glue up 2 side frames: 2 legs, 1 short rail, cure 1 h``; cure in minutes.

    `glue`, `pressed` and `people` are those of `notes.tree.GlueLine`.
    """

    name: str
    count: int
    items: tuple[StageItem, ...]
    cure: int | None
    name_span: Span
    span: Span
    glue: str | None = None
    pressed: str | None = None
    people: int | None = None


@dataclass(frozen=True, slots=True)
class Coats:
    """``milk paint 2 coats, 2 h apart``: one product; `apart` in minutes."""

    product: str
    coats: int | None
    apart: int | None
    span: Span


@dataclass(frozen=True, slots=True)
class FinishWords:
    """Which products go in turn on which surfaces of which parts or assemblies.

    Without `subjects` it is for all that nothing else names; without `surfaces` for all surfaces.
    """

    subjects: tuple[Host, ...]
    surfaces: tuple[SurfaceWords, ...]
    products: tuple[Coats, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class BareWords:
    """``no finish on runners`` (`verb` no) and ``mask cleat seats`` (`verb` mask)."""

    verb: str
    subjects: tuple[Host, ...]
    surfaces: tuple[SurfaceWords, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class WishAct:
    """One deed of a wish: verb or None, and the part or stage it is done to."""

    verb: str | None
    subject: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class WishWords:
    """``finish seat before glue up base``."""

    first: WishAct
    then: WishAct
    span: Span
