"""How a part lies at a machine: which edge its hand puts to the fence, on which side the stop is.

Directions at the machine, seen by the maker who feeds forward: x to the right, y away from him,
z up.  On a sled the part lies before a fence on the maker's side, and the stop is on the left.
At a mortiser, a router table and a mitre saw the fence is behind the part, and the mitre saw's stop
is on the left too.  On a taper jig, which runs to the left of the blade, the cleat is on the left
and the stop block on the maker's side, so that the blade pushes the part against it.
"""

from __future__ import annotations

from dryfit.geometry.frame import SURFACES

Vector = tuple[int, int, int]

DOWN: Vector = (0, 0, -1)
LEFT: Vector = (-1, 0, 0)
TOWARDS_MAKER: Vector = (0, -1, 0)
AWAY_FROM_MAKER: Vector = (0, 1, 0)


def edge_at_sled_fence(down: str, at_stop: str, handedness: int) -> str:
    """Return the surface that lies at the sled's fence, given the one down and the end at stop."""
    return _surface_towards(TOWARDS_MAKER, {down: DOWN, at_stop: LEFT}, handedness)


def side_of_end(end: str, down: str, fence: str, handedness: int) -> str:
    """Return ``left`` or ``right``: where the end is, given the surfaces down and at the fence."""
    held = {down: DOWN, fence: AWAY_FROM_MAKER}
    return "left" if _surface_towards(LEFT, held, handedness) == end else "right"


def edge_at_fence_behind(down: str, end_on_left: str, handedness: int) -> str:
    """Return the surface at a fence behind the part, given the one down and the end on the left."""
    return _surface_towards(AWAY_FROM_MAKER, {down: DOWN, end_on_left: LEFT}, handedness)


def down_on_jig(cleat: str, at_block: str, handedness: int) -> str:
    """Return the surface that lies on a taper jig, given those at its cleat and its stop block."""
    return _surface_towards(DOWN, {cleat: LEFT, at_block: TOWARDS_MAKER}, handedness)


def _surface_towards(wanted: Vector, held: dict[str, Vector], handedness: int) -> str:
    axes: dict[int, Vector] = {}
    for surface, outward in held.items():
        direction, side = SURFACES[surface]
        axes[direction] = outward if side else _negative(outward)
    (third,) = {0, 1, 2} - set(axes)
    first, second = axes[(third + 1) % 3], axes[(third + 2) % 3]
    axis = _cross(first, second)
    if handedness < 0:
        axis = _negative(axis)
    side = 1 if axis == wanted else 0
    return next(name for name, place in SURFACES.items() if place == (third, side))


def _negative(vector: Vector) -> Vector:
    return (-vector[0], -vector[1], -vector[2])


def _cross(a: Vector, b: Vector) -> Vector:
    return (
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    )
