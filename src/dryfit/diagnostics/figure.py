"""A derived figure with its name and its reason, and what was taken for granted."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from dryfit.diagnostics.source import Span


@dataclass(frozen=True, slots=True)
class Term:
    """One term of the sum behind a length: what it is, and its signed amount in mm.

    A term that counts more or less than once is so many `times` a size with the label `of`.
    """

    label: str
    amount: Fraction
    times: Fraction = Fraction(1)
    of: str = ""


@dataclass(frozen=True, slots=True)
class Figure:
    """A figure that the tool worked out, or took from a line.

    `name` is the name that the notes would use for it (``post.length``, ``apron.tenon length``);
    `value` is in mm; `words` says the reason as a clause without a full stop; the `terms`, where
    given, add up to `value` exactly; `inputs` names the figures that it was worked out from;
    `spans` are the places in the notes that it rests on; `source` the trade rule or book.
    `assumed` marks what no line says and nothing forces.
    """

    name: str
    value: Fraction
    rule: str
    words: str
    terms: tuple[Term, ...] = ()
    inputs: tuple[str, ...] = ()
    spans: tuple[Span, ...] = ()
    source: str | None = None
    assumed: bool = False


@dataclass(frozen=True, slots=True)
class Assumption:
    """What the tool took for granted, as a sentence, and the line that says it outright.

    Whoever wants it otherwise writes that line with another word or figure; written as it is, it
    changes nothing.  `instead` is a whole line of the notes, or a line of the shop file; None
    where the language has no word for it.
    """

    text: str
    span: Span | None
    instead: str | None
    belongs_to: Literal["notes", "shop file"] = "notes"
