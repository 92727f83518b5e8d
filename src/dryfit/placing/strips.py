"""The strips that lip a part: as parts of their own, with no place in the piece (TRADE A10).

A strip is glued on wider and longer than what it covers, and trimmed flush.  Ends are lipped first:
the strips of the edges run past them, so that no end grain of a strip shows along the front.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.geometry.frame import LENGTH, SURFACES, Frame
from dryfit.placing.lip import Lip, added
from dryfit.placing.model import Copy, Measure, Part

FLUSH = {"lip_over": Fraction(0), "lip_proud": Fraction(0)}
"""The allowances of strips that are trimmed: the least that they can have."""

_AS_IT_LIES = Frame(((0, 1), (1, 1), (2, 1)))
_ALONG_THE = {0: "end", 1: "edge"}


@dataclass(frozen=True, slots=True)
class _Kind:
    """What makes strips alike: the direction of what they cover, wood, thickness, length in mm."""

    direction: int
    timber: str | None
    thickness: Fraction
    covers: Fraction


def core_of(part: Part) -> Part:
    """Return a part less its lips: as long and wide as saw and fence cut it, else the part."""
    if not part.lips:
        return part
    return replace(
        part,
        length=part.length - added(part.lips, 0),
        width=part.width - added(part.lips, 1),
        measures=tuple(_less(each, part.lips) for each in part.measures),
    )


def _less(measure: Measure, lips: tuple[Lip, ...]) -> Measure:
    """Return the measurement that a size waits for, as the size of the core follows from it."""
    thick = added(lips, 0 if measure.dimension == "length" else 1)
    if not thick:
        return measure
    return replace(
        measure,
        clearance=measure.clearance + thick,
        formula=f"{measure.formula}, less its lips",
        worked=(*measure.worked, ", less ", thick, " for its lips"),
    )


def covers(part: Part, lip: Lip) -> Fraction:
    """Return how much of an end or edge a lip covers, in mm: ends are lipped before edges."""
    if SURFACES[lip.surface][0] == LENGTH:
        return part.width - added(part.lips, 1)
    return part.length


def strip_name(copy: str, surface: str) -> str:
    """Return what the strip of one copy is called: ``shelf 1 lip at E2``."""
    return f"{copy} lip at {surface}"


def strip_parts(part: Part, allowances: Mapping[str, Fraction]) -> tuple[Part, ...]:
    """Return the strips of a part, alike ones as one part; none for banding and plain parts.

    `allowances` are the shop's: `lip_over` is what a strip is longer at either end, `lip_proud`
    what it is wider at either face.  A strip stands nowhere in the piece: its box tells its sizes.
    A spare of the part has strips of its own.
    """
    kinds: dict[_Kind, list[Lip]] = {}
    for lip in part.lips:
        if not lip.banded:
            kinds.setdefault(_kind(part, lip), []).append(lip)
    return tuple(
        _strips(name, part, lips, allowances)
        for name, lips in zip(_names(part, kinds), kinds.values(), strict=True)
    )


def milled_parts(parts: Sequence[Part], allowances: Mapping[str, Fraction]) -> tuple[Part, ...]:
    """Return what is sawn and milled for parts: strips before the core that they go on.

    A part without lips stands for itself.
    """
    return tuple(
        each
        for part in parts
        for each in ((*strip_parts(part, allowances), core_of(part)) if part.lips else (part,))
    )


def _kind(part: Part, lip: Lip) -> _Kind:
    return _Kind(SURFACES[lip.surface][0], lip.timber, lip.thickness, covers(part, lip))


def _names(part: Part, kinds: Mapping[_Kind, list[Lip]]) -> Iterator[str]:
    """Yield the name of each kind: by what it covers, where that tells them apart."""
    for kind, lips in kinds.items():
        beside = sum(other.direction == kind.direction for other in kinds)
        if len(kinds) == 1:
            yield f"{part.name} lip"
        elif beside == 1:
            yield f"{part.name} {_ALONG_THE[kind.direction]} lip"
        else:
            yield strip_name(part.name, lips[0].surface)


def _strips(name: str, part: Part, lips: list[Lip], allowances: Mapping[str, Fraction]) -> Part:
    length = covers(part, lips[0]) + 2 * allowances["lip_over"]
    width = part.thickness + 2 * allowances["lip_proud"]
    thickness, zero = lips[0].thickness, Fraction(0)
    box = Box((zero, zero, zero), (length, width, thickness))
    copies = tuple(
        Copy(strip_name(copy.name, lip.surface), (), None, "A", box, _AS_IT_LIES)
        for copy in part.copies
        for lip in lips
    )
    return Part(
        name=name,
        written=f"{name}s" if len(copies) > 1 else name,
        timber=lips[0].timber,
        stock="solid",
        length=length,
        width=width,
        thickness=thickness,
        shoulder_length=None,
        adds=(),
        staves=None,
        measures=(),
        copies=copies,
        features=(),
        spans=(lips[0].span,),
        run=part.run,
        spare=part.spare * len(lips),
    )
