"""The tidied text of a document, as the changes that make it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from dryfit.diagnostics import Diagnostic
from dryfit.editor.document import document_of
from dryfit.editor.places import Encoding, Place, character_of
from dryfit.notes import tidied


@dataclass(frozen=True, slots=True)
class Change:
    """What to write in place of what stands at `place`."""

    place: Place
    text: str


def formatting(
    name: str, text: str, encoding: Encoding, environment: Mapping[str, str]
) -> tuple[Change, ...]:
    """Return the lines that tidying changes; tidying keeps their number and their order."""
    document = document_of(name, text, environment)
    if isinstance(document, Diagnostic):
        return ()
    after = tidied(document.source, document.patterns)
    lines = zip(document.source.lines(), after.split("\n"), strict=True)
    return tuple(
        Change(Place(number, 0, character_of(before, len(before) + 1, encoding)), after)
        for number, (before, after) in enumerate(lines)
        if after != before
    )
