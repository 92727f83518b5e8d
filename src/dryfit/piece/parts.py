"""One part's line: sizes in their order, how it lies, and where it is put."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TypeVar

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.notes.tree import (
    At,
    CutAfter,
    GluedFrom,
    LeftOut,
    Lie,
    OfTimber,
    PartsLine,
    Reference,
    Run,
    SizeRange,
    Sizes,
    SizeWord,
    WoodWords,
)
from dryfit.piece.bought import bought_words
from dryfit.piece.declared import Amount, DeclaredPart, SizeLimit, WoodWish
from dryfit.piece.names import Names
from dryfit.piece.orientation import Orientation, orientation
from dryfit.piece.places import lying, put
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
    if width and thickness and (thickness.known or 0) > (width.known or thickness.value):
        _thicker_than_wide(line, width, thickness, sums)
    at, timber, staves = _one(line, At), _one(line, OfTimber), _one(line, GluedFrom)
    of_wood = timber.timber if timber else whole.timber
    placed = put(line.clauses, sums, names, lying(lies.axes, wider_than_deep=whole.wider_than_deep))
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
        set_in=placed.set_in,
        set_back=placed.set_back,
        froms=placed.froms,
        flush=placed.flush,
        spread=placed.spread,
        staves=staves.count if staves else None,
        cut_after=_cut_after(_one(line, CutAfter), names),
        assumed=lies.assumed,
        name_span=line.name_span,
        span=line.span,
        lists=placed.lists,
        offsets=placed.offsets,
        gaps=placed.gaps,
        apart=placed.apart,
        lapping=placed.lapping,
        handed=placed.handed,
        limits=_limits(line, sums),
        wood=tuple(
            WoodWish(each.kind, each.words, each.span)
            for each in line.clauses
            if isinstance(each, WoodWords)
        ),
        bought=bought_words(line, names) if line.bought else None,
        insets=placed.insets,
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
        square=width is not None and thickness is not None and _are_equal(width, thickness),
        wider_than_deep=whole.wider_than_deep,
    )


def _are_equal(width: Amount, thickness: Amount) -> bool:
    return (width.value, width.leans) == (thickness.value, thickness.leans)


def _one(line: PartsLine, kind: type[Clause]) -> Clause | None:
    for clause in line.clauses:
        if isinstance(clause, kind):
            return clause
    return None


def _size(word: SizeWord, sums: Sums) -> Amount | None:
    return sums.size_amount(word.amount, word.span)


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


def _limits(line: PartsLine, sums: Sums) -> tuple[SizeLimit, ...]:
    return tuple(
        SizeLimit(
            each.dimension,
            sums.amount(each.least, each.span) if each.least else None,
            sums.amount(each.most, each.span) if each.most else None,
            None,
            each.span,
        )
        for each in line.clauses
        if isinstance(each, SizeRange)
    )


def _cut_after(clause: CutAfter | None, names: Names) -> tuple[str, Span] | None:
    if clause is None:
        return None
    name = clause.stage.assembly
    stage = names.stage(name, Reference(name, (), clause.stage.span))
    return (stage, clause.span) if stage else None
