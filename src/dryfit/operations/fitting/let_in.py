"""How loose panels go to their place: slid into grooves, or laid into rabbets (TRADE B20, B24)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.operations.fitting.loose_units import LooseUnit
from dryfit.operations.words import listed
from dryfit.placing.model import Model
from dryfit.plan.operation import Detail
from dryfit.quantities.units import INCH

_PITCH = {"mm": Fraction(150), "in": 6 * INCH}
"""From one pin to the next round a back of sheet goods (common practice)."""


def let_in(unit: LooseUnit, screwed: str, model: Model) -> str | None:
    """Return the sentence that puts a panel into its grooves or rabbets; None for all else.

    `screwed` is the clause on its screws, empty where there are none.
    """
    if lies_by(unit, "slid panel", model):
        grooves = "its grooves" if unit.many == 1 else "their grooves"
        past = listed(dict.fromkeys(f"the {model.part_of(j.host).name}" for j in unit.joints))
        word = "under" if screwed else "past"
        return f"Slide {unit.words} into {grooves}, {word} {past}{screwed}: no glue"
    if not lies_by(unit, "back rabbet", model):
        return None
    if unit.many > 1:
        fixed = screwed or ", and drive a pin at the middle of each end"
        return f"Lay {unit.words} into the rabbets with spacers between{fixed}: no glue"
    if model.part_of(unit.copies[0]).stock == "solid":
        # Pinned along its edges as well it could not move, and would split.
        fixed = screwed or ", and drive a pin at the middle of each end only, so that it can move"
    else:
        fixed = screwed or ", and drive pins all round"
    return f"Lay {unit.words} into the rabbets{fixed}: no glue"


def pin_details(unit: LooseUnit, screws: int, model: Model) -> tuple[Detail, ...]:
    """Return how far apart pins stand round a back of sheet goods that no screws hold."""
    part = model.part_of(unit.copies[0])
    laid_in = unit.many == 1 and not screws and lies_by(unit, "back rabbet", model)
    if not laid_in or part.stock == "solid" or lies_by(unit, "slid panel", model):
        return ()
    return (("One pin about every ", _PITCH[model.display.unit]),)


def check_let_in(unit: LooseUnit, model: Model) -> str | None:
    """Return what is looked at when a panel is in its grooves or rabbets; None for all else."""
    if lies_by(unit, "slid panel", model):
        return "it slides in by hand to the bottom of its last groove, flush with what it passes"
    if not lies_by(unit, "back rabbet", model):
        return None
    if unit.many > 1:
        return "gaps equal"
    return "both diagonals of the case are equal before the second pin or screw goes in"


def lies_by(unit: LooseUnit, kind: str, model: Model) -> bool:
    """Return whether a copy of a unit goes into others by joints of a kind."""
    own = set(unit.copies)
    return any(joint.kind == kind and joint.guest in own for joint in model.joints)
