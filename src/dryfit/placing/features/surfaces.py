"""Words for faces and edges, resolved on a copy: ``inside``, ``back inner edge``, ``bottom end``.

In the trade an edge is two things.  A board's narrow face is one: a curve is sawn in the bottom
edge.  Where two faces meet is the other (an arris): the top edges are eased.  Which is meant
follows from the kind of cut.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import product

from dryfit.joinery.form import Side
from dryfit.piece.declared import PLACE_SIDE, SurfaceWords
from dryfit.placing.features.task import ENDS, Misfit, Task
from dryfit.placing.site import SIDE_WORDS

Arris = tuple[Side, Side]
"""The two faces that meet at an edge, in the order in which they were named."""

_BROAD = {"inside": -1, "outside": 1}
_NARROW = {"inner": 1, "outer": -1}


def faces(task: Task, surface: SurfaceWords) -> tuple[Side, ...] | Misfit:
    """Return the faces that a cut into a face is meant for, in the order of the words."""
    copy = task.copy
    if surface.noun == "end":
        return _ends(task, surface)
    if not surface.words:
        return _unnamed(task, surface)
    found = [side for word in surface.words for side in _sides(task, word, surface.noun)]
    if not found:
        return _unnamed(task, surface)
    if surface.noun == "edge" and len({axis for axis, _ in found}) > 1:
        # ``front top edge``: the narrow face of the two is the edge, the other says which side.
        narrow = [side for side in found if side[0] != copy.axes[2]]
        return tuple(dict.fromkeys(narrow[-1:]))
    if surface.noun == "edge" and found[0][0] == copy.axes[2] and not _square(task):
        return Misfit(
            f"its {' '.join(surface.words)} is a face, not an edge",
            "name one of its narrow sides, such as `bottom edge`",
        )
    return tuple(dict.fromkeys(found))


def low_side(task: Task, surface: SurfaceWords, face: Side) -> Side | None:
    """Return the second side that the words of an edge name, beside the face that is cut into."""
    named = [side for word in surface.words for side in _sides(task, word, surface.noun)]
    return next((side for side in named if side[0] != face[0]), None)


def arrises(task: Task, surface: SurfaceWords) -> tuple[Arris, ...] | Misfit:
    """Return the edges at which two faces meet that the words name.

    One word stands for all edges of that face; words on two axes for the edges between them; with
    words on three axes the last one is common to all (``front and end top edges``).
    """
    _, width, thickness = task.copy.axes
    if surface.noun == "corner":
        return _corners(task, surface)
    if surface.noun == "end" or not surface.words:
        ends = _ends(task, surface) if surface.noun == "end" else _all_faces(task)
        return (
            ends
            if isinstance(ends, Misfit)
            else _once(arris for end in ends for arris in _around(end))
        )
    if surface.words == ("long",):
        sides = product(((width, -1), (width, 1)), ((thickness, -1), (thickness, 1)))
        return tuple(sides)
    if set(surface.words) <= _NARROW.keys():
        return _lone_narrow(task, surface)
    groups: dict[int, list[Side]] = {}
    for word in surface.words:
        for side in _at_edge(task, word, surface):
            groups.setdefault(side[0], []).append(side)
    if len(groups) == 1:
        return _once(arris for side in groups.popitem()[1] for arris in _around(side))
    in_order = list(groups.values())
    if len(in_order) == 2:
        return _once(product(in_order[0], in_order[1]))
    common = in_order.pop()
    return _once((shared, side) for sides in in_order for side in sides for shared in common)


def _at_edge(task: Task, word: str, surface: SurfaceWords) -> tuple[Side, ...]:
    _, width, thickness = task.copy.axes
    placed = {PLACE_SIDE[each][0] for each in surface.words if each in PLACE_SIDE}
    if word in _NARROW and width in placed:
        # `bottom inner edge` of an apron on edge: bottom is its narrow face, inner the broad one.
        return ((thickness, _NARROW[word] * task.inward[thickness]),)
    return _sides(task, word, "edge")


def _lone_narrow(task: Task, surface: SurfaceWords) -> tuple[Arris, ...]:
    # `outer edges` of a board are those along its outer narrow face; of a square leg the one
    # where its two outer faces meet.
    length, width, thickness = task.copy.axes
    sign = _NARROW[surface.words[0]]
    narrow = (width, sign * task.inward[width])
    if _square(task) and length == 2:
        return ((narrow, (thickness, sign * task.inward[thickness])),)
    return tuple((narrow, (thickness, side)) for side in (-1, 1))


def _corners(task: Task, surface: SurfaceWords) -> tuple[Arris, ...]:
    length, width, _ = task.copy.axes
    wanted = {side for word in surface.words for side in _sides(task, word, "edge")}
    pairs = product(((length, -1), (length, 1)), ((width, -1), (width, 1)))
    return tuple(pair for pair in pairs if wanted <= set(pair))


def _sides(task: Task, word: str, noun: str | None) -> tuple[Side, ...]:
    copy = task.copy
    length, width, thickness = copy.axes
    if word in _BROAD:
        return ((thickness, _BROAD[word] * copy.outward[thickness]),)
    if word in _NARROW:
        axis = thickness if noun == "face" else width
        return ((axis, _NARROW[word] * task.inward[axis]),)
    if word in {ENDS, "short"}:
        return ((length, -1), (length, 1))
    if word == "long":
        return ((width, -1), (width, 1))
    return (PLACE_SIDE[word],) if word in PLACE_SIDE else ()


def _ends(task: Task, surface: SurfaceWords) -> tuple[Side, ...] | Misfit:
    length = task.copy.axes[0]
    words = tuple(word for word in surface.words if word in PLACE_SIDE)
    named = tuple(PLACE_SIDE[word] for word in words if PLACE_SIDE[word][0] == length)
    if not words:
        return ((length, -1), (length, 1))
    if not named:
        where = " and ".join(SIDE_WORDS[length, side] for side in (-1, 1))
        return Misfit(
            f"the ends of the {task.copy.part} are at its {where}",
            f"write `{SIDE_WORDS[length, -1]} end` or `{SIDE_WORDS[length, 1]} end`",
        )
    return named


def _unnamed(task: Task, surface: SurfaceWords) -> tuple[Side, ...] | Misfit:
    # `all edges` of a board are its four narrow sides, `all faces` the two broad ones.
    length, width, thickness = task.copy.axes
    if surface.noun == "edge":
        return tuple((axis, side) for axis in (length, width) for side in (-1, 1))
    if surface.noun == "face":
        return ((thickness, -1), (thickness, 1))
    return Misfit("no word says on which side", "name a face, such as `inside` or `top`")


def _all_faces(task: Task) -> tuple[Side, ...]:
    return tuple((axis, side) for axis in task.copy.axes for side in (-1, 1))


def _around(face: Side) -> tuple[Arris, ...]:
    others = (axis for axis in range(3) if axis != face[0])
    return tuple((face, (axis, side)) for axis in others for side in (-1, 1))


def _once(found: Iterable[Arris]) -> tuple[Arris, ...]:
    kept: dict[frozenset[Side], Arris] = {}
    for arris in found:
        kept.setdefault(frozenset(arris), arris)
    return tuple(kept.values())


def _square(task: Task) -> bool:
    _, width, thickness = task.copy.axes
    return task.box.extent(width) == task.box.extent(thickness)
