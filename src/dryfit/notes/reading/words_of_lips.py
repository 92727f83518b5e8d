"""The words of sheets whose edges are covered: lipped with solid wood, or edge banded."""

from __future__ import annotations

from collections.abc import Iterator

Entry = tuple[str, dict[str, str]]

_LIPPED = ("lipped", "edge lipped", "edged", "solid edged")
_LIPPING = (
    *("lipping", "lip", "edging", "solid lipping", "solid edging", "solid lip"),
    *("with lipping", "with a lipping", "with a lip", "with edging"),
    *("with solid lipping", "with solid edging", "with a solid lipping"),
)
_BANDED = ("edge banded", "edgebanded", "banded", "edge veneered")
_BANDING = (
    *("edge banding", "edgebanding", "banding", "edge band", "with edge banding", "with banding"),
    *("iron on edging", "iron on banding", "with iron on edging", "with iron on banding"),
    *("veneer edging", "with veneer edging"),
)
"""The nouns are kept apart, since parts are called so: "1 front lip, across"."""

_BY = ("with", "in", "with a", "with an")
_PLACES = {
    **{place: (place,) for place in ("front", "left", "right", "top", "bottom")},
    "back": ("back", "rear"),
}
_MANY = {
    "ends": ("both end", "the end", "end", "each end", "short edge", "both short edge"),
    "long edge": ("long edge", "both long edge", "the long edge"),
    "edge": ("all edge", "all four edge", "every edge", "all side", "all four side", "each edge"),
}
_EDGES = ("edge", "end", "side")


def _sides() -> Iterator[tuple[str, str]]:
    """Yield the spellings of ``on the front edge``; "at" is a word of its own."""
    for on in ("on", "along"):
        for place, words in _PLACES.items():
            for word in words:
                for the in ("", "the "):
                    yield from ((f"{on} {the}{word} {edge}", place) for edge in _EDGES)
                yield f"{on} the {word}", place
        for value, words in _MANY.items():
            yield from ((f"{on} {word}", value) for word in words)


LIPS: tuple[Entry, ...] = (
    ("LIPPED", dict.fromkeys(_LIPPED, "lipped")),
    ("LIPPED", dict.fromkeys(_BANDED, "banded")),
    ("LIPPEDWITH", {f"{word} {by}": "lipped" for word in _LIPPED for by in _BY}),
    ("LIPPEDWITH", {f"{word} {by}": "banded" for word in _BANDED for by in _BY}),
    ("LIPPING", dict.fromkeys(_LIPPING, "lipped")),
    ("LIPPING", dict.fromkeys(_BANDING, "banded")),
    ("LIPSIDE", dict(_sides())),
)
