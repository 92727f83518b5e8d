"""The words of cuts with no mate: their names, and the faces, edges and ends where they are."""

from __future__ import annotations

Entry = tuple[str, dict[str, str]]

_FEATURES = {
    "groove": ("groove",),
    "rabbet": ("rabbet", "rebate"),
    "hole": ("hole",),
    "taper": ("taper",),
    "chamfer": ("chamfer",),
    "round-over": ("round over", "roundover", "rounding over"),
    "profile": ("profile", "moulded edge", "molded edge"),
    "curve": ("curve", "arch"),
    "notch": ("notch",),
    "slot": ("slot",),
    "bevel": ("bevel",),
    "keys": ("key", "spline"),
}
_SIDES = ("inside", "outside", "front", "back", "left", "right", "top", "bottom")
_PROFILES = (
    "ogee",
    "roman ogee",
    "cove",
    "ovolo",
    "bead",
    "thumbnail",
    "scotia",
    "bullnose",
    "quarter round",
)
_EDGES = ("edge", "arris")
_MIDDLE = ("centred", "centered", "middle", "centre", "center")

CUTS: tuple[Entry, ...] = (
    ("FEATURE", {word: kind for kind, words in _FEATURES.items() for word in words}),
    ("SURFACE", {side: side for side in _SIDES}),
    ("SURFACE", {"inner": "inner", "outer": "outer", "upper": "top", "lower": "bottom"}),
    ("SURFACE", {"underside": "bottom", "rear": "back"}),
    ("NOUN", {"face": "face", "edge": "edge", "end": "end", "corner": "corner"}),
    ("NOUN", {f"{long} {edge}": f"{long} edge" for long in ("long", "short") for edge in _EDGES}),
    ("NOUN", {"arris": "edge", "side": "face"}),
    ("EVERY", {word: word for word in ("all", "each", "every", "both", "two", "four")}),
    ("MIDDLE", dict.fromkeys(_MIDDLE, "middle")),
    ("MIDDLE", {f"{at} the {word}": "middle" for at in ("in", "at") for word in _MIDDLE[2:]}),
    ("THROUGH", {"through": "through", "full length": "through", "all along": "through"}),
    ("THROUGH", {"full width": "through", "right through": "through"}),
    ("STOPPED", {"stopped": "stopped", "stopping": "stopped"}),
    ("_BEYOND", {"beyond": "beyond", "past": "beyond"}),
    ("_ROWS", {"row": "row", "in row": "row", "a row": "row"}),
    ("EACH", {f"{each} corner": "corner" for each in ("a", "each", "per", "every", "at each")}),
    ("EACH", {f"{each} end": "end" for each in ("a", "each", "per", "every", "at each")}),
    ("EACH", {"both end": "end", "at both end": "end"}),
    ("CUTADJ", {"dia": "diameter", "diameter": "diameter"}),
    ("CUTADJ", {"radius": "radius", "rise": "depth", "rising": "depth"}),
    ("PROFILE", {word: word for word in _PROFILES}),
)
