"""Putting blanks back: each where it fits best, on a further board where none has room."""

from collections.abc import Callable, Iterable

from dryfit.cutting.boards import Bench, Open
from dryfit.cutting.slicing import Space

NOWHERE = 1 << 62
BLINK = 0.02
"""How often a good place is overlooked, so that the same blanks do not always go the same way."""

Place = tuple[int, int, Space, tuple[int, int]]  # score, index of the board, space, size


class State:
    """Boards in use and units that lie nowhere; the ways that were `picked`, see `picking`."""

    __slots__ = ("boards", "left", "lost", "picked", "worth")

    def __init__(
        self,
        boards: list[Open],
        left: list[int],
        lost: int,
        worth: int,
        picked: tuple[int, ...] = (),
    ) -> None:
        self.boards = boards
        self.left = left
        self.lost = lost
        self.worth = worth
        self.picked = picked


def best_place(
    bench: Bench, boards: Iterable[tuple[int, Open]], blank: int, way: int
) -> Place | None:
    """Where a blank fits best, by one of three measures (0, 1, 2); ties by order."""
    fits = bench.instance.fits
    face = bench.faces[blank]
    kind = bench.instance.blanks[blank].kind
    best = NOWHERE
    found: Place | None = None
    rng = bench.rng.random
    for index, board in boards:
        if board.free < face or kind in board.shut:
            continue
        shut = True
        for size in fits[board.stock][blank]:
            along, across = size
            for space in board.spaces:
                if along > space[0] or across > space[1]:
                    continue
                shut = False
                # What a place wastes: pieces that have to grow count most, then what is left.
                beside_along = space[2] - along
                beside_across = space[3] - across
                over = 0
                if beside_along < 0:
                    over = -beside_along
                    beside_along = 0
                if beside_across < 0:
                    over -= beside_across
                    beside_across = 0
                if way == 0:
                    less = min(beside_along, beside_across)
                    score = 2 * over + less
                elif way == 1:
                    waste = beside_along * across + beside_across * along
                    score = over * (along + across) + waste
                else:
                    more = max(beside_along, beside_across)
                    score = 2 * over + more
                if score < best and rng() > BLINK:
                    best = score
                    found = (score, index, space, size)
        if shut:
            board.shut.add(kind)
    return found


def put_best(bench: Bench, state: State, fresh: set[int], blank: int, way: int) -> bool:
    """Put one blank into the open boards. `fresh` are the boards that may be changed in place."""
    overlooked: set[tuple[int, int]] = set()
    for _ in range(6):
        boards: Iterable[tuple[int, Open]] = enumerate(state.boards)
        if overlooked:
            shut = {index for index, _ in overlooked}
            boards = [(i, board) for i, board in boards if i not in shut]
        place = best_place(bench, boards, blank, way)
        if place is None:
            return False
        _, index, space, size = place
        board = state.boards[index]
        if index not in fresh:
            board, space = bench.copied_with(board, space)
            state.boards[index] = board
            fresh.add(index)
        if bench.insert(board, space, blank, size):
            return True
        bench.refresh(board)
        overlooked.add((index, 0))
    return False


Opener = Callable[[State, int], int | None]


def put_unit(
    bench: Bench, state: State, fresh: set[int], unit: int, way: int, opener: Opener
) -> bool:
    """Put a unit into the layout, on a further board if `opener` names one."""
    blanks = bench.instance.units[unit].blanks
    if len(blanks) == 1 and put_best(bench, state, fresh, blanks[0], way):
        return True
    if len(blanks) > 1:
        for index in range(len(state.boards)):
            twin = bench.copied(state.boards[index])
            bench.refresh(twin)
            if put_together(bench, twin, blanks, way):
                state.boards[index] = twin
                fresh.add(index)
                return True
    stock = opener(state, unit)
    if stock is None:
        return False
    board = bench.opened(stock)
    if not put_together(bench, board, blanks, way):
        return False
    fresh.add(len(state.boards))
    state.boards.append(board)
    state.worth += bench.instance.stocks[stock].worth
    return True


def put_together(bench: Bench, board: Open, blanks: tuple[int, ...], way: int) -> bool:
    """Put all of some blanks into one board, the long ones first; False leaves it half done."""
    only = State([board], [], 0, 0)
    order = sorted(blanks, key=lambda blank: -bench.faces[blank])
    return all(put_best(bench, only, {0}, blank, way) for blank in order)
