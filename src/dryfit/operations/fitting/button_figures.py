"""The figures of a button that its maker needs: tongue, set-down, stand-off, screw hole (B26.2)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.joinery.screws import screw_for
from dryfit.operations.words import listed
from dryfit.placing.model import Fitting, Joint, Model, Part
from dryfit.plan.operation import Detail

UP = 2
"""The axis of the piece that points upwards."""


def button_details(part: Part, model: Model) -> tuple[Detail, ...]:
    """Return the sentences with the figures of a made button; none for parts of another kind."""
    own = {copy.name for copy in part.copies}
    joints = [each for each in model.joints if each.kind == "buttons" and each.guest in own]
    joint = joints[0] if joints else None
    fitting = next(
        (each for each in model.fittings if joint is not None and joint.id in each.joints), None
    )
    copy = part.copies[0]
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
    rail, held = model.part_of(joint.host).name, fitting.part
    return (
        *_where_they_go(part, joints, model),
        (
            *("The grain runs along the button, from the tongue back: plane the board to ",),
            *(part.thickness, ", rip ", part.width, " wide, crosscut ", part.length, " long"),
        ),
        (
            *("Tongue ", tongue, " long, ", thick, " thick, set down ", set_down),
            f" from the button's top: the screw pulls the {held} down on it",
        ),
        ("The body stands ", stand_off, f" off the {rail}, so that the {held} can move"),
        *_screw_hole(part, tongue, fitting, model),
    )


def _where_they_go(part: Part, joints: list[Joint], model: Model) -> tuple[Detail, ...]:
    """Return which parts the buttons of one kind enter, where there are several kinds."""
    if sum(each.made for each in model.parts) < 2:
        return ()
    rails = dict.fromkeys(model.part_of(joint.host).written.lower() for joint in joints)
    return ((f"The {part.written} go into the {listed(rails)}",),)


def _screw_hole(part: Part, tongue: Fraction, fitting: Fitting, model: Model) -> tuple[Detail, ...]:
    """Return where the screw goes: the middle of the body, through a hole clear of its shank."""
    screw = screw_for(part.thickness, model.part(fitting.part).thickness)
    if screw is None:
        return ()
    from_tip = (tongue + part.length) / 2
    where = " through the middle of the body, "
    return (("Screw hole ", screw.clearance, where, from_tip, " from the tongue's tip"),)
