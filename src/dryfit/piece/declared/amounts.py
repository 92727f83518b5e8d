"""Amounts as the lines say them, and the words of directions and places."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.piece.declared.hosts import Host

PART_DIMENSIONS = ("length", "width", "thickness")
"""The sizes of a part: along its grain, across it, and the smallest."""

PIECE_DIMENSIONS = ("width", "depth", "height")
"""The sizes of the piece, of an opening and of an instance of a pattern: along x, y and z."""

RUN_AXIS = {"across": 0, "front to back": 1, "upright": 2, "up and down": 2}
"""The axis of each direction word: x left to right, y front to back, z up."""

PLACE_SIDE = {
    "left": (0, -1),
    "right": (0, 1),
    "front": (1, -1),
    "back": (1, 1),
    "bottom": (2, -1),
    "top": (2, 1),
}
"""Each place word as axis and side."""


@dataclass(frozen=True, slots=True)
class Behind:
    """What a sum refers to: figures by name (``overall.width``), and the lines of its values."""

    figures: tuple[str, ...] = ()
    spans: tuple[Span, ...] = ()


NOTHING_BEHIND = Behind()
"""What a plain number refers to."""


@dataclass(frozen=True, slots=True)
class Lean:
    """A term of a sum that is known only once the piece is placed: ``2 * bay.width``.

    `subject` is a part, an opening or an instance of a pattern; `dimension` length, width,
    thickness, depth or height.
    """

    factor: Fraction
    subject: str
    dimension: str


@dataclass(frozen=True, slots=True)
class Amount:
    """A length in mm as a line says it: `value`, and what it leans on besides."""

    value: Fraction
    span: Span
    behind: Behind = NOTHING_BEHIND
    leans: tuple[Lean, ...] = ()

    @property
    def known(self) -> Fraction | None:
        """The length, or None where it leans on what the placed piece will say."""
        return None if self.leans else self.value

    def times(self, factor: Fraction) -> Amount:
        """Return the amount so many times."""
        leans = tuple(
            Lean(each.factor * factor, each.subject, each.dimension) for each in self.leans
        )
        return Amount(self.value * factor, self.span, self.behind, leans if factor else ())


@dataclass(frozen=True, slots=True)
class PlacedAmount:
    """``5 from bottom``: an amount from a place word.

    `place` is also ``end``: the ends along the part.  `of` names the parts from whose side it is
    measured (``30 from top of legs``); with `beyond` it runs outwards from them (``1 beyond
    posts``).  `leans` are the terms of the sum that only the placed piece knows.
    """

    value: Fraction
    place: str
    span: Span
    of: tuple[Host, ...] = ()
    beyond: bool = False
    leans: tuple[Lean, ...] = ()
