"""The words of the place where a piece will stand, of the way there, and of its users."""

from __future__ import annotations

Entry = tuple[str, dict[str, str]]

_WALLS = {
    "stud": ("stud", "timber stud", "wood stud", "stud partition"),
    "masonry": ("masonry", "brick", "stone", "concrete", "solid"),
    "board": ("board", "plasterboard", "plaster board", "drywall", "hollow"),
}


def _walls(*verbs: str) -> dict[str, str]:
    found: dict[str, str] = {}
    for verb in verbs:
        for the in ("the ", "a ", ""):
            found[f"{verb} {the}wall"] = "wall"
            for wall, words in _WALLS.items():
                found.update(dict.fromkeys((f"{verb} {the}{word} wall" for word in words), wall))
    return found


SITE: tuple[Entry, ...] = (
    ("PLACED", {"place": "place", "the place": "place", "room": "place", "the room": "place"}),
    ("_CEILING", dict.fromkeys(("ceiling", "the ceiling", "ceiling at"), "ceiling")),
    ("_SKIRTING", dict.fromkeys(("skirting", "skirting board", "baseboard"), "skirting")),
    ("_OUT", {"out": "out", "out of level": "out"}),
    ("_SCRIBE", {"scribe": "scribe"}),
    ("_WAYIN", dict.fromkeys(("way in", "the way in", "a way in"), "way in")),
    ("_TURN", dict.fromkeys(("turn", "turn into", "turning into", "then turn"), "turn")),
    ("HANGS", _walls("hangs on", "hang on", "hung on", "hanging on", "hangs against")),
    ("FIXED", _walls("fixed to", "fix to", "screwed to", "fastened to", "anchored to")),
    ("STANDS", dict.fromkeys(("for children", "for a child", "for the children"), "children")),
    ("STANDS", dict.fromkeys(("built in place", "put together on site"), "built")),
)
