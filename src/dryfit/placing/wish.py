"""Order wishes with their names resolved."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.diagnostics import Span


@dataclass(frozen=True, slots=True)
class WishEnd:
    """One side of an order wish: a verb (finish, glue up, cut, sand or None) and a subject."""

    verb: str | None
    subject: str | None


@dataclass(frozen=True, slots=True)
class Wish:
    """``A before B`` as written, its names resolved to parts or stages."""

    first: WishEnd
    then: WishEnd
    span: Span
