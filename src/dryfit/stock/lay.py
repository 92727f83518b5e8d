"""Laying out: which blank comes out of which board, and whether the wood on hand is enough.

The library `dryfit.cutting` lays out; this room tells it what the boards give and what is needed,
and tells what it found in boards, blanks and cuts.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from functools import lru_cache

from dryfit.cutting import Answer, Job, Layout
from dryfit.cutting import lay_out as _lay_out
from dryfit.diagnostics import Findings
from dryfit.placing.model import Model
from dryfit.shop.shop import Shop
from dryfit.stock.job import Split, splits_of
from dryfit.stock.labels import SMALL_LETTERS, labels
from dryfit.stock.laid_out import BoardLayout, Lacking, LaidOut, NamedBlank, StockBoard, Verdict
from dryfit.stock.lots import Lot, lots_of
from dryfit.stock.sawn import sawn
from dryfit.stock.saws import exact, up

TOLD = 64
"""So many answers are kept, for whoever asks the same again in one run."""


def lay_out_stock(
    model: Model, shop: Shop, effort: int = 1
) -> tuple[Model, LaidOut | None, Findings]:
    """Return how all blanks of a piece come out of its boards; None where no line tells of wood.

    The model comes back because its panels may be glued from other staves where that saves wood.
    """
    boards = boards_of(model)
    if not boards:
        return model, None, ()
    lots = lots_of(model, shop)
    splits, none = splits_of(lots, boards, shop)
    answers = [answered(split.job, effort) for split in splits]
    blanks, names = _named(lots, splits, answers, boards)
    layouts = tuple(_layouts(boards, splits, answers, names))
    laid = LaidOut(
        verdict=_verdict(answers, lacking=bool(none)),
        proofs=(),
        boards=boards,
        blanks=blanks,
        layouts=layouts,
        missing=tuple(_missing(lots, blanks, layouts)),
        buy=(),
        searched=sum(answer.work for answer in answers),
    )
    return model, laid, ()


def boards_of(model: Model) -> tuple[StockBoard, ...]:
    """Return every board on hand that has its three sizes, labelled in the order of the notes."""
    whole = [line for line in model.stock if None not in line.sizes]
    names = labels()
    return tuple(StockBoard(next(names), line) for line in whole for _ in range(line.count))


@lru_cache(maxsize=TOLD)
def answered(job: Job, effort: int) -> Answer:
    """Return the answer to a job; the same is worked out once."""
    return _lay_out(job, effort)


def _verdict(answers: Sequence[Answer], *, lacking: bool) -> Verdict:
    said = [answer.verdict for answer in answers]
    if lacking or "not enough" in said:
        return "not enough"
    return "not found" if "not found" in said else "enough"


def _placed(splits: Sequence[Split], answers: Sequence[Answer]) -> Iterator[tuple[Split, Layout]]:
    for split, answer in zip(splits, answers, strict=True):
        for layout in answer.layouts:
            yield split, layout


def _named(
    lots: Sequence[Lot],
    splits: Sequence[Split],
    answers: Sequence[Answer],
    boards: Sequence[StockBoard],
) -> tuple[tuple[NamedBlank, ...], dict[tuple[str, int], NamedBlank]]:
    """Return all blanks, and each by (part, copy) of the layouts.

    Blanks that are alike are counted in the order of the boards, and along them.
    """
    order = {board.label: place for place, board in enumerate(boards)}
    spots = sorted(
        (order[layout.board], piece.area.start, piece.area.low, int(piece.part), piece.copy)
        for _, layout in _placed(splits, answers)
        for piece in layout.pieces
    )
    found: dict[int, list[tuple[int, int]]] = {place: [] for place in range(len(lots))}
    for board, _, _, place, copy in spots:
        found[place].append((copy, board))
    letters, counts = labels(SMALL_LETTERS), Counter[str]()
    blanks, names = [], {}
    for place, lot in enumerate(lots):
        for number, pieces in enumerate(lot.pieces):
            counts[lot.subject] += 1
            copy, board = found[place][number] if number < len(found[place]) else (0, -1)
            blank = NamedBlank(
                name=f"{lot.subject} blank {counts[lot.subject]}",
                letter=next(letters),
                subject=lot.subject,
                part=lot.part.name,
                pieces=pieces,
                length=exact(up(lot.length)),
                width=exact(up(lot.width)),
                thickness=boards[board].sizes[2] if board >= 0 else lot.to_thickness,
                allowance=(
                    exact(up(lot.length)) - lot.finished[0],
                    exact(up(lot.width)) - lot.finished[1],
                    (boards[board].sizes[2] if board >= 0 else lot.to_thickness) - lot.finished[2],
                ),
                reason=lot.reason,
            )
            blanks.append(blank)
            names[str(place), copy] = blank
    return tuple(blanks), names


def _layouts(
    boards: Sequence[StockBoard],
    splits: Sequence[Split],
    answers: Sequence[Answer],
    names: dict[tuple[str, int], NamedBlank],
) -> Iterator[BoardLayout]:
    by_label = {
        layout.board: (split, layout) for split, layout in _placed(splits, answers) if layout.pieces
    }
    for board in boards:
        if board.label in by_label:
            split, layout = by_label[board.label]
            yield sawn(layout, board, split.job.rules, names)


def _missing(
    lots: Sequence[Lot], blanks: Sequence[NamedBlank], layouts: Sequence[BoardLayout]
) -> Iterator[Lacking]:
    there = {one.blank.name for layout in layouts for one in layout.placed}
    for part in dict.fromkeys(lot.part.name for lot in lots):
        lost = [blank for blank in blanks if blank.part == part and blank.name not in there]
        if lost:
            yield Lacking(part, sum(len(blank.pieces) for blank in lost), "")
