"""From answers of the layout library to named blanks and to boards with their cuts."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import islice

from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.rough_sizes import rough_sizes
from dryfit.stock.laid_out import BoardLayout, NamedBlank, StockBoard
from dryfit.stock.laying.job import key
from dryfit.stock.laying.labels import SMALL_LETTERS, labels
from dryfit.stock.laying.outcome import Outcome
from dryfit.stock.laying.sawn import sawn
from dryfit.stock.saws import exact


def composed(
    outcome: Outcome,
    blanks: Sequence[Blank],
    boards: Sequence[StockBoard],
    shop: Shop,
) -> tuple[tuple[NamedBlank, ...], tuple[BoardLayout, ...]]:
    """Return all blanks, and how the boards are cut that any of them comes out of.

    Of blanks that are laid out only if there is room there are those that found it.  `boards` are
    those on hand and those that are bought, in order, with their labels.
    Blanks that are alike are numbered in the order of the boards, and along them.
    """
    named, names = _named(outcome, blanks, boards, shop)
    by_label = {
        split.board(layout.board, layout.copy).label: (split, layout)
        for split, answer in outcome.pairs
        for layout in answer.layouts
        if layout.pieces
    }
    layouts = tuple(
        sawn(layout, board, split.job.rules, names)
        for board in boards
        if board.label in by_label
        for split, layout in [by_label[board.label]]
    )
    return named, layouts


def with_labels(
    outcome: Outcome, boards: Sequence[StockBoard], labelled: int
) -> tuple[Outcome, tuple[StockBoard, ...]]:
    """Return the boards on hand and those bought, these with letters behind so many `labelled`."""
    used = {board.label for board, _ in outcome.pieces if not board.on_hand}
    free = islice(labels(), labelled, None)
    new: dict[str, StockBoard] = {}
    for split in outcome.splits:
        for _, alike in split.boards:
            for board in alike:
                if board.label in used and board.label not in new:
                    new[board.label] = replace(board, label=next(free))
    splits = tuple(
        replace(
            split,
            boards=tuple(
                (name, tuple(new.get(board.label, board) for board in alike))
                for name, alike in split.boards
            ),
        )
        for split in outcome.splits
    )
    return replace(outcome, splits=splits), (*boards, *new.values())


def _named(
    outcome: Outcome,
    blanks: Sequence[Blank],
    boards: Sequence[StockBoard],
    shop: Shop,
) -> tuple[tuple[NamedBlank, ...], Mapping[tuple[str, int], NamedBlank]]:
    spots = _spots(outcome, boards)
    letters = labels(SMALL_LETTERS)
    found: list[NamedBlank] = []
    names: dict[tuple[str, int], NamedBlank] = {}
    parts = {part.id: part for split in outcome.splits for part in split.job.parts}
    for blank in blanks:
        there = spots.get(key(blank), [])
        for index, name in enumerate(blank.names):
            if index < len(there):
                copy, board = there[index]
                part = parts[key(blank)]
                sizes = exact(part.length), exact(part.width)
                one = _cut_from(blank, index, name, next(letters), board, sizes, shop)
                names[part.id, copy] = one
            elif blank.if_room:
                continue
            else:
                one = lying_nowhere(blank, index, name, next(letters))
            found.append(one)
    return tuple(found), names


def _spots(
    outcome: Outcome, boards: Sequence[StockBoard]
) -> dict[str, list[tuple[int, StockBoard]]]:
    """Return where blanks that are alike lie: (copy, board), in the order of boards."""
    order = {board.label: number for number, board in enumerate(boards)}
    pieces = sorted(
        outcome.pieces,
        key=lambda one: (order[one[0].label], one[1].area.start, one[1].area.low, one[1].copy),
    )
    spots: dict[str, list[tuple[int, StockBoard]]] = {}
    for board, piece in pieces:
        spots.setdefault(piece.part, []).append((piece.copy, board))
    return spots


def _cut_from(
    blank: Blank,
    index: int,
    name: str,
    letter: str,
    board: StockBoard,
    sizes: tuple[Fraction, Fraction],
    shop: Shop,
) -> NamedBlank:
    rough = rough_sizes(blank, board.line, shop)
    assert rough is not None
    lost = rough.allowance
    return NamedBlank(
        name,
        letter,
        blank.subject,
        blank.part.name,
        blank.pieces_of(index),
        *sizes,
        board.sizes[2],
        (lost[0] + sizes[0] - rough.length, lost[1] + sizes[1] - rough.width, lost[2]),
        rough.reason,
        blank.leaves,
        blank.what,
        between_strips=blank.between_strips,
        if_room=blank.if_room,
    )


def lying_nowhere(blank: Blank, index: int, name: str, letter: str) -> NamedBlank:
    """Return a blank that lies on no board, as large as it usually is."""
    lost = (
        blank.length - blank.along * blank.part.cut_length,
        blank.width - blank.to_width,
        blank.thickness - blank.leaves * blank.to_thickness,
    )
    sizes = blank.length, blank.width, blank.thickness
    what = blank.subject, blank.part.name, blank.pieces_of(index)
    return NamedBlank(name, letter, *what, *sizes, lost, "", blank.leaves, blank.what)
