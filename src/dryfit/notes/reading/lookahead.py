"""What follows a word: some words mean this or that by what stands behind them."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.notes.reading.lines import SenseLine
from dryfit.notes.reading.numbers import GLYPHS
from dryfit.notes.reading.runs import begins_stock, kinds_at, phrase_at, run_at
from dryfit.notes.reading.vocabulary import Vocabulary
from dryfit.notes.reading.word_kinds import FILLERS, PLACE_WORDS
from dryfit.notes.reading.words import PHRASES
from dryfit.notes.reading.words_of_stock import CURRENCY_SIGNS, label_of

_NUMERALS = frozenset("0123456789").union(GLYPHS)
_CLAUSE_ENDS = ("", ",", ";", ":")
_SETS = ("=", ":", "(", ".")
_SIDES_OF_CUTS = frozenset({"SURFACE", "NOUN", "EVERY", "ENDS"})
_OF_STOCK = ("BUY", "BOUGHT", "MARK", "PRICED")
_OF_PRICES = ("each", "apiece", "per")
_BEFORE_A_NAME = PLACE_WORDS | FILLERS


@dataclass(frozen=True, slots=True)
class Ahead:
    """One line and the names of its file; `after` is always the index of the word that follows."""

    line: SenseLine
    vocabulary: Vocabulary

    def skip(self, at: int) -> int:
        """Return the place of the next sign that is no blank."""
        while at < len(self.line.text) and self.line.text[at] == " ":
            at += 1
        return at

    def _sign(self, after: int) -> str:
        """Return the sign behind the word before, or nothing at the end of the line."""
        at = self.skip(self.line.words[after - 1].end)
        return self.line.text[at : at + 1]

    def _word(self, index: int) -> str:
        words = self.line.words
        return words[index].text if index < len(words) and words[index].follows else ""

    def is_set(self, after: int) -> bool:
        """Return whether a sign or an amount follows the name of a setting."""
        sign = self._sign(after)
        if after < len(self.line.words) and self.line.words[after].text in ("is", "be"):
            return True
        return sign in _SETS or sign in _NUMERALS or self.names_at(after, self.vocabulary.values)

    def goes_on(self, meaning: tuple[str, str], run: str, after: int) -> bool:
        """Return whether what follows a phrase allows the meaning; `after` is the next word.

        "3 between" has nothing behind it; "at the back of stiles" and "in bay" need the name.
        """
        terminal, value = meaning
        if terminal == "_BETWEENTHEM":
            return " " in run or self._sign(after) in _CLAUSE_ENDS
        if terminal == "_BETWEENSIZES":
            return self.sum_at(after)
        if terminal == "EVERYTHING" and run == "all":
            return self._word(after) == "with"  # "all edges of seat" are not everything
        if run in ("buy", "at") and terminal in _OF_STOCK:
            return self._is_of_stock(terminal, after)
        if terminal == "GLUEWORDS" and run == "loose":
            return "JOINT" not in kinds_at(
                self.line.words, after
            )  # a "loose tenon" is another joint
        if terminal == "PREP" and run == "to":
            # "door to side: 2 hinges", but what "seat to legs" means is asked.
            return any(word.text == "hinge" for word in self.line.words[after:])
        if terminal == "PREP" and (value == "in" or run.startswith("at ")):
            words = self.vocabulary
            return self.names_at(after, words.spaces if value == "in" else words.parts)
        return True

    def _is_of_stock(self, terminal: str, after: int) -> bool:
        """Return whether ``buy`` means wood, and ``at`` a price or how moist wood is."""
        if terminal in ("BUY", "BOUGHT"):
            return begins_stock(self.line.words, after) == (terminal == "BUY")
        start = self.line.words[after - 1].end
        clause = self.line.text[start:].partition(",")[0]
        words = [word.text for word in self.line.words[after:] if word.start < start + len(clause)]
        if terminal == "MARK":
            return "%" in clause or not {"percent", "cent"}.isdisjoint(words)
        priced = any(word in _OF_PRICES or label_of(word) for word in words)
        return priced or not CURRENCY_SIGNS.isdisjoint(clause)

    def is_said_of_a_joint(self, after: int) -> bool:
        """Return whether a word such as pegs, which may name parts too, is about a joint.

        "pegs.width" is a size, "pegs show" says whose face is unbroken.
        """
        return "SHOWS" not in kinds_at(self.line.words, after) and not self.is_sized(after)

    def begins(self, index: int, kinds: frozenset[str]) -> bool:
        """Return whether a phrase of one of the kinds begins with the word."""
        return not kinds.isdisjoint(kinds_at(self.line.words, index))

    def is_surface(self, takes: frozenset[str], after: int) -> bool:
        """Return whether a place word names a face or an edge, and is not of a part's name."""
        if "PLACE" not in takes or after >= len(self.line.words):
            return "PLACE" not in takes
        # "finish top edges of seat", but "finish top with oil" and "finish front legs with oil"
        phrase = phrase_at(self.line.words, after) if self.line.words[after].follows else None
        kinds = {kind for kind, _ in PHRASES[phrase[0]]} if phrase else set()
        if phrase and phrase[0] in self.vocabulary.parts and self._word(after + phrase[1]) != "of":
            return False  # "finish left end with oil" where parts are called ends
        return bool(kinds & {"SURFACE", "NOUN", "_OF"})

    def is_end_or_edge(self, run: tuple[int, int], takes: frozenset[str]) -> bool:
        """Return whether "ends of legs" begins here, where parts are called ends as well.

        `run` are the index of the name's first word and of the word behind it.
        """
        return "NOUN" in _kinds(self._word_at(run[0])) & takes and self._word(run[1]) == "of"

    def is_side_of_a_cut(self, run: tuple[int, int], takes: frozenset[str], *, more: bool) -> bool:
        """Return whether a cut is said to be at an end or an edge, where parts are called so.

        In "chamfer on legs: bottom end, 3 wide" a part could only stand for one of its sizes, and
        is then named with that.  Behind `and` (`more`) a further part may stand: "20 from top of
        rails and ends".
        """
        first, after = run
        if self.is_sized(after) or not _kinds(self._word_at(first)) & takes & _SIDES_OF_CUTS:
            return False
        before = first - 2 if self._word_at(first - 1) == "and" else first - 1
        return not more or bool(_kinds(self._word_at(before)) & _SIDES_OF_CUTS)

    def _word_at(self, index: int) -> str:
        return self.line.words[index].text

    def is_sized(self, after: int) -> bool:
        """Return whether a dimension follows, as in "top.width" and "top's width"."""
        if self._sign(after) in ("'", "."):
            return True
        return "DIM" in kinds_at(self.line.words, after)

    def sum_at(self, after: int) -> bool:
        """Return whether a number follows, or a value and "and"."""
        if self._sign(after) in _NUMERALS:
            return True
        more = any(word.text == "and" for word in self.line.words[after + 1 :])
        return more and self.names_at(after, self.vocabulary.values)

    def names_pattern(self, after: int) -> bool:
        """Return whether a pattern's name follows, perhaps behind an article."""
        words = self.line.words
        if after < len(words) and words[after].text in ("a", "an", "the"):
            after += 1
        if after >= len(words):
            return False
        longest = self.vocabulary.longest_from(words[after].text)
        runs = (run_at(words, after, length) for length in range(longest, 0, -1))
        return any(name in self.vocabulary.patterns for name in runs if name)

    def names_at(self, index: int, names: frozenset[str]) -> bool:
        """Return whether one of the names begins with the word, or behind its place words."""
        while index < len(self.line.words) and self.line.words[index].follows:
            longest = self.vocabulary.longest_from(self.line.words[index].text)
            runs = (run_at(self.line.words, index, length) for length in range(longest, 0, -1))
            if any(name in names for name in runs if name):
                return True
            if self.line.words[index].text not in _BEFORE_A_NAME:
                return False
            index += 1
        return False

    def is_place_of(self, index: int, run: str) -> bool:
        """Return whether a place word stands before the name of a part: "front left leg"."""
        while run in PLACE_WORDS:
            index += 1
            if index >= len(self.line.words) or not self.line.words[index].follows:
                return False
            longest = self.vocabulary.longest_from(self.line.words[index].text)
            runs = (run_at(self.line.words, index, length) for length in range(longest, 0, -1))
            if any(name in self.vocabulary.parts for name in runs if name):
                return True
            run = self.line.words[index].text
        return False


def _kinds(word: str) -> set[str]:
    return {kind for kind, _ in PHRASES.get(word, ())}
