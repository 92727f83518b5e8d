"""The words that say where a part is and how it lies, which are spelled in many ways."""

from __future__ import annotations

from collections.abc import Iterator

Entry = tuple[str, dict[str, str]]

_FACES = {
    "inside": ("inside", "inner"),
    "outside": ("outside", "outer"),
    "front": ("front",),
    "back": ("back", "rear"),
    "left": ("left",),
    "right": ("right",),
}


def _on_faces() -> dict[str, str]:
    """Return ``on the inside of``, ``at the back face of`` ... as prepositions."""
    found: dict[str, str] = {}
    for face, words in _FACES.items():
        for word in words:
            for on in ("on", "at", "against", "to"):
                for the in ("the ", ""):
                    noun = () if word in ("inner", "outer") else (f"{on} {the}{word} of",)
                    sides = (f"{on} {the}{word} {side} of" for side in ("face", "side"))
                    found.update(dict.fromkeys((*noun, *sides), f"on face {face}"))
    found.update({"behind": "on face back", "in front of": "on face front"})
    return found


def _end_gaps() -> Iterator[tuple[str, str]]:
    """Yield the spellings of ``same gap at ends``."""
    for value, words in (
        ("same", ("same", "the same", "equal", "an equal")),
        ("no", ("no",)),
        ("half", ("half a", "half", "half the", "a half")),
    ):
        for word in words:
            for end in ("end", "the end", "both end", "each end", "either end"):
                yield f"{word} gap at {end}", value


def _ripped() -> Iterator[tuple[str, str]]:
    """Yield the spellings of ``the last ripped to fit`` and ``both outer boards ripped alike``."""
    for last in ("the last", "last", "the last one", "the last board", "last board"):
        for fit in ("to fit", "to what is left", "to width"):
            yield f"{last} ripped {fit}", "last"
    for outer in ("both outer", "outer", "the outer", "the two outer"):
        for board in (" boards", " ones", ""):
            yield f"{outer}{board} ripped alike", "outer"


_SPLAYED = (
    *("splayed", "splay", "splaying", "splayed out", "raked", "rake", "raking", "canted"),
    *("sloping", "sloping out", "sloping outward", "sloping outwards", "sloped", "sloped out"),
    *("flared", "flaring", "flared out"),
)


_BOTH_WAYS = ("both way", "each way", "in both direction")
_SIDEWAYS = ("to the side", "to both side", "sideways")


PLACES: tuple[Entry, ...] = (
    ("DIRECTION", {"across": "across", "front to back": "front to back"}),
    ("DIRECTION", {"left to right": "across", "side to side": "across"}),
    ("DIRECTION", {"up and down": "up and down", "upwards": "up and down"}),
    ("DIRECTION", {"all round": "all round", "all around": "all round"}),
    ("RUN", {"upright": "upright", "standing": "upright", "vertical": "upright"}),
    ("RUN", {"across": "across", "front to back": "front to back"}),
    ("RUN", {"left to right": "across", "side to side": "across"}),
    ("LIE", {"flat": "flat", "on edge": "on edge", "on its edge": "on edge"}),
    ("LIE", {"facing front": "facing front", "facing the front": "facing front"}),
    ("LIE", {"facing side": "facing side", "facing the side": "facing side"}),
    ("_AT", {"at": "at"}),
    ("CORNERS", {"corner": "corners", "the corner": "corners", "each corner": "corners"}),
    ("ENDS", {"end": "ends", "the end": "ends", "both end": "ends", "each end": "ends"}),
    ("PLACE", {word: word for word in ("front", "back", "left", "right", "top", "bottom")}),
    ("PLACE", {"rear": "back"}),
    ("FLOOR", {"floor": "floor", "the floor": "floor", "the ground": "floor"}),
    ("_SETIN", {"set in": "set in", "inset": "set in"}),
    ("_SETBACK", {"set back": "set back"}),
    ("_UP", {"up": "up"}),
    ("_DOWN", {"down": "down"}),
    ("_FLUSH", {"flush": "flush", "level": "flush"}),
    ("_SPREAD", {"spread": "spread", "spaced": "spread", "spread out": "spread"}),
    ("_SPREAD", {"spread evenly": "spread", "evenly spread": "spread"}),
    ("_SPREAD", {"evenly spaced": "spread", "spaced evenly": "spread"}),
    ("_SPREAD", {"equally spaced": "spread"}),
    ("ENDGAP", dict(_end_gaps())),
    ("RIPPED", dict(_ripped())),
    ("_GAP", {"gap": "gap"}),
    ("_BETWEENTHEM", {"between": "between", "between them": "between", "between each": "between"}),
    ("_LAPPING", {"lapping": "lapping", "overlapping": "lapping", "lapping over": "lapping"}),
    ("_LAPPING", {"overlap": "lapping", "lapped over": "lapping"}),
    ("_HORNS", dict.fromkeys(("horn", "horns", "a horn"), "horns")),
    ("_SPLAYED", dict.fromkeys(_SPLAYED, "splayed")),
    ("SPLAYWAY", dict.fromkeys(_BOTH_WAYS, "both")),
    ("SPLAYWAY", dict.fromkeys(_SIDEWAYS, "sides")),
    ("HANDED", {"handed": "handed", "mirrored": "handed", "left and right handed": "handed"}),
    ("HANDED", {"as a pair": "handed", "a pair": "handed"}),
    ("_FROM", {"from": "from", "down from": "from", "up from": "from"}),
    ("_FROM", {"starting": "from", "starting at": "from", "starting from": "from"}),
    ("_BELOW", {"below": "below", "beneath": "below", "under": "below"}),
    ("_ABOVE", {"above": "above", "over": "above"}),
    ("_WITHIN", {"between": "between", "inside": "between", "within": "between"}),
    ("OPENING", {"opening": "opening", "an opening": "opening", "the opening": "opening"}),
    ("OPENING", {"space": "opening", "the space": "opening", "a space": "opening"}),
    ("PREP", {"into": "into", "in to": "into", "let into": "into"}),
    ("PREP", {"onto": "onto", "on to": "onto", "on": "onto"}),
    ("PREP", {"on top of": "onto", "on the top of": "onto"}),
    ("PREP", {"under": "under", "underneath": "under", "beneath": "under", "below": "under"}),
    ("PREP", {"on the bottom of": "under", "on the underside of": "under"}),
    ("PREP", {"on the under side of": "under", "on underside of": "under"}),
    ("PREP", {"between": "between", "in between": "between"}),
    ("PREP", {"inside": "inside", "within": "inside"}),
    ("PREP", {"crossing": "crossing", "crosses": "crossing"}),
    ("PREP", {"against": "against", "up against": "against", "in": "in", "fitted in": "in"}),
    ("PREP", {"running in": "runs in", "runs in": "runs in", "run in": "runs in"}),
    ("PREP", dict.fromkeys(("running under", "runs under", "run under"), "runs under")),
    ("PREP", dict.fromkeys(("to", "hung on", "hinged to", "hinged on"), "hung on")),
    ("PREP", _on_faces()),
    ("EDGE", {"end": "ends", "edge": "edge"}),
)
