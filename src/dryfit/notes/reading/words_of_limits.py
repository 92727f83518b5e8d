"""The words of limits, of the wood itself, and of what was measured and done at the bench."""

from __future__ import annotations

Entry = tuple[str, dict[str, str]]

_ALL = ("all", "both", "cut")
_FROM_BOARDS = tuple(
    f"{glued} from {boards}"
    for glued in ("glued", "glued up")
    for boards in ("boards", "several boards", "staves", "several staves")
)
_ONE = ("one board", "the same board")
_THICK = tuple(
    f"{out} {board}"
    for out in ("from", "out of")
    for board in ("thick boards", "thicker boards", "a thick board", "a thicker board")
)
_OPENED = ("bookmatched from one board", "bookmatched from the slab")
_GROWN = ("waney", "waney edge", "waney edged", "live edge", "live edged", "natural edge")

LIMITS: tuple[Entry, ...] = (
    ("MEASURED", {"measured": "measured"}),
    ("DONE", {"done": "done"}),
    ("SPOILED", {"spoiled": "spoiled", "spoilt": "spoiled"}),
    ("_ATMOST", {"at most": "at most", "no more than": "at most", "not more than": "at most"}),
    ("_ATMOST", {"up to": "at most", "max": "at most", "maximum": "at most"}),
    ("_ATLEAST", {"min": "at least", "minimum": "at least"}),
    ("_ATLEAST", {"at least": "at least", "no less than": "at least", "not less than": "at least"}),
    ("_BETWEENSIZES", {"between": "between"}),
    ("WOOD", {"bookmatched": "bookmatched", "book matched": "bookmatched"}),
    ("WOOD", dict.fromkeys(_OPENED, "bookmatched, one board")),
    ("WOOD", {"resawn": "resawn"} | {f"resawn {thick}": "resawn" for thick in _THICK}),
    ("WOOD", {f"sawn in two {thick}": "resawn" for thick in _THICK}),
    ("_ONSTICKERS", {"on stickers": "on stickers", "on sticks": "on stickers"}),
    ("UNRESTED", {"planed in one go": "planed in one go"}),
    ("WOOD", {"in sequence": "in sequence", "in sequence from one board": "in sequence"}),
    ("WOOD", {"from one board": "one board", "from the same board": "one board"}),
    (
        "WOOD",
        {f"{all_} from {one}": "one board" for all_ in _ALL for one in _ONE},
    ),
    ("WOOD", {"as they come": "free widths"}),
    ("WOOD", {f"{boards} as they come": "free widths" for boards in _FROM_BOARDS}),
    ("WOOD", dict.fromkeys(_FROM_BOARDS, "boards")),
    ("WANEY", {f"{with_}{edge}": "waney" for edge in _GROWN for with_ in ("", "with ")}),
    ("_GRAIN", {"grain": "grain", "grain running": "grain", "grain runs": "grain"}),
)
