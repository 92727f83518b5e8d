"""Where a part's line puts it: distances, lists of them, play, spreads, with sums worked out."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from dryfit.diagnostics import Span
from dryfit.kinds.joints import is_beside
from dryfit.notes.tree import (
    Apart,
    Down,
    Flush,
    From,
    Gap,
    Handed,
    JointSpec,
    Lapping,
    PartClause,
    Ripped,
    SetBack,
    SetIn,
    Spread,
    Sum,
    Up,
)
from dryfit.piece.declared import (
    PLACE_SIDE,
    RUN_AXIS,
    Amount,
    FlushWith,
    GapAround,
    HeightList,
    OnHost,
    SpreadWords,
)
from dryfit.piece.names import Names
from dryfit.piece.sums import Sums

Distance = tuple[int, int, Amount]
"""An axis, a side and how far from it."""


@dataclass(frozen=True, slots=True)
class Lying:
    """How the part lies whose line is read: the axis of its length, and which way is its `ends`.

    For what runs upright the ends are those of the piece: nobody sets a leg in from above.
    """

    run: int
    ends: int


@dataclass(frozen=True, slots=True)
class Put:
    """What a part's line says about its place; the fields are those of `DeclaredPart`."""

    set_in: tuple[tuple[int | None, Amount], ...]
    insets: tuple[Distance, ...]
    set_back: Amount | None
    froms: tuple[Distance, ...]
    lists: tuple[HeightList, ...]
    offsets: tuple[OnHost, ...]
    flush: tuple[FlushWith, ...]
    spread: SpreadWords | None
    gaps: tuple[GapAround, ...]
    apart: Amount | None
    lapping: Amount | None
    handed: Span | None


def lying(axes: Sequence[int], *, wider_than_deep: bool) -> Lying:
    """Return what `ends` means on the line of a part that lies along these axes."""
    run = axes[0]
    return Lying(run, run if run < 2 else 0 if wider_than_deep else 1)


def put(clauses: Sequence[PartClause], sums: Sums, names: Names, lies: Lying) -> Put:
    """Return what a part's phrases say about its place; findings gather in sums and names."""
    set_in, insets = _set_in(clauses, sums, lies)
    froms, lists = _from_the_piece(clauses, sums)
    back = next((each for each in clauses if isinstance(each, SetBack)), None)
    written = next((each for each in clauses if isinstance(each, Apart)), None)
    apart = sums.amount(written.amount, written.span) if written else None
    lapping = next((each for each in clauses if isinstance(each, Lapping)), None)
    return Put(
        set_in=set_in,
        insets=insets,
        set_back=sums.amount(back.amount, back.span) if back else None,
        froms=froms,
        lists=lists,
        offsets=tuple(_on_hosts(clauses, sums, names)),
        flush=tuple(
            FlushWith(each.place, names.hosts(each.hosts), each.span)
            for each in clauses
            if isinstance(each, Flush)
        ),
        spread=_spread(clauses, sums, apart),
        gaps=tuple(_gaps(clauses, sums, lies)),
        apart=apart,
        lapping=sums.amount(lapping.amount, lapping.span) if lapping else None,
        handed=next((each.span for each in clauses if isinstance(each, Handed)), None),
    )


def _set_in(
    clauses: Sequence[PartClause], sums: Sums, lies: Lying
) -> tuple[tuple[tuple[int | None, Amount], ...], tuple[Distance, ...]]:
    clause = next((each for each in clauses if isinstance(each, SetIn)), None)
    whole: dict[int | None, Amount] = {}
    sided: dict[tuple[int, int], Amount] = {}
    written = clause.amounts if clause else ()
    taken = {PLACE_SIDE[word][0] for _, word in written if word in PLACE_SIDE}
    # "30 at ends, 20 at front and back" of what runs front to back: its ends are named already.
    ends = 1 - lies.ends if lies.ends in taken and lies.ends < 2 else lies.ends
    for amount, word in written:
        value = sums.amount(amount, amount.span)
        if value is None:
            continue
        if word in PLACE_SIDE:
            sided.setdefault(PLACE_SIDE[word], value)
        elif word == "ends":
            sided.setdefault((ends, 0), value)
        else:
            whole.setdefault(None if word is None else RUN_AXIS[word], value)
    for axis in sorted({axis for axis, _ in sided}):
        low, high = sided.get((axis, -1)), sided.get((axis, 1))
        if low is None or high is None:
            continue
        if (low.value, low.leans) == (high.value, high.leans):
            whole.setdefault(axis, low)
            del sided[axis, -1], sided[axis, 1]
    return tuple(whole.items()), tuple((axis, side, each) for (axis, side), each in sided.items())


def _from_the_piece(
    clauses: Sequence[PartClause], sums: Sums
) -> tuple[tuple[Distance, ...], tuple[HeightList, ...]]:
    froms: list[Distance] = []
    lists: list[HeightList] = []
    for clause in clauses:
        told = _distance(clause)
        if told is None:
            continue
        axis, side, amounts = told
        values = _values(amounts, sums, clause.span)
        if len(amounts) > 1:
            lists.append(HeightList(axis, side, values))
        else:
            froms += [(axis, side, value) for value in values]
    return tuple(froms), tuple(lists)


def _distance(clause: PartClause) -> tuple[int, int, tuple[Sum, ...]] | None:
    if isinstance(clause, Up):
        return 2, -1, clause.amounts
    if isinstance(clause, Down):
        return 2, 1, clause.amounts
    if isinstance(clause, From) and not clause.offset.of and not clause.offset.on_host:
        return *PLACE_SIDE[clause.offset.place], (clause.offset.amount, *clause.others)
    return None


def _values(amounts: Iterable[Sum], sums: Sums, span: Span) -> tuple[Amount, ...]:
    # What belongs to one amount of a list is that amount; a lone one is said by its whole phrase.
    written = tuple(amounts)
    spans = [amount.span if len(written) > 1 else span for amount in written]
    found = (sums.amount(amount, at) for amount, at in zip(written, spans, strict=True))
    return tuple(value for value in found if value is not None)


def _on_hosts(clauses: Sequence[PartClause], sums: Sums, names: Names) -> Iterator[OnHost]:
    for clause in clauses:
        if not isinstance(clause, From) or not (clause.offset.of or clause.offset.on_host):
            continue
        offset = clause.offset
        axis, side = PLACE_SIDE[offset.place]
        amounts = _values((offset.amount, *clause.others), sums, clause.span)
        hosts = names.hosts(offset.of)
        if amounts and len(hosts) == len(offset.of):
            beyond = offset.beyond or (bool(offset.of) and offset.on_host)
            yield OnHost(axis, side, amounts, hosts, clause.span, beyond)


def _spread(clauses: Sequence[PartClause], sums: Sums, apart: Amount | None) -> SpreadWords | None:
    # "8 between" is the gap of the row; beside it "gap 2" is the play at its ends.
    spread = next((each for each in clauses if isinstance(each, Spread)), None)
    gap = next((each for each in clauses if isinstance(each, Gap)), None)
    boards = next((each for each in clauses if _tongued(each)), None)
    if spread is None and boards is None:
        return None
    axis = RUN_AXIS[spread.direction] if spread and spread.direction else None
    between = next((amount for amount, word in gap.amounts if word is None), None) if gap else None
    written = sums.amount(between, gap.span) if gap and between else None
    if spread is None:
        assert boards is not None
        return SpreadWords(axis, apart or written, boards.span, ripped=_ripped(clauses))
    return SpreadWords(axis, apart or written, spread.span, spread.ends, ripped=_ripped(clauses))


def _ripped(clauses: Sequence[PartClause]) -> str | None:
    return next((each.which for each in clauses if isinstance(each, Ripped)), None)


def row_of_boards(
    clauses: Sequence[PartClause], spread: SpreadWords | None, across: int
) -> SpreadWords | None:
    """Return a spread along the width of boards that are joined edge to edge, unless it says so."""
    if spread is None or spread.axis is not None or not any(_tongued(each) for each in clauses):
        return spread
    return replace(spread, axis=across)


def _tongued(clause: PartClause) -> bool:
    return isinstance(clause, JointSpec) and is_beside(clause.kind)


def _gaps(clauses: Sequence[PartClause], sums: Sums, lies: Lying) -> Iterator[GapAround]:
    for clause in clauses:
        for amount, word in clause.amounts if isinstance(clause, Gap) else ():
            value = sums.amount(amount, amount.span)
            if value is None:
                continue
            if word is None or word == "ends":
                axis, side = (lies.run, 0) if word else (None, 0)
            else:
                axis, side = PLACE_SIDE.get(word) or (RUN_AXIS[word], 0)
            yield GapAround(value, axis, side, word == "ends")
