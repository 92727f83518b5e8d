"""What hangs on a wall (M20): by what it hangs, and what its fixings must carry."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.piece.declared.site import OnWall, PlaceWords
from dryfit.placing.hanging import UNTOLD, hangs_by, wall_load
from dryfit.placing.model import Model
from dryfit.wood.weight import weight_words

_LIGHT = Fraction(10)
"""More kg than this are not hung on a board alone, whatever its plug promises (common practice)."""


def check_hanging(model: Model, place: PlaceWords) -> Iterator[Diagnostic]:
    """Yield what the wall asks of a piece that hangs on it.

    Findings: hangs-by-nothing, board-wall, wall-load.
    """
    wall = place.wall
    if wall is None or not wall.hangs:
        return
    if not hangs_by(model):
        yield finding(
            "M20",
            "hangs-by-nothing",
            Severity.WARNING,
            "it hangs on the wall, and the notes name nothing by which it does",
            wall.span,
            figures={},
            remedy="add a rail or a cleat under its top, such as `1 hanging rail, ...`, or what "
            "is bought: `bought 2 wall hangers`",
        )
    yield from _load(model, wall)


def _load(model: Model, wall: OnWall) -> Iterator[Diagnostic]:
    load = wall_load(model)
    unit = model.display.unit
    total, each = (weight_words(value, unit) for value in (load.total, load.each))
    if load.guessed:
        total += f" (its wood taken as heavy as {UNTOLD}: no table tells it)"
    if wall.wall == "board" and load.total > _LIGHT:
        yield finding(
            "M20",
            "board-wall",
            Severity.WARNING,
            f"filled it weighs {total}, too much for a wall of boards with nothing behind them",
            wall.span,
            figures={},
            remedy="find the studs and write `hangs on a stud wall`, or fix a rail across them "
            "first that carries it",
        )
        return
    yield finding(
        "M20",
        "wall-load",
        Severity.NOTICE,
        f"filled it weighs {total}: take {load.fixings} fixings, each good for {each} in your wall",
        wall.span,
        figures={},
        remedy="what a fixing carries is told by its maker for each kind of wall; where you are "
        "not sure of the wall, ask a licensed builder",
    )
