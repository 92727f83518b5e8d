"""The words of glue-ups, finishes and bought things."""

from __future__ import annotations

Entry = tuple[str, dict[str, str]]


def _pressed() -> dict[str, str]:
    found: dict[str, str] = {}
    for thing, value in (("weight", "weights"), ("tape", "tape"), ("pin", "pins")):
        for held in ("", "with ", "by ", "under ", "pressed by ", "pressed with ", "held by "):
            found[f"{held}{thing}"] = value
    for held in ("", "with ", "in "):
        found[f"{held}clamp"] = "clamps"
    return found


WORK: tuple[Entry, ...] = (
    ("PRESSED", _pressed()),
    ("PRESSED", {"weighted": "weights", "taped": "tape", "clamped": "clamps"}),
    ("_PEOPLE", {"people": "people", "person": "people", "hand": "people", "helper": "people"}),
    ("_PEOPLE", {"pair of hand": "people", "of us": "people"}),
    ("_CURE", {"cure": "cure", "cure for": "cure"}),
    ("COATS", {"coat": "coats"}),
    ("APART", {"apart": "apart", "between coats": "apart"}),
    ("_THEN", {"then": "then", "and then": "then", "followed by": "then"}),
    ("EVERYTHING", {"everything": "everything", "everything else": "everything"}),
    ("EVERYTHING", {"all": "everything", "all part": "everything", "every part": "everything"}),
    ("EVERYTHING", {"the rest": "everything", "the whole piece": "everything"}),
    ("BARE", {"no finish on": "no", "no finish": "no", "no finish for": "no"}),
    ("BARE", {"leave bare": "no", "keep bare": "no"}),
    ("BARE", {"mask": "mask", "mask off": "mask", "tape off": "mask"}),
    ("SEATS", {"seat": "seat"}),
    ("STANDS", {"outdoors": "outdoors", "place outdoors": "outdoors"}),
    ("STANDS", {"for outdoors": "outdoors", "place outside": "outdoors"}),
    ("STANDS", {"indoors": "indoors", "place indoors": "indoors", "for indoors": "indoors"}),
    ("BOUGHT", {"bought": "bought", "bought in": "bought", "buy": "bought"}),
    ("_FOR", {"for": "for"}),
    ("_ORDERED", {"order": "order", "ordered": "order", "to order": "order"}),
)
