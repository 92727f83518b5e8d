"""Rows of holes for shelf pins on a part: of each only the first and the last are measured.

They are bored through one template, so that between the two a figure says how many at what pitch.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.text import Say, Text, joined
from dryfit.joinery.feature import Feature
from dryfit.kinds.roles import PIN_HOLE

_FEW = 4
"""Holes below which a row is measured one by one."""


@dataclass(frozen=True, slots=True)
class HoleRow:
    """Holes at one pitch along a part: their middles, mm from R, in order."""

    places: tuple[Fraction, ...]

    @property
    def pitch(self) -> Fraction:
        """From one middle to the next, mm."""
        return self.places[1] - self.places[0]


def hole_rows(features: Iterable[Feature]) -> tuple[HoleRow, ...]:
    """Return the rows along a part, those that stand beside one another once, from R on."""
    places = sorted({_middle(each) for each in features if each.role == PIN_HOLE})
    rows: list[list[Fraction]] = []
    for at in places:
        last = rows[-1] if rows else []
        if last and (len(last) == 1 or at - last[-1] == last[1] - last[0]):
            last.append(at)
        else:
            rows.append([at])
    return tuple(HoleRow(tuple(row)) for row in rows if len(row) >= _FEW)


def rows_told(features: Iterable[Feature], say: Say) -> tuple[Text, ...]:
    """Return ``Pin holes: 5 from 413.5 to 541.5, one each 32; 16 from ...``, or nothing."""
    rows = [
        (
            f"{len(row.places)} from ",
            say.setting(row.places[0]),
            " to ",
            say.setting(row.places[-1]),
            ", one each ",
            say.setting(row.pitch),
        )
        for row in hole_rows(features)
    ]
    return (("Pin holes in each row: ", *joined(rows, "; ")),) if rows else ()


def within_rows(features: Iterable[Feature]) -> frozenset[Fraction]:
    """Return the middles that need no figure: all of each row but the first and the last."""
    return frozenset(at for row in hole_rows(features) for at in row.places[1:-1])


def is_within(feature: Feature, inner: frozenset[Fraction]) -> bool:
    """Return whether a hole is one of those between the first and the last."""
    return feature.role == PIN_HOLE and _middle(feature) in inner


def _middle(hole: Feature) -> Fraction:
    return (hole.along[0] + hole.along[1]) / 2
