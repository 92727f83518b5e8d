"""What is bought serves what is missing: the wood on hand keeps all that it can give.

A layout at the least price may take the boards that are bought for everything.  Here the boards on
hand are cut as they would be without them, and only what is then missing comes out of the others.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import replace

from dryfit.cutting import Answer, Job, Layout, violations
from dryfit.stock.laying.job import Split
from dryfit.stock.laying.outcome import Outcome, answered


def on_hand_first(new: Outcome, old: Outcome, effort: int, *, of_any: bool = False) -> Outcome:
    """Return `new`, which buys boards, with those on hand cut as in `old` where that suffices.

    Nothing more is bought; `of_any` of the boards that might be, where nobody said what is sold.
    Where what is missing does not come out of these by itself, `new` comes back as it is.
    """
    if new.lost:
        return new
    answers = tuple(
        _answer(split, answer, old, effort, of_any=of_any) for split, answer in new.pairs
    )
    return replace(new, answers=answers)


def _answer(split: Split, answer: Answer, old: Outcome, effort: int, *, of_any: bool) -> Answer:
    names = {name for name, _ in split.boards}
    before = tuple(
        layout
        for one in old.answers
        for layout in one.layouts
        if layout.board in names and layout.pieces
    )
    bought = Counter(layout.board for layout in answer.layouts)
    if of_any:
        bought = Counter({board.id: board.count for board in split.job.boards})
    rest = _of_what_is_missing(split.job, before, bought, effort)
    layouts = (*before, *rest)
    if not rest or violations(split.job, layouts):
        return answer
    boards = {board.id: board for board in split.job.boards}
    return replace(
        answer, layouts=layouts, value=sum(boards[layout.board].value for layout in layouts)
    )


def _of_what_is_missing(
    job: Job, before: tuple[Layout, ...], bought: Mapping[str, int], effort: int
) -> tuple[Layout, ...]:
    """Return layouts of what `before` lacks on so many boards as are `bought`; none if too few."""
    boards = tuple(
        replace(board, count=bought[board.id])
        for board in job.boards
        if board.price is not None and bought.get(board.id)
    )
    there = {(piece.part, piece.copy) for layout in before for piece in layout.pieces}
    lost = {
        part.id: [copy for copy in range(1, part.quantity + 1) if (part.id, copy) not in there]
        for part in job.parts
    }
    parts = tuple(replace(part, quantity=len(lost[part.id])) for part in job.parts if lost[part.id])
    if not boards or not parts:
        return ()
    rest = answered(replace(job, parts=parts, boards=boards), effort, prove=False)
    if rest.verdict != "enough":
        return ()
    return tuple(
        replace(
            layout,
            pieces=tuple(
                replace(piece, copy=lost[piece.part][piece.copy - 1]) for piece in layout.pieces
            ),
        )
        for layout in rest.layouts
    )
