"""What the maker reads of a setting: square, to the near face, from what touches (TRADE 0.4, 0.5).

The swept cuts follow from values alone; here the words beside the values are held against them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from dryfit.plan.operation import Operation
from dryfit.plan.setting import Setting
from dryfit.rehearsal.at_machines.cutters import Toolbox
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.fault import Reason, Trouble

SQUARE: Mapping[tuple[str, str], int] = {
    ("table saw", "tilt"): 0,
    ("mitre saw", "angle"): 0,
    ("jointer", "fence"): 90,
}
"""Degrees at which a machine cuts square."""
ASLANT = frozenset({"bevel", "mitre"})
"""Kinds of operations that are not square."""
PAIRS = frozenset({"mortiser", "drill press", "router table"})
"""Machines whose stops limit the work on both sides."""


def misread(operation: Operation, axes: Axes, tools: Toolbox) -> Iterator[Trouble]:
    """Yield where the settings of an operation tell the maker something else than they are for."""
    for wanted in operation.settings:
        stands = axes.get(wanted.axis)
        if stands is None or not isinstance(stands.value, Fraction):
            continue
        square = SQUARE.get((operation.station, wanted.axis))
        if square is not None:
            if stands.value != square and operation.kind not in ASLANT:
                yield _wrong(f"the {wanted.axis} stands at {float(stands.value):g}°", f"{square}°")
            continue
        if wanted.unit != "mm":
            yield _wrong(f"the {wanted.axis} is told in {wanted.unit}", "mm")
        if wanted.axis in {"fence", "stop"}:
            yield from _faces(operation, wanted, axes, tools)
            yield from _touching(operation, wanted)
        elif wanted.axis == "height" and wanted.above != "table":
            yield _wrong(f"the height is told above the {wanted.above}", "a height above the table")


def _faces(operation: Operation, setting: Setting, axes: Axes, tools: Toolbox) -> Iterator[Trouble]:
    """Every distance is told to the near face; a pair of stops limits the work on both sides."""
    able = {"near", "both"} if setting.axis == "stop" and operation.station in PAIRS else {"near"}
    if setting.to not in able:
        yield _wrong(
            f"the {setting.axis} is told to the {setting.to} face of the cutter",
            "a distance to the near face",
        )
    cutter = axes.get("cutter")
    mounted = tools.cutters.get(str(cutter.value)) if cutter is not None else None
    if setting.to != "near" or setting.far is None or mounted is None:
        return
    near = setting.value
    if isinstance(near, Fraction) and setting.far != near + mounted.width:
        yield _wrong(
            f"the {setting.axis}: near face at {float(near):g} and a cutter "
            f"{float(mounted.width):g} wide do not make a far face at {float(setting.far):g}",
            "near face and cutter width that add up to the far face",
        )


def _touching(operation: Operation, setting: Setting) -> Iterator[Trouble]:
    """What a distance is read from touches in one row of the work at least."""
    holds = [work.hold for work in operation.work if work.hold is not None]
    ends = {hold.at_stop if setting.axis == "stop" else hold.against_fence for hold in holds}
    for hold in holds:
        if (hold.at_stop if setting.axis == "stop" else hold.against_fence) is None:
            yield Trouble(
                Reason.HOLD,
                f"nothing touches the {setting.axis}, from which it is measured",
                f"a surface at the {setting.axis}",
            )
            return
    if setting.origin is not None and holds and setting.origin not in ends:
        yield _wrong(
            f"the {setting.axis} is measured from {setting.origin}, which does not touch it",
            f"{' or '.join(sorted(filter(None, ends)))}, which does",
        )


def _wrong(message: str, needed: str) -> Trouble:
    return Trouble(Reason.SETTING, message, needed)
