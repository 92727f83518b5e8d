"""The words of joints: their names, what is said of them besides, and where glue goes."""

from __future__ import annotations

from collections.abc import Iterator

Entry = tuple[str, dict[str, str]]

_PLACES = ("front", "back", "left", "right", "top", "bottom")
_TONGUED = (
    "tongue and groove",
    "tongue and grooved",
    "tongued and grooved",
    "tongue and groove joint",
)
_CENTRES = ("middle", "centre", "center")


def _tenons() -> dict[str, str]:
    """Return the tenons with what their adjective says of them behind a comma."""
    said = {
        "through": "through",
        "haunched": "haunch",
        "wedged": "wedges",
        "pegged": "pegs",
        "pinned": "pegs",
        "drawbored": "drawbore",
        "draw bored": "drawbore",
        "wedged through": "through, wedges",
        "through wedged": "through, wedges",
        "twin": "2",
        "double": "2",
    }
    tenons = {f"{adjective} tenon": f"tenon, {details}" for adjective, details in said.items()}
    plain = ("tenon", "mortise and tenon", "mortice and tenon", "blind tenon", "stub tenon")
    return {**dict.fromkeys(plain, "tenon"), **tenons}


def _round_tenons() -> Iterator[tuple[str, str]]:
    """Yield the spellings of a round tenon with what their adjective says of it."""
    for noun in ("round tenon", "round mortise and tenon"):
        yield noun, "round tenon"
        yield f"through {noun}", "round tenon, through"
        yield f"wedged {noun}", "round tenon, wedges"
        for both in (f"wedged through {noun}", f"through wedged {noun}"):
            yield both, "round tenon, through, wedges"


def _glue() -> Iterator[tuple[str, str]]:
    """Yield the spellings of where glue goes, each with its kind and perhaps a place."""
    for glue in (
        "glue",
        "glue only",
        "glue at",
        "glue only at",
        "glue in",
        "glued",
        "glued at",
        "glued only at",
        "glued in",
    ):
        for the in ("the ", ""):
            for centre in _CENTRES:
                yield f"{glue} {the}{centre}", "middle"
            for place in _PLACES:
                yield f"{glue} {the}{place}", f"place {place}"
    for glue in ("glue", "glue only", "glued at", "glue along", "glued along", "glued on"):
        for one in ("one edge", "one long edge", "one side"):
            yield f"{glue} {one}", "one edge"
        for place in _PLACES:
            yield f"{glue} the {place} edge", f"edge {place}"
            yield f"{glue} {place} edge", f"edge {place}"
    for pinned in ("pinned", "pin"):
        for centre in _CENTRES:
            for at in ("at the", "in the", "at"):
                yield f"{pinned} {at} {centre}", "pinned middle"
    for place in _PLACES:
        yield f"pinned at the {place}", f"pinned {place}"
        yield f"pinned at {place}", f"pinned {place}"


def _pockets() -> Iterator[tuple[str, str]]:
    """Yield the spellings of the face that pockets are bored from."""
    for place in (*_PLACES, "inside", "outside"):
        for at in ("pockets", "pockets at", "pockets in", "pockets on", "pockets from"):
            for the in ("the ", ""):
                yield f"{at} {the}{place}", f"pockets {place}"
                yield f"{at} {the}{place} face", f"pockets {place}"


_FIGURES = ("figure 8 plate", "figure eight plate", "figure eight")
_BOX_JOINTS = ("box joint", "finger joint", "box jointed", "finger jointed", "comb joint")
_DOVETAILS = ("dovetail", "through dovetail", "dovetailed", "dovetail joint", "dovetailed through")
_BLIND_DOVETAILS = ("half blind dovetail", "lapped dovetail", "half blind dovetailed")

JOINTS: tuple[Entry, ...] = (
    ("GLUEWORDS", dict(_glue())),
    ("GLUEWORDS", {"unglued": "dry", "glue less": "dry", "left dry": "dry"}),
    ("GLUEWORDS", {"dry": "dry", "not glued": "dry", "no glue": "dry", "without glue": "dry"}),
    ("GLUEWORDS", {"knock down": "knock-down", "loose": "knock-down", "bolted": "bolted"}),
    ("GLUEWORDS", {"knockdown": "knock-down", "pinned": "pinned"}),
    ("JOINT", {"half lap": "half lap", "halving": "half lap", "lap": "half lap"}),
    ("JOINT", {"halving joint": "half lap", "cross lap": "half lap", "cross halving": "half lap"}),
    ("JOINT", dict.fromkeys(("bridle", "bridle joint", "bridled"), "bridle")),
    ("JOINT", dict.fromkeys(("open mortise and tenon", "open tenon"), "bridle")),
    ("JOINT", dict.fromkeys(("mitre", "miter", "mitred", "mitered", "mitre joint"), "mitre")),
    ("JOINT", dict.fromkeys(_TONGUED, "tongue and groove")),
    ("JOINT", dict.fromkeys(("ship lap", "shiplap", "ship lapped", "shiplapped"), "ship lap")),
    ("JOINT", _tenons()),
    ("JOINT", dict(_round_tenons())),
    ("JOINT", {"housing": "housing", "dado": "housing", "trench": "housing"}),
    ("JOINT", {"housed": "housing", "dadoed": "housing"}),
    ("JOINT", dict.fromkeys(("rabbet", "rebate", "rabbet joint", "rebate joint"), "rabbet")),
    ("JOINT", dict.fromkeys(("rabbeted", "rebated", "rabbetted"), "rabbet")),
    ("JOINT", {"dowel": "dowels", "dowelled": "dowels", "doweled": "dowels"}),
    ("JOINT", {"biscuit": "biscuits", "biscuited": "biscuits"}),
    ("JOINT", dict.fromkeys(("loose tenon", "slip tenon", "floating tenon"), "loose tenon")),
    ("JOINT", dict.fromkeys(("pocket screw", "pocket hole screw"), "pocket screws")),
    ("JOINT", dict.fromkeys(_BOX_JOINTS, "box joint")),
    ("JOINT", dict.fromkeys(_DOVETAILS, "through dovetail")),
    ("JOINT", dict.fromkeys(_BLIND_DOVETAILS, "half-blind dovetail")),
    ("JOINT", dict.fromkeys(("hinge", "butt hinge"), "hinges")),
    ("JOINT", dict.fromkeys(("shelf pin", "pin hole"), "shelf pins")),
    ("JOINT", {"stopped groove": "groove, stopped", "through groove": "groove, through"}),
    ("JOINT", {"groove": "groove", "glue": "glue", "edge glue": "glue"}),
    ("JOINT", {"tenoned": "tenon", "mortised and tenoned": "tenon"}),
    ("FASTENER", {"screw": "screws", "wood screw": "screws", "screwed": "screws"}),
    ("FASTENER", {"button": "buttons", "wooden button": "buttons"}),
    ("FASTENER", dict.fromkeys(("clip", "tabletop clip", "steel clip"), "clips")),
    ("FASTENER", dict.fromkeys(_FIGURES, "figure-8 plates")),
    ("FASTENER", dict.fromkeys(("slotted screw",), "slotted screws")),
    ("GLUED", {"glued": "glued"}),
    ("_PROUD", {"proud": "proud"}),
    ("DETAIL", {"haunched": "haunch", "haunch": "haunch", "with a haunch": "haunch"}),
    ("DETAIL", {"wedge": "wedges", "wedged": "wedges"}),
    ("DETAIL", {"tongue": "tongue"}),
    ("DETAIL", {"peg": "pegs", "pegged": "pegs"}),
    ("DETAIL", {"drawbore": "drawbore", "drawbored": "drawbore", "draw bored": "drawbore"}),
    ("DETAIL", dict(_pockets())),
    ("DETAIL", {"draw bore": "drawbore", "proud": "proud"}),
    ("DETAIL", {"key": "keys", "spline": "keys", "keyed": "keys", "splined": "keys"}),
    ("_SHOULDER", {"shoulder": "shoulder"}),
    ("_OFFSET", {"offset": "offset", "set off": "offset"}),
    ("SHOWS", dict.fromkeys(("carry tails", "carry the tails", "get the tails"), "tails")),
    ("SHOWS", {"show": "shows", "run through": "shows", "on show": "shows", "showing": "shows"}),
)
