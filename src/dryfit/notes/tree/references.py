"""What names and measures things: references, sizes, distances, moments."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.diagnostics import Span
from dryfit.notes.tree.sums import Sum


@dataclass(frozen=True, slots=True)
class Reference:
    """A part, assembly, opening or copy by name: ``front left leg`` is leg at front and left.

    ``boxes' box sides`` names the part box side inside the instances box: `of` is then ``box``.
    """

    name: str
    places: tuple[str, ...]
    span: Span
    of: str | None = None


@dataclass(frozen=True, slots=True)
class SizeWord:
    """One size: ``22 thick`` has dimension thickness, a bare ``45`` in ``45 x 30`` has None.

    Dimensions: length, width, thickness, height, depth; of cuts also diameter, radius and angle.
    ``? x 274 x 18`` leaves the length out, to be worked out: its amount is a `LeftOut`.
    """

    amount: Sum
    dimension: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class Offset:
    """``120 from left`` / ``5 from bottom`` / ``15 below the top`` / ``30 from top of legs``.

    `of` names the parts from whose side it is measured; without them `on_host` tells whether it is
    measured on the part that it lies on (``15 below the top``) or on the whole piece.  `beyond`
    tells that it runs outwards from that side (``20 above the top of rails``).
    """

    amount: Sum
    place: str
    span: Span
    of: tuple[Reference, ...] = ()
    on_host: bool = False
    beyond: bool = False


@dataclass(frozen=True, slots=True)
class StageName:
    """``glue up base`` as the object of before, after or cut after."""

    assembly: str
    span: Span
