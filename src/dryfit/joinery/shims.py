"""Stacks of thin things that make a gap: what lies about in a workshop (TRADE K7)."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations_with_replacement

_SHIMS = (
    ("craft stick", Fraction(2)),
    ("strip of veneer", Fraction(6, 10)),
    ("strip of card", Fraction(5, 10)),
    ("playing card", Fraction(3, 10)),
)
"""How thick each is, mm, about (common practice)."""

_MOST = 4
_NEAR = Fraction(1, 10)


def shim_stack(gap: Fraction) -> tuple[tuple[str, int], ...]:
    """Return what to put on one another to fill a gap: each thing with its number.

    The fewest that come nearest, of one kind first, and within 0.1 mm; nothing where only a strip
    planed to the gap will do.
    """
    stacks = sorted(_near(gap))
    if not stacks:
        return ()
    stack = stacks[0][3]
    return tuple((_SHIMS[at][0], stack.count(at)) for at in dict.fromkeys(stack))


def _near(gap: Fraction) -> Iterator[tuple[Fraction, int, int, tuple[int, ...]]]:
    for count in range(1, _MOST + 1):
        for stack in combinations_with_replacement(range(len(_SHIMS)), count):
            off = abs(sum((_SHIMS[at][1] for at in stack), Fraction(0)) - gap)
            if off <= _NEAR:
                yield off, count, len(set(stack)), stack
