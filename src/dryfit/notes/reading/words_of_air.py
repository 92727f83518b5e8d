"""The words of moisture: how a board is sawn, what it holds, the air of shop and house."""

from __future__ import annotations

from dryfit.kinds.sawn import SPELLINGS

Entry = tuple[str, dict[str, str]]

_PLACES = {
    "heated": ("a heated house", "a heated room", "the kitchen", "the hall", "the living room"),
    "unheated": ("an unheated house", "an unheated room", "the garage", "the shed", "the attic"),
    "damp": ("a damp place", "a damp room", "the cellar", "the bathroom"),
}
_STANDS = ("stands", "it stands", "will stand")


def _places() -> dict[str, str]:
    found: dict[str, str] = {}
    for stands in _STANDS:
        for kind, places in _PLACES.items():
            for place in places:
                found[f"{stands} in {place}"] = kind
                found[f"{stands} in {place.removeprefix('the ')}"] = kind
                if place.startswith("the "):
                    found[f"{stands} in a {place.removeprefix('the ')}"] = kind
        found[f"{stands} outdoors"] = found[f"{stands} outside"] = "outdoors"
        found[f"{stands} indoors"] = "indoors"
    return found


AIR: tuple[Entry, ...] = (
    ("SAWN", dict(SPELLINGS)),
    ("STANDS", _places()),
    ("_STANDSAT", {f"{stands} at": "at" for stands in _STANDS}),
    ("_STANDSAT", {f"{stands} between": "at" for stands in _STANDS}),
    ("MOIST", {"wood at": "wood", "timber at": "wood", "wood is at": "wood"}),
    ("MOIST", {"wood holds": "wood", "wood moisture": "wood"}),
    ("SHOPAIR", {"shop at": "shop", "workshop at": "shop", "shop is at": "shop"}),
    ("_PERCENT", {"percent": "%", "per cent": "%"}),
    ("SCALE", {"c": "C", "celsius": "C", "degree c": "C", "degree celsius": "C"}),
    ("SCALE", {"f": "F", "fahrenheit": "F", "degree f": "F", "degree fahrenheit": "F"}),
    ("AIR", {"humidity": "humidity", "relative humidity": "humidity", "rh": "humidity"}),
    ("AIR", {"moisture": "moisture", "moisture content": "moisture"}),
)
