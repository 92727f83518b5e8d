"""The place where a line stopped making sense, with what the cases ask about it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lark import Token

from dryfit.diagnostics import Hint, Span
from dryfit.notes.mistake import Repair
from dryfit.notes.names import plural
from dryfit.notes.reading.lexer import Failure
from dryfit.notes.reading.runs import Word, name_length, run_at
from dryfit.notes.reading.vocabulary import Vocabulary
from dryfit.notes.reading.words import SPELLINGS

_MANY_NAMES = 200


@dataclass(frozen=True, slots=True)
class Stumble:
    """A failure with the vocabulary of its file."""

    failure: Failure
    vocabulary: Vocabulary

    @property
    def words(self) -> tuple[Word, ...]:
        """The words of the line."""
        return self.failure.line.words

    @property
    def text(self) -> str:
        """The text of the line, folded."""
        return self.failure.line.text

    @property
    def at(self) -> int:
        """Where in the text it failed."""
        return self.failure.start

    @property
    def written(self) -> str:
        """What did not fit, as typed; nothing at the end of a line."""
        return self.text[self.failure.start : self.failure.end]

    @property
    def rest(self) -> str:
        """The line from where it failed."""
        return self.text[self.at :]

    @property
    def takes(self) -> frozenset[str]:
        """What the parser could have taken."""
        return self.failure.takes

    @property
    def opener(self) -> str:
        """The type of the first token, or nothing."""
        return self.failure.tokens[0].type if self.failure.tokens else ""

    @property
    def previous(self) -> Token | None:
        """The token before the failure, or None at the start of the line."""
        return self.failure.tokens[-1] if self.failure.tokens else None

    def span(self, start: int, end: int) -> Span:
        """Return a place on the line."""
        return self.failure.line.span(start, end)

    @property
    def place(self) -> Span:
        """The place of what did not fit."""
        return self.span(self.failure.start, self.failure.end)

    def word_at(self, start: int) -> int | None:
        """Return the index of the word that begins at the place, or None."""
        return next((i for i, word in enumerate(self.words) if word.start == start), None)

    def name_end(self, first: int) -> int:
        """Return where the name ends that begins with the word, if it were one."""
        last = first + name_length(self.words, first) - 1
        after = range(first + 1, last + 1)
        cut = next((index for index in after if self.words[index].text == "and"), last + 1)
        return self.words[cut - 1].end

    def runs(self) -> Iterator[tuple[str, int, int]]:
        """Yield the runs of words from the failure, longest first: text, start and end."""
        yield from self.runs_from(self.at)

    def runs_from(self, start: int, shortest: int = 1) -> Iterator[tuple[str, int, int]]:
        """Yield the runs of words from a place, longest first."""
        first = self.word_at(start)
        if first is None:
            return
        for length in range(4, shortest - 1, -1):
            if run_at(self.words, first, length) is not None:
                end = self.words[first + length - 1].end
                yield self.text[start:end], start, end

    def name_spellings(self, names: frozenset[str]) -> Iterator[str]:
        """Yield the names as they were declared, and in singular and plural.

        Of very many names only those that begin as what is written here, to bound the work.
        """
        first = self.written[:1].lower() if len(names) > _MANY_NAMES else ""
        for name in sorted(name for name in names if name.startswith(first)):
            yield from {self.vocabulary.written.get(name, name): 0, name: 0, plural(name): 0}

    def takeable_names(self) -> Iterator[str]:
        """Yield every spelling of a name that the parser could take here."""
        if "NAME" in self.takes:
            yield from self.name_spellings(self.vocabulary.parts)
        if "VALUE" in self.takes:
            yield from self.name_spellings(self.vocabulary.values)

    def takeable_spellings(self) -> Iterator[str]:
        """Yield every spelling of words of the language that the parser could take here."""
        for terminal in sorted(self.takes):
            yield from SPELLINGS.get(terminal, ())

    def replacing(self, message: str, text: str, *, stands_alone: bool = False) -> Repair:
        """Return the repair that writes the text instead of what did not fit."""
        return Repair(message, self.place, text, stands_alone)

    def inserting(self, message: str, at: int, text: str) -> Repair:
        """Return the repair that puts the text in at the place."""
        return Repair(message, self.span(at, at), text)


_LISTED = 6


def parts_hint(stumble: Stumble) -> tuple[Hint, ...]:
    """Return the names that a line may give to a part, and how many there are beyond the first."""
    known = [stumble.vocabulary.written[part] for part in sorted(stumble.vocabulary.parts)]
    if not known:
        return ()
    rest = len(known) - _LISTED
    more = f" and {rest} more" if rest > 0 else ""
    return (Hint(f"the parts are: {', '.join(known[:_LISTED])}{more}"),)
