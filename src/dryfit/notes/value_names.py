"""Values whose names are easily taken for something else."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from dryfit.diagnostics import Diagnostic, Hint, Note, Severity
from dryfit.notes.reading.near import distance, nearest
from dryfit.notes.reading.words import PHRASES
from dryfit.notes.tree import OpeningLine, PartsLine, Statement, ValueLine

_SHORTEST_NEAR = 5
_MOST_COMPARED = 20
_OF_A_PART = ("length", "width", "thickness")
_OF_THE_WHOLE = ("width", "depth", "height")
_SIZE_WORDS = {
    word: value
    for word, meanings in PHRASES.items()
    for kind, value in meanings
    if kind in ("DIM", "DIMADJ")
}


def near_values(statements: Iterable[Statement]) -> Iterator[Diagnostic]:
    """Yield a question for each value whose name is one letter from an earlier one's.

    Two names that differ by one letter, or by two swapped, are the same without one of each: so
    only those are compared that have such a remainder in common, and of very many the first.
    """
    earlier: dict[str, list[ValueLine]] = {}
    for statement in statements:
        if not isinstance(statement, ValueLine) or len(statement.name) < _SHORTEST_NEAR:
            continue
        remainders = _remainders(statement.name)
        alike = {
            other.span.line: other
            for remainder in remainders
            for other in earlier.get(remainder, ())
            if _nearly_same(statement.name, other.name)
        }
        if alike:
            yield _question(statement, alike[min(alike)])
        for remainder in remainders:
            kept = earlier.setdefault(remainder, [])
            if len(kept) < _MOST_COMPARED:
                kept.append(statement)


def _remainders(name: str) -> tuple[str, ...]:
    without_one = (name[:at] + name[at + 1 :] for at in range(len(name)))
    return tuple(dict.fromkeys((name, *without_one)))


def _question(value: ValueLine, other: ValueLine) -> Diagnostic:
    return Diagnostic(
        "near-values",
        Severity.QUESTION,
        f"is `{value.name}` the same as `{other.name}` on line {other.span.line}?",
        value.name_span,
        notes=(Note("the other value", other.name_span),),
        hints=(Hint("give one of them a name that is easier to tell apart"),),
    )


def misleading_values(statements: Iterable[Statement]) -> Iterator[Diagnostic]:
    """Yield a warning for each value whose name reads as something else.

    ``post thick`` reads as the thickness of the posts, ``mesured ply`` was to be a measurement.
    """
    known = list(statements)
    parts = {each.name for each in known if isinstance(each, PartsLine)}
    spaces = {each.name for each in known if isinstance(each, OpeningLine)}
    for value in known:
        if not isinstance(value, ValueLine):
            continue
        first, _, last = value.name.rpartition(" ")
        size = _SIZE_WORDS.get(last)
        if (size in _OF_A_PART and first in parts) or (size in _OF_THE_WHOLE and first in spaces):
            yield Diagnostic(
                "value-like-a-size",
                Severity.WARNING,
                f"`{value.name_span.text()}` reads as the {size} of `{first}`",
                value.name_span,
                hints=(Hint(f"give the value another name; the part's own is `{first}.{size}`"),),
            )
        opener, blank, _ = value.name.partition(" ")
        if blank and nearest(opener, ("measured",)):
            yield Diagnostic(
                "measured-mistyped",
                Severity.WARNING,
                f"this makes a value called `{value.name_span.text()}`: was it measured?",
                value.name_span,
                hints=(Hint("a measurement begins with `measured`"),),
            )


def _nearly_same(first: str, second: str) -> bool:
    if min(len(first), len(second)) < _SHORTEST_NEAR or distance(first, second, 1) > 1:
        return False
    # "gap a" and "gap b" are told apart by a word of one letter, and on purpose.
    words = zip(first.split(" "), second.split(" "), strict=False)
    return all(one == other or min(len(one), len(other)) > 1 for one, other in words)
