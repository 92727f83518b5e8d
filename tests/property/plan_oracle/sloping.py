"""Sides of a box that slope: corners in space, by rotation in floats, against what is told.

Each board is turned about its top outer edge by its slope; the mitres of two that meet then lie in
one plumb plane only if both slope alike, downwards, with their upper edges level.
"""

from collections.abc import Iterator
from math import atan, cos, sin

from tests.property.plan_oracle.reading import UNIT_OF_AXIS, Json, length

NEAR = 1e-6


def sloping(parts: Json) -> Iterator[str]:
    """What is wrong with mitres of sides that slope."""
    rows = {copy["name"]: (copy, row) for row in parts["parts"] for copy in row["copies"]}
    for joint in parts["joints"]:
        pair = [rows[name] for name in joint["between"] if name in rows]
        told = [_slopes(row) for _, row in pair] if joint["kind"] == "mitre" else []
        if not any(told):
            continue
        corners = [
            list(_inner_corner(copy, row, slopes))
            for (copy, row), slopes in zip(pair, told, strict=True)
        ]
        if any(abs(a - b) > NEAR for a, b in zip(*corners, strict=True)):
            yield f"{joint['id']}: its boards come in by {corners} at their lower inner corners"
        for (copy, _), slopes in zip(pair, told, strict=True):
            down = [side for side in ["E", "E2", "F", "B"] if _facing(copy)[side] == (2, -1)]
            if list(slopes) != down:
                yield f"{copy['name']}: its mitre leans toward {list(slopes)}, not {down}"


def _slopes(row: Json) -> dict[str, float]:
    mitres = [each for each in row["features"] if each["kind"] == "mitre" and each["joint"]]
    found: dict[str, float] = {}
    for each in mitres:
        for side, rise in each.get("slopes", {}).items():
            above, _, below = rise.partition("/")
            found[side] = int(above) / int(below or 1)
    return found


def _inner_corner(copy: Json, row: Json, slopes: dict[str, float]) -> Iterator[float]:
    """How far in and how far down the lower inner corner of a board comes, turned by its slope."""
    turn = atan(next(iter(slopes.values()), 0.0))
    wide, thick = float(length(row["width"])), float(length(row["thickness"]))
    yield wide * sin(turn) + thick * cos(turn)
    yield wide * cos(turn) - thick * sin(turn)
    yield float(length(copy["box"]["z"][1]))


def _facing(copy: Json) -> dict[str, tuple[int, int]]:
    found = {}
    for key, near, far in (("width", "E", "E2"), ("thickness", "F", "B")):
        word = copy["axes"][key]
        axis, sign = UNIT_OF_AXIS[word[1]], 1 if word[0] == "+" else -1
        found[near], found[far] = (axis, -sign), (axis, sign)
    return found
