"""Where a clamp would press on a taper or a curve, and slide off: a pad sawn to it (TRADE H58)."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from dryfit.geometry.frame import LENGTH, SURFACES
from dryfit.placing.model import Copy, Joint, Model
from dryfit.placing.pulled import pulled
from dryfit.plan.operation import Detail

_SLOPING = frozenset({"taper", "curve"})


def sloped_pads(joints: Iterable[Joint], model: Model) -> tuple[Detail, ...]:
    """Return what goes under the clamps of joints whose outer side slopes, once for a part."""
    names = dict.fromkeys(
        model.part_of(joint.host).name
        for joint in joints
        if joint.guest in pulled(joint, model) and _slopes_behind(joint, model)
    )
    return tuple(
        (
            (
                f"The clamp presses where the {name} slopes, and slides: tape the wedge that was "
                "sawn off back on as a pad, or saw one to the same slope, so that both jaws "
                "press square to the joint"
            ),
        )
        for name in names
    )


def _slopes_behind(joint: Joint, model: Model) -> bool:
    """Return whether the side of the host away from the guest slopes where the joint is."""
    guest, host = model.copy(joint.guest), model.copy(joint.host)
    axis = guest.frame.axes[LENGTH][0]
    if axis == host.frame.axes[LENGTH][0]:
        return False
    behind = host.frame.surface_facing(
        axis, -1 if _middle(guest, axis) > _middle(host, axis) else 1
    )
    start, end = host.frame.to_part(host.box, joint.region)[LENGTH]
    return any(
        cut.role in _SLOPING
        and cut.surface == behind
        and host.hand in cut.hands
        and SURFACES[cut.surface][0] != LENGTH
        and min(cut.along[1], end) > max(cut.along[0], start)
        for cut in model.part_of(joint.host).features
    )


def _middle(copy: Copy, axis: int) -> Fraction:
    return copy.box.low[axis] + copy.box.high[axis]
