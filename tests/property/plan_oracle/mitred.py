"""Mitres: the angle, the stop, the side at the fence, and that the blade goes through."""

from fractions import Fraction

from tests.property.plan_oracle.reading import Cut, PartRow, Row, length
from tests.property.plan_oracle.regions import OPPOSITE, SURFACES, Box


def mitred(row: Row, part: PartRow, cut: Cut, base: dict[str, Fraction]) -> list[Box] | str:
    """The corner that is sawn off: at 45 degrees, to the full length, the long side at the fence.

    Where the blade itself is tilted the long side lies down.
    """
    hold, settings = row.work["hold"], row.step["settings"]
    turned = settings["angle" if row.step["station"] == "mitre saw" else "tilt"]
    if turned is None or turned["exact"] != "45 deg":
        return f"{cut.id} is sawn at {turned}"
    if hold["at_stop"] is not None:
        if hold["at_stop"] != OPPOSITE[cut.surface]:
            return f"{cut.id} is sawn while {hold['at_stop']} is at the stop"
        if length(settings["stop"]) != part.sizes[0]:
            return f"{cut.id} is sawn {length(settings['stop'])} from the stop"
    long_side = hold["against_fence"] if row.step["station"] == "mitre saw" else hold["down"]
    direction, _ = SURFACES[long_side]
    deep = part.sizes[direction]
    if row.step["station"] == "table saw" and not _is_through(row, part, base):
        return f"{cut.id}: the blade does not rise through {long_side}"
    if not row.work["passes"]:
        return f"no pass is made for {cut.id}"
    if cut.depth != deep:
        return f"{cut.id} is {cut.depth} back and {deep} across"
    return [cut.box]


def _is_through(row: Row, part: PartRow, base: dict[str, Fraction]) -> bool:
    # Heights are plumb above the table, whether the blade leans or not.
    settings, (direction, _) = row.step["settings"], SURFACES[row.work["hold"]["down"]]
    floor = base.get(settings["accessory"], Fraction(0))
    height = settings["height"]
    return height is not None and length(height) >= floor + part.sizes[direction]
