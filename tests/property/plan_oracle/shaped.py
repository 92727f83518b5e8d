"""Tapers, curves and bevels: whether the saw, set and fed as told, takes off what is asked for.

The taper jig runs left of the blade, its stop block on the maker's side, and its edge is the line
of the cut.  A tilted blade leans away from the rip fence: what lies down loses most.
"""

from collections.abc import Iterator
from fractions import Fraction
from math import radians, tan

from tests.property.plan_oracle.reading import Cut, PartRow, Row, length
from tests.property.plan_oracle.regions import OPPOSITE, SURFACES, Box

SHAPES = {"taper", "curve", "bevel", "mitre"}
A_HAIR = Fraction(1, 50)


def is_shape(cut: Cut) -> bool:
    """Whether a line of the notes asks for a slant or a curve: joints have mitres of their own."""
    return cut.kind in SHAPES and cut.joint is None


def shaped(row: Row, part: PartRow, cut: Cut, base: dict[str, Fraction]) -> list[Box] | str:
    """The box of the shape where it comes out as it is asked for, else what is wrong."""
    settings, station = row.step["settings"], row.step["station"]
    if not row.work["passes"]:
        return f"no pass is made for {cut.id}"
    if station == "band saw":
        return _beside_line(row, part, cut)
    if station == "table saw" and not _is_through(row, part, base):
        return f"{cut.id}: the blade does not come through"
    if cut.kind == "taper":
        wrong = _on_jig(row, part, cut)
    elif settings.get("accessory") == "rip fence":
        wrong = _at_fence(row, part, cut)
    else:
        wrong = _at_end(row, part, cut)
    return [cut.box] if wrong is None else f"{cut.id}: {wrong}"


def _beside_line(row: Row, part: PartRow, cut: Cut) -> list[Box] | str:
    down = row.work["hold"]["down"]
    whole = [
        direction
        for direction, limits in enumerate(cut.box)
        if limits == (Fraction(0), part.sizes[direction]) and direction != SURFACES[cut.surface][0]
    ]
    if down is None or SURFACES[down][0] not in whole:
        return f"{cut.id}: {down} is down, which the blade does not cross square"
    if row.step["settings"]["fence"] != "off":
        return f"{cut.id}: the fence stands in the way"
    return [cut.box]


def _on_jig(row: Row, part: PartRow, cut: Cut) -> str | None:
    settings, hold = row.step["settings"], row.work["hold"]
    if settings["accessory"] != "taper jig" or settings["fence"] != "off":
        return f"on {settings['accessory']} with the fence at {settings['fence']}"
    if settings["tilt"]["exact"] != "0 deg":
        return "the blade is tilted"
    if hold["against_fence"] != OPPOSITE[cut.surface] or hold["at_stop"] != cut.toward:
        return f"held {hold}"
    size = part.sizes[SURFACES[cut.surface][0]]
    left, full = length(settings["jig"]), length(settings["jig"]["far"])
    # A straight edge: what is off at the block, and how much less of it on each mm from there.
    slope = (full - left) / length(settings["stop"])
    off, run = size - left, cut.along[1] - cut.along[0]
    if off != cut.depth or off - slope * run != 0:
        return f"{off} is off at the end, and {off - slope * run} where the taper begins"
    return None


def _at_fence(row: Row, part: PartRow, cut: Cut) -> str | None:
    settings, hold = row.step["settings"], row.work["hold"]
    if (hold["against_fence"], hold["down"]) != (OPPOSITE[cut.surface], cut.toward):
        return f"held {hold}"
    off = part.sizes[SURFACES[cut.surface][0]] - length(settings["fence"])
    high = part.sizes[SURFACES[hold["down"]][0]]
    if abs(off - cut.depth) > A_HAIR or abs(off - high * _rise(settings["tilt"])) > A_HAIR:
        return f"{off} is off at the table, and the blade stands at {settings['tilt']}"
    return None


def _at_end(row: Row, part: PartRow, cut: Cut) -> str | None:
    settings, hold = row.step["settings"], row.work["hold"]
    at_mitre_saw = row.step["station"] == "mitre saw"
    long_side = hold["against_fence"] if at_mitre_saw else hold["down"]
    if OPPOSITE[long_side] != cut.toward or hold["at_stop"] != OPPOSITE[cut.surface]:
        return f"held {hold}"
    if length(settings["stop"]) != part.sizes[0]:
        return f"the long point comes {length(settings['stop'])} from the stop"
    deep = part.sizes[SURFACES[long_side][0]]
    rise = _rise(settings["angle" if at_mitre_saw else "tilt"])
    if abs(deep * rise - cut.depth) > A_HAIR:
        return f"the saw stands at {rise}"
    return None


def _rise(angle: dict[str, str]) -> Fraction:
    return Fraction(tan(radians(float(Fraction(angle["exact"].removesuffix(" deg"))))))


def _is_through(row: Row, part: PartRow, base: dict[str, Fraction]) -> bool:
    settings, (direction, _) = row.step["settings"], SURFACES[row.work["hold"]["down"]]
    floor = base.get(settings["accessory"], Fraction(0))
    height = settings["height"]
    return height is not None and length(height) >= floor + part.sizes[direction]


def leaning(row: Row, gone: dict[str, str], kinds: set[str]) -> Iterator[str]:
    """Surfaces that touch although they are shaped away; the long side of a bevel still touches."""
    hold = row.work["hold"] or {}
    for how, surface in hold.items():
        kind = gone.get(surface)
        if kind is None or (kind == "taped taper" and kinds == {"taper"}):
            continue
        long_side = kind in {"bevel", "mitre"} and how != "down"
        if not (long_side and (kinds <= {"bevel", "mitre"} or how == "at_stop")):
            yield f"{surface} is {how} after its {kind}"
