"""What holds a glue-up together where no clamps are used, and who lends a hand (TRADE K3, C2.2)."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from dryfit.operations.words import in_a_word, listed
from dryfit.placing.model import Assembly, Joint, Model
from dryfit.plan.operation import Detail

SHUT_BY: Mapping[str, str] = {
    "weights": "the weights laid",
    "tape": "the tape pulled",
    "pins": "the pins set",
}
"""What stands ready at the dry fit in place of clamps."""


def pressing_details(
    assembly: Assembly, joints: tuple[Joint, ...], model: Model, many: int
) -> tuple[Detail, ...]:
    """Return what presses where, and that it takes more than one pair of hands."""
    rows: list[Detail] = []
    if many > 1:
        rows.append((f"Takes {in_a_word(many)} people: call them before the glue is opened",))
    if assembly.pressed is not None:
        rows.append((_pressed(assembly.pressed, joints, model),))
    return tuple(rows)


def _pressed(how: str, joints: tuple[Joint, ...], model: Model) -> str:
    if how == "pins":
        # Strips are pinned to what carries them, which draws the mitres between them shut.
        joints = tuple(each for each in joints if each.kind != "mitre") or joints
    guests = _names((joint.guest for joint in joints), model)
    hosts = _names((joint.host for joint in joints), model)
    if how == "weights":
        return (
            f"No clamps: weights press {guests} down on {hosts}. Lay paper and a board on the "
            "face first, so that nothing is marked and the load is even up to the edges"
        )
    if how == "tape":
        return (
            f"No clamps: tape pulled tight across the joints of {guests} with {hosts}, on both "
            "sides, draws them shut"
        )
    return (
        f"No clamps: pins through {guests} into {hosts} hold them while the glue sets, two to each "
        "joint"
    )


def _names(copies: Iterable[str], model: Model) -> str:
    parts = dict.fromkeys(model.part_of(name).name for name in copies)
    return listed(f"the {model.part(name).written.lower()}" for name in parts)
