"""Order wishes with their names resolved, and the circles that they close among themselves."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dryfit.diagnostics import Diagnostic, Hint, Note, Severity
from dryfit.notes.tree import Act, OrderLine
from dryfit.piece.declared import WishAct, WishWords
from dryfit.piece.names import Names

_Deed = tuple[str | None, str | None]


def wish_of(line: OrderLine, names: Names) -> list[WishWords]:
    """Return the wishes of a line, one for each pair that it orders."""
    firsts = [act for each in line.first if (act := _act(each, names))]
    thens = [act for each in line.then if (act := _act(each, names))]
    return [WishWords(first, then, line.span) for first in firsts for then in thens]


def circles(wishes: Sequence[WishWords]) -> Iterator[Diagnostic]:
    """Yield an error for each wish that, with the earlier ones, asks for a circle.

    The wish that closes the circle is left out of account from then on, so that each circle is
    told once.
    """
    later: dict[_Deed, list[WishWords]] = {}
    for wish in wishes:
        back = _way(_deed(wish.then), _deed(wish.first), later)
        if back is None:
            later.setdefault(_deed(wish.first), []).append(wish)
            continue
        chain = [wish.first, *(step.first for step in back), wish.first]
        yield Diagnostic(
            "wishes-in-a-circle",
            Severity.ERROR,
            f"this wish closes a circle: {' before '.join(_words(act) for act in chain)}",
            wish.span,
            notes=tuple(Note("an earlier wish", step.span) for step in back),
            hints=(Hint("take one of these wishes out"),),
        )


def _way(
    start: _Deed, end: _Deed, later: dict[_Deed, list[WishWords]]
) -> tuple[WishWords, ...] | None:
    # Breadth first, so that the shortest circle is told.
    ways: list[tuple[_Deed, tuple[WishWords, ...]]] = [(start, ())]
    seen = {start}
    for deed, way in ways:
        if deed == end:
            return way
        for wish in later.get(deed, ()):
            following = _deed(wish.then)
            if following not in seen:
                seen.add(following)
                ways.append((following, (*way, wish)))
    return None


def _deed(act: WishAct) -> _Deed:
    # A bare part stands for the cutting of it.
    return (act.verb or "cut", act.subject)


def _words(act: WishAct) -> str:
    return " ".join(word for word in (act.verb, act.subject) if word)


def _act(act: Act, names: Names) -> WishAct | None:
    if act.reference is None:
        return WishAct(act.verb, None, act.span)
    if not names.is_part_or_stage(act.reference):
        return None
    return WishAct(act.verb, act.reference.name, act.span)
