"""Which way uprights face when no word says so: the way that makes their contacts possible.

The name's habit (`piece/orientation.py`) is only the last resort: a post that is lapped with rails
of its own thickness lies flush with them one way only, and an end as wide as the piece is deep
stands across its depth (common practice).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from dryfit.piece.declared import Declared, DeclaredPart
from dryfit.placing.crossing import lap_axis
from dryfit.placing.lying_on import with_lies_on_faces

_AXES = {"facing front": (2, 0, 1), "facing side": (2, 1, 0)}
_SPOKEN = {"facing front": "faces the front", "facing side": "faces the side"}
_OTHER = {"facing front": "facing side", "facing side": "facing front"}
_BETWEEN = ("into", "between")
_LET_IN = frozenset({"housing", "rabbet"})

Told = tuple[str, str]
"""A way to face, and the reason as a clause."""


def with_facings(declared: Declared) -> Declared:
    """Return the piece with every upright of unsaid facing turned as its contacts ask.

    So is what lies on a face of others (`lying_on`).  A turned part says so, with the reason, among
    what it takes for granted.
    """
    turned = replace(declared, parts=tuple(_turned(declared, part) for part in declared.parts))
    return with_lies_on_faces(turned)


def _turned(declared: Declared, part: DeclaredPart) -> DeclaredPart:
    usual = next((words for _, words in part.assumed if words in _AXES), None)
    if usual is None or part.run != "upright":
        return part
    told = next(_ways(declared, part), None)
    if told is None or told[0] == usual:
        return part
    way, why = told
    text = f"{part.name}: it {_SPOKEN[way]}, not {usual}, since {why}"
    assumed = tuple(
        (text, way) if words == usual else (said, words) for said, words in part.assumed
    )
    return replace(part, axes=_AXES[way], assumed=assumed)


def _ways(declared: Declared, part: DeclaredPart) -> Iterator[Told]:
    # The surest reason first.
    for reason in (_flush_with_laps, _as_wide_as_the_piece, _takes_housings):
        told = reason(declared, part)
        if told is not None:
            yield told


def _flush_with_laps(declared: Declared, part: DeclaredPart) -> Told | None:
    """Half laps of equal stock: the faces of both lie in one plane (TRADE B1.1, B1.3)."""
    ways: dict[str, list[str]] = {}
    for mate in _lapped_with(declared, part):
        axis = lap_axis(part, mate)
        deep = None if axis is None else _size(mate, axis)
        fitting = [way for way in _AXES if deep is not None and _across(part, way, axis) == deep]
        if len(fitting) == 1:
            ways.setdefault(fitting[0], []).append(mate.written)
    if len(ways) != 1:
        return None
    ((way, mates),) = ways.items()
    return way, f"it is as thick as the {mates[0]} that it is lapped with"


def _lapped_with(declared: Declared, part: DeclaredPart) -> Iterator[DeclaredPart]:
    for contact in declared.contacts:
        names = [contact.guest.part, *(host.part for host in contact.hosts)]
        if contact.preposition != "crossing" or part.name not in names:
            continue
        others = names[1:] if names[0] == part.name else names[:1]
        yield from (mate for name in others if (mate := declared.part(name)) is not None)


def _as_wide_as_the_piece(declared: Declared, part: DeclaredPart) -> Told | None:
    """Boards at two sides that are as wide as the piece between its other two."""
    width, thickness = part.sizes[1], part.sizes[2]
    overall = declared.overall
    if width is None or thickness is None or width.leans or width.value == thickness.value:
        return None
    fits = {
        way: total is not None and total.value == width.value and _stands_at(part, sides)
        for way, total, sides in (
            ("facing side", overall[1], ("left", "right")),
            ("facing front", overall[0], ("front", "back")),
        )
    }
    fitting = [way for way, fit in fits.items() if fit]
    if len(fitting) != 1:
        return None
    large = "deep" if fitting[0] == "facing side" else "wide"
    return fitting[0], f"it is as wide as the piece is {large}"


def _stands_at(part: DeclaredPart, sides: tuple[str, str]) -> bool:
    words = set(part.places) | set(part.name.split(" ")[:-1])
    others = {"corners", "left", "right", "front", "back"} - set(sides)
    return bool(words & set(sides)) and not words & others


def _takes_housings(declared: Declared, part: DeclaredPart) -> Told | None:
    """A housing is cut across a face: its board faces whatever is housed in it (TRADE B7)."""
    ways: dict[str, str] = {}
    for contact in declared.contacts:
        if contact.joint is None or contact.joint.kind not in _LET_IN:
            continue
        guest = declared.part(contact.guest.part)
        hosts = {host.part for host in contact.hosts}
        if guest is None or part.name not in hosts or contact.preposition not in _BETWEEN:
            continue
        way = {0: "facing side", 1: "facing front"}.get(guest.axes[0])
        if way is not None and not _fits_into_an_edge(part, guest):
            ways.setdefault(way, f"{guest.written} {'is' if guest.count == 1 else 'are'}")
    if len(ways) != 1:
        return None
    ((way, housed),) = ways.items()
    return way, f"the {housed} housed in it"


def _fits_into_an_edge(part: DeclaredPart, guest: DeclaredPart) -> bool:
    wide = _size(guest, 1 - guest.axes[0])
    thickness = part.sizes[2]
    return wide is not None and thickness is not None and wide <= (thickness.known or 0)


def _across(part: DeclaredPart, way: str, axis: int | None) -> Fraction | None:
    return None if axis is None else _size(replace(part, axes=_AXES[way]), axis)


def _size(part: DeclaredPart, axis: int) -> Fraction | None:
    amount = part.sizes[part.axes.index(axis)]
    return None if amount is None else amount.known
