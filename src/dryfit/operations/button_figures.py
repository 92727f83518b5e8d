"""The figures of a button that its maker needs: tongue, set-down, stand-off, screw hole (B26.2)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.joinery.screws import screw_for
from dryfit.placing.model import Fitting, Model, Part

UP = 2
"""The axis of the piece that points upwards."""


def button_details(part: Part, model: Model) -> tuple[str, ...]:
    """Return the sentences with the figures of a made button; none for parts of another kind."""
    joints = [joint for joint in model.joints if joint.kind == "buttons"]
    fitting = next((each for each in model.fittings if each.kind == "buttons"), None)
    copy = part.copies[0]
    joint = next((each for each in joints if each.guest == copy.name), None)
    laps = [feature for feature in part.features if feature.role == "button tongue"]
    if joint is None or fitting is None or not laps:
        return ()
    regions = {feature.id: feature.box(copy.box, copy.frame) for feature in laps}
    set_down = sum(
        (lap.depth for lap in laps if regions[lap.id].high[UP] == copy.box.high[UP]), Fraction(0)
    )
    thick = part.thickness - sum((lap.depth for lap in laps), Fraction(0))
    tongue = max(lap.along[1] - lap.along[0] for lap in laps)
    stand_off = tongue - joint.region.extent(copy.frame.axes[0][0])
    show = model.display
    rail, held = model.part_of(joint.host).name, fitting.part

    def size(length: Fraction) -> str:
        return show.with_unit(length, fitted=True)

    shape = f"Tongue {size(tongue)} long, {size(thick)} thick, set down {size(set_down)}"
    return (
        f"{shape} from the button's top: the screw pulls the {held} down on it",
        f"The body stands {size(stand_off)} off the {rail}, so that the {held} can move",
        *_screw_hole(part, tongue, fitting, model),
    )


def _screw_hole(part: Part, tongue: Fraction, fitting: Fitting, model: Model) -> tuple[str, ...]:
    """Return where the screw goes: the middle of the body, through a hole clear of its shank."""
    screw = screw_for(part.thickness, model.part(fitting.part).thickness)
    if screw is None:
        return ()
    show = model.display
    from_tip = show.with_unit((tongue + part.length) / 2, fitted=True)
    hole = show.with_unit(screw.clearance, fitted=True)
    return (f"Screw hole {hole} through the middle of the body, {from_tip} from the tongue's tip",)
