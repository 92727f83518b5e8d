"""One part's line: sizes in their order, how it lies, and where it is put."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeVar

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.notes.tree import (
    At,
    Carries,
    CutAfter,
    Fitted,
    GluedFrom,
    Horns,
    Lie,
    Lipped,
    OfTimber,
    PartsLine,
    Reference,
    Rests,
    Run,
    Spare,
)
from dryfit.piece.bought import bought_words
from dryfit.piece.declared import PART_DIMENSIONS, Amount, DeclaredPart, LipWords, LoadWords
from dryfit.piece.names import Names
from dryfit.piece.orientation import Orientation, orientation
from dryfit.piece.places import lying, put, row_of_boards
from dryfit.piece.sheet_words import is_sheet
from dryfit.piece.size_order import ask_about_order
from dryfit.piece.splays import declared_splay
from dryfit.piece.sums import Sums
from dryfit.piece.wood_wishes import (
    ask_of_wood,
    glued_from_boards,
    rested,
    run_of_grain,
    sawn_words,
    wood_wishes,
)
from dryfit.piece.written_sizes import sizes_on

Clause = TypeVar("Clause")


@dataclass(frozen=True, slots=True)
class WholePiece:
    """What lines about the whole piece say to each part: the size that stands first, its timber.

    `wider_than_deep` is the shape of the overall size, which a flat part without a direction
    follows.
    """

    first: str
    timber: str | None
    wider_than_deep: bool


def declared_part(line: PartsLine, sums: Sums, names: Names, whole: WholePiece) -> DeclaredPart:
    """Return what a part's line declares, sums worked out; findings gather in sums and names."""
    amounts = _amounts(line, sums, whole.first)
    lies = _lies(line, amounts, whole, run_of_grain(line, sums))
    _in_piece_words(line, amounts, lies.axes, sums)
    ask_about_order(line, amounts, whole.first, sums)
    fitted, horns, load = _one(line, Fitted), _one(line, Horns), _one(line, Carries)
    at, timber, staves = _one(line, At), _one(line, OfTimber), _one(line, GluedFrom)
    spare, rests = _one(line, Spare), _one(line, Rests)
    of_wood = timber.timber if timber else whole.timber
    placed = put(line.clauses, sums, names, lying(lies.axes, wider_than_deep=whole.wider_than_deep))
    part = DeclaredPart(
        name=line.name,
        written=line.written,
        count=line.count,
        timber=timber.timber if timber else None,
        stock="sheet" if of_wood and is_sheet(of_wood) else "solid",
        run=lies.run,
        axes=lies.axes,
        sizes=(amounts.get("length"), amounts.get("width"), amounts.get("thickness")),
        places=at.places if at else (),
        places_span=at.span if at else None,
        set_in=placed.set_in,
        set_back=placed.set_back,
        froms=placed.froms,
        flush=placed.flush,
        spread=row_of_boards(line.clauses, placed.spread, lies.axes[1]),
        staves=staves.count if staves else 0 if glued_from_boards(line) else None,
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
        wood=wood_wishes(line),
        bought=bought_words(line, names) if line.bought else None,
        insets=placed.insets,
        fitted=fitted.way if fitted else "",
        horns=sums.size_amount(horns.amount, horns.span) if horns else None,
        cut=sawn_words(line),
        splay=declared_splay(line, lies, sums),
        carries=LoadWords(load.kind, load.kilograms, load.every, load.span) if load else None,
        spare=spare.count if spare else 0,
        rested=rested(rests, sums) if rests else None,
        lips=_lips(line, sums),
    )
    sums.findings += ask_of_wood(line, part)
    return part


def _amounts(line: PartsLine, sums: Sums, first: str) -> dict[str, Amount | None]:
    return {
        dimension: sums.size_amount(word.amount, word.span)
        for dimension, word in sizes_on(line, first).items()
    }


def _lies(
    line: PartsLine, amounts: Mapping[str, Amount | None], whole: WholePiece, grain: str | None
) -> Orientation:
    width, thickness = amounts.get("width"), amounts.get("thickness")
    run, lie = _one(line, Run), _one(line, Lie)
    return orientation(
        line.name,
        run.direction if run else grain,
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


def _lips(line: PartsLine, sums: Sums) -> tuple[LipWords, ...]:
    return tuple(
        LipWords(
            lip.banded,
            sums.size_amount(lip.thickness, lip.span) if lip.thickness is not None else None,
            lip.timber,
            lip.places,
            lip.span,
        )
        for lip in line.clauses
        if isinstance(lip, Lipped)
    )


def _in_piece_words(
    line: PartsLine, amounts: dict[str, Amount | None], axes: tuple[int, int, int], sums: Sums
) -> None:
    # "300 deep" and "40 high" name a direction of the piece; the way it lies tells which size.
    for word, axis in (("depth", 1), ("height", 2)):
        if word not in amounts:
            continue
        amount, size = amounts.pop(word), PART_DIMENSIONS[axes.index(axis)]
        if amounts.get(size) is not None and amount is not None:
            _same_size_twice(line, word, size, amount.span, sums)
        amounts.setdefault(size, amount)


def _same_size_twice(line: PartsLine, word: str, size: str, span: Span, sums: Sums) -> None:
    sums.findings.append(
        Diagnostic(
            "size-twice",
            Severity.ERROR,
            f"{line.name}: the way it lies, its {word} is its {size}, which is written too",
            span,
            hints=(Hint("keep one of the two, or say how it lies: `flat`, `on edge`, `upright`"),),
        )
    )


def _cut_after(clause: CutAfter | None, names: Names) -> tuple[str, Span] | None:
    if clause is None:
        return None
    name = clause.stage.assembly
    stage = names.stage(name, Reference(name, (), clause.stage.span))
    return (stage, clause.span) if stage else None
