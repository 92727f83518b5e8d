"""The words of what a part carries and what a bought thing weighs."""

from __future__ import annotations

Entry = tuple[str, dict[str, str]]

LOADS: tuple[Entry, ...] = (
    ("_CARRIES", {"carries": "carries", "carry": "carries", "to carry": "carries"}),
    ("_CARRIES", {"carrying": "carries", "loaded with": "carries"}),
    ("_WEIGHS", {"weighs": "weighs", "weighing": "weighs", "weight": "weighs"}),
    ("LOAD", {"books": "books", "book": "books", "heavy books": "heavy books"}),
    ("LOAD", {"clothes": "clothes", "linen": "clothes", "tools": "tools"}),
    ("LOAD", {"display": "display", "ornaments": "display", "china": "display"}),
    ("MASS", {"kg": "kg", "kilo": "kg", "kilogram": "kg", "g": "g", "gram": "g"}),
    ("MASS", {"lb": "lb", "pound": "lb"}),
    (
        "PER",
        {"a metre": "m", "a meter": "m", "per metre": "m", "per meter": "m", "each metre": "m"},
    ),
    ("_APIECE", {"each": "each", "apiece": "each"}),
    ("PER", {"per m": "m", "per ft": "ft"}),
    ("PER", {"a foot": "ft", "per foot": "ft", "each foot": "ft"}),
)
