"""The place (M18): walls, ceiling, skirting, floor out of level, and what is scribed on site."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.checks.skirting import check_skirting
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.passing import diagonal, root
from dryfit.piece.declared.site import PlaceWords, Room
from dryfit.placing.loads import carried
from dryfit.placing.model import Model
from dryfit.placing.scribing import scribed

_TIGHT = Fraction(4)
"""Less room than this between two walls and a piece is none: walls are never straight (common
practice: 2 mm a side at least)."""

_WORDS = ("wide", "deep", "high")
_SCRIBE = "`scribe {30} at left and right`"


def check_room(model: Model, place: PlaceWords) -> Iterator[Diagnostic]:
    """Yield what the place asks of the piece.

    Findings: place-too-small, place-too-tight, place-kept, scribe-too-short, cannot-stand-up,
    skirting-in-the-way, floor-out-of-level.
    """
    room = place.room
    if room is None:
        return
    if room.width is not None:
        yield from _between_walls(model, place, room, 0, room.width)
    if room.depth is not None:
        yield from _between_walls(model, place, room, 1, room.depth)
    if room.ceiling is not None:
        yield from _under_ceiling(model, place, room, room.ceiling)
    if room.skirting is not None and not (place.wall and place.wall.hangs):
        yield from check_skirting(model, place, room, room.skirting)
    if room.out:
        yield from _floor(model, place, room)


def _between_walls(
    model: Model, place: PlaceWords, room: Room, axis: int, span: tuple[Fraction, Fraction]
) -> Iterator[Diagnostic]:
    shown, size, (least, most) = model.display.with_unit, model.overall[axis], span
    cut = scribed(place, axis)
    word = _WORDS[axis]
    figures = {"size": size, "place": least, "scribe": cut}
    if size - cut > least:
        kept = f", with {shown(cut)} to cut away on site" if cut else ""
        yield finding(
            "M18",
            "place-too-small",
            Severity.ERROR,
            f"the piece is {shown(size)} {word}{kept}, and the place {shown(least)} at its least: "
            f"{shown(size - cut - least)} too much",
            room.span,
            figures=figures,
            remedy=_smaller(model, least, cut, axis),
        )
    elif cut and axis == 0 and room.skirting and most - 2 * room.skirting[1] <= size < most:
        # It is scribed to the skirtings, which reach further in than the walls.
        yield finding(
            "M18",
            "place-kept",
            Severity.NOTICE,
            f"scribed to the skirtings, the piece leaves up to {shown(most - size)} open above "
            "them, at both sides together",
            room.span,
            figures={**figures, "open": most - size},
            remedy="cover that with a strip on site, or leave it",
        )
    elif cut and size < most:
        yield finding(
            "M18",
            "scribe-too-short",
            Severity.WARNING,
            f"the place is up to {shown(most)} {word}, the piece {shown(size)} with all that is "
            f"scribed: {shown(most - size)} stays open",
            room.span,
            figures={**figures, "open": most - size},
            remedy=f"make the piece at least {shown(most)} {word}, and scribe the more",
        )
    elif axis == 0 and not cut and least - size < _TIGHT:
        yield finding(
            "M18",
            "place-too-tight",
            Severity.WARNING,
            f"between the walls is {shown(least - size)} of room: no wall is straight, and the "
            "piece has to go in",
            room.span,
            figures=figures,
            remedy=f"make it at most {shown(least - 2 * _TIGHT)} wide, or let strips stand at its "
            f"sides that are cut to the wall: {model.display.examples(_SCRIBE)}",
        )
    else:
        yield _kept(room, model, axis, (least - size, most - size), cut)


def _smaller(model: Model, least: Fraction, cut: Fraction, axis: int) -> str:
    shown, word = model.display.with_unit, _WORDS[axis]
    most = least + cut if cut else least - 2 * _TIGHT
    if most <= 0:
        return "is that the place? write its clear size"
    scribe = f", or scribe it: {model.display.examples(_SCRIBE)}" if axis == 0 and not cut else ""
    return f"make it at most {shown(most)} {word}{scribe}"


def _kept(
    room: Room, model: Model, axis: int, left: tuple[Fraction, Fraction], cut: Fraction
) -> Diagnostic:
    shown = model.display.with_unit
    what = "is cut away on site" if cut else "stays free"
    low, high = sorted(abs(each) for each in left)
    amount = shown(low) if low == high else f"between {shown(low)} and {shown(high)}"
    return finding(
        "M18",
        "place-kept",
        Severity.NOTICE,
        f"the piece is {shown(model.overall[axis])} {_WORDS[axis]}: {amount} {what}"
        + (" at both sides together" if axis == 0 else ""),
        room.span,
        figures={"size": model.overall[axis], "least": low, "most": high},
        remedy="nothing to do: that is the margin",
    )


def _under_ceiling(
    model: Model, place: PlaceWords, room: Room, ceiling: tuple[Fraction, Fraction]
) -> Iterator[Diagnostic]:
    shown = model.display.with_unit
    up = place.wall.up if place.wall and place.wall.up is not None else Fraction(0)
    cut = scribed(place, 2)
    high = model.overall[2] + up
    raised = high + (room.out if not up else 0)
    if raised - cut > ceiling[0]:
        beyond = raised - cut - ceiling[0]
        level = f", {shown(raised)} once it is level" if raised > high else ""
        yield finding(
            "M18",
            "place-too-small",
            Severity.ERROR,
            f"the piece reaches {shown(high)} above the floor{level}, and the ceiling is at "
            f"{shown(ceiling[0])}: {shown(beyond)} too much",
            room.span,
            figures={"size": raised, "place": ceiling[0], "scribe": cut},
            remedy=f"make it {shown(beyond)} lower, and more for room to work in",
        )
        return
    if place.built is not None or up:
        return
    for load in carried(model):
        wide, deep, tall = load.size
        thin = min(wide, deep)
        if load.stands:
            continue
        least = ceiling[0] * ceiling[0] - thin * thin
        lower = root(least) - Fraction(1) if least > 0 else Fraction(0)
        yield finding(
            "M19",
            "cannot-stand-up",
            Severity.WARNING,
            f"{load.title}, {shown(tall)} high and {shown(thin)} deep, needs "
            f"{shown(diagonal(tall, thin))} to be tilted up, and the ceiling is at "
            f"{shown(ceiling[0])}",
            room.span,
            figures={"diagonal": diagonal(tall, thin), "ceiling": ceiling[0]},
            remedy=f"make it at most {shown(lower)} high on a base of its own, or glue it up where "
            "it stands: `built in place`",
        )


def _floor(model: Model, place: PlaceWords, room: Room) -> Iterator[Diagnostic]:
    """M18: where the floor is out of level the piece is levelled first, then scribed."""
    shown = model.display.with_unit
    bottom = next((each for each in place.scribes if each.side == "bottom"), None)
    if bottom is not None and bottom.amount < room.out:
        yield finding(
            "M18",
            "scribe-too-short",
            Severity.WARNING,
            f"the floor is {shown(room.out)} out, and only {shown(bottom.amount)} may be cut away "
            "at the bottom",
            bottom.span,
            figures={"out": room.out, "scribe": bottom.amount},
            remedy=f"leave {shown(room.out)} there at least",
        )
        return
    plinth = next((part.written.lower() for part in model.parts if "plinth" in part.name), None)
    how = (
        f"cut away at the bottom up to {shown(room.out)}, as the floor asks"
        if bottom is not None
        else f"set the {plinth or 'piece'} level with wedges, up to {shown(room.out)} at one side"
    )
    yield finding(
        "M18",
        "floor-out-of-level",
        Severity.NOTICE,
        f"the floor is {shown(room.out)} out of level: {how}",
        room.span,
        figures={"out": room.out},
        remedy="level first, then scribe to the walls and fix",
    )
