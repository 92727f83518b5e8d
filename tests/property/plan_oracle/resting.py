"""Wood that lies on stickers, and strips that are trued and sawn into leaves (TRADE A3.7, A8)."""

from collections.abc import Iterator
from fractions import Fraction

from tests.property.plan_oracle.durations import minutes
from tests.property.plan_oracle.reading import Json, PartRow, Row, length, parts_of
from tests.property.plan_oracle.sequence import SOLID, STAVE, STRIP, Places, places_of

SAWN_FACE = Fraction(1)
"""What planing takes of a leaf at least, mm (TRADE A8.1)."""


def resting(steps: Json, parts: Json, shop: Json) -> Iterator[str]:
    """Leaves that come off a strip that is not true, too thin, or are worked too soon."""
    places = places_of(steps)
    kerf = {each["name"]: length(each["width"]) for each in steps["cutters"]}
    for part in parts_of(parts).values():
        for name in _names(part):
            yield from _rested(name, places, shop)
            yield from _resawn(name, part, places, shop, kerf)


def _names(part: PartRow) -> list[str]:
    staves = range(1, part.staves + 1)
    return [f"{copy} stave {each}" for copy in part.hand_of for each in staves] or [*part.hand_of]


def _rested(name: str, places: Places, shop: Json) -> Iterator[str]:
    """What is planed close to its thickness lies on stickers before it is planed true."""
    close, true = (places.deeds.get((name, deed), []) for deed in ("rough thickness", "thickness"))
    if close and true and not _apart(close[0], true[0], "planed", places, shop):
        yield f"{name}: planed true before it has come to rest"


def _apart(one: int, other: int, rest: str, places: Places, shop: Json) -> bool:
    ends = places.rows[one].step["ends"]["minute"]
    starts = places.rows[other].step["starts"]["minute"]
    return one < other and starts >= ends + minutes(shop["rest"][rest])


def _resawn(
    name: str, part: PartRow, places: Places, shop: Json, kerf: dict[str, Fraction]
) -> Iterator[str]:
    found = {deed: places.deeds.get((name, deed), []) for deed in STRIP}
    if not found["resaw"]:
        if any(found.values()):
            yield f"{name}: its strip is trued and never resawn"
        return
    at = found["resaw"][0]
    if len(found["resaw"]) > 1 or any(max(row) > at for row in found.values() if row):
        yield f"{name}: its strip is trued after it is resawn, or resawn twice"
    for deed in dict.fromkeys((*SOLID, *STAVE)):
        for later in places.deeds.get((name, deed), []):
            if not _apart(at, later, "resawn", places, shop):
                yield f"{name}: {deed} of a leaf that has not come to rest"
    yield from _leaf(name, part, places.rows[at], kerf)
    planed = [places.rows[each] for each in found["strip thickness"]]
    yield from _strip(name, places.rows[at], planed, kerf)


def _leaf(name: str, part: PartRow, row: Row, kerf: dict[str, Fraction]) -> Iterator[str]:
    """The fence stands at a leaf as sawn, which is planed afterwards (A8.2)."""
    fence = row.step["settings"].get("fence")
    if fence is None:
        return
    if length(fence) < part.sizes[2] + SAWN_FACE:
        yield f"{name}: sawn {length(fence)} thick, which leaves nothing to plane"
    if row.work["hold"] != {"down": "E", "against_fence": "F", "at_stop": None}:
        yield f"{name}: resawn lying on {row.work['hold']}"
    if length(fence["far"]) != length(fence) + kerf[row.step["settings"]["cutter"]]:
        yield f"{name}: the far side of the blade is not its kerf off"


def _strip(name: str, row: Row, planed: list[Row], kerf: dict[str, Fraction]) -> Iterator[str]:
    """A strip that was planed holds two leaves and a kerf at least (A8.1)."""
    fence = row.step["settings"].get("fence")
    for each in planed:
        thick = each.step["settings"].get("thickness")
        if fence is None or thick is None:
            continue
        if length(thick) < 2 * length(fence) + kerf[row.step["settings"]["cutter"]]:
            yield f"{name}: its strip is planed too thin for two leaves"
