"""Order wishes with their names resolved, and the circles that they close among themselves."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from dryfit.diagnostics import Diagnostic, Hint, Note, Severity
from dryfit.notes.tree import Act, OrderLine
from dryfit.piece.declared import Stage, WishAct, WishWords
from dryfit.piece.names import Names, full_name

_Deed = tuple[str | None, str | None]


def wish_of(line: OrderLine, names: Names) -> list[WishWords]:
    """Return the wishes of a line, one for each pair that it orders."""
    firsts = [act for each in line.first if (act := _act(each, names))]
    thens = [act for each in line.then if (act := _act(each, names))]
    return [WishWords(first, then, line.span) for first in firsts for then in thens]


def circles(wishes: Sequence[WishWords], stages: Sequence[Stage] = ()) -> Iterator[Diagnostic]:
    """Yield an error for each wish that, with the earlier ones, asks for a circle.

    A glue-up comes after those that it takes up, and before its finish.  The wish that closes the
    circle is left out of account from then on, so that each circle is told once.
    """
    later: dict[_Deed, list[WishWords]] = {}
    by_itself = tuple(_by_itself(stages))
    for order in by_itself:
        later.setdefault(_deed(order.first), []).append(order)
    for wish in (_of_glue_ups(wish, stages) for wish in wishes):
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
            notes=tuple(
                Note(
                    "this glue-up asks for it" if step in by_itself else "an earlier wish",
                    step.span,
                )
                for step in back
            ),
            hints=(Hint(_remedy(back, by_itself)),),
        )


def _remedy(back: Sequence[WishWords], by_itself: Sequence[WishWords]) -> str:
    if set(back) <= set(by_itself):
        return "take this wish out"
    return "take one of these wishes out"


def _by_itself(stages: Sequence[Stage]) -> Iterator[WishWords]:
    """Yield what the glue-ups order without any wish."""
    names = {stage.name for stage in stages}
    for stage in stages:
        glued = WishAct("glue up", stage.name, stage.span)
        for item in stage.items:
            if item.name in names:
                yield WishWords(WishAct("glue up", item.name, item.span), glued, stage.span)
        yield WishWords(glued, WishAct("finish", stage.name, stage.span), stage.span)


def _of_glue_ups(wish: WishWords, stages: Sequence[Stage]) -> WishWords:
    # A bare glue-up stands for the gluing, as a bare part stands for the cutting of it.
    names = {stage.name for stage in stages}
    first, then = (
        replace(act, verb="glue up") if act.verb is None and act.subject in names else act
        for act in (wish.first, wish.then)
    )
    return WishWords(first, then, wish.span)


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
    return WishAct(act.verb, full_name(act.reference), act.span)
