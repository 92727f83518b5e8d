"""Ids of cutting operations: words of the notes, with qualifiers until each is its own."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction

from dryfit.geometry.frame import WIDTH
from dryfit.operations.cut import Cut

Group = tuple[Cut, ...]

UPRIGHT = 2


def named_apart(groups: Sequence[Group]) -> tuple[str, ...]:
    """Return one unique id a group: part and deed, then only the qualifiers that tell it apart.

    In order: hand, end, mate, which side, and a count at last (CONTRACTS, operation ids).
    """
    families: dict[str, list[int]] = {}
    for index, group in enumerate(groups):
        families.setdefault(f"{group[0].site.part.name} / {group[0].what}", []).append(index)
    names: dict[int, str] = {}
    for family, members in families.items():
        tails = _tails([groups[index] for index in members])
        for index, tail in zip(members, tails, strict=True):
            names[index] = " / ".join((family, *tail))
    return tuple(names[index] for index in range(len(groups)))


def _tails(groups: list[Group]) -> list[tuple[str, ...]]:
    tails: list[tuple[str, ...]] = [() for _ in groups]
    for qualifier in (_hand, _end, _mate, _side):
        if len(set(tails)) == len(groups):
            return tails
        words = [qualifier(group) for group in groups]
        if len(set(words)) > 1:
            tails = [
                (*tail, word) if word and tails.count(tail) > 1 else tail
                for tail, word in zip(tails, words, strict=True)
            ]
    return _counted(tails)


def _counted(tails: list[tuple[str, ...]]) -> list[tuple[str, ...]]:
    given: dict[tuple[str, ...], int] = {}
    numbered: list[tuple[str, ...]] = []
    for tail in tails:
        given[tail] = given.get(tail, 0) + 1
        alone = tails.count(tail) == 1
        numbered.append(tail if alone else (*tail, str(given[tail])))
    return numbered


def _only(values: Iterable[str]) -> str:
    found = set(values)
    return found.pop() if len(found) == 1 else ""


def _hand(group: Group) -> str:
    hand = _only(cut.site.copies[0].hand for cut in group)
    return f"hand {hand}" if hand else ""


def _end(group: Group) -> str:
    end = _only(_end_of(cut) for cut in group)
    return f"at {end}" if end else ""


def _end_of(cut: Cut) -> str:
    feature, length = cut.site.feature, cut.site.part.length
    if feature.kind == "mitre":
        return feature.surface
    if feature.along == (Fraction(0), length):
        return ""
    if feature.along[0] == 0:
        return "R"
    return "R2" if feature.along[1] == length else ""


def _mate(group: Group) -> str:
    mate = _only(cut.site.feature.mate or "" for cut in group)
    return f"for {mate}" if mate and f"for {mate}" not in group[0].what else ""


def _side(group: Group) -> str:
    return _only(_side_word(cut) for cut in group)


def _side_word(cut: Cut) -> str:
    """Return which side of the part is cut, by its place in the piece where all copies agree."""
    surface = cut.site.feature.surface
    if cut.site.feature.role == "taper":
        # Tapers go by their turns: left and right hands begin on different faces.
        return ""
    if surface in {"F", "B"}:
        return "face" if surface == "F" else "back"
    axes = {copy.frame.axes[WIDTH] for copy in cut.site.copies}
    if len(axes) == 1 and next(iter(axes))[0] == UPRIGHT and surface in {"E", "E2"}:
        upper = (next(iter(axes))[1] < 0) == (surface == "E")
        return "upper" if upper else "lower"
    return {"E": "first edge", "E2": "second edge", "R": "end", "R2": "other end"}[surface]
