"""Dual-feasible functions: bounds on what fits into a rectangle, whichever way it is cut.

Such a function f gives every size x from 0 to C a whole number so that sizes whose sum is at most C
have values whose sum is at most f(C). With one function along a board and one across, the products
of the values of all pieces are at most that of the board, for guillotine cuts and for any others
(Fekete and Schepers 2001; Carlier, Clautiaux and Moukrim 2007; both from memory, the property
itself is tested exhaustively).
"""

from collections.abc import Callable, Iterator, Sequence

Dual = Callable[[int], int]
Size = tuple[int, int]
Bound = tuple[tuple[int, ...], int]
"""A value for each kind of piece, and what the values of all pieces on a board come to at most."""

KEPT = 12


def identity(_: int) -> Dual:
    """The size itself."""
    return lambda size: size


def counting(parts: int) -> Callable[[int], Dual]:
    """Sizes in shares of the whole, `parts` + 1 of them, rounded down unless they come out even."""

    def of(whole: int) -> Dual:
        def value(size: int) -> int:
            shares, over = divmod((parts + 1) * size, whole)
            return shares * whole if over else size * parts

        return value

    return of


def rounding(grain: int) -> Callable[[int], Dual]:
    """Sizes below one half in whole grains, sizes above by the grains that they leave."""

    def of(whole: int) -> Dual:
        grains = whole // grain

        def value(size: int) -> int:
            if 2 * size > whole:
                return 2 * (grains - (whole - size) // grain)
            return grains if 2 * size == whole else 2 * (size // grain)

        return value

    return of


def forgetting(least: int) -> Callable[[int], Dual]:
    """Small sizes count nothing; sizes that leave only small ones count all. 2 * least <= whole."""

    def of(whole: int) -> Dual:
        def value(size: int) -> int:
            if size > whole - least:
                return whole
            return size if size >= least else 0

        return value

    return of


def duals(whole: int, sizes: Sequence[int]) -> Iterator[Dual]:
    """Functions that may bind for these sizes."""
    yield identity(whole)
    for parts in (1, 2, 3, 4):
        yield counting(parts)(whole)
    for size in sorted({min(size, whole - size + 1) for size in sizes if 0 < size <= whole}):
        if 0 < 2 * size <= whole:
            yield rounding(size)(whole)
            yield forgetting(size)(whole)


def bounds_of(
    room: Size, kinds: Sequence[Sequence[Size]], counts: Sequence[int], blocked: Sequence[Size] = ()
) -> tuple[Bound, ...]:
    """The strongest bounds on the pieces in a room.

    kinds    the sizes in which each kind may lie there, none if it does not fit
    counts   how many there are of each, which says what is strong
    blocked  rectangles inside the room that no piece may use, disjoint
    """
    sizes = [size for kind in kinds for size in kind]
    found: dict[tuple[int, ...], tuple[float, int]] = {}
    across = list(duals(room[1], [size[1] for size in sizes]))
    for f in duals(room[0], [size[0] for size in sizes]):
        fs = [[f(size[0]) for size in kind] for kind in kinds]
        whole = f(room[0])
        for g in across:
            values = tuple(
                min((a * g(size[1]) for a, size in zip(row, kind, strict=True)), default=0)
                for row, kind in zip(fs, kinds, strict=True)
            )
            most = whole * g(room[1]) - sum(f(along) * g(wide) for along, wide in blocked)
            strength = sum(v * n for v, n in zip(values, counts, strict=True)) / (most + 1)
            if values not in found or most < found[values][1]:
                found[values] = (strength, most)
    ranked = sorted(found.items(), key=lambda item: (-item[1][0], item[0]))
    return tuple((values, most) for values, (_, most) in ranked[:KEPT])
