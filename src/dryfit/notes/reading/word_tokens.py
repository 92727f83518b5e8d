"""What the word at a place is: a word of the language, a name of the file, or what has no name yet.

A name may hold words of the language, so the longest run that means something there is taken, and
where it means several things, what stands around it decides.
"""

from __future__ import annotations

from collections.abc import Collection
from fractions import Fraction
from functools import cached_property

from lark import Token

from dryfit.notes.reading import numbers
from dryfit.notes.reading.lines import SenseLine
from dryfit.notes.reading.lookahead import Ahead
from dryfit.notes.reading.numbers import Spelled
from dryfit.notes.reading.runs import begins_feature, name_length, phrase_at, run_at
from dryfit.notes.reading.tokens import end_of, start_of, token
from dryfit.notes.reading.vocabulary import Vocabulary
from dryfit.notes.reading.word_kinds import BOUGHT_TOO, PLACE_WORDS
from dryfit.notes.reading.words import PHRASES

_FREE_NAMES = ("finish", "timber", "wood", "measured")
# "30 rise" is a size, also where a value is called rise.
_AFTER_A_NUMBER = ("CUTADJ", "_STAVES", "STOCK")
_NUMBERS = ("INT", "NUMBER", "MEASURE")
# "15 below the top" is below a side, also where a part is called top.
# "tenon 20, pegs 9" is about the joint, also where parts are called pegs.
_SAID_OF_JOINTS = ("DETAIL", "GLUEWORDS")
# "skirting 60 x 15" is that of the room, also where a part is called so.
_OF_THE_ROOM = ("_CEILING", "_SKIRTING")
_BEFORE_A_CLAUSE = ("_COMMA", "_COLON", "_AND", "_WITH", "INT")
_BEFORE_A_SIDE = ("_BELOW", "_ABOVE", "_FROM", "_TO")


class WordReader:
    """The words of one line, and the names of its file; `at_word` gives a word's index by place."""

    def __init__(self, line: SenseLine, vocabulary: Vocabulary) -> None:
        self.vocabulary = vocabulary
        self.text = line.text
        self.words = line.words
        self.ahead = Ahead(line, vocabulary)
        self.at_word = {word.start: index for index, word in enumerate(self.words)}
        # "finish seat before glue up": a deed; "finish oil, 2 coats": what the piece is given.
        self._is_wish = any(word.text in ("before", "after") for word in self.words)

    def token(self, index: int, takes: frozenset[str], after: str) -> Token | None:
        """Return the token of the word of that index; `after` is the type of the token before."""
        best = None
        for length in range(self.vocabulary.longest_from(self.words[index].text), 0, -1):
            best = self._run(index, length, takes, after)
            if best:
                break
        count = self._count_word(index, takes) if best is None else None
        if count:
            return count
        if "PHRASE" in takes and (self._is_finished_with(index) or self._is_measured(best)):
            return best
        if "PHRASE" in takes and (best is None or not self._goes_first(best)):
            setting = self.words[0].text == "pattern" and after != "PATTERN"
            free = self.words[0].text in _FREE_NAMES or after == "_WITH" or setting
            length = name_length(self.words, index, free=free)
            return self._token_of("PHRASE", None, index, length)
        return best

    def _count_word(self, index: int, takes: frozenset[str]) -> Token | None:
        """Return the count of "four legs", which needs a name behind it."""
        word = self.words[index]
        counts = "INT" in takes and word.text in numbers.COUNT_WORDS
        if not counts or index + 1 >= len(self.words) or not self.words[index + 1].follows:
            return None
        value = Fraction(numbers.COUNT_WORDS[word.text])
        return token("INT", Spelled(word.end, value, None, whole=True), word.start, word.end)

    def _run(self, index: int, length: int, takes: frozenset[str], after: str) -> Token | None:
        run = run_at(self.words, index, length)
        if run is None:
            return None
        meanings = [
            meaning
            for meaning in PHRASES.get(run, ())
            if meaning[0] in takes and self.ahead.goes_on(meaning, run, index + length)
        ]
        surface = [meaning for meaning in meanings if meaning[0] == "SURFACE"]
        if surface and self.ahead.is_surface(takes, index + length):
            meanings = surface
        side = after in _BEFORE_A_SIDE or meanings == surface
        if meanings and side and run in PLACE_WORDS and not self.ahead.is_sized(index + length):
            return self._token_of(*meanings[0], index, length)
        if self._is_wish:
            meanings.sort(key=lambda meaning: meaning[0] != "ACTION")
        elif len(meanings) > 1 and meanings[0][0] == "ACTION":
            meanings.reverse()
        if meanings and self._goes_before_names(meanings[0][0], after, index + length):
            return self._token_of(*meanings[0], index, length)
        said = meanings[0] if meanings and meanings[0][0] in _SAID_OF_JOINTS else None
        if meanings and meanings[0][0] == "JOINT" and run in BOUGHT_TOO:
            # Hinges may be bought too, and are then names.
            said = meanings[0]
        if said and after in _BEFORE_A_CLAUSE and self.ahead.is_said_of_a_joint(index + length):
            return self._token_of(*said, index, length)
        is_part = run in self.vocabulary.parts and "NAME" in takes
        side = is_part and self._is_side((index, index + length), takes, after)
        named = self._name(index, length, takes, after)
        if named and not (side and named.type == "NAME"):
            return named
        if meanings:
            return self._token_of(*meanings[0], index, length)
        if is_part and not side:
            return self._token_of("NAME", run, index, length)
        return None

    def _name(self, index: int, length: int, takes: frozenset[str], after: str) -> Token | None:
        run = " ".join(word.text for word in self.words[index : index + length])
        for names, terminal in self._names_for(run, after, index + length):
            if run in names and terminal in takes and not self.ahead.is_place_of(index, run):
                return self._token_of(terminal, run, index, length)
        return None

    def _goes_before_names(self, kind: str, after: str, following: int) -> bool:
        """Return whether a word is meant though a part or a value may be called so."""
        if kind in _OF_THE_ROOM:
            return not self.ahead.is_sized(following)
        return after in _NUMBERS and kind in _AFTER_A_NUMBER

    def _is_side(self, run: tuple[int, int], takes: frozenset[str], after: str) -> bool:
        """Return whether "ends" and "edges" mean those of a part though parts are called so."""
        if self.ahead.is_end_or_edge(run, takes):
            return True
        return self._is_cut and self.ahead.is_side_of_a_cut(run, takes, more=after == "_AND")

    def _names_for(
        self, run: str, after: str, following: int
    ) -> tuple[tuple[Collection[str], str], ...]:
        """Return the kinds of names that the run can be, the likeliest first.

        What can be set of a pattern may be called as one of its parts: "leg" and "4 legs".
        """
        words = self.vocabulary
        kinds: list[tuple[Collection[str], str]] = []
        if self._uses_pattern and self.ahead.is_set(following):
            kinds.append((words.settings, "PARAMETER"))
        kinds += [(words.patterns, "PATTERNNAME"), (words.inner, "INNER")]
        things = [(words.parts, "NAME"), (words.values, "VALUE")]
        both = after and run in words.parts and run in words.values
        if both and not self.ahead.is_sized(following):
            things.reverse()
        return (*kinds, *things)

    @cached_property
    def _is_cut(self) -> bool:
        """Whether the line begins with a cut with no mate, perhaps behind a count in words."""
        phrases = (phrase_at(self.words, first) for first in range(min(2, len(self.words))))
        return any(
            kind == "FEATURE" for phrase in phrases if phrase for kind, _ in PHRASES[phrase[0]]
        )

    @cached_property
    def _uses_pattern(self) -> bool:
        """Whether the line makes something by a pattern: "1 base, as leg base, leg 50"."""
        return any(
            word.text == "as" and self.ahead.names_pattern(index + 1)
            for index, word in enumerate(self.words)
        )

    def _is_finished_with(self, index: int) -> bool:
        """Return whether the word stands in "finish frames and rails with paint" before with.

        In "finish with paint" it is with itself.
        """
        if self._is_wish or self.words[0].text != "finish":
            return False
        return index < self._first_with or index == self._first_with == 1

    @cached_property
    def _first_with(self) -> int:
        """The index of the first with, 0 where there is none."""
        return next((at for at, word in enumerate(self.words) if word.text == "with"), 0)

    def _is_measured(self, best: Token | None) -> bool:
        """Return whether a size of a part or a value is named in "measured post.thickness = 30".

        What is made by gluing has measurements of its own, such as a "base length".
        """
        if best is None or self.words[0].text != "measured":
            return False
        after = self.ahead.skip(end_of(best))
        if best.type == "VALUE":
            return self.text[after : after + 1] in ("=", ":") or after not in self.at_word
        index = self.at_word[start_of(best)] + len(str(best.value).split(" "))
        if best.type == "NAME":
            return str(best.value) not in self.vocabulary.stages and self.ahead.is_sized(index)
        return best.type == "PLACE" and index < len(self.words)

    def _goes_first(self, token: Token) -> bool:
        """Return whether a word behind a count is no name: "4 x legs", "2 holes in back"."""
        return token.type in ("BY", "_OFF") or (
            token.type == "FEATURE" and begins_feature(self.words, self.at_word[start_of(token)])
        )

    def _token_of(self, terminal: str, value: str | None, index: int, length: int) -> Token:
        start, end = self.words[index].start, self.words[index + length - 1].end
        if value is None:
            value = " ".join(word.text for word in self.words[index : index + length])
        return token(terminal, value, start, end)
