"""The tidied text of a document, as the changes that make it."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.diagnostics import Diagnostic
from dryfit.editor.places import Encoding, Place, character_of
from dryfit.notes import source_of, tidied


@dataclass(frozen=True, slots=True)
class Change:
    """What to write in place of what stands at `place`."""

    place: Place
    text: str


def formatting(name: str, text: str, encoding: Encoding) -> tuple[Change, ...]:
    """Return the lines that tidying changes; tidying keeps their number and their order."""
    source = source_of(name, text.encode("utf-8", "surrogatepass"))
    if isinstance(source, Diagnostic):
        return ()
    lines = zip(source.lines(), tidied(source).split("\n"), strict=True)
    return tuple(
        Change(Place(number, 0, character_of(before, len(before) + 1, encoding)), after)
        for number, (before, after) in enumerate(lines)
        if after != before
    )
