"""Words that several families of operations share."""

from __future__ import annotations

from collections.abc import Iterable

from dryfit.placing.model import Part


def all_of(part: Part) -> str:
    """Return the copies of a part as a sentence names them: ``the post``, ``all 4 posts``."""
    if len(part.copies) == 1:
        return f"the {part.name}"
    return f"all {len(part.copies)} {part.written.lower()}"


def listed(names: Iterable[str]) -> str:
    """Return ``a``, ``a and b`` or ``a, b and c``."""
    row = list(names)
    if len(row) < 2:
        return "".join(row)
    return f"{', '.join(row[:-1])} and {row[-1]}"


def spoken(count: int, one: str, more: str | None = None) -> str:
    """Return a count with its noun: ``1 blank``, ``2 blanks``."""
    return f"{count} {one if count == 1 else more or one + 's'}"
