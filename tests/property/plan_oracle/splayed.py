"""Legs that lean: the bar tipped over as a whole, by rotation in floats, against what is told.

The tool places them by shearing upright boxes; here the square bar is turned about a level axis
until it leans as the parts document says, and its shoulder, foot and hole are looked at in space.
"""

from collections.abc import Iterator
from math import atan, cos, degrees, hypot, sin, sqrt

from tests.property.plan_oracle.reading import UNIT_OF_AXIS, Json, length

NEAR = 0.01
"""Figures are rounded to 1/1000 mm, and several add up."""
Vector = tuple[float, float, float]


def splayed(steps: Json, parts: Json) -> Iterator[str]:
    """What is wrong with splayed legs, their holes and their feet."""
    leaning = {
        copy["name"]: (copy, row)
        for row in parts["parts"]
        for copy in row["copies"]
        if "lean" in copy and "sloped" in row
    }
    for name, (copy, row) in leaning.items():
        yield from _sawn(name, copy, row, parts)
        yield from _lines(name, copy, row)
        yield from _hole(name, copy, parts)
    yield from _between(parts, leaning)
    for part in dict.fromkeys(row["name"] for _, row in leaning.values()):
        row = next(each for each in parts["parts"] if each["name"] == part)
        yield from _feet(row, steps)


def _per_down(copy: Json) -> tuple[float, float]:
    across, back = (_ratio(copy["lean"][axis]) for axis in "xy")
    return across, back


def _ratio(text: str) -> float:
    above, _, below = text.partition("/")
    return int(above) / int(below or 1)


def tipped(point: Vector, per_down: tuple[float, float]) -> Vector:
    """Where a point of an upright bar comes when its foot swings out, the origin held fast."""
    slope = hypot(*per_down)
    out = (per_down[0] / slope, per_down[1] / slope)
    turn = atan(slope)
    cosine, sine = cos(turn), sin(turn)
    along = point[0] * out[0] + point[1] * out[1]
    aside = point[1] * out[0] - point[0] * out[1]
    # Down swings outwards, and outwards swings up.
    flat, up = along * cosine - point[2] * sine, along * sine + point[2] * cosine
    return flat * out[0] - aside * out[1], flat * out[1] + aside * out[0], up


def _moved(point: Vector, per_down: tuple[float, float]) -> Vector:
    """How far a point comes when the bar is tipped."""
    x, y, z = (new - old for new, old in zip(tipped(point, per_down), point, strict=True))
    return x, y, z


def _between(parts: Json, leaning: Json) -> Iterator[str]:
    """What leans without being sawn aslant: it runs between legs that lean as it does."""
    for row in parts["parts"]:
        for copy in row["copies"]:
            if "lean" not in copy or "sloped" in row:
                continue
            hosts = [j["between"][0] for j in parts["joints"] if j["between"][1] == copy["name"]]
            if len(hosts) != 2 or any(leaning[host][0]["lean"] != copy["lean"] for host in hosts):
                yield f"{copy['name']}: it leans otherwise than {hosts}"


def _sawn(name: str, copy: Json, row: Json, parts: Json) -> Iterator[str]:
    """Yield where the bar, tipped with its shoulder's middle at the seat, is not what is told."""
    per_down = _per_down(copy)
    sawn, shoulder, over = (
        float(length(row["sloped"][key])) for key in ("length", "shoulder", "over")
    )
    half = float(length(row["width"])) / 2, float(length(row["thickness"])) / 2
    if copy["axes"]["width"][1] == "y":
        half = half[::-1]
    low = float(length(copy["box"]["z"][0]))
    level = float(length(copy["lean"]["level"]))
    foot = [
        tipped((x * half[0], y * half[1], -shoulder), per_down)[2] for x in (-1, 1) for y in (-1, 1)
    ]
    if abs(level + min(foot) - (low - over)) > NEAR:
        yield f"{name}: its lowest corner stands {level + min(foot)}, not {over} below the floor"
    if level + max(foot) > low:
        yield f"{name}: its foot has no wood at the floor all round"
    joint = next(each for each in parts["joints"] if each["between"][1] == name)
    top = float(length(joint["region"]["z"][1]))
    radius = float(length(joint["region"]["x"][1]) - length(joint["region"]["x"][0])) / 2
    # The rim of the tenon's end that is lowest when it leans.
    slope = hypot(*per_down)
    rim = (sawn - shoulder) / sqrt(1 + slope**2) - radius * slope / sqrt(1 + slope**2)
    if level + rim < top - NEAR:
        yield f"{name}: its tenon ends {level + rim} high, below the top of the seat, {top}"


def _lines(name: str, copy: Json, row: Json) -> Iterator[str]:
    """Yield shoulder lines that are not level once the leg is tipped."""
    per_down = _per_down(copy)
    sides = _facing(copy)
    for feature in row["features"]:
        if copy["hand"] not in feature["hands"] or feature["joint"] is None:
            # An eased edge runs along the leg, however that leans.
            continue
        told = {side: _ratio(rise) for side, rise in feature.get("slopes", {}).items()}
        normal = sides[feature["surface"]]
        if feature["kind"] in {"hole", "mortise"}:
            # Cut square into the bar: what goes in is level, and stays so only across the lean.
            bit = [0.0, 0.0, 0.0]
            bit[normal[0]] = 1.0
            if told or hypot(*_moved((bit[0], bit[1], bit[2]), per_down)) > 1e-9:
                yield f"{name}: {feature['id']} does not stay level"
            continue
        wanted = {
            side: abs(per_down[axis])
            for side, (axis, sign) in sides.items()
            if axis < 2 and axis != normal[0] and per_down[axis] * sign > 0
        }
        if told != {side: rise for side, rise in wanted.items() if rise}:
            yield f"{name}: {feature['id']} slopes {told}, not {wanted}"
        for side, rise in told.items():
            axis, sign = sides[side]
            step = [0.0, 0.0, -rise]
            step[axis] = float(sign)
            if abs(tipped((step[0], step[1], step[2]), per_down)[2]) > 1e-9:
                yield f"{name}: the line of {feature['id']} is not level"
        steepest = degrees(atan(hypot(*told.values(), 0.0)))
        if told and abs(feature["angle"]["deg"] - steepest) > 0.0001:
            yield f"{name}: {feature['id']} at {feature['angle']['deg']}, not {steepest}"


def _hole(name: str, copy: Json, parts: Json) -> Iterator[str]:
    """Yield the hole of a leg that leans otherwise than its leg."""
    per_down = _per_down(copy)
    joint = next(each for each in parts["joints"] if each["between"][1] == name)
    host, row = next(
        (other, row)
        for row in parts["parts"]
        for other in row["copies"]
        if other["name"] == joint["between"][0]
    )
    sides = _facing(host)
    region = joint["region"]
    middles = [float(sum(map(length, region[axis]), 0)) / 2 for axis in "xyz"]
    for feature in row["features"]:
        if feature["kind"] != "hole" or not feature.get("slopes"):
            continue
        if any(
            abs(_middle(host, feature[key], side) - middles[sides[side][0]]) > NEAR
            for key, side in (("along", "R"), ("across", "E"))
        ):
            continue
        told = {sides[side]: _ratio(rise) for side, rise in feature["slopes"].items()}
        wanted = {
            (axis, 1 if rise > 0 else -1): abs(rise) for axis, rise in enumerate(per_down) if rise
        }
        if told != wanted:
            yield f"{name}: its hole leans {told}, not {wanted}"
        # The bit follows the middle line of the tipped leg.
        line = tipped((0.0, 0.0, -1.0), per_down)
        if (
            abs(degrees(atan(hypot(line[0], line[1]) / -line[2])) - feature["angle"]["deg"])
            > 0.0001
        ):
            yield f"{name}: its hole is bored at {feature['angle']['deg']}"
        return
    yield f"{name}: there is no leaning hole where it goes in"


def _middle(host: Json, limits: list[str], side: str) -> float:
    axis, sign = _facing(host)[side]
    low, high = (float(length(each)) for each in host["box"]["xyz"[axis]])
    middle = float(sum(map(length, limits), 0)) / 2
    return low + middle if sign < 0 else high - middle


def _facing(copy: Json) -> dict[str, tuple[int, int]]:
    """Each surface with the axis and the side of the piece that it looks to."""
    found = {}
    for key, near, far in (("length", "R", "R2"), ("width", "E", "E2"), ("thickness", "F", "B")):
        word = copy["axes"][key]
        axis, sign = UNIT_OF_AXIS[word[1]], 1 if word[0] == "+" else -1
        found[near], found[far] = (axis, -sign), (axis, sign)
    return found


def _feet(row: Json, steps: Json) -> Iterator[str]:
    """Yield where feet are not sawn over the block, after the glue, or the length is another."""
    names = {copy["name"] for copy in row["copies"]}
    over = length(row["sloped"]["over"])
    sawn = [
        (step["number"], work)
        for step in steps["steps"]
        for work in step["work"]
        if work["operation"].endswith(" / feet") and names & set(work["copies"])
    ]
    done = [name for _, work in sawn for name in work["copies"]]
    if sorted(done) != sorted(names):
        yield f"{row['name']}: the feet of {sorted(done)} are levelled"
    for number, work in sawn:
        blocks = [each["spacer"] for each in work["passes"]]
        if len(blocks) != 1 or blocks[0] is None or length(blocks[0]) != over:
            yield f"step {number}: the feet are scribed over {blocks}"
        glued = [
            step["number"]
            for step in steps["steps"]
            for each in step["work"]
            if each["operation"].endswith(" / glue up") and names & set(each["copies"])
        ]
        if not glued or number < max(glued):
            yield f"step {number}: the feet are levelled before the glue"
