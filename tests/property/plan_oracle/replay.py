"""Replays every cut on virtual blanks and compares what is removed with what was wanted.

Directions at a machine, seen by the maker: x to the right, y away from him, z up.  The sled's fence
is on his side and its stop on the left; every other fence lies behind the work; saw and router
table cut from below, mortiser and drill press from above.
"""

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise
from typing import Any

from tests.property.plan_oracle.mitred import mitred
from tests.property.plan_oracle.reading import (
    Cut,
    Json,
    PartRow,
    Row,
    length,
    parts_of,
    rows_of,
    turning,
)
from tests.property.plan_oracle.regions import (
    OPPOSITE,
    SURFACES,
    Box,
    Range,
    clipped,
    measured_from,
    minus,
)
from tests.property.plan_oracle.shaped import SHAPES, is_shape, leaning, shaped

FROM_ABOVE = {"mortiser", "drill press"}
ACROSS = {"end lap", "cross slot", "notch"}
A_HAIR = Fraction(1, 10)
"""Wood as thin as a shim at an open end breaks off without a pass of its own."""
TOLERANCE_OF_A_HOLE = Fraction(1, 2)
WHOLE = (Fraction(-(10**6)), Fraction(10**6))


def _is_across(cut: Cut) -> bool:
    # A rabbet at an end is longer across the part than it is along it.
    if cut.kind == "rabbet":
        return cut.along[1] - cut.along[0] < cut.across[1] - cut.across[0]
    return cut.kind in ACROSS


class Replay:
    """The blanks while the plan runs: what was taken from each copy, feature by feature."""

    def __init__(self, steps: Json, parts: Json) -> None:
        """Begin with whole blanks."""
        self.parts = parts_of(parts)
        self.kerf = {each["name"]: length(each["width"]) for each in steps["cutters"]}
        self.base = {each["name"]: length(each["base"]) for each in steps["accessories"]}
        self.steps = steps
        self.taken: dict[tuple[str, str], list[Box]] = {}
        self.gone: dict[str, dict[str, str]] = {}
        self.beside_line: set[str] = set()
        self.faults: list[str] = []

    def run(self) -> list[str]:
        """The faults found from the first step to the last."""
        for row in rows_of(self.steps):
            part = self.parts.get(row.work["part"])
            if part is None:
                continue
            for fault in (*self._held(row, part), *self._cut(row, part)):
                self.faults.append(f"step {row.number}, {row.work['operation']}: {fault}")
            self._shaped(row, part)
        self.faults += [f"{copy} is as the band saw left it" for copy in sorted(self.beside_line)]
        self._whole()
        return self.faults

    def _shaped(self, row: Row, part: PartRow) -> None:
        """Keep which surfaces a shape has taken, and which lines are still to be worked to."""
        cuts = [part.cuts[name] for name in row.work["features"] if name in part.cuts]
        for copy in row.copies:
            for cut in cuts:
                if cut.kind in SHAPES:
                    self.gone.setdefault(copy, {})[cut.surface] = cut.kind
            if cuts and row.step["station"] == "band saw":
                self.beside_line.add(copy)
            elif row.deed.startswith("fair "):
                self.beside_line.discard(copy)
            elif row.deed == "tape strips":
                own = self.gone.get(copy, {})
                own |= {face: "taped taper" for face, kind in own.items() if kind == "taper"}

    def _held(self, row: Row, part: PartRow) -> Iterator[str]:
        """The hold is one that the copy, left or right, can take without a mirror."""
        hold = row.work["hold"]
        kinds = {part.cuts[name].kind for name in row.work["features"] if name in part.cuts}
        for copy in row.copies:
            for fault in leaning(row, self.gone.get(copy, {}), kinds):
                yield f"{copy}: {fault}"
        if hold is None or None in hold.values():
            return
        for copy in row.copies:
            if copy in part.turned and _turned(row, hold) != part.turned[copy]:
                yield f"{copy} cannot lie so: {hold}"

    def _cut(self, row: Row, part: PartRow) -> Iterator[str]:
        for name in row.work["features"]:
            cut = part.cuts.get(name)
            if cut is None:
                yield f"no feature {name}"
                continue
            removed = self._removed(row, part, cut)
            if isinstance(removed, str):
                yield removed
                continue
            for copy in row.copies:
                yield from self._take(part, copy, cut, removed)

    def _take(self, part: PartRow, copy: str, cut: Cut, removed: list[Box]) -> Iterator[str]:
        if part.hand_of.get(copy) not in cut.hands:
            yield f"{copy} does not carry {cut.id}"
            return
        own = self.taken.setdefault((copy, cut.id), [])
        if not minus(removed, own):
            yield f"{copy}: {cut.id} is cut twice"
        gone = [box for (name, _), boxes in self.taken.items() if name == copy for box in boxes]
        beyond = minus(removed, [cut.box, *gone])
        if beyond and cut.kind != "hole":
            yield f"{copy}: {cut.id} takes too much, {_shown(beyond[0])}"
        own += removed
        if cut.kind == "rabbet":
            own += _fallen(cut, own)

    def _whole(self) -> None:
        for part in self.parts.values():
            for copy, hand in part.hand_of.items():
                for cut in part.cuts.values():
                    if hand not in cut.hands:
                        continue
                    left = minus([cut.box], self.taken.get((copy, cut.id), []))
                    if left and cut.kind != "hole":
                        self.faults.append(f"{copy}: {cut.id} is left uncut at {_shown(left[0])}")
                    elif (copy, cut.id) not in self.taken:
                        self.faults.append(f"{copy}: {cut.id} is never drilled")

    def _removed(self, row: Row, part: PartRow, cut: Cut) -> list[Box] | str:
        """The boxes that one row takes from a blank, or what makes that impossible."""
        station, hold = row.step["station"], row.work["hold"]
        if hold is None:
            return [cut.box]
        settings = row.step["settings"]
        if is_shape(cut) or cut.kind == "mitre":
            return (shaped if is_shape(cut) else mitred)(row, part, cut, self.base)
        unready = self._unready(row, cut)
        if unready is not None:
            return unready
        kerf = self.kerf[settings["cutter"]]
        above = station in FROM_ABOVE
        if _stands_on_edge(cut, hold, part):
            return self._on_edge(row, part, cut, kerf)
        if hold["down"] != (OPPOSITE[cut.surface] if above else cut.surface):
            return f"{hold['down']} is down, but {cut.surface} is to be cut"
        height = settings["depth"] if above else settings["height"]
        if height is None:
            return "depth of cut is not set"
        depth = length(height) - (0 if above else self.base.get(settings.get("accessory"), 0))
        if station == "band saw":
            return f"{cut.id} at the band saw is not known here"
        way = self._across if _is_across(cut) and not above else self._along
        way = self._over_pin if cut.kind == "fingers" else way
        return way(row, part, cut, kerf, depth)

    def _on_edge(self, row: Row, part: PartRow, cut: Cut, kerf: Fraction) -> list[Box] | str:
        """The second cut of a rabbet along an edge: the face that stays is at the fence."""
        hold, settings = row.work["hold"], row.step["settings"]
        if hold["against_fence"] != OPPOSITE[cut.surface]:
            return f"{hold['against_fence']} is at the fence, so that the strip is trapped"
        base = self.base.get(settings.get("accessory"), Fraction(0))
        near, far = length(settings["fence"]), length(settings["fence"]["far"])
        if far != near + kerf:
            return f"fence: near {near} and cutter {kerf} are not far {far}"
        ranges = [(Fraction(0), part.sizes[0]), WHOLE, WHOLE]
        for direction, limits in (
            measured_from(hold["against_fence"], (near, far), part.sizes),
            measured_from(
                hold["down"], (Fraction(0), length(settings["height"]) - base), part.sizes
            ),
        ):
            ranges[direction] = limits
        box = clipped((ranges[0], ranges[1], ranges[2]), part.sizes)
        return [] if box is None else [box]

    def _unready(self, row: Row, cut: Cut) -> str | None:
        """What keeps a cut that goes straight in from being made as the machine stands."""
        settings = row.step["settings"]
        tilt = settings.get("tilt")
        if settings.get("cutter") not in self.kerf:
            return f"no cutter of known width is mounted: {settings.get('cutter')}"
        if tilt is not None and tilt["exact"] != "0 deg" and cut.kind not in SHAPES:
            return f"{cut.id} is cut with the blade at {tilt['exact']}"
        return None if row.work["passes"] else f"no pass is made for {cut.id}"

    def _across(
        self, row: Row, part: PartRow, cut: Cut, kerf: Fraction, depth: Fraction
    ) -> list[Box] | str:
        hold, stop = row.work["hold"], row.step["settings"].get("stop")
        if hold["at_stop"] is None:
            return _placed(part, cut, depth, (0, cut.along))
        if stop is None:
            return "the stop is not set"
        near, far = length(stop), length(stop["far"])
        if far != near + kerf:
            return f"near {near} and cutter {kerf} are not far {far}"
        swept = _swept(near, kerf, row.work["passes"])
        if isinstance(swept, str):
            return swept
        boxes: list[Box] = []
        for limits in swept:
            place = measured_from(hold["at_stop"], limits, part.sizes)
            boxes += _placed(part, cut, depth, place)
        return boxes

    def _over_pin(
        self, row: Row, part: PartRow, cut: Cut, kerf: Fraction, depth: Fraction
    ) -> list[Box] | str:
        """The socket of a feature, among all that the passes at the pin of a jig cut."""
        hold, stop = row.work["hold"], row.step["settings"].get("stop")
        if stop is None or hold["at_stop"] not in {"E", "E2"}:
            return "no edge is at the pin"
        if len(row.work["passes"]) != len(row.work["features"]):
            return f"{len(row.work['passes'])} passes for {len(row.work['features'])} sockets"
        boxes: list[Box] = []
        before: list[Range] = []
        for each in row.work["passes"]:
            spacer = length(each["spacer"]) if each["spacer"] else Fraction(0)
            moved = length(each["moved"]) if "moved" in each else Fraction(0)
            near = length(stop) - spacer + moved
            if moved and (moved - kerf, moved) not in before:
                return f"no socket goes over the pin before {float(near):g}"
            before.append((near, near + kerf))
            place = measured_from(hold["at_stop"], (near, near + kerf), part.sizes)
            boxes += _placed(part, cut, depth, place)
        return [box for box in boxes if box[1] == cut.box[1]]

    def _along(
        self, row: Row, part: PartRow, cut: Cut, kerf: Fraction, depth: Fraction
    ) -> list[Box] | str:
        hold, settings = row.work["hold"], row.step["settings"]
        fence, stop = settings.get("fence"), settings.get("stop")
        if fence is None or hold["against_fence"] is None:
            return "the fence is not set"
        near, far = length(fence), length(fence["far"])
        if far != near + kerf:
            return f"fence: near {near} and cutter {kerf} are not far {far}"
        sideways = measured_from(hold["against_fence"], (near, far), part.sizes)
        lengthways: tuple[int, Range] = (0, cut.along)
        if hold["at_stop"] is not None:
            if stop is None:
                return "the stop is not set"
            ends = (length(stop), length(stop["far"]))
            lengthways = measured_from(hold["at_stop"], ends, part.sizes)
        if cut.kind == "hole":
            return _hole(cut, depth, lengthways[1], sideways)
        return _placed(part, cut, depth, lengthways, sideways)


def _turned(row: Row, hold: dict[str, str]) -> int:
    """The handedness that a part shows when it lies as the hold says."""
    station = row.step["station"]
    stop: Any = row.step["settings"].get("stop")
    side = stop.get("side") if isinstance(stop, dict) else None
    if row.step["settings"].get("accessory") == "taper jig":
        return _turning({hold["down"]: (0, 0, -1), hold["against_fence"]: (-1, 0, 0),
                         hold["at_stop"]: (0, -1, 0)})  # fmt: skip
    on_sled = station == "table saw" or (station == "router table" and side is None)
    outward = {
        hold["down"]: (0, 0, -1),
        hold["against_fence"]: (0, -1 if on_sled else 1, 0),
        hold["at_stop"]: (1 if side == "right" else -1, 0, 0),
    }
    return _turning(outward)


def _turning(outward: dict[str, tuple[int, int, int]]) -> int:
    rows = [(0, 0, 0)] * 3
    for surface, (x, y, z) in outward.items():
        direction, far = SURFACES[surface]
        rows[direction] = (x, y, z) if far else (-x, -y, -z)
    return turning(rows)


def _swept(near: Fraction, kerf: Fraction, passes: list[Json]) -> list[Range] | str:
    """The ranges from the stop that the passes clear (TRADE 0.6, 0.7)."""
    set_passes = [each for each in passes if "spacer" in each]
    between = len(passes) - len(set_passes)
    spacers = [length(each["spacer"]) if each["spacer"] else Fraction(0) for each in set_passes]
    starts = sorted(near - spacer for spacer in spacers)
    if not starts:
        return "no pass is made at the stop"
    low, high = starts[0], starts[-1] + kerf
    if between and len(starts) == 1:
        low = min(low, Fraction(0))
    if between == 0 and any(b - a > kerf for a, b in pairwise(starts)):
        return "an island is left between the passes"
    if len(passes) * kerf < high - low:
        return f"{len(passes)} passes of {kerf} do not clear {high - low}"
    if len(starts) == 1 and low <= A_HAIR:
        low = Fraction(0)
    return [(low, high)]


def _placed(part: PartRow, cut: Cut, depth: Fraction, *places: tuple[int, Range]) -> list[Box]:
    """The box at measured places, as deep as the cutter stands; through where nothing limits."""
    ranges = [WHOLE, WHOLE, WHOLE]
    for direction, limits in places:
        ranges[direction] = limits
    direction, limits = measured_from(cut.surface, (Fraction(0), depth), part.sizes)
    ranges[direction] = limits
    box = clipped((ranges[0], ranges[1], ranges[2]), part.sizes)
    return [] if box is None else [box]


def _hole(cut: Cut, depth: Fraction, along: Range, sideways: tuple[int, Range]) -> list[Box] | str:
    """A drill may be a little wider or narrower than the hole; its middle may not be off."""
    direction, across = sideways
    if sum(cut.box[direction]) != sum(across):
        return f"{cut.id} is drilled beside its line"
    if sum(cut.along) != sum(along):
        return f"{cut.id} is drilled at {sum(along) / 2} instead of {sum(cut.along) / 2}"
    wide = cut.across[1] - cut.across[0]
    if abs(across[1] - across[0] - wide) > max(TOLERANCE_OF_A_HOLE, wide / 10):
        return f"{cut.id} is drilled {across[1] - across[0]} instead of {wide}"
    if depth != cut.depth:
        return f"{cut.id} is drilled {depth} deep instead of {cut.depth}"
    return [cut.box]


def _stands_on_edge(cut: Cut, hold: dict[str, str], part: PartRow) -> bool:
    """Whether a rabbet in a face is sawn with the part on the edge at which it is open."""
    if cut.kind != "rabbet" or cut.surface not in {"F", "B"}:
        return False
    edge = "E" if cut.across[0] == 0 else "E2" if cut.across[1] == part.sizes[1] else None
    return edge is not None and hold["down"] == edge


def _fallen(cut: Cut, taken: list[Box]) -> list[Box]:
    """The strip of a rabbet that hangs neither on its shoulder nor on its floor any more."""
    left = minus([cut.box], taken)
    for direction in (1, 2):
        sides = [side for box in left for side in box[direction]]
        if not sides or (min(sides), max(sides)) == cut.box[direction]:
            return []
    return left


def _shown(box: Box) -> str:
    return " x ".join(f"{float(low):g}..{float(high):g}" for low, high in box)
