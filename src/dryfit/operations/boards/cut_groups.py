"""Cuts of boards that are one operation: of one part, with one saw, at one setting of its fence.

Ids hold no board as long as none is needed, so that they stay when the layout changes.  Where such
an operation would have to come before and after another one it is parted: by the stage of
cutting, then by the board, by the row of cuts, and at last by where a row changes hands.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass

import networkx as nx

from dryfit.operations.boards.layout_cuts import LayoutCut
from dryfit.operations.words import listed

DEEDS = {"crosscut": "rough length", "rip": "rip"}
Way = tuple[Hashable, ...]
"""How cuts are done that may be one operation: the station, and where its fence stands."""


@dataclass(frozen=True, slots=True)
class CutGroup:
    """Cuts that are one operation, in the order in which they are made."""

    id: str
    way: Way
    cuts: tuple[LayoutCut, ...]


def grouped(cuts: Sequence[LayoutCut], ways: Sequence[Way]) -> tuple[CutGroup, ...]:
    """Return the operations; `ways` are those of the cuts, one each."""
    families = [(cut.owner.subject, cut.cut.saw, way) for cut, way in zip(cuts, ways, strict=True)]
    tails = list(_tails(cuts, families))
    levels = dict.fromkeys(families, 0)
    while True:
        keys = [
            (family, tail[: levels[family]]) for family, tail in zip(families, tails, strict=True)
        ]
        circular = {family for family, _ in _in_circles(cuts, keys)}
        parted = [
            family for family in levels if family in circular and levels[family] < len(tails[0])
        ]
        if not parted:
            break
        for family in parted:
            levels[family] += 1
    rows: dict[Hashable, list[int]] = {}
    for index, key in enumerate(keys):
        rows.setdefault(key, []).append(index)
    names = _names([tuple(cuts[index] for index in row) for row in rows.values()])
    return tuple(
        CutGroup(name, ways[row[0]], tuple(cuts[index] for index in row))
        for name, row in zip(names, rows.values(), strict=True)
    )


def _tails(
    cuts: Sequence[LayoutCut], families: Sequence[Hashable]
) -> Iterator[tuple[Hashable, ...]]:
    """Yield what parts the cuts of one family, coarse first; the last makes no circle."""
    stretch: dict[tuple[str, int], tuple[Hashable, int]] = {}
    for cut, family in zip(cuts, families, strict=True):
        row = (cut.board.label, cut.run)
        before, number = stretch.get(row, (family, 0))
        stretch[row] = family, number + (before != family)
        yield max(cut.cut.stage, 1), cut.board.label, cut.run, stretch[row][1]


def _in_circles(
    cuts: Sequence[LayoutCut], keys: Sequence[tuple[Hashable, Hashable]]
) -> Iterator[tuple[Hashable, Hashable]]:
    """Yield the operations that would have to come before themselves."""
    of = {cut.key: key for cut, key in zip(cuts, keys, strict=True)}
    graph: nx.DiGraph[tuple[Hashable, Hashable]] = nx.DiGraph()
    for cut, key in zip(cuts, keys, strict=True):
        before = of.get(cut.parent) if cut.parent is not None else None
        if before is not None and before != key:
            graph.add_edge(before, key)
    for members in nx.strongly_connected_components(graph):
        if len(members) > 1:
            yield from members


def _names(groups: Sequence[tuple[LayoutCut, ...]]) -> list[str]:
    """Return an id for each: the part and the deed, then the boards, then a count, as needed."""
    names = [f"{row[0].owner.subject} / {_deed(row)}" for row in groups]
    several = Counter(names)
    boards = [tuple(dict.fromkeys(cut.board.label for cut in row)) for row in groups]
    told = {
        name: len({labels for each, labels in zip(names, boards, strict=True) if each == name})
        for name in several
    }
    names = [
        f"{name} / {_boards(labels)}" if several[name] > 1 and told[name] > 1 else name
        for name, labels in zip(names, boards, strict=True)
    ]
    several = Counter(names)
    given: Counter[str] = Counter()
    for index, name in enumerate(names):
        given[name] += 1
        if several[name] > 1:
            names[index] = f"{name} / {given[name]}"
    return names


def _deed(row: tuple[LayoutCut, ...]) -> str:
    if all(cut.trims for cut in row):
        return "raw end" if row[0].cut.saw == "crosscut" else "raw edge"
    return DEEDS[row[0].cut.saw]


def _boards(labels: tuple[str, ...]) -> str:
    return f"board{'s' if len(labels) > 1 else ''} {listed(labels)}"
