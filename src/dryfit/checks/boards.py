"""TRADE H-c, wood on hand: H42 no board is large enough for a part, with what milling takes.

Only parts of a wood that the notes have boards of are looked at; what they have none of is bought.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.checks.warped_boards import (
    MOST_STAVES,
    Cramped,
    Missing,
    cramped,
    flattened,
    longer_than_boards,
    thick,
    too_warped,
)
from dryfit.diagnostics import Diagnostic, Note, Severity
from dryfit.piece.declared import Have
from dryfit.placing.model import Model
from dryfit.placing.strips import milled_parts
from dryfit.shop.shop import Shop
from dryfit.stock.boards import Lack, Wanted, flat, lack, lines_for, rip_room, trim, wanted
from dryfit.stock.boards import sizes as sizes_of


def check_boards(model: Model, shop: Shop) -> Iterator[Diagnostic]:
    """Yield, once for a wood, the parts that come out of no board on hand.

    Findings: no-board-fits, board-too-warped, blank-longer-than-boards.
    """
    missing: dict[tuple[str | None, Lack], list[Missing]] = {}
    long: dict[str | None, list[Cramped]] = {}
    for part in milled_parts(model.parts, shop.allowances):
        if part.made or part.bookmatched:
            continue
        piece, lines = wanted(part, shop), lines_for(part, model)
        lacks = [(lack(line, piece, shop), line) for line in lines]
        best = max((each for each, _ in lacks), default=Lack.NOTHING)
        fitting = [line for each, line in lacks if each is best]
        if best is Lack.NOTHING:
            tight = cramped(model, part, fitting, shop)
            if tight is not None:
                long.setdefault(part.timber, []).append(tight)
            continue
        line = max(fitting, key=lambda each: _what_counts(each, piece, best, shop))
        missing.setdefault((part.timber, best), []).append(Missing(piece, line, best))
    for (_, best), group in missing.items():
        yield from _TOLD[best](model, group, shop)
    for found in long.values():
        yield longer_than_boards(model, found, shop)


def _what_counts(line: Have, piece: Wanted, missing: Lack, shop: Shop) -> Fraction:
    if missing is Lack.WARPED:
        return flattened(line, piece, shop)
    return sizes_of(line)[{Lack.SHORT: 0, Lack.NARROW: 1}.get(missing, 2)]


def _thin(model: Model, group: Sequence[Missing], shop: Shop) -> Iterator[Diagnostic]:
    """H42: a board as thick as the part, with what truing takes."""
    worst = max(group, key=lambda each: each.piece.thickness)
    say, piece, line = model.display.with_unit, worst.piece, worst.line
    have = sizes_of(line)[2]
    if line.kind == "sheet":
        yield _no_board(
            group,
            worst,
            f"no {_of(line)} is {say(piece.thickness, fitted=True)} thick as {_the(worst)} is: "
            f"what comes nearest is {say(have, fitted=True)}",
            f"buy a sheet {say(piece.thickness, fitted=True)} thick",
            {"thickness": piece.thickness, "have": have},
        )
        return
    yields = flat(line, Fraction(0), Fraction(0), shop)
    needed = (
        piece.thickness + (have - yields) + (shop.allowances["hand_margin"] if yields < have else 0)
    )
    yield _no_board(
        group,
        worst,
        f"no {_of(line)} is thick enough for {_the(worst)}: {thick(worst, say)} takes a board "
        f"{say(needed)} thick, and the thickest is {say(have)}",
        "buy a thicker board, or glue two together face to face",
        {"needed": needed, "have": have},
    )


def _short(model: Model, group: Sequence[Missing], shop: Shop) -> Iterator[Diagnostic]:
    """H42: a board as long as the part, with what its ends lose."""
    worst = max(group, key=lambda each: each.piece.length)
    say, piece, line = model.display.with_unit, worst.piece, worst.line
    have = sizes_of(line)[0]
    sheet = line.kind == "sheet"
    needed = max(piece.length, piece.width) if sheet else piece.length + trim(line, piece, shop)
    rough = "" if sheet else f" and takes {say(trim(line, piece, shop))} more for its ends"
    long = max(piece.length, piece.width) if sheet else piece.length
    yield _no_board(
        group,
        worst,
        f"no {_of(line)} is long enough for {_the(worst)}: it is {say(long)} long{rough}, and the "
        f"longest that is thick enough is {say(max(have, sizes_of(line)[1]) if sheet else have)}",
        f"buy one of {say(needed)} or longer, or make the piece smaller",
        {"needed": needed, "have": have},
    )


def _narrow(model: Model, group: Sequence[Missing], shop: Shop) -> Iterator[Diagnostic]:
    """H42: a board as wide as the part; a wide one is glued from several."""
    worst = max(group, key=lambda each: each.piece.width)
    say, piece, line = model.display.with_unit, worst.piece, worst.line
    have = sizes_of(line)[1]
    sheet = line.kind == "sheet"
    needed = min(piece.length, piece.width) if sheet else piece.width + rip_room(line, shop)
    rough = "" if sheet else f" and {say(rip_room(line, shop))} more for ripping"
    wide = min(piece.length, piece.width) if sheet else piece.width
    count = None if sheet else _staves(worst, have, shop)
    what = "its staves are" if piece.part.staves else "it is"
    yield _no_board(
        group,
        worst,
        f"no {_of(line)} is wide enough for {_the(worst)}: {what} {say(wide)} wide{rough}, and the "
        f"widest that is long and thick enough is {say(have)}",
        f"write `glued from {count}` in its line, or buy a wider board"
        if count is not None
        else f"buy one of {say(needed)} or wider",
        {"needed": needed, "have": have},
    )


def _staves(worst: Missing, widest: Fraction, shop: Shop) -> int | None:
    """Return from how many staves the part is glued so that each comes out of such a board."""
    room = widest - rip_room(worst.line, shop)
    if room <= 0:
        return None
    staves = (worst.part.width + shop.allowances["panel_width"]) / room
    count = max(2, -(-staves.numerator // staves.denominator))
    return count if count <= MOST_STAVES else None


def _no_board(
    group: Sequence[Missing],
    worst: Missing,
    message: str,
    remedy: str,
    figures: dict[str, Fraction],
) -> Diagnostic:
    others = [each.part for each in group if each.part is not worst.part]
    return finding(
        "H42",
        "no-board-fits",
        Severity.WARNING,
        message,
        worst.part.spans[0] if worst.part.spans else None,
        figures=figures,
        notes=(
            Note("the nearest of what there is", worst.line.span),
            *(
                Note(f"so it is with the {part.name}", part.spans[0] if part.spans else None)
                for part in others
            ),
        ),
        remedy=remedy,
    )


def _of(line: Have) -> str:
    what = "sheet" if line.kind == "sheet" else "board"
    return f"{what} of {line.timber} on hand" if line.timber else f"{what} on hand"


def _the(each: Missing) -> str:
    return f"the {each.part.name}"


_TOLD: dict[Lack, Callable[[Model, Sequence[Missing], Shop], Iterator[Diagnostic]]] = {
    Lack.THIN: _thin,
    Lack.WARPED: too_warped,
    Lack.SHORT: _short,
    Lack.NARROW: _narrow,
}
