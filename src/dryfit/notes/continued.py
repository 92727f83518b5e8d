"""A comma at the end of a line that made the next line, meant to stand alone, its continuation."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.notes.mistakes import is_readable
from dryfit.notes.reading.lines import SenseLine, Stretch, split
from dryfit.notes.reading.vocabulary import Vocabulary, declared_in, phrase_at, words_of
from dryfit.notes.reading.words import PHRASES

_OPENERS = frozenset("PIECE NOTE UNITS OVERALL TIMBER HAVE GLUEUP FINISH FEATURE _LET".split())


@dataclass(frozen=True, slots=True)
class Apart:
    """The lines that one line of sense really is, and the finding about the comma."""

    lines: tuple[SenseLine, SenseLine]
    finding: Diagnostic


def swallowed(line: SenseLine, vocabulary: Vocabulary) -> Apart | None:
    """Return the lines that a line which cannot be read falls into, if a comma is to blame."""
    for count in range(1, len(line.stretches)):
        if not line.text[: line.stretches[count].start].rstrip().endswith(","):
            continue
        before, after = split(line, count)
        if not is_readable(before, vocabulary):
            continue
        if is_readable(after, vocabulary) or _opens(after):
            return Apart((before, after), _finding(line, line.stretches[count], after))
    return None


def _opens(line: SenseLine) -> bool:
    if declared_in(line):
        return True
    words = words_of(line.text)
    phrase = phrase_at(words, 0) if words else None
    return phrase is not None and any(kind in _OPENERS for kind, _ in PHRASES[phrase[0]])


def _finding(line: SenseLine, following: Stretch, after: SenseLine) -> Diagnostic:
    comma = line.text.rindex(",", 0, following.start)
    place = line.span(comma, comma + 1)
    typed = line.source.lines()[place.line - 1]
    without = typed[: place.column - 1] + typed[place.column :]
    return Diagnostic(
        "comma-continues",
        Severity.ERROR,
        f"line {after.line} is read as the continuation of this line, which ends in a comma",
        place,
        hints=(Hint("take the comma away", without),),
    )
