"""What the visits are called: short plain nouns, no two alike, as a maker names a round of work."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from dryfit.booklet.bench import Bench
from dryfit.booklet.text import capital, listed
from dryfit.booklet.wording import deed, subject
from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan, Visit

LONGEST = 34
"""Letters of a heading that stand on one line."""

_NOUNS = {
    "rough length": "rough lengths",
    "rip": "rough widths",
    "strip face": "faces",
    "strip edge": "edges",
    "strip thickness": "thicknesses",
    "resaw": "leaves resawn",
    "bark": "bark off",
    "face": "faces",
    "edge": "edges",
    "second edge": "second edges",
    "rough thickness": "first thicknesses",
    "thickness": "thicknesses",
    "width": "widths",
    "length": "lengths",
    "lay out": "laying out",
    "mortise": "mortises",
    "tenon cheek": "tenons",
    "tenon shoulder": "tenons",
    "lap": "laps",
    "housing": "housings",
    "groove": "grooves",
    "notch": "notches",
    "profile": "edges shaped",
    "plane to fit": "planing to fit",
    "fit to gap": "fitting to gaps",
    "mitre": "mitres",
    "taper": "tapers",
    "curve": "curves",
    "bevel": "bevels",
    "fair": "fairing",
    "tape back": "strips taped back",
    "key slot": "slots for keys",
    "trim": "keys trimmed",
    "fingers": "fingers",
    "tails": "tails",
    "pins": "pins",
    "dry fit": "dry fits",
    "sand": "sanding",
    "ease edges": "edges eased",
    "coat": "coats",
    "level": "joints levelled",
    "horns": "horns sawn off",
    "feet": "feet levelled",
    "flatten": "flattening",
    "measure": "measuring",
    "make": "making",
    "fit": "fitting",
    "glue up": "glue-up",
    "band": "edge banding",
    "trim lip": "lips trimmed",
}

_OWN_NOUNS = frozenset({"hole", "rabbet", "slot"})
"""Cuts with no mate that are called by the word of their line."""

_SLOTS = frozenset({"button slots", "biscuit slots", "hinge recesses", "screw slots"})

_ALWAYS_OF = frozenset({"glue up", "measure", "make", "fit", "fit to gap", "flatten"})
"""Kinds that say nothing without the thing that they are done to."""


def titles(plan: Plan, bench: Bench) -> dict[int, str]:
    """Return the heading of each visit by its number, no two alike."""
    visits = plan.visits()
    short = {visit.number: title(_operations(visit), bench) for visit in visits}
    taken = list(short.values())
    return {
        visit.number: short[visit.number]
        if taken.count(short[visit.number]) == 1
        else _longer(short[visit.number], visit, bench)
        for visit in visits
    }


def title(operations: Iterable[Operation], bench: Bench) -> str:
    """Return what the work is called: ``Tenons, laps and housings``, ``Glue-up: base``."""
    row = list(operations)
    kinds = {operation.kind for operation in row}
    every = dict.fromkeys(_noun(operation) for operation in row)
    nouns = [noun for noun in every if noun.rpartition(" ")[0] not in every]
    if len(nouns) == 1 and kinds <= _ALWAYS_OF:
        things = _numbered(_subjects(row, bench))
        return capital(f"{nouns[0]}: {_first(things, LONGEST - len(nouns[0]))}")
    return capital(_first(nouns))


def _longer(short: str, visit: Visit, bench: Bench) -> str:
    """Return a heading that another visit has too, with its parts, else with its first step."""
    number = visit.steps[0].number
    if ":" in short:
        return f"{short} (step {number})"
    things = _numbered(_subjects(_operations(visit), bench))
    return f"{short}: {_first(things, LONGEST - len(short))}"


def _operations(visit: Visit) -> list[Operation]:
    return [operation for step in visit.steps for operation in step.operations]


def _noun(operation: Operation) -> str:
    """Return the work as a plural noun; the id tells what the kind leaves open."""
    done = deed(operation)
    own = done.partition(" for ")[0]
    if own in _OWN_NOUNS:
        return f"{own}s"
    if operation.kind == "glue up" and done == "lip":
        return "lips glued on"
    if done == "trim band":
        return "banding trimmed"
    if operation.kind == "hole" or done in _SLOTS:
        return done
    if operation.kind == "sand" and "inside" in done:
        return "sanding inside"
    return _NOUNS.get(operation.kind, done)


def _subjects(operations: Sequence[Operation], bench: Bench) -> list[str]:
    found = []
    for operation in operations:
        name = subject(operation)
        part = bench.part(name)
        found.append(name if part is None else part.written)
    return list(dict.fromkeys(found))


def _numbered(names: list[str]) -> list[str]:
    """Return the names, those that differ by their number as one: ``end frames``."""
    found: dict[str, list[str]] = {}
    for name in names:
        stem, _, number = name.rpartition(" ")
        found.setdefault(stem if stem and number.isdigit() else name, []).append(name)
    return [f"{stem}s" if len(row) > 1 else row[0] for stem, row in found.items()]


def _first(words: list[str], room: int = LONGEST) -> str:
    """Return as many of the words as a heading has room for, and say that there are more."""
    for count in range(len(words), 1, -1):
        text = listed(words) if count == len(words) else f"{', '.join(words[:count])} and more"
        if len(text) <= room:
            return text
    return f"{words[0]} and more" if len(words) > 1 else words[0]
