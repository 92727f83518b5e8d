"""What patterns bring into a text: their names, what can be set of them, what is inside."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from dryfit.notes.names import canonical
from dryfit.notes.reading.lines import SenseLine
from dryfit.notes.reading.runs import name_length

_PARTED = re.compile(r",|\band\b", re.IGNORECASE)
_BEHIND_THE_NAME = re.compile(r"\s*(?:with\b|:)?", re.IGNORECASE)
_OF_THE_WHOLE = ("width", "depth", "height")


@dataclass(frozen=True, slots=True)
class Offered:
    """The patterns that a text can use: each with what can be set of it, and all names inside."""

    patterns: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    inner: frozenset[str] = frozenset()


NOTHING_OFFERED = Offered()


@dataclass(frozen=True, slots=True)
class Heading:
    """What the first line of a pattern names, each canonical and as written."""

    name: str
    parameters: tuple[tuple[str, str], ...]


def heading_of(line: SenseLine) -> Heading | None:
    """Return what the first line of a pattern names, as far as its signs tell; None of no name."""
    words = line.words
    if len(words) < 2:
        return None
    last = words[name_length(words, 1)]
    name = canonical(line.text[words[1].start : last.end])
    start = _BEHIND_THE_NAME.match(line.text, last.end)
    listed = line.text[start.end() if start else last.end :]
    found: list[tuple[str, str]] = []
    for part in _PARTED.split(listed):
        written = part.partition("=")[0].strip()
        if written and written[0].isalpha() and canonical(written) not in _OF_THE_WHOLE:
            found.append((canonical(written), written))
    return Heading(name, tuple(found))
