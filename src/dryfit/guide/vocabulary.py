"""The words of the language by kind, each with the other words that mean the same."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from dryfit.guide.kinds import KINDS, OTHER, Kind, kind_of
from dryfit.notes import canonical
from dryfit.notes.reading.word_kinds import NAME_STOPS, RESERVED
from dryfit.notes.reading.words import PHRASES, SPELLINGS


@dataclass(frozen=True, slots=True)
class Word:
    """A word or phrase, and its synonyms."""

    word: str
    synonyms: tuple[str, ...]


def words_by_kind() -> tuple[tuple[Kind, tuple[Word, ...]], ...]:
    """Return every kind that has words, with them in the order of the word table."""
    kinds = [
        (kind, words_of(terminal for terminal in SPELLINGS if kind_of(terminal) is kind))
        for kind in (*KINDS, OTHER)
    ]
    return tuple((kind, words) for kind, words in kinds if words)


def phrases_by_kind() -> tuple[tuple[Kind, tuple[str, ...]], ...]:
    """Return every kind that has words, with its phrases in their canonical form, sorted."""
    phrases: dict[Kind, set[str]] = {kind: set() for kind in (*KINDS, OTHER)}
    for phrase, meanings in PHRASES.items():
        for terminal, _ in meanings:
            phrases[kind_of(terminal)].add(phrase)
    return tuple((kind, tuple(sorted(found))) for kind, found in phrases.items() if found)


def no_names() -> tuple[str, ...]:
    """Return the phrases that no part and no value can have as its whole name, sorted."""
    return tuple(sorted(_SPELLED[phrase] for phrase in RESERVED))


def name_ends() -> tuple[str, ...]:
    """Return the phrases before which a name ends, whatever follows, sorted."""
    return tuple(sorted({phrase for stop in NAME_STOPS for phrase in SPELLINGS.get(stop, ())}))


_SPELLED = {
    canonical(phrase): phrase for phrases in SPELLINGS.values() for phrase in reversed(phrases)
}


def words_of(terminals: Iterable[str]) -> tuple[Word, ...]:
    """Return the words of some terminals, what means the same under one of them."""
    spelled: dict[str, dict[str, str]] = {}
    for terminal in terminals:
        for phrase in SPELLINGS[terminal]:
            key = canonical(phrase)
            # What a phrase stands for in the tree is the word that a maker would use most.
            meant = dict(PHRASES[key])[terminal]
            spelled.setdefault(meant, {}).setdefault(key, phrase)
    return tuple(_word(meant, phrases) for meant, phrases in spelled.items())


def _word(meant: str, phrases: dict[str, str]) -> Word:
    first = canonical(meant)
    if first not in phrases:
        word, *others = phrases.values()
        return Word(word, tuple(others))
    return Word(meant, tuple(phrase for key, phrase in phrases.items() if key != first))
