"""The drawing of one step's setting, chosen by the station's axes and by what the cut asks for."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dryfit.booklet.drawing.canvas import Canvas, Svg
from dryfit.booklet.drawing.cradle import cradle_drawing
from dryfit.booklet.drawing.crosscut import crosscut_drawing
from dryfit.booklet.drawing.cut_at_stop import crosscut_of
from dryfit.booklet.drawing.lying import ways_of_lying
from dryfit.booklet.drawing.mitre import mitre_drawing
from dryfit.booklet.drawing.mortise import stopped_drawing, stopped_of
from dryfit.booklet.drawing.panel import panel_drawing
from dryfit.booklet.drawing.part import draw_layout, marked_ways
from dryfit.booklet.drawing.rip import rip_drawing, rip_of
from dryfit.booklet.drawing.shaped import SHAPES, draw_shapes, shaped_drawing
from dryfit.booklet.drawing.shapes import Notes
from dryfit.booklet.drawing.sloping_side import compound_in, draw_compound
from dryfit.booklet.drawing.splayed_leg import draw_splayed, splayed_in
from dryfit.booklet.drawing.tails import tail_ends, tails_drawing
from dryfit.booklet.drawing.thickness import planer_drawing
from dryfit.booklet.text import Say, Text
from dryfit.placing.model import Model
from dryfit.plan.plan import Step
from dryfit.plan.setting import Setting
from dryfit.quantities import Display
from dryfit.shop.shop import Accessory


def setup_drawing(
    model: Model,
    step: Step,
    accessories: Sequence[Accessory],
    display: Display,
    *,
    cutter: Text = (),
    front: bool = True,
    noted: Notes = frozenset(),
) -> Svg | None:
    """Return the setting of one step to scale, with exactly the settings' numbers.

    `cutter` is its name, where the booklet says it with a figure; `front` asks for the view that
    shows how high or deep a cut at a stop goes; what is `noted` below an earlier drawing is not
    said again.  A panel is drawn in its clamps.
    None for work that has no setting to draw: jointing, sanding, measuring, coats.
    """
    for operation in step.operations:
        part = next((part for part in model.parts if part.name == operation.part), None)
        if operation.glue_up is not None and part is not None and part.staves is not None:
            clamps = sum(row.count for row in operation.glue_up.clamps)
            return panel_drawing(part, clamps, part.name)
    say = Say(display)
    title = f"{step.station}: {step.id}"
    if _kinds(step) and _kinds(step) <= {"mitre", "key slot", *SHAPES}:
        slanting = _slanting(model, step, accessories, say, title)
        if slanting is not None:
            return slanting
    return _straight(model, step, accessories, say, title, cutter=cutter, front=front, noted=noted)


def _kinds(step: Step) -> set[str]:
    """Return the kinds of all that is cut in the step."""
    rows = ((operation.kind, work) for operation in step.operations for work in operation.work)
    return {kind for kind, work in rows if work.features}


def _straight(
    model: Model,
    step: Step,
    accessories: Sequence[Accessory],
    say: Say,
    title: str,
    *,
    cutter: Text,
    front: bool,
    noted: Notes,
) -> Svg | None:
    """Return a cut that goes straight in, what the planer takes off, or what is cut to marks."""
    values = _demanded(step)
    stop, height, thickness = (values.get(axis) for axis in ("stop", "height", "thickness"))
    depth = values.get("depth")
    fence = values.get("fence")
    if fence is not None and fence.unit != "mm":
        fence = None
    if stop is not None and stop.unit != "mm":
        # Stops that are off are no part of the drawing.
        stop = None
    cutter = cutter or (_name(values.get("cutter")),)
    from_above = depth is not None and fence is not None
    stopped = from_above or (stop is not None and stop.to == "both")
    along = stop is None and not stopped
    ways = ways_of_lying(model, step, "behind" if stopped else "along" if along else "before")
    if not ways:
        return None
    if stopped:
        limits = stopped_of(stop, fence, depth or height, rests=depth is not None)
        return stopped_drawing(limits, ways, say, title, section=front, noted=noted)
    if stop is not None:
        guide, base = _guide(values.get("accessory"), accessories)
        cut = crosscut_of(stop, height, guide, base, cutter)
        return crosscut_drawing(cut, ways, say, title, front=front, noted=noted)
    if fence is not None:
        return rip_drawing(rip_of(fence, height, cutter), ways, say, title, noted=noted)
    thickness = thickness or (depth if step.operations[0].kind == "thickness" else None)
    if thickness is not None:
        return planer_drawing(Fraction(thickness.value), ways, say, title)
    return _to_marks(model, step, say, title)


def _slanting(
    model: Model, step: Step, accessories: Sequence[Accessory], say: Say, title: str
) -> Svg | None:
    """Return a mitre at its saw, a slot across a glued corner in its cradle, or another shape.

    None for what is cut to marks by hand.
    """
    values, kinds = _demanded(step), _kinds(step)
    at_end = "angle" in values or ("tilt" in values and "stop" in values)
    if kinds <= SHAPES and ("jig" in values or not at_end):
        return shaped_drawing(model, step, values, say, title)
    if not values:
        return None
    _, base = _guide(values.get("accessory"), accessories)
    height = values.get("height")
    if "key slot" in kinds and height is not None:
        return cradle_drawing(Fraction(height.value), base, say, title)
    tilted = "tilt" in values
    ways = ways_of_lying(model, step, "before" if tilted else "behind")
    stop = values.get("stop")
    measured = stop is not None and stop.measure is not None
    return mitre_drawing(ways, say, title, tilted=tilted, base=base, measured=measured)


def _to_marks(model: Model, step: Step, say: Say, title: str) -> Svg | None:
    """Return what is cut to marks, by hand or on a machine without stop or fence."""
    ends = tail_ends(model, step)
    if ends:
        return tails_drawing(ends, say, title)
    canvas = Canvas()
    low = draw_shapes(canvas, model, step, {}, say)
    marked = [way for way in marked_ways(model, step) if way.regions]
    legs = splayed_in(model, step)
    low = draw_splayed(canvas, legs, say, low)
    low = draw_compound(canvas, compound_in(model, step), say, low)
    draw_layout(canvas, marked, say, low)
    return canvas.finish(title) if low or marked else None


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
