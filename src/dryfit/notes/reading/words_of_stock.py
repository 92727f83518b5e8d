"""The words of wood on hand and of what the yard sells."""

from __future__ import annotations

from dryfit.notes.names import canonical

Entry = tuple[str, dict[str, str]]

_KINDS = {
    "board": ("board", "plank", "piece"),
    "offcut": ("offcut", "off cut", "leftover"),
    "sheet": ("sheet",),
    "slab": ("slab",),
    "strip": ("strip", "batten", "lath", "moulding", "molding"),
}
_UNITS = {
    "metre": ("metre", "meter", "m", "running metre", "running meter", "linear metre"),
    "foot": ("foot", "ft", "running foot", "linear foot", "lineal foot"),
    "square metre": ("square metre", "square meter", "m2", "m²", "sq m", "sqm"),
    "square foot": ("square foot", "sq ft", "ft2", "ft²", "sqft"),
    "cubic metre": ("cubic metre", "cubic meter", "m3", "m³", "cu m", "cbm"),
    "board foot": ("board foot", "bd ft", "bf", "bdft"),
    "piece": ("piece", "board", "plank", "sheet", "slab", "strip", "length"),
}
_SPOKEN = (
    *("metre", "meter", "foot", "square metre", "square meter", "square foot", "cubic metre"),
    *("cubic meter", "board foot", "piece", "board", "sheet"),
)
"""Before these also an article may stand: "14 a metre"."""

_DEFECTS = (
    *("knot", "split", "check", "crack", "shake", "sapwood", "heartwood", "pith", "bark", "wane"),
    *("rot", "hole", "worm hole", "nail", "nail hole", "stain", "pocket", "pitch pocket"),
    *("resin pocket", "damage", "dent", "burn", "snipe"),
)
_AVOID = ("avoid", "avoiding", "bad", "leave out", "defect", "flaw", "bad wood")
_SIDES = {
    "left end": ("left", "left end", "left hand end", "reference end", "end", "near end"),
    "right end": ("right", "right end", "right hand end", "far end", "other end"),
    "both ends": ("both end", "each end", "either end"),
    "near edge": ("edge", "near edge", "front edge", "lower edge", "bottom edge"),
    "far edge": ("far edge", "other edge", "back edge", "rear edge", "upper edge", "top edge"),
    "both edges": ("both edge", "each edge", "either edge", "two edge", "both side"),
    "one edge": ("one edge", "an edge", "one side"),
}
CURRENCIES = {
    "€": ("eur", "euro"),
    "£": ("gbp", "pound", "pound sterling", "sterling"),
    "$": ("usd", "dollar", "us dollar"),
    "¥": ("jpy", "yen"),
    "CHF": ("chf", "franc", "swiss franc"),
    "kr": ("kr", "krona", "krone", "crown"),
    "SEK": ("sek",),
    "NOK": ("nok",),
    "DKK": ("dkk",),
    "PLN": ("pln", "zloty"),
    "CZK": ("czk",),
    "CAD": ("cad", "canadian dollar"),
    "AUD": ("aud", "australian dollar"),
    "NZD": ("nzd", "new zealand dollar"),
}
"""How the money of a country is written: the label that it is kept by, and its words."""

CURRENCY_SIGNS = frozenset("€£$¥")
"""Those that are signs, which stand before a figure or behind it."""


def _per_units() -> dict[str, str]:
    found: dict[str, str] = {"each": "piece", "apiece": "piece", "ea": "piece"}
    for unit, words in _UNITS.items():
        for word in words:
            found[f"per {word}"] = unit
            if word in _SPOKEN:
                found[f"a {word}"] = unit
    return found


STOCK_WORDS: tuple[Entry, ...] = (
    ("STOCK", {word: kind for kind, words in _KINDS.items() for word in words}),
    ("STATE", {"rough": "rough", "rough sawn": "rough", "sawn": "rough"}),
    ("STATE", dict.fromkeys(("hit and miss", "hit or miss", "skip planed"), "hit and miss")),
    ("STATE", dict.fromkeys(("skip dressed", "skip surfaced"), "hit and miss")),
    ("STATE", dict.fromkeys(("planed", "dressed", "surfaced", "planed all round"), "planed")),
    ("STATE", dict.fromkeys(("ready planed", "par", "s4s"), "planed")),
    ("MARK", {"cup": "cup", "cupped": "cup", "twist": "twist", "twisted": "twist"}),
    ("MARK", {"bow": "bow", "bowed": "bow"}),
    ("MARK", {"moisture": "moisture", "moisture content": "moisture", "at": "moisture"}),
    ("MARK", dict.fromkeys(("mc", "moisture of", "moisture content of"), "moisture")),
    ("DEFECT", {word: word for word in _DEFECTS}),
    ("DEFECT", dict.fromkeys(_AVOID, "avoid")),
    ("STOCKSIDE", {word: side for side, words in _SIDES.items() for word in words}),
    ("SHEETGRAIN", dict.fromkeys(("no grain", "without grain", "grainless"), "none")),
    ("SHEETGRAIN", dict.fromkeys(("grain", "with grain", "grain lengthwise"), "grain")),
    ("SHEETGRAIN", dict.fromkeys(("grain along", "grain the long way", "long grain"), "grain")),
    ("SHEETGRAIN", dict.fromkeys(("grain along length", "grain along the length"), "grain")),
    ("MEASURES", dict.fromkeys(("measures", "measured", "measuring", "really"), "measures")),
    ("MEASURES", {"actual thickness": "measures", "actually": "measures"}),
    ("BUY", dict.fromkeys(("buy", "can buy", "the yard has", "yard has"), "buy")),
    ("BUY", dict.fromkeys(("the yard sells", "yard sells", "for sale"), "buy")),
    ("INVENTORY", dict.fromkeys(("stock from", "stock in", "offcuts from"), "stock from")),
    ("INVENTORY", dict.fromkeys(("inventory", "inventory from"), "stock from")),
    ("PRICED", dict.fromkeys(("price", "priced", "priced at", "costs", "cost"), "price")),
    ("PRICED", dict.fromkeys(("for", "at"), "price")),
    ("CURRENCY", {word: sign for sign, words in CURRENCIES.items() for word in words}),
    ("PERUNIT", _per_units()),
    ("_AVAILABLE", dict.fromkeys(("available", "in stock", "on offer", "to be had"), "available")),
    ("SPARE", dict.fromkeys(("spare", "extra", "to spare"), "spare")),
)


SLASHED = {word: unit for unit, words in _UNITS.items() for word in words if unit != "piece"}
"""What may stand behind a price and a slash: ``14/m``."""


def label_of(word: str) -> str | None:
    """Return the label of a currency's word or sign, or None."""
    if word in CURRENCY_SIGNS:
        return word
    plain = canonical(word)
    return next((label for label, words in CURRENCIES.items() if plain in words), None)
