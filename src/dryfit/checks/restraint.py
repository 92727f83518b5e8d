"""H72: solid wood that glue holds fast across its grain splits or bows (TRADE G8, G9)."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity, Span
from dryfit.geometry.frame import LENGTH
from dryfit.kinds.joints import overlaps_mate
from dryfit.placing.model import Copy, Joint, Model, Part

_WARNED = Fraction(75)
_FAILS = Fraction(125)
"""Solid wood glued across its grain over more than 75 mm may split, over 125 it will (G8)."""

_HOUSED = Fraction(250)
"""An end in a housing holds by end grain, which gives: only over 250 mm it may split (G8)."""

_ROW = Fraction(150)
_ROW_FAILS = Fraction(200)
"""A row of tenons, as in a board end, is never glued all along (G5); the figures are a guess of
ours, between what two tenons of a door take and the width of a board that splits.  Dowels in the
end of a rail are such a row: its end grain hardly holds between them (common practice)."""

_CLEATED_FAILS = Fraction(100)
_CLEATS = frozenset({"cleat", "runner", "ledger", "batten"})
"""A cleat or runner glued across a solid board splits it over 100 mm (G8)."""

_RIGID = "pocket screws"
"""They hold with or without glue, and stand in no slots."""

Piece = tuple[Part, Copy]


@dataclass(slots=True)
class _Held:
    """What holds one copy along one axis across its grain: from where to where, and by what."""

    part: Part
    axis: int
    low: Fraction
    high: Fraction
    mates: list[str] = field(default_factory=list)
    spans: list[Span] = field(default_factory=list)
    floats: bool = False
    housed: bool = False
    tenoned: bool = False

    def takes(self, low: Fraction, high: Fraction, mate: Part, joint: Joint, *, row: bool) -> None:
        """Widen what is held by one more patch; a `row` of tenons or dowels holds at points."""
        self.low, self.high = min(self.low, low), max(self.high, high)
        self.mates.append(mate.name)
        self.spans.append(joint.span)
        self.floats = self.floats or joint.kind == "groove"
        self.housed = self.housed or joint.kind in {"housing", "rabbet"}
        self.tenoned = self.tenoned or row


def check_restraint(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for a part and a line, what glue holds across the grain over too wide a way.

    Findings: glued-across-grain, panel-glued.
    """
    pieces = {copy.name: (part, copy) for part in model.parts for copy in part.copies}
    told: set[tuple[str, Span]] = set()
    for held in (*_by_mate(model, pieces), *_between_mates(model, pieces)):
        wide = held.high - held.low
        if wide <= _limits(held)[0] or (held.part.name, held.spans[0]) in told:
            continue
        told.add((held.part.name, held.spans[0]))
        yield _told(model, held, wide)


def _grain(piece: Piece) -> int | None:
    """Return the axis of the piece that a part's grain runs along; None for sheets."""
    part, copy = piece
    return copy.frame.axes[LENGTH][0] if part.stock == "solid" else None


def _glued(model: Model) -> Iterator[Joint]:
    """Yield what is glued but for laps and single tenons, whose width H07 and H09 hold down."""
    return (
        joint
        for joint in model.joints
        if (joint.glued or joint.kind == _RIGID) and not _looked_after(joint)
    )


def _looked_after(joint: Joint) -> bool:
    return overlaps_mate(joint.kind) or _tenons(joint) == 1


def _tenons(joint: Joint) -> int:
    """Return how many tenons a joint has, its own or loose ones, which hold in the same way."""
    if joint.kind == "loose tenon":
        return len(joint.loose_pieces)
    return joint.tenon.count if joint.tenon is not None else 0


def _is_row(joint: Joint, guest: Piece) -> bool:
    grain = _grain(guest)
    dowelled = (
        joint.kind in {"dowels", _RIGID} and grain is not None and joint.region.extent(grain) == 0
    )
    return dowelled or _tenons(joint) > 0


def _limits(held: _Held) -> tuple[Fraction, Fraction | None]:
    """Return from which way on it is a warning, and from which an error."""
    if held.housed:
        return _HOUSED, None
    if held.tenoned:
        return _ROW, _ROW_FAILS
    cleated = all(mate.rpartition(" ")[2] in _CLEATS for mate in held.mates)
    return _WARNED, _CLEATED_FAILS if cleated else _FAILS


def _by_mate(model: Model, pieces: dict[str, Piece]) -> Iterator[_Held]:
    """Yield each copy that one mate, which does not move that way, holds across the grain."""
    for joint in _glued(model):
        pair = (pieces[joint.guest], pieces[joint.host])
        for mover, mate in (pair, pair[::-1]):
            grain = _grain(mover)
            if grain is None:
                continue
            for axis in (each for each in range(3) if each != grain):
                if _grain(mate) not in {None, axis}:
                    continue
                low, high = _reach(joint, axis)
                held = _Held(mover[0], axis, low, high)
                held.takes(low, high, mate[0], joint, row=_is_row(joint, pair[0]))
                yield held


def _between_mates(model: Model, pieces: dict[str, Piece]) -> Iterator[_Held]:
    """Yield each copy that lies on, or stands in, several mates which hold it between them.

    Mates that move with it across their own width count with their middles: frames keep those at
    one distance.
    """
    rows: dict[tuple[str, int], _Held] = {}
    for joint in _glued(model):
        guest, host = pieces[joint.guest], pieces[joint.host]
        grain = _grain(guest)
        if grain is None or not _on_its_face_or_round_it(joint, guest[1]):
            continue
        axis = guest[1].frame.axes[1][0]
        low, high = _reach(joint, axis)
        if _grain(host) not in {None, axis}:
            low = high = (low + high) / 2
        held = rows.setdefault((joint.guest, axis), _Held(guest[0], axis, low, high))
        held.takes(low, high, host[0], joint, row=_is_row(joint, guest))
    yield from (held for held in rows.values() if len(set(held.mates)) > 1 or len(held.spans) > 1)


def _on_its_face_or_round_it(joint: Joint, guest: Copy) -> bool:
    # Boards that are glued edge to edge move together, and what stands on end moves with its host.
    if joint.kind == "groove":
        return True
    return joint.region.extent(guest.frame.axes[2][0]) == 0


def _reach(joint: Joint, axis: int) -> tuple[Fraction, Fraction]:
    patches = joint.patches if joint.kind != _RIGID else (joint.region,)
    return min(box.low[axis] for box in patches), max(box.high[axis] for box in patches)


def _told(model: Model, held: _Held, wide: Fraction) -> Diagnostic:
    moves = held.part.moving.over_the_year(wide)
    display = model.display
    mates = " and ".join(dict.fromkeys(held.mates))
    figures = {"glued": wide, "moves": moves}
    _, limit = _limits(held)
    severity = Severity.ERROR if limit is not None and wide > limit else Severity.WARNING
    wood = held.part.moving
    year = f"{wood.name} moves {display.movement(moves)} there {wood.year_words()}"
    if held.floats:
        return finding(
            "H72",
            "panel-glued",
            severity,
            f"{held.part.name} is glued into {mates} at both sides of its grain, "
            f"{display.shown(wide)} apart: {year}, and splits",
            held.spans[0],
            figures=figures,
            remedy=display.examples(
                "leave the glue out, so that it floats, or write `glue the middle {60}`"
            ),
        )
    remedy = "write `glue the middle {60}`, or hold it with `screws` or `buttons` in place of glue"
    if held.tenoned:
        remedy = "write `glue the middle {60}`, and `pegs` to hold its ends"
    elif held.housed:
        remedy = "write `glue front {75}`, so that it moves to the back"
    elif len(set(held.spans)) < len(held.spans):
        remedy = "hold it with `buttons` in place of glue"
    return finding(
        "H72",
        "glued-across-grain",
        severity,
        f"{held.part.name} is glued across its grain to {mates} over {display.shown(wide)}: "
        f"{year}, and will split or bow",
        held.spans[0],
        figures=figures,
        remedy=display.examples(remedy),
    )
