"""TRADE B18: a cleat across a solid board that sticks out of it once the board has shrunk."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.checks.finding import finding
from dryfit.checks.regions import solid_parts
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.frame import LENGTH, THICKNESS, WIDTH
from dryfit.joinery.cleats import is_cleat, longest_cleat
from dryfit.joinery.screws import BROAD
from dryfit.placing.model import Copy, Model, Part
from dryfit.placing.tenon_lengths import rounded_down


def check_cleats(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for a cleat, that it is longer than the board across which it lies will be.

    What is called a cleat or batten and is joined to that one board only; a rail may well show.
    Findings: cleat-too-long.
    """
    pieces = {copy.name: (part, copy) for part in model.parts for copy in part.copies}
    mates: dict[str, set[str]] = {}
    for joint in model.joints:
        for one, other in ((joint.guest, joint.host), (joint.host, joint.guest)):
            mates.setdefault(one, set()).add(other)
    for part in solid_parts(model):
        for copy in part.copies:
            on = mates.get(copy.name, set())
            if len(on) != 1:
                continue
            board, of_board = pieces[next(iter(on))]
            if _lies_across(part, copy, board, of_board):
                yield from _too_long(model, part, board)
                break


def _lies_across(part: Part, copy: Copy, board: Part, of_board: Copy) -> bool:
    if (
        not is_cleat(part.name)
        or "sheet" in {part.stock, board.stock}
        or board.width <= BROAD
        or part.made
    ):
        return False
    axis = copy.frame.axes[LENGTH][0]
    if axis != of_board.frame.axes[WIDTH][0] or part.width * 3 > board.length:
        return False
    normal = of_board.frame.axes[THICKNESS][0]
    low, high = of_board.box.low[axis], of_board.box.high[axis]
    touches = {copy.box.low[normal], copy.box.high[normal]} & {
        of_board.box.low[normal],
        of_board.box.high[normal],
    }
    return bool(touches) and low <= copy.box.low[axis] and copy.box.high[axis] <= high


def _too_long(model: Model, part: Part, board: Part) -> Iterator[Diagnostic]:
    longest = longest_cleat(board.width, board.moving)
    if part.length <= longest:
        return
    display = model.display
    yield finding(
        "H75",
        "cleat-too-long",
        Severity.WARNING,
        f"{part.name}: {display.shown(part.length)} long across the {board.name}, which is "
        f"{display.shown(board.width)} wide: its ends stick out once that has shrunk",
        part.spans[0] if part.spans else None,
        figures={"length": part.length, "longest": longest},
        remedy=f"make it {display.shown(rounded_down(longest, display))} long or less",
    )
