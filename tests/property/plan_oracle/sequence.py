"""The order of the deeds: milling, cuts, dry fit, glue, sanding, coats, fitting."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise

from tests.property.plan_oracle.reading import Json, PartRow, Row, parts_of, rows_of

SAWN = ("rough length", "rip")
"""Out of its board, the one or the other first, or one alone where the board is as wide or long."""
SOLID = ("face", "edge", "thickness", "width", "length")
STAVE = ("face", "edge", "thickness", "width", "second edge")
PANEL = ("flatten", "width", "length")
SHEET = ("width", "length")
STRIP = ("strip face", "strip edge", "strip thickness", "resaw")
OF_COPIES = {"bark", *SAWN, *SOLID, *STAVE, *PANEL, *SHEET, *STRIP, "rough thickness", "make"}


@dataclass(frozen=True, slots=True)
class Places:
    """Where each deed on each copy or subject stands; the index counts work rows."""

    deeds: dict[tuple[str, str], list[int]]
    cuts: dict[str, dict[str, list[int]]]
    rows: tuple[Row, ...]


def places_of(steps: Json) -> Places:
    """The places of all deeds and cuts."""
    deeds: dict[tuple[str, str], list[int]] = {}
    cuts: dict[str, dict[str, list[int]]] = {}
    rows = tuple(rows_of(steps))
    for index, row in enumerate(rows):
        # A part of one copy has its name: what is done to copies is not counted for the part too.
        for name in row.copies if row.deed in OF_COPIES else (row.subject,):
            deeds.setdefault((name, row.deed), []).append(index)
        for copy in row.copies:
            for feature in row.work["features"]:
                cuts.setdefault(copy, {}).setdefault(feature, []).append(index)
    return Places(deeds, cuts, rows)


def sequence(steps: Json, parts: Json) -> Iterator[str]:
    """Everything that stands too early or too late, or is missing."""
    places, known = places_of(steps), parts_of(parts)
    for part in known.values():
        for copy in part.hand_of:
            yield from _copy(copy, part, places)
    yield from _mates(known, parts, places)
    yield from _glue_ups(parts, places)
    yield from _surfaces(places)
    yield from _measures(steps, places)


def _copy(copy: str, part: PartRow, places: Places) -> Iterator[str]:
    if (copy, "make") in places.deeds:
        return
    chain: tuple[str, ...] = SHEET if part.stock == "sheet" else SOLID
    if chain == SHEET and not any((copy, deed) in places.deeds for deed in SHEET):
        # A sheet that has the very size of its part is sawn nowhere; the rehearsal holds both.
        chain = ()
    if part.staves:
        chain = PANEL
        yield from _panel(copy, part, places)
    elif part.stock != "sheet":
        waney = (copy, "bark") in places.deeds
        chain = _waney(copy, places) if waney else _needed(chain, part.hand_of, places)
        yield from _sawn(copy, places)
    yield from _chain(copy, chain, places)
    ripped = [deed for deed in ("width", "second edge") if places.deeds.get((copy, deed))]
    if (copy, "bark") in places.deeds and ripped:
        yield f"{copy}: its waney edge is sawn off by {' and '.join(ripped)}"
    ready = {deed: places.deeds.get((copy, deed), [0])[-1] for deed in ("width", "length")}
    for feature, indexes in places.cuts.get(copy, {}).items():
        for index in indexes:
            row = places.rows[index]
            if index < ready["width"]:
                yield f"{copy}: {feature} is cut before the width"
            at_stop = row.work["hold"] is not None and row.work["hold"]["at_stop"] is not None
            if at_stop and index < ready["length"]:
                yield f"{copy}: {feature} is measured from an end that is not cut"


def _panel(copy: str, part: PartRow, places: Places) -> Iterator[str]:
    """Staves are jointed, tried, glued, and the panel flattened after that."""
    staves = [f"{copy} stave {number}" for number in range(1, part.staves + 1)]
    chain = _needed(STAVE, staves, places)
    for stave in staves:
        yield from _sawn(stave, places)
        yield from _chain(stave, chain, places)
    subject = copy if len(part.hand_of) > 1 else part.name
    jointed = [at for stave in staves for at in places.deeds.get((stave, "second edge"), [])]
    flat = places.deeds.get((copy, "flatten"), [])
    row = [
        jointed,
        *(places.deeds.get((subject, deed), []) for deed in ("dry fit", "glue up")),
        flat,
    ]
    if any(max(first) >= min(then) for first, then in pairwise(row) if first and then):
        yield f"{copy}: staves, dry fit, glue-up and flattening are out of order"
    if len(row[1]) != 1 or len(row[2]) != 1:
        yield f"{copy}: tried {len(row[1])} times, glued {len(row[2])} times"


def _needed(chain: tuple[str, ...], names: Iterable[str], places: Places) -> tuple[str, ...]:
    """The deeds that a part needs: planed wood has its faces, its thickness, or all its sizes.

    What no copy of it gets, it can do without.
    """
    done = {deed for deed in chain for name in names if places.deeds.get((name, deed))}
    spared = {"face"} - done
    if not done & {"face", "thickness"}:
        spared.add("thickness")
    if chain == SOLID and any(places.deeds.get((name, "resaw")) for name in names):
        # A leaf keeps the edge that its strip stood on.
        spared.add("edge")
    if chain == SOLID and not done & {"face", "edge", "thickness", "width"}:
        spared |= {"edge", "width"}
    return tuple(deed for deed in chain if deed not in spared)


def _waney(copy: str, places: Places) -> tuple[str, ...]:
    """What keeps a waney edge is peeled before its face is made true, and never ripped to width.

    Its straight edge is jointed; with two waney edges it has none.
    """
    may_lack = {"face", "edge", "thickness"}
    chain = ("bark", "face", "edge", "thickness", "length")
    return tuple(one for one in chain if one not in may_lack or places.deeds.get((copy, one)))


def _sawn(name: str, places: Places) -> Iterator[str]:
    """It is sawn out of its board, once in each direction, before its face is made true."""
    found = {deed: places.deeds.get((name, deed), []) for deed in SAWN}
    for deed, indexes in found.items():
        if len(indexes) > 1:
            yield f"{name}: {deed} is done {len(indexes)} times"
    sawn = [at for indexes in found.values() for at in indexes]
    milled = [at for deed in STAVE for at in places.deeds.get((name, deed), [])]
    if not sawn:
        yield f"{name}: it is never sawn out of a board"
    elif milled and max(sawn) > min(milled):
        yield f"{name}: milled before it is sawn out of its board"


def _chain(name: str, chain: tuple[str, ...], places: Places) -> Iterator[str]:
    found = [places.deeds.get((name, deed), []) for deed in chain]
    for deed, indexes in zip(chain, found, strict=True):
        if len(indexes) != 1:
            yield f"{name}: {deed} is done {len(indexes)} times"
            return
    for (first, second), (one, two) in zip(pairwise(chain), pairwise(found), strict=True):
        if one[0] >= two[0]:
            yield f"{name}: {second} comes before {first}"


def _mates(known: dict[str, PartRow], parts: Json, places: Places) -> Iterator[str]:
    """Mortises before the tenons that are fitted to them, slots of bridles, tails before pins."""
    part_of = {copy: part for part in known.values() for copy in part.hand_of}
    for joint in parts["joints"]:
        if joint["kind"] == "bridle" or joint["kind"].endswith("dovetail"):
            yield from _fitted(joint, places)
        if joint["kind"] != "mortise and tenon":
            continue
        for host, guest in (joint["between"], joint["between"][::-1]):
            mortises = _cut_for(f"mortise for {part_of[guest].name}", host, places)
            tenons = _cut_for("tenon cheek", guest, places)
            if mortises and tenons and max(mortises) > min(tenons):
                yield f"{joint['id']}: a tenon is cut before its mortise"


def _fitted(joint: Json, places: Places) -> Iterator[str]:
    pairs = (("open mortise", "tenon cheek"), ("tail socket", "pin socket"))
    for first, then in pairs:
        for one, other in (joint["between"], joint["between"][::-1]):
            early, late = _cut_for(first, one, places), _cut_for(then, other, places)
            # In a jig both boards stand one before the other and are routed in one go.
            by_hand = {"bench", "table saw"} >= {
                places.rows[at].step["station"] for at in (*early, *late)
            }
            if early and late and by_hand and max(early) > min(late):
                yield f"{joint['id']}: a {then} is cut before the {first} that it is fitted to"


def _cut_for(name_begins: str, copy: str, places: Places) -> list[int]:
    return [
        index
        for name, indexes in places.cuts.get(copy, {}).items()
        if name.startswith(name_begins)
        for index in indexes
    ]


def members(name: str, parts: Json) -> set[str]:
    """The copies in an assembly, with those of the assemblies inside."""
    inner = {each["name"]: each["of"] for each in parts["assemblies"]}
    if name not in inner:
        return {name}
    return {copy for each in inner[name] for copy in members(each, parts)}


def _glue_ups(parts: Json, places: Places) -> Iterator[str]:
    for assembly in parts["assemblies"]:
        name = assembly["name"]
        glued = places.deeds.get((name, "glue up"), [])
        dry = places.deeds.get((name, "dry fit"), [])
        if len(glued) != 1 or not dry:
            yield f"{name}: glued {len(glued)} times, tried {len(dry)} times"
            continue
        if min(dry) > glued[0]:
            yield f"{name}: glued before it was tried"
        for copy in members(name, parts):
            for feature, indexes in places.cuts.get(copy, {}).items():
                # What the notes want cut in the glued frame comes after the glue, never between.
                if min(dry) < max(indexes) < glued[0]:
                    yield f"{name}: tried before {feature} of {copy} is cut"
        for inner in assembly["of"]:
            own = places.deeds.get((inner, "glue up"), [])
            if own and own[0] > glued[0]:
                yield f"{name}: glued before {inner}"


def _surfaces(places: Places) -> Iterator[str]:
    """Coats in order and after the sanding of what they cover; what is fitted after all coats."""
    coats = [index for index, row in enumerate(places.rows) if row.deed.startswith("coat ")]
    sanded = _sanded(places)
    for index in coats:
        row = places.rows[index]
        for copy in row.copies:
            for deed in ("sand 120", "sand 180", "ease edges"):
                if any(other > index for other in sanded.get((copy, deed), ())):
                    yield f"{copy}: {row.deed} before {deed}"
            if not sanded.get((copy, "ease edges")):
                yield f"{copy}: coated but never sanded"
        number = int(row.deed.removeprefix("coat "))
        if number > 1:
            before = places.deeds.get((row.subject, f"coat {number - 1}"), [])
            if not before or before[0] > index:
                yield f"{row.subject}: {row.deed} out of order"
    for index, row in enumerate(places.rows):
        if row.deed == "fit" and any(index < coat for coat in coats):
            yield f"{row.subject} is fitted before the last coat"


def _sanded(places: Places) -> dict[tuple[str, str], list[int]]:
    """Where each copy is sanded and eased, alone or with what it is glued into."""
    found: dict[tuple[str, str], list[int]] = {}
    for index, row in enumerate(places.rows):
        if row.deed.startswith(("sand ", "ease ")):
            for copy in row.copies:
                found.setdefault((copy, row.deed), []).append(index)
    return found


def _measures(steps: Json, places: Places) -> Iterator[str]:
    at = {row.work["operation"]: index for index, row in enumerate(places.rows)}
    for measure in steps["measures"]:
        taken = next(
            (n for n, row in enumerate(places.rows) if row.subject == measure["name"]), None
        )
        for name in measure["sets"]:
            if taken is None or at[name] < taken:
                yield f"{name} is set before {measure['name']} is measured"
