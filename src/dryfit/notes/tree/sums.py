"""Sums as written: numbers, names and signs; they are evaluated in `piece`."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.quantities import Quantity


@dataclass(frozen=True, slots=True)
class Number:
    """A number as written.  ``quantity`` is None while no unit was written: a bare number is a
    factor beside ``*`` and ``/`` and a measure in the file's unit elsewhere; `value` is then the
    bare number, otherwise the number before its unit was applied.
    """

    value: Fraction
    quantity: Quantity | None
    span: Span


@dataclass(frozen=True, slots=True)
class ValueName:
    """A value's name (``overhang``), canonical."""

    name: str
    span: Span


@dataclass(frozen=True, slots=True)
class PartSize:
    """``leg.width``, ``leg's width``, ``width of leg``: length, width or thickness of a part.

    Of an opening, and of an instance of a pattern: width, depth or height.
    """

    part: str
    dimension: str
    span: Span


@dataclass(frozen=True, slots=True)
class OverallSize:
    """``overall width`` or bare ``width``, ``depth``, ``height``."""

    dimension: str
    span: Span


@dataclass(frozen=True, slots=True)
class Operation:
    """``left sign right`` with sign one of ``+ - * /``; `span` covers the whole sum."""

    sign: str
    left: Sum
    right: Sum
    span: Span


@dataclass(frozen=True, slots=True)
class LeftOut:
    """``?``: a size that is left to be worked out."""

    span: Span


Sum = LeftOut | Number | ValueName | PartSize | OverallSize | Operation
