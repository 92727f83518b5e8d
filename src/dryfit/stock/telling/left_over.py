"""What is left of a board and worth keeping, as a line for the next notes.

The line may be short of the wood by a rounding, never long of it: sizes are cut off to the step of
the units, warp goes up to it.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.piece.declared import Avoid, Have
from dryfit.quantities import Display
from dryfit.quantities.units import INCH
from dryfit.stock.laid_out import BoardLayout, Fallen, LaidOut, Reach
from dryfit.stock.telling.have_lines import have_line
from dryfit.wood.warp import Warp, bow_left, cup_left, twist_left


def left_over(laid: LaidOut, display: Display) -> tuple[str, ...]:
    """Return a ``have`` line for each piece that is worth keeping, in the order of the boards."""
    return tuple(
        have_line(what_is_left(layout, fallen, display), display)
        for layout in laid.layouts
        for fallen in layout.fallen
        if fallen.keep
    )


def what_is_left(layout: BoardLayout, fallen: Fallen, display: Display) -> Have:
    """Return one such piece as wood on hand, with all that the line of its board says of it."""
    line = layout.board.line
    along, across = layout.worth(fallen)
    long, wide = along[1] - along[0], across[1] - across[0]
    cup, bow, twist = _warp(layout, long, wide, display)
    zones = (_avoid(bad, along, across, display) for bad in line.avoid)
    return replace(
        line,
        count=1,
        kind=line.kind if line.kind in {"sheet", "strip"} else "offcut",
        offcut=line.kind != "strip",
        sizes=(
            _down(long, display),
            _down(wide, display),
            _down(line.sizes[2] or Fraction(0), display),
        ),
        cup=cup,
        bow=bow,
        twist=twist,
        other_width=None,
        waney=0,
        avoid=tuple(zone for zone in zones if zone is not None),
        price=None,
        at_most=None,
    )


def _warp(
    layout: BoardLayout, long: Fraction, wide: Fraction, display: Display
) -> tuple[Fraction, Fraction, Fraction]:
    line = layout.board.line
    if not line.warped:
        return Fraction(0), Fraction(0), Fraction(0)
    board = Warp(*layout.board.sizes, cup=line.cup, bow=line.bow, twist=line.twist)
    cup, bow, twist = cup_left(board, wide), bow_left(board, long), twist_left(board, long, wide)
    return _up(cup, display), _up(bow, display), _up(twist, display)


def _avoid(bad: Avoid, along: Reach, across: Reach, display: Display) -> Avoid | None:
    """Return the bad place counted from the piece's own end and edge, None where it has none."""
    first, second = _within(bad.along, along, display), _within(bad.across, across, display)
    missed = (bad.along is not None and first is None) or (
        bad.across is not None and second is None
    )
    return None if missed else replace(bad, along=first, across=second)


def _within(zone: Reach | None, reach: Reach, display: Display) -> Reach | None:
    if zone is None or zone[0] >= reach[1] or reach[0] >= zone[1]:
        return None
    begin = _down(max(zone[0], reach[0]) - reach[0], display)
    return begin, _up(min(zone[1], reach[1]) - reach[0], display)


def _up(length: Fraction, display: Display) -> Fraction:
    return -_down(-length, display)


def _down(length: Fraction, display: Display) -> Fraction:
    """Return a length in mm cut off to the step at which sizes are shown."""
    step = display.step * (INCH if display.unit == "in" else 1)
    return length // step * step
