"""The words of a line, the runs of them that are phrases of the language, and where a name ends."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from dryfit.notes.names import singular
from dryfit.notes.reading.numbers import GLYPHS
from dryfit.notes.reading.word_kinds import BOUGHT_TOO, LOOSE_STOPS, NAME_STOPS
from dryfit.notes.reading.words import PHRASES

_G = "".join(GLYPHS)
# An x right behind a number is a size sign, not the beginning of a word: "60x22", "4xlegs".
# The 8 of a figure-8 plate is no number.
_WORD = re.compile(rf"(?:(?<=[0-9{_G}])[xX])?([^\W\d_{_G}][^\W_{_G}]*|(?<=figure[ _-])8(?![0-9]))")
_JOINED_BY = re.compile(r" +|[-_]")


@dataclass(frozen=True, slots=True)
class Word:
    """A word of a line: its place, its singular, and whether it follows the one before it
    directly enough to be of one name with it; `hyphened` tells that a hyphen joins the two.
    """

    start: int
    end: int
    text: str
    follows: bool
    hyphened: bool = False


def words_of(text: str) -> tuple[Word, ...]:
    """Return the words of a folded line in order."""
    found: list[Word] = []
    for match in _WORD.finditer(text):
        start, end = match.span(1)
        between = text[found[-1].end : start] if found else ","
        follows = bool(_JOINED_BY.fullmatch(between))
        hyphened = follows and between in ("-", "_")
        found.append(Word(start, end, singular(match.group(1)), follows, hyphened))
    return tuple(found)


def run_at(words: Sequence[Word], first: int, length: int) -> str | None:
    """Return the canonical run of so many words from the first, or None if it is broken before."""
    run = words[first : first + length]
    if len(run) < length or not all(word.follows for word in run[1:]):
        return None
    return " ".join(word.text for word in run)


def phrase_at(words: Sequence[Word], first: int) -> tuple[str, int] | None:
    """Return the longest phrase of the language that begins with the word, and its length."""
    for length in range(LONGEST_PHRASE.get(words[first].text, 0), 0, -1):
        run = run_at(words, first, length)
        if run in PHRASES:
            return run, length
    return None


def begins_feature(words: Sequence[Word], first: int) -> bool:
    """Return whether a cut with no mate is named here: "holes in ...", not "hole cover"."""
    phrase = phrase_at(words, first)
    if phrase is None or all(kind != "FEATURE" for kind, _ in PHRASES[phrase[0]]):
        return False
    after = first + phrase[1]
    return after < len(words) and words[after].follows and words[after].text in ("in", "on")


def begins_stock(words: Sequence[Word], first: int) -> bool:
    """Return whether wood of a yard is named here: "boards of ash", not "board hooks"."""
    if "UNIT" in kinds_at(words, first):
        first += 1  # buy (mm) boards of ash
    if "STATE" in kinds_at(words, first):
        state = phrase_at(words, first)
        first += state[1] if state else 0  # buy rough sawn boards of ash
    if "STOCK" not in kinds_at(words, first):
        return False
    phrase = phrase_at(words, first)
    after = first + (phrase[1] if phrase else 0)
    return after >= len(words) or not words[after].follows or words[after].text == "of"


def kinds_at(words: Sequence[Word], at: int) -> set[str]:
    """Return what the phrase may be that begins with a word; nothing without one."""
    phrase = phrase_at(words, at) if at < len(words) else None
    return {kind for kind, _ in PHRASES[phrase[0]]} if phrase else set()


def name_length(words: Sequence[Word], first: int, *, free: bool = False) -> int:
    """Return how many words a new name has that begins with the word.

    It ends before a comma or digit and before a word of the language that goes on from a name;
    `free` keeps everything up to the next sign or wish, as in the name of a finish.
    """
    length = 1
    while first + length < len(words) and words[first + length].follows:
        phrase = phrase_at(words, first + length)
        if phrase and _ends_name(words, first + length, phrase, free=free):
            break
        length += 1
    return length


def _ends_name(words: Sequence[Word], at: int, phrase: tuple[str, int], *, free: bool) -> bool:
    if words[at].hyphened:
        return False  # "built-in shelf" is one name
    kinds = {kind for kind, _ in PHRASES[phrase[0]]}
    if free:
        return bool(kinds & {"ORDER", "ACTION", "_WITH", "_THEN", "_IS"})
    if kinds & NAME_STOPS:
        return True
    if not kinds & LOOSE_STOPS or phrase[0] in BOUGHT_TOO:
        # "brass hinges" are bought.
        return False
    after = at + phrase[1]
    plain = after < len(words) and words[after].follows and phrase_at(words, after) is None
    return not plain or phrase[1] > 1


def longest_by_first(runs: Iterable[str]) -> dict[str, int]:
    """Return how many words the longest run has, by its first word."""
    longest: dict[str, int] = {}
    for run in runs:
        words = run.split(" ")
        longest[words[0]] = max(longest.get(words[0], 0), len(words))
    return longest


LONGEST_PHRASE = longest_by_first(PHRASES)
