"""Wooden runners at the bench: set back by a spacer, waxed last, tried out (B21, K7)."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from dryfit.kinds.joints import RUNNERS
from dryfit.operations.fitting.loose_units import LooseUnit
from dryfit.placing.model import Joint, Model
from dryfit.plan.operation import Detail

RUNS = "it runs in and out without rocking, and the gap is equal all round"


def runner_joints(copies: Iterable[str], model: Model) -> tuple[Joint, ...]:
    """Return the joints by which these copies are runners or run on some."""
    own = set(copies)
    return tuple(
        joint for joint in model.joints if joint.kind in RUNNERS and own & {joint.guest, joint.host}
    )


def runs_on_wood(unit: LooseUnit, model: Model) -> bool:
    """Return whether a unit is a drawer that runs on wooden runners."""
    own = set(unit.copies)
    return any(joint.host in own for joint in runner_joints(own, model))


def runner_details(unit: LooseUnit, model: Model) -> tuple[Detail, ...]:
    """Return how far runners are set back, that the front screw is tight, and how they are tried.

    A spacer does it, as thick as what covers the drawer's front and the stop of its groove take.
    """
    joints = runner_joints(unit.copies, model)
    if not joints or joints[0].guest not in unit.copies:
        return ()
    runner = model.copy(joints[0].guest)
    run = runner.frame.axes[0][0]
    hosts = [joint.host for joint in unit.joints if joint.guest == runner.name]
    if not hosts:
        return ()
    back = runner.box.low[run] - min(_seen_from(host, run, model) for host in hosts)
    rows: list[Detail] = []
    if back > 0:
        spacer = (
            f" back from the front of {unit.onto}: a spacer so thick, held flush, sets all alike"
        )
        rows.append(("Front ends ", back, spacer))
    rows.append(("Round holes to the front, slots to the rear; try the drawer on front screws",))
    return tuple(rows)


def _seen_from(name: str, run: int, model: Model) -> Fraction:
    """Return where a copy begins as one sees it: a rail at its shoulder, not at its tenon."""
    copy, part = model.copy(name), model.part_of(name)
    along = copy.frame.axes[0][0] == run
    hidden = max((add.length for add in part.adds), default=Fraction(0)) if along else Fraction(0)
    return copy.box.low[run] + hidden


def pushed_in(unit: LooseUnit, model: Model) -> str:
    """Return the sentence that puts a drawer on its runners."""
    if all(joint.kind == "bottom runner" for joint in runner_joints(unit.copies, model)):
        return (
            f"Rub paste wax on the runners, on what the drawer touches above and beside it, and on "
            f"the edges of {unit.words}, the last of all, and push it in"
        )
    return (
        f"Rub paste wax on the runners and into the grooves of {unit.words}, the last of all, and "
        "push it in on its runners"
    )
