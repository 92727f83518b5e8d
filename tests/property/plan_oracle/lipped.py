"""Lipped sheets: the core is less by its lips, the strips cover it, and cuts wait (TRADE A10)."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from tests.property.plan_oracle.durations import exact
from tests.property.plan_oracle.reading import Json, PartRow, Row, length, parts_of, rows_of
from tests.property.plan_oracle.regions import SURFACES

ON = " lip at "
GLUED, BANDED, TRIMMED = "lip", "band", ("trim lip", "trim band")
THICKEST_BANDING = Fraction(3)
CORE = {"width", "length", "rip", "rough length", "straight edge", GLUED, BANDED, *TRIMMED}
LAGS = {"lay out": "out of clamps", "sand": "level", "ease": "level", "coat": "finish"}


@dataclass(frozen=True, slots=True)
class Strip:
    """A strip as it is milled: its rows, and the sizes that machines give it, None by hand."""

    rows: tuple[Row, ...]
    long: Fraction | None
    wide: Fraction | None
    thick: Fraction | None


def strips_of(steps: Json) -> dict[str, Strip]:
    """The strips by their names: what copy and surface they are for stands in these."""
    rows: dict[str, list[Row]] = {}
    for row in rows_of(steps):
        for name in row.copies:
            if ON in name:
                rows.setdefault(name, []).append(row)
    return {name: _strip(own) for name, own in rows.items()}


def _strip(rows: list[Row]) -> Strip:
    def at(deed: str, axis: str) -> Fraction | None:
        row = next((row for row in rows if row.deed == deed), None)
        hold = None if row is None else row.work["hold"]
        if row is None or hold is None or (axis == "stop" and hold["at_stop"] is None):
            return None
        if row.step["settings"].get(axis) is None:
            return None
        return length(row.step["settings"][axis])

    return Strip(
        tuple(rows), at("length", "stop"), at("width", "fence"), at("thickness", "thickness")
    )


def core(part: PartRow, steps: Json) -> PartRow:
    """The part as saw and fence cut it; what is not known of it counts as play."""
    strips = strips_of(steps)
    name = next(iter(part.hand_of))
    sizes, open_ = list(part.sizes), Fraction(0)
    for strip, own in strips.items():
        host, _, surface = strip.rpartition(ON)
        if host == name:
            direction = SURFACES[surface][0]
            known = own.thick
            sizes[direction] -= known if known is not None else Fraction(0)
            open_ += Fraction(0) if known is not None else Fraction(30)
    if any(row.deed == BANDED and row.work["part"] == part.name for row in rows_of(steps)):
        open_ += 2 * THICKEST_BANDING
    low = (sizes[0] - open_, sizes[1] - open_, sizes[2])
    return replace(part, sizes=low, planed=open_)


def lipped(steps: Json, parts: Json) -> Iterator[str]:
    """Everything that is wrong with strips and lips."""
    known, strips = parts_of(parts), strips_of(steps)
    for name, strip in strips.items():
        host, _, surface = name.rpartition(ON)
        part = next((part for part in known.values() if host in part.hand_of), None)
        if part is None:
            yield f"{name}: no copy is called {host}"
            continue
        yield from _covers(name, strip, part, surface)
    rows = list(enumerate(rows_of(steps)))
    for part in known.values():
        for copy in part.hand_of:
            own = [(at, row) for at, row in rows if copy in row.copies]
            if any(row.deed in {GLUED, BANDED} for _, row in own):
                yield from _in_turn(copy, own)


def _covers(name: str, strip: Strip, part: PartRow, surface: str) -> Iterator[str]:
    deeds = [row.deed for row in strip.rows]
    if deeds.count(GLUED) != 1 or deeds[-1] != GLUED:
        yield f"{name}: it is glued on {deeds.count(GLUED)} times, and {deeds[-1]} is last"
    long, wide, thick = part.sizes
    # Strips of ends cover the core; no core is less than its part by more than 60.
    along = wide - 60 if SURFACES[surface][0] == 0 else long
    if strip.long is not None and strip.long < along:
        yield f"{name}: {strip.long} long for {along}"
    if strip.wide is not None and strip.wide < thick:
        yield f"{name}: {strip.wide} wide for a sheet {thick} thick"


def _in_turn(copy: str, own: list[tuple[int, Row]]) -> Iterator[str]:
    """Core, lips, trims, and then all else, each when the glue is ready for it."""
    lips = [at for at, row in own if row.deed in {GLUED, BANDED}]
    trims = [at for at, row in own if row.deed in TRIMMED]
    sized = [at for at, row in own if row.deed in {"width", "length"}]
    later = [(at, row) for at, row in own if row.deed not in CORE]
    if max(sized, default=0) > min(lips):
        yield f"{copy}: lipped before its core has its size"
    if len(trims) != len(lips) or any(lip > trim for lip, trim in zip(lips, trims, strict=False)):
        yield f"{copy}: {len(lips)} times lipped, {len(trims)} times trimmed"
    elif any(lip < trim for lip, trim in zip(lips[1:], trims, strict=False)):
        yield f"{copy}: lipped over a lip that is not trimmed"
    for at, row in later:
        if at < max((*lips, *trims)):
            yield f"{copy}: {row.work['operation']} before its lips are on and flush"
    for at, lip in own:
        if lip.deed != GLUED:
            continue
        lags = {each["until"]: exact(each["minutes"]) for each in lip.step["lags"]}
        end = exact(lip.step["ends"]["minute"])
        for then, row in own:
            if then > at and exact(row.step["starts"]["minute"]) < end + lags[_lag(row)]:
                yield f"{row.work['operation']} comes too soon after {lip.work['operation']}"


def _lag(row: Row) -> str:
    if row.deed in TRIMMED:
        return "level"
    if row.deed in {"dry fit", "glue up", GLUED}:
        return "next stage"
    if row.work["features"]:
        return "machine"
    return next((lag for word, lag in LAGS.items() if row.deed.startswith(word)), "out of clamps")
