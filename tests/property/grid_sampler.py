"""Looks at points of a finished piece, by nothing but the document that `parts --json` prints.

Every face of a box and of a cut that runs through a place is a plane of the grid there, so that the
midpoint of a cell stands for all of it: between two planes nothing begins and nothing ends.  Cuts
that are no boxes are taken as if they were not made, which can only find too much.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations, pairwise, product
from typing import Any

Json = dict[str, Any]
Range = tuple[Fraction, Fraction]
Ranges = tuple[Range, Range, Range]
Point = tuple[Fraction, ...]

FILLED = frozenset({"half lap", "mortise and tenon", "housing", "groove"})
"""Joints that are full of wood once they are closed; of the others the region is a mere face."""
NO_BOXES = frozenset({"taper", "bevel", "profile", "curve", "mitre"})
AXES = ("x", "y", "z")
DIRECTIONS = ("length", "width", "thickness")
SURFACES = {
    "R": (0, False),
    "R2": (0, True),
    "E": (1, False),
    "E2": (1, True),
    "F": (2, False),
    "B": (2, True),
}
"""Along which direction of the part a surface is cut into, and whether from the far side."""


@dataclass(frozen=True, slots=True)
class Corner:
    """A mitred end: of its box the half is gone that lies at two of its faces.

    `faces` are these two as axis and whether it is the face of the higher coordinate.
    """

    ranges: Ranges
    faces: tuple[tuple[int, bool], tuple[int, bool]]

    def takes(self, point: Point) -> bool:
        """Whether the wood at a point is gone; points on the slant itself are not asked for."""
        shares = [self._share(axis, point, high=high) for axis, high in self.faces]
        return inside(self.ranges, point) and sum(shares) < 1

    def _share(self, axis: int, point: Point, *, high: bool) -> Fraction:
        low, top = self.ranges[axis]
        return (top - point[axis] if high else point[axis] - low) / (top - low)


@dataclass(frozen=True, slots=True)
class Solid:
    """A copy where it stands in the piece: its outside, less the boxes that are cut from it.

    `joints` names for each cut the joint to which the document gives it, or None.
    """

    name: str
    part: str
    outside: Ranges
    gone: tuple[Ranges, ...]
    joints: tuple[str | None, ...]
    corners: tuple[Corner, ...] = ()

    def holds(self, point: Point) -> bool:
        """Whether there is wood of it at the point."""
        gone = any(inside(cut, point) for cut in self.gone)
        sawn = any(corner.takes(point) for corner in self.corners)
        return inside(self.outside, point) and not gone and not sawn


def complaints(document: Json) -> tuple[str, ...]:
    """What is wrong with the piece, in words; nothing for a sound one."""
    every = tuple(solids(document))
    return (
        *_sizes(document),
        *_overall(document, every),
        *_shared(every),
        *_not_filled(document, every),
        *_open_mitres(document, every),
    )


def solids(document: Json) -> Iterator[Solid]:
    """All copies of all parts."""
    for part in document["parts"]:
        for copy in part["copies"]:
            outside = box(copy["box"])
            carried = [
                feature
                for feature in part["features"]
                if copy["hand"] in feature["hands"] and feature["kind"] not in NO_BOXES
            ]
            yield Solid(
                copy["name"],
                part["name"],
                outside,
                tuple(in_piece(_in_part(each, part), copy["axes"], outside) for each in carried),
                tuple(each["joint"] for each in carried),
                tuple(_corner(each, part, copy, outside) for each in _mitres(part, copy)),
            )


def _mitres(part: Json, copy: Json) -> Iterator[Json]:
    for feature in part["features"]:
        if feature["kind"] == "mitre" and feature["joint"] and copy["hand"] in feature["hands"]:
            yield feature


def _corner(feature: Json, part: Json, copy: Json, outside: Ranges) -> Corner:
    faces = []
    for surface in (feature["surface"], feature["toward"]):
        direction, far = SURFACES[surface]
        sign, axis = copy["axes"][DIRECTIONS[direction]]
        faces.append((AXES.index(axis), far == (sign == "+")))
    return Corner(in_piece(_in_part(feature, part), copy["axes"], outside), (faces[0], faces[1]))


def box(written: Json) -> Ranges:
    """A box of the document."""
    x, y, z = (span(written[axis]) for axis in AXES)
    return x, y, z


def span(written: list[str]) -> Range:
    """From and to in mm, each written as `9017/20 mm`."""
    low, high = (Fraction(each.removesuffix(" mm")) for each in written)
    return low, high


def length(written: Json) -> Fraction:
    """A length of the document in mm."""
    return Fraction(written["exact"].removesuffix(" mm"))


def in_piece(ranges: Ranges, axes: Json, outside: Ranges) -> Ranges:
    """Ranges along, across and deep in a part as ranges over x, y and z of the piece."""
    found = list(outside)
    for (start, end), direction in zip(ranges, DIRECTIONS, strict=True):
        axis = AXES.index(axes[direction][1])
        low, high = outside[axis]
        from_low = axes[direction][0] == "+"
        found[axis] = (low + start, low + end) if from_low else (high - end, high - start)
    return found[0], found[1], found[2]


def inside(ranges: Ranges, point: Point) -> bool:
    """Whether a point that lies on no plane of the grid is in a box."""
    return all(low < at < high for (low, high), at in zip(ranges, point, strict=True))


def midpoints(place: Ranges, boxes: Iterable[Ranges]) -> Iterator[Point]:
    """The middle of each cell into which the faces of boxes cut a place."""
    planes: list[set[Fraction]] = [{low, high} for low, high in place]
    for other in boxes:
        for axis, (low, high) in enumerate(place):
            planes[axis] |= {at for at in other[axis] if low < at < high}
    middles = [[(a + b) / 2 for a, b in pairwise(sorted(along))] for along in planes]
    yield from product(*middles)


def _in_part(feature: Json, part: Json) -> Ranges:
    along, across = span(feature["along"]), span(feature["across"])
    direction, far = SURFACES[feature["surface"]]
    depth, size = length(feature["depth"]), length(part[DIRECTIONS[direction]])
    deep = (size - depth, size) if far else (Fraction(0), depth)
    if direction == 2:
        return along, across, deep
    return (along, deep, across) if direction == 1 else (deep, along, across)


def _sizes(document: Json) -> Iterator[str]:
    for part in document["parts"]:
        for copy in part["copies"]:
            for direction in DIRECTIONS:
                low, high = box(copy["box"])[AXES.index(copy["axes"][direction][1])]
                if high - low != length(part[direction]):
                    yield f"{copy['name']}: its {direction} is not that of the cut list"


def _overall(document: Json, every: tuple[Solid, ...]) -> Iterator[str]:
    for axis, name in enumerate(("width", "depth", "height")):
        low = min(solid.outside[axis][0] for solid in every)
        high = max(solid.outside[axis][1] for solid in every)
        if high - low != length(document["overall"][name]):
            yield f"the {name} over all is {high - low}"


def _shared(every: tuple[Solid, ...]) -> Iterator[str]:
    for one, other in combinations(every, 2):
        common = overlap(one.outside, other.outside)
        if common is None:
            continue
        corners = tuple(each.ranges for each in (*one.corners, *other.corners))
        for point in midpoints(common, one.gone + other.gone + corners):
            if any(corner.ranges == common for corner in one.corners):
                # Its middle lies on the slant: `_open_mitres` looks beside it.
                continue
            if one.holds(point) and other.holds(point):
                yield f"{one.name} and {other.name} share {_words(point)}"
                break


def overlap(one: Ranges, other: Ranges) -> Ranges | None:
    """The box that two boxes have in common, or None."""
    x, y, z = ((max(a[0], b[0]), min(a[1], b[1])) for a, b in zip(one, other, strict=True))
    return (x, y, z) if all(low < high for low, high in (x, y, z)) else None


def _not_filled(document: Json, every: tuple[Solid, ...]) -> Iterator[str]:
    """Each region is full of wood, but for what other cuts take that pass through.

    The stated clearance lies before the end of what enters, outside the region.
    """
    alike = _alike(document, every)
    for joint in document["joints"]:
        if joint["kind"] not in FILLED:
            continue
        region = box(joint["region"])
        near = [solid for solid in every if overlap(solid.outside, region)]
        both = [solid for solid in near if solid.name in joint["between"]]
        faces = [each for solid in near for each in (solid.outside, *solid.gone)]
        for point in midpoints(region, faces):
            filled = sum(solid.holds(point) for solid in near)
            if filled > 1 or not (filled or _passing(point, both, alike[joint["id"]], alike)):
                yield f"{joint['id']}: filled by {filled} at {_words(point)}"
                break


def _open_mitres(document: Json, every: tuple[Solid, ...]) -> Iterator[str]:
    """Of every point of a mitred corner, but on the slant, one of its two members has the wood."""
    steps = 6
    for joint in document["joints"]:
        if joint["kind"] != "mitre":
            continue
        region = box(joint["region"])
        both = [solid for solid in every if solid.name in joint["between"]]
        thirds = (Fraction(1, 3), Fraction(1, 2), Fraction(2, 5))
        for cell in product(range(steps), repeat=3):
            point = tuple(
                low + (high - low) * (at + off) / steps
                for (low, high), at, off in zip(region, cell, thirds, strict=True)
            )
            wood = sum(solid.holds(point) for solid in both)
            cut = any(inside(gone, point) for solid in both for gone in solid.gone)
            if wood > 1 or not (wood or cut):
                yield f"{joint['id']}: filled by {wood} at {_words(point)}"
                break


def _alike(document: Json, every: tuple[Solid, ...]) -> dict[str, tuple[str, ...]]:
    """The kind of each joint with the parts that it joins: a cut names the first of several."""
    part_of = {solid.name: solid.part for solid in every}
    return {
        joint["id"]: (joint["kind"], *sorted(part_of[name] for name in joint["between"]))
        for joint in document["joints"]
    }


def _passing(
    point: Point, both: list[Solid], own: tuple[str, ...], alike: dict[str, tuple[str, ...]]
) -> bool:
    """Whether a cut that is made for something else takes the wood at a point."""
    return any(
        inside(cut, point) and (joint is None or alike[joint] != own)
        for solid in both
        for cut, joint in zip(solid.gone, solid.joints, strict=True)
    )


def _words(point: Point) -> str:
    return ", ".join(f"{name} {at}" for name, at in zip(AXES, point, strict=True))
