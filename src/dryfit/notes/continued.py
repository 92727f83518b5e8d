"""A comma at the end of a line that made the next line, meant to stand alone, its continuation."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.notes.mistakes import is_readable
from dryfit.notes.reading.lines import SenseLine, Stretch, split
from dryfit.notes.reading.runs import phrase_at
from dryfit.notes.reading.vocabulary import Vocabulary, declared_in, is_glue_up
from dryfit.notes.reading.word_kinds import BEGINNERS
from dryfit.notes.reading.words import PHRASES

_OPENERS = BEGINNERS - {"_BETWEENSIZES"}


@dataclass(frozen=True, slots=True)
class Apart:
    """The lines that one line of sense really is, and the finding about the comma."""

    lines: tuple[SenseLine, SenseLine]
    finding: Diagnostic | None


def swallowed(line: SenseLine, failed_at: int, vocabulary: Vocabulary) -> Apart | None:
    """Return the lines into which a line falls that cannot be read from the place on, if any."""
    for count in range(1, len(line.stretches)):
        before, after = split(line, count)
        if not is_readable(after, vocabulary) and not _opens(after):
            continue
        following = line.stretches[count]
        comma = line.text[: following.start].rstrip().endswith(",")
        if comma and is_readable(before, vocabulary):
            return Apart((before, after), _finding(line, following, after))
        if not comma or (failed_at < following.start and not is_glue_up(line)):
            # What is wrong with the first line is told there; the second is read by itself.
            return Apart((before, after), None)
    return None


def _opens(line: SenseLine) -> bool:
    if declared_in(line):
        return True
    words = line.words
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
