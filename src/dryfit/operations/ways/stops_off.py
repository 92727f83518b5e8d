"""A pair of stops stands in the way of all that runs past them, so they come off for it.

A stopped groove leaves one stop on either side; what is grooved from end to end there, or chopped
to marks along the whole part, would run against them (common practice).
"""

from __future__ import annotations

from dataclasses import replace

from dryfit.operations import setting_of
from dryfit.plan.operation import Operation
from dryfit.plan.setting import Setting

OFF = setting_of.named("stop", "off")


def with_stops_off(operations: tuple[Operation, ...]) -> tuple[Operation, ...]:
    """Return the operations; those without a stop ask for none where others leave a pair."""
    paired = {row.station for row in operations if any(_is_pair(each) for each in row.settings)}
    return tuple(
        replace(row, settings=(*row.settings, OFF)) if _runs_past(row, paired) else row
        for row in operations
    )


def _is_pair(setting: Setting) -> bool:
    return setting.axis == "stop" and setting.to == "both"


def _runs_past(row: Operation, paired: set[str]) -> bool:
    return row.station in paired and all(each.axis != "stop" for each in row.settings)
