"""The parts and the steps document as the oracle needs them, read from their JSON alone."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import hypot, sqrt
from typing import Any

from tests.property.plan_oracle.regions import SURFACES, Box, Range

Json = dict[str, Any]
UNIT_OF_AXIS = {"x": 0, "y": 1, "z": 2}


def length(value: Json | str) -> Fraction:
    """A length of the contract, or one of its exact strings, in mm."""
    text = value["exact"] if isinstance(value, dict) else value
    return Fraction(str(text).removesuffix(" mm"))


def limits(pair: list[str]) -> Range:
    """A pair of exact strings as a range."""
    low, high = (length(each) for each in pair)
    return low, high


@dataclass(frozen=True, slots=True)
class Cut:
    """A feature as the parts document states it."""

    id: str
    kind: str
    surface: str
    hands: tuple[str, ...]
    box: Box
    across: Range
    along: Range
    depth: Fraction
    joint: str | None
    toward: str | None


@dataclass(frozen=True, slots=True)
class PartRow:
    """A part with its sizes, its features, and the handedness of each copy.

    `planed` is how much larger in mm it may be sawn, since it is planed in its place.
    """

    name: str
    stock: str
    sizes: tuple[Fraction, Fraction, Fraction]
    staves: int
    waits: frozenset[str]
    planed: Fraction
    cuts: dict[str, Cut]
    hand_of: dict[str, str]
    turned: dict[str, int]


def parts_of(document: Json) -> dict[str, PartRow]:
    """The parts by name."""
    return {row["name"]: _part(row) for row in document["parts"]}


def _part(row: Json) -> PartRow:
    # Until the frame is glued, a part with horns is longer, and its places are counted from them.
    horn = length(row["horns"]) if "horns" in row else Fraction(0)
    sizes = (length(row["length"]) + 2 * horn, length(row["width"]), length(row["thickness"]))
    if "sloped" in row:
        # It is sawn along its slope, and its tenon runs from the shoulder to that end.
        upright, shoulder = row["length"]["exact"], row["sloped"]["shoulder"]["exact"]
        sizes = (length(row["sloped"]["length"]), *sizes[1:])
        end = row["sloped"]["length"]["exact"]
        row = row | {
            "features": [
                each | {"along": [shoulder, end]}
                if each["along"][1] == upright
                else each | {"along": _along_the_slope(row, each)}
                for each in row["features"]
            ]
        }
    return PartRow(
        name=row["name"],
        stock=row["stock"],
        sizes=sizes,
        staves=row["made_of"]["staves"] if row["made_of"] else 0,
        waits=frozenset(size for size in ("length", "width") if row[size].get("nominal")),
        planed=Fraction(0),
        cuts={each["id"]: _cut(each, sizes, horn) for each in row["features"]},
        hand_of={copy["name"]: copy["hand"] for copy in row["copies"]},
        turned={copy["name"]: _handedness(copy["axes"]) for copy in row["copies"]},
    )


def _along_the_slope(row: Json, feature: Json) -> list[str]:
    """Where a cut stands on the bar itself: as far below the shoulder as the slope is long."""
    low, high = limits(feature["along"])
    copy = row["copies"][0]
    slope = hypot(*(float(Fraction(copy["lean"][axis])) for axis in "xy"))
    level = length(copy["lean"]["level"]) - length(copy["box"]["z"][0])
    if feature["kind"] not in {"hole", "mortise"}:
        return list(feature["along"])
    down = float(level - (low + high) / 2) * sqrt(1 + slope * slope)
    middle = length(row["sloped"]["shoulder"]) - Fraction(round(down * 1000), 1000)
    half = (high - low) / 2
    return [f"{middle - half} mm", f"{middle + half} mm"]


def _cut(row: Json, sizes: tuple[Fraction, Fraction, Fraction], horn: Fraction) -> Cut:
    along, across, depth = limits(row["along"]), limits(row["across"]), length(row["depth"])
    start, end = along[0] + horn, along[1] + horn
    if row["kind"] in {"long slot", "rabbet"}:
        # What runs along a part to its end runs on through the horn.
        start = Fraction(0) if start == horn else start
        end = sizes[0] if end == sizes[0] - horn else end
    along = (start, end)
    direction, side = SURFACES[row["surface"]]
    size = sizes[direction]
    deep = (size - depth, size) if side else (Fraction(0), depth)
    boxes = ((deep, along, across), (along, deep, across), (along, across, deep))
    return Cut(
        id=row["id"],
        kind=row["kind"],
        surface=row["surface"],
        hands=tuple(row["hands"]),
        box=boxes[direction],
        across=across,
        along=along,
        depth=depth,
        joint=row["joint"],
        toward=row.get("toward"),
    )


def _handedness(axes: dict[str, str]) -> int:
    return turning([_vector(axes[name]) for name in ("length", "width", "thickness")])


def _vector(word: str) -> tuple[int, int, int]:
    row = [0, 0, 0]
    row[UNIT_OF_AXIS[word[1]]] = 1 if word[0] == "+" else -1
    return row[0], row[1], row[2]


def turning(rows: list[tuple[int, int, int]]) -> int:
    """The determinant of three directions: +1 right-handed, -1 mirrored."""
    (a, b, c), (d, e, f), (g, h, i) = rows
    return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)


@dataclass(frozen=True, slots=True)
class Row:
    """One work row with the step that it stands in; `deed` is the middle of the operation id."""

    step: Json
    work: Json
    subject: str
    deed: str

    @property
    def number(self) -> int:
        """The number of the step."""
        found: int = self.step["number"]
        return found

    @property
    def copies(self) -> list[str]:
        """The copies that are worked."""
        found: list[str] = self.work["copies"]
        return found


def rows_of(document: Json) -> Iterator[Row]:
    """Every work row of the plan, in order."""
    for step in document["steps"]:
        for work in step["work"]:
            subject, _, rest = work["operation"].partition(" / ")
            yield Row(step, work, subject, rest.partition(" / ")[0])
