"""How many passes a cut takes, and where each stands (TRADE 0.6, 0.7)."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.operations.cut import Cut
from dryfit.plan.setting import Pass


def number_of_passes(width: Fraction, cutter: Fraction, overlap: Fraction) -> int:
    """Return the passes that clear a width; the cutter is no wider than the cut.

    One where they are equal, two where the cut is at most twice the cutter: the two limits meet
    then, and a pass between them would cut nothing (TRADE 0.6).
    """
    if cutter > width:
        raise ValueError(f"a cutter {cutter} wide cannot cut {width}")
    if cutter == width:
        return 1
    if width <= 2 * cutter:
        return 2
    steps = (width - cutter) / (cutter - overlap)
    return 1 - (-steps.numerator // steps.denominator)


def cleared_from_stop(count: int) -> tuple[Pass, ...]:
    """Return the passes of an end lap: the shoulder at the stop, the rest freehand to the end."""
    return (Pass(), *(Pass(between=True) for _ in range(count - 1)))


def between_limits(width: Fraction, cutter: Fraction, count: int) -> tuple[Pass, ...]:
    """Return the passes of a slot: at the stop, with the spacer at the stop, then between.

    The spacer is as thick as the slot is wider than the cutter, and moves the cut towards the end
    that touches the stop (TRADE 0.7).
    """
    if count == 1:
        return (Pass(),)
    return (Pass(), Pass(spacer=width - cutter), *(Pass(between=True) for _ in range(count - 2)))


def fence_positions(
    start: Fraction, width: Fraction, cutter: Fraction, count: int
) -> list[Fraction]:
    """Return the near faces of the passes along a fence, from the fence outwards.

    The first and the last are the exact limits; the others divide the rest evenly.
    """
    if count == 1:
        return [start]
    step = (width - cutter) / (count - 1)
    return [start + step * turn for turn in range(count)]


def checked_when_whole(cuts: tuple[Cut, ...]) -> tuple[Cut, ...]:
    """Return the cuts of one feature; only those of the last turn, which make it whole, checked."""
    last = max(cut.turn for cut in cuts)
    return tuple(cut if cut.turn == last else replace(cut, check=None) for cut in cuts)
