"""What is left of a board and worth keeping, as a line for the next notes.

The line may be short of the wood by a rounding, never long of it: sizes are cut off to the step of
the units, warp goes up to it.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.piece.declared import Avoid, Have
from dryfit.quantities import Display
from dryfit.quantities.units import INCH
from dryfit.stock.laid_out import BoardLayout, Fallen, LaidOut, Reach
from dryfit.wood.warp import Warp, bow_left, cup_left, twist_left


def left_over(laid: LaidOut, display: Display) -> tuple[str, ...]:
    """Return a ``have`` line for each piece that is worth keeping, in the order of the boards."""
    return tuple(
        have_line(layout, fallen, display)
        for layout in laid.layouts
        for fallen in layout.fallen
        if fallen.keep
    )


def have_line(layout: BoardLayout, fallen: Fallen, display: Display) -> str:
    """Return the line of one such piece, with all that the line of its board says of it."""
    line = layout.board.line
    kind = line.kind if line.kind in {"sheet", "strip"} else "offcut"
    of = f" of {line.timber}" if line.timber else ""
    sizes = (
        fallen.along[1] - fallen.along[0],
        fallen.across[1] - fallen.across[0],
        line.sizes[2] or Fraction(0),
    )
    shown = " x ".join(display.shown(_down(size, display)) for size in sizes)
    marks = [f"have 1 {kind}{of}", shown, *_state(line), *_warp(layout, fallen, display)]
    if line.measured is not None:
        marks.append(f"measures {display.shown(line.measured, fitted=True)}")
    marks += [_avoid(bad, fallen, display) for bad in line.avoid if _reaches(bad, fallen)]
    return ", ".join(marks)


def _state(line: Have) -> Iterator[str]:
    if line.rough:
        yield "rough"
    elif line.hit_and_miss:
        yield "hit and miss"


def _warp(layout: BoardLayout, fallen: Fallen, display: Display) -> Iterator[str]:
    line = layout.board.line
    if not line.warped:
        return
    board = Warp(*layout.board.sizes, cup=line.cup, bow=line.bow, twist=line.twist)
    long, wide = fallen.along[1] - fallen.along[0], fallen.across[1] - fallen.across[0]
    left = (
        ("cup", cup_left(board, wide)),
        ("bow", bow_left(board, long)),
        ("twist", twist_left(board, long, wide)),
    )
    for name, much in left:
        if much:
            yield f"{name} {display.shown(-_down(-much, display))}"


def _reaches(bad: Avoid, fallen: Fallen) -> bool:
    return all(
        zone is None or (zone[0] < reach[1] and reach[0] < zone[1])
        for zone, reach in ((bad.along, fallen.along), (bad.across, fallen.across))
    )


def _avoid(bad: Avoid, fallen: Fallen, display: Display) -> str:
    """Return the zone counted from the piece's own end and edge."""
    said = []
    if bad.along is not None:
        said.append(_range(bad.along, fallen.along, display))
    if bad.across is not None:
        said.append(f"{_range(bad.across, fallen.across, display)} from the edge")
    return f"{bad.why} {', '.join(said)}"


def _range(zone: Reach, reach: Reach, display: Display) -> str:
    begin = _down(max(zone[0], reach[0]) - reach[0], display)
    end = -_down(-(min(zone[1], reach[1]) - reach[0]), display)
    return f"{display.shown(begin)} to {display.shown(end)}"


def _down(length: Fraction, display: Display) -> Fraction:
    """Return a length in mm cut off to the step at which sizes are shown."""
    step = display.step * (INCH if display.unit == "in" else 1)
    return length // step * step
