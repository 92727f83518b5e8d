"""Sets of small numbers as the bits of an integer."""

from collections.abc import Iterable, Iterator


def bits(numbers: Iterable[int]) -> int:
    """A set of numbers as an integer."""
    mask = 0
    for number in numbers:
        mask |= 1 << number
    return mask


def members(mask: int) -> Iterator[int]:
    """Numbers of a set, ascending."""
    while mask:
        lowest = mask & -mask
        yield lowest.bit_length() - 1
        mask ^= lowest
