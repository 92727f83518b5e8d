"""Words that several families of operations share."""

from __future__ import annotations

from collections.abc import Iterable

from dryfit.placing.model import Part

_NUMBERS = ("no", "one", "two", "three", "four", "five", "six")


def all_of(part: Part) -> str:
    """Return a part's copies for a sentence: ``the top``, ``both aprons``, ``all 4 posts``."""
    if len(part.copies) == 1:
        return f"the {part.name}"
    if len(part.copies) == 2:
        return f"both {part.written.lower()}"
    return f"all {len(part.copies)} {part.written.lower()}"


def some_of(part: Part, count: int, hand: str | None) -> str:
    """Return the copies that one operation works on: all of them, or ``the 2 posts of hand A``."""
    if count == len(part.copies):
        return all_of(part)
    if hand is not None and count == sum(copy.hand == hand for copy in part.copies):
        return f"the {counted(part, count) if count > 1 else part.name} of hand {hand}"
    return f"{count} of the {counted(part, len(part.copies))}"


def counted(part: Part, count: int) -> str:
    """Return some copies of a part with their number: ``1 top``, ``5 slats``."""
    return f"{count} {part.name if count == 1 else part.written.lower()}"


def listed(names: Iterable[str]) -> str:
    """Return ``a``, ``a and b`` or ``a, b and c``."""
    row = list(names)
    if len(row) < 2:
        return "".join(row)
    return f"{', '.join(row[:-1])} and {row[-1]}"


def in_a_word(count: int) -> str:
    """Return a small number as a word: ``two``; a larger one in figures."""
    return _NUMBERS[count] if count < len(_NUMBERS) else str(count)


def spoken(count: int, one: str, more: str | None = None) -> str:
    """Return a count with its noun: ``1 blank``, ``2 blanks``."""
    return f"{count} {one if count == 1 else more or one + 's'}"
