"""The drawing of one step's setting, chosen by the station's axes and by what the cut asks for."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dryfit.booklet.drawing.canvas import Svg
from dryfit.booklet.drawing.crosscut import crosscut_drawing, crosscut_of
from dryfit.booklet.drawing.lying import Lying, ways_of_lying
from dryfit.booklet.drawing.mortise import mortise_drawing, stopped_of
from dryfit.booklet.drawing.part import layout_drawing
from dryfit.booklet.drawing.rip import rip_drawing, rip_of
from dryfit.booklet.drawing.thickness import planer_drawing
from dryfit.booklet.text import Say
from dryfit.placing.model import Model
from dryfit.plan.plan import Step
from dryfit.plan.setting import Setting
from dryfit.quantities import Display
from dryfit.shop.shop import Accessory

_THICKNESS_KINDS = ("thickness",)


def setup_drawing(
    model: Model, step: Step, accessories: Sequence[Accessory], display: Display
) -> Svg | None:
    """Return the setting of one step to scale, with exactly the settings' numbers.

    None for work that has no setting to draw: sanding, measuring, coats.
    """
    lyings = ways_of_lying(model, step)
    if not lyings:
        return None
    say = Say(display)
    values = _demanded(step)
    title = f"{step.station}: {step.id}"
    stop, fence, height = (values.get(axis) for axis in ("stop", "fence", "height"))
    cutter = _name(values.get("cutter"))
    if stop is not None and stop.to == "both":
        stopped = stopped_of(stop, fence, values.get("depth") or height)
        return mortise_drawing(stopped, lyings, say, title)
    if stop is not None and not _along_fence(fence, values.get("accessory"), accessories):
        guide, base = _guide(values.get("accessory"), accessories)
        return crosscut_drawing(crosscut_of(stop, height, guide, base, cutter), lyings, say, title)
    if fence is not None and isinstance(fence.value, Fraction):
        return rip_drawing(rip_of(fence, height, cutter), lyings, say, title)
    return _without_fence(step, lyings, values, say, title)


def _without_fence(
    step: Step, lyings: Sequence[Lying], values: dict[str, Setting], say: Say, title: str
) -> Svg | None:
    thickness = values.get("thickness") or values.get("depth")
    kinds = {operation.kind for operation in step.operations}
    if thickness is not None and kinds <= set(_THICKNESS_KINDS):
        return planer_drawing(Fraction(thickness.value), lyings, say, title)
    if any(way.regions for way in lyings):
        return layout_drawing(lyings, say, title)
    return None


def _along_fence(
    fence: Setting | None, accessory: Setting | None, accessories: Sequence[Accessory]
) -> bool:
    """Return whether the work runs along a fence although a stop stands somewhere too."""
    on_sled = any(known.name == _name(accessory) for known in accessories)
    return fence is not None and accessory is not None and not on_sled


def _demanded(step: Step) -> dict[str, Setting]:
    """Return the settings that the cut asks for; other axes only stand as they are."""
    standing = {axis: setting for axis, setting in step.settings if setting is not None}
    asked = {setting.axis for operation in step.operations for setting in operation.settings}
    return {axis: setting for axis, setting in standing.items() if not asked or axis in asked}


def _guide(setting: Setting | None, accessories: Sequence[Accessory]) -> tuple[str, Fraction]:
    name = _name(setting)
    for accessory in accessories:
        if accessory.name == name:
            return name, accessory.base
    return name, Fraction(0)


def _name(setting: Setting | None) -> str:
    return str(setting.value) if setting is not None else ""
