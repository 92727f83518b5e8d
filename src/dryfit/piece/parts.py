"""One part's line: sizes in their order, how it lies, and where it is put."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TypeVar

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.notes.tree import (
    At,
    CutAfter,
    Down,
    Flush,
    From,
    Gap,
    GluedFrom,
    LeftOut,
    Lie,
    OfTimber,
    PartsLine,
    Reference,
    Run,
    SetBack,
    SetIn,
    Sizes,
    SizeWord,
    Spread,
    Up,
)
from dryfit.piece.declared import (
    PLACE_SIDE,
    RUN_AXIS,
    Amount,
    DeclaredPart,
    FlushWith,
    SpreadWords,
)
from dryfit.piece.names import Names
from dryfit.piece.orientation import Orientation, orientation
from dryfit.piece.sums import Sums

Clause = TypeVar("Clause")

DIMENSIONS = ("length", "width", "thickness")
_SHEET_WORDS = ("ply", "plywood", "mdf", "hardboard", "chipboard")


@dataclass(frozen=True, slots=True)
class WholePiece:
    """What lines about the whole piece say to each part: the size that stands first, its timber.

    `wider_than_deep` is the shape of the overall size, which a flat part without a direction
    follows.
    """

    first: str
    timber: str | None
    wider_than_deep: bool


def size_words(sizes: Sequence[SizeWord], first: str) -> dict[str, SizeWord]:
    """Return the sizes by dimension: length, width, thickness (or the word that was written).

    Bare sizes stand in the order length x width x thickness, two are width x thickness; a
    ``units ..., thickness first`` line turns the order round.
    """
    bare = [word for word in sizes if word.dimension is None]
    order = DIMENSIONS if len(bare) > 2 else DIMENSIONS[1:]
    if first == "thickness":
        order = tuple(reversed(order))
    named = {word.dimension: word for word in sizes if word.dimension is not None}
    words = dict(zip(order, bare, strict=False)) | named
    return {
        name: word
        for name, word in words.items()
        if name is not None and not isinstance(word.amount, LeftOut)
    }


def declared_part(line: PartsLine, sums: Sums, names: Names, whole: WholePiece) -> DeclaredPart:
    """Return what a part's line declares, sums worked out; findings gather in sums and names."""
    amounts = _amounts(line, sums, whole.first)
    lies = _lies(line, amounts, whole)
    _in_piece_words(amounts, lies.axes)
    width, thickness = amounts.get("width"), amounts.get("thickness")
    if width and thickness and thickness.value > width.value:
        _thicker_than_wide(line, width, thickness, sums)
    at, timber, staves = _one(line, At), _one(line, OfTimber), _one(line, GluedFrom)
    cut_after, back = _one(line, CutAfter), _one(line, SetBack)
    of_wood = timber.timber if timber else whole.timber
    return DeclaredPart(
        name=line.name,
        written=line.written,
        count=line.count,
        timber=timber.timber if timber else None,
        stock="sheet" if of_wood and _is_sheet(of_wood) else "solid",
        run=lies.run,
        axes=lies.axes,
        sizes=(amounts.get("length"), amounts.get("width"), amounts.get("thickness")),
        places=at.places if at else (),
        places_span=at.span if at else None,
        set_in=_set_in(_one(line, SetIn), sums),
        set_back=sums.amount(back.amount, back.span) if back else None,
        froms=_froms(line, sums),
        flush=tuple(
            FlushWith(clause.place, names.hosts(clause.hosts), clause.span)
            for clause in line.clauses
            if isinstance(clause, Flush)
        ),
        spread=_spread(line, sums),
        staves=staves.count if staves else None,
        cut_after=_cut_after(cut_after, names),
        assumed=lies.assumed,
        name_span=line.name_span,
        span=line.span,
    )


def _amounts(line: PartsLine, sums: Sums, first: str) -> dict[str, Amount | None]:
    words: dict[str, SizeWord] = {}
    for clause in line.clauses:
        if isinstance(clause, Sizes):
            for dimension, word in size_words(clause.sizes, first).items():
                words.setdefault(dimension, word)
    return {dimension: _size(word, sums) for dimension, word in words.items()}


def _lies(line: PartsLine, amounts: Mapping[str, Amount | None], whole: WholePiece) -> Orientation:
    width, thickness = amounts.get("width"), amounts.get("thickness")
    run, lie = _one(line, Run), _one(line, Lie)
    return orientation(
        line.name,
        run.direction if run else None,
        lie.way if lie else None,
        square=width is not None and thickness is not None and width.value == thickness.value,
        wider_than_deep=whole.wider_than_deep,
    )


def _one(line: PartsLine, kind: type[Clause]) -> Clause | None:
    for clause in line.clauses:
        if isinstance(clause, kind):
            return clause
    return None


def _size(word: SizeWord, sums: Sums) -> Amount | None:
    value = sums.size(word.amount)
    return None if value is None else Amount(value, word.span, sums.behind(word.amount))


def _in_piece_words(amounts: dict[str, Amount | None], axes: tuple[int, int, int]) -> None:
    # "300 deep" and "40 high" name a direction of the piece; the way it lies tells which size.
    for word, axis in (("depth", 1), ("height", 2)):
        if word in amounts:
            amounts.setdefault(DIMENSIONS[axes.index(axis)], amounts[word])
            del amounts[word]


def _thicker_than_wide(line: PartsLine, width: Amount, thickness: Amount, sums: Sums) -> None:
    sums.findings.append(
        Diagnostic(
            "thicker-than-wide",
            Severity.QUESTION,
            f"{line.name}: the thickness is greater than the width",
            thickness.span,
            rule="H37",
            figures={"width": width.value, "thickness": thickness.value},
            hints=(Hint("sizes are length x width x thickness; name them: `30 thick, 45 wide`"),),
        )
    )


def _is_sheet(timber: str) -> bool:
    return any(word in timber.lower().split() for word in _SHEET_WORDS)


def _set_in(clause: SetIn | None, sums: Sums) -> tuple[tuple[int | None, Amount], ...]:
    found: dict[int | None, Amount] = {}
    for amount, direction in clause.amounts if clause else ():
        value = sums.amount(amount, amount.span)
        if value is not None:
            found.setdefault(None if direction is None else RUN_AXIS[direction], value)
    return tuple(found.items())


def _froms(line: PartsLine, sums: Sums) -> tuple[tuple[int, int, Amount], ...]:
    found: list[tuple[int, int, Amount]] = []
    for clause in line.clauses:
        if isinstance(clause, Up):
            axis, side, amount = 2, -1, clause.amounts[0]
        elif isinstance(clause, Down):
            axis, side, amount = 2, 1, clause.amounts[0]
        elif isinstance(clause, From):
            axis, side = PLACE_SIDE[clause.offset.place]
            amount = clause.offset.amount
        else:
            continue
        value = sums.amount(amount, clause.span)
        if value is not None:
            found.append((axis, side, value))
    return tuple(found)


def _spread(line: PartsLine, sums: Sums) -> SpreadWords | None:
    spread, gap = _one(line, Spread), _one(line, Gap)
    if spread is None:
        return None
    axis = RUN_AXIS[spread.direction] if spread.direction else None
    return SpreadWords(axis, sums.amount(gap.amounts[0][0], gap.span) if gap else None, spread.span)


def _cut_after(clause: CutAfter | None, names: Names) -> tuple[str, Span] | None:
    if clause is None:
        return None
    name = clause.stage.assembly
    stage = names.stage(name, Reference(name, (), clause.stage.span))
    return (stage, clause.span) if stage else None
