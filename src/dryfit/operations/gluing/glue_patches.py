"""The patches of glue in words: what of a joint gets glue, and what is taped before a coat (K6)."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from dryfit.geometry.box import AXIS_NAMES, Box
from dryfit.operations.words import spoken
from dryfit.placing.model import Coating, Joint, Model
from dryfit.plan.operation import Detail

TAPE_LESS = Fraction(1)
"""Tape is narrower than the joint by this, so that no bare line shows beside it (TRADE K6)."""

_SIDES = {"x": ("left", "right"), "y": ("front", "back"), "z": ("bottom", "top")}


def partly_glued(joint: Joint) -> bool:
    """Return whether glue goes on parts of a joint only."""
    return joint.glued and joint.patches != (joint.region,)


def patch_words(joint: Joint) -> Detail:
    """Return which parts of a joint get glue: ``the middle``, 60; ``the front``, 75."""
    words: Detail = ()
    for turn, patch in enumerate(joint.patches):
        words = (*words, *((" and ",) if turn else ()), *_one(patch, joint.region))
    return words


def _one(patch: Box, region: Box) -> Detail:
    for axis in range(3):
        wide = patch.extent(axis)
        if wide == region.extent(axis):
            continue
        low, high = _SIDES[AXIS_NAMES[axis]]
        if patch.low[axis] == region.low[axis]:
            return (f"the {low} ", wide)
        if patch.high[axis] == region.high[axis]:
            return (f"the {high} ", wide)
        return ("the middle ", wide)
    return ("all of it",)


def tape_details(coating: Coating, model: Model) -> tuple[Detail, ...]:
    """Return what tape goes on the glue faces of a coating's parts: how many, how wide, how long.

    A tenon and a mortise are not taped but kept bare, since tape does not go round them.
    """
    own = set(coating.copies)
    rows: dict[tuple[str, Fraction, Fraction], int] = {}
    for joint in (model.joint(name) for name in coating.masks):
        mate = joint.host if joint.guest in own else joint.guest
        for patch in joint.patches if joint.kind != "mortise and tenon" else ():
            sides = sorted(patch.extent(axis) for axis in range(3))
            what = f"where the {model.part_of(mate).name} goes"
            key = (what, sides[1], sides[2])
            rows[key] = rows.get(key, 0) + 1
    taped: list[Detail] = [
        (f"{spoken(count, 'strip')} of tape {what}, ", wide - TAPE_LESS, " wide, ", long, " long")
        for (what, wide, long), count in rows.items()
    ]
    if any(_is_tenon(joint) for joint in (model.joint(name) for name in coating.masks)):
        taped.append(("No coat on the tenons and in the mortises",))
    if rows:
        taped.append(("Tape off before the last coat is hard",))
    return tuple(taped)


def _is_tenon(joint: Joint) -> bool:
    return joint.kind == "mortise and tenon"


def kept_dry(joints: Iterable[Joint], model: Model) -> tuple[Detail, ...]:
    """Return the joints that the notes keep dry, with what holds them."""
    rows: dict[tuple[str, str, str], int] = {}
    for joint in joints:
        if joint.dry:
            pair = (model.part_of(joint.guest).name, model.part_of(joint.host).name)
            key = (*pair, _held_by(joint))
            rows[key] = rows.get(key, 0) + 1
    return tuple((f"No glue between {guest} and {host}: {held}",) for guest, host, held in rows)


def _held_by(joint: Joint) -> str:
    if joint.pinned is not None:
        return "a pin at the middle holds them, and both ends are free to move"
    if joint.fastened == "bolted":
        return "bolts hold them"
    if joint.fastened == "knock-down":
        return "they come apart again"
    return "they stay dry"
