"""The reader of one line: at every place the longest word or number that the parser can take.

Names of parts and values have blanks in them and may hold words of the language ("top end rail",
"tenon length"), so what a word is depends on what the file declares and on what the sentence can
take at that place.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from lark import Token, Tree

from dryfit.notes.reading.grammar import END, LineParse
from dryfit.notes.reading.lines import SenseLine
from dryfit.notes.reading.number_tokens import begins_number, is_size_sign, number_at, spelled_at
from dryfit.notes.reading.tokens import Fault, end_of, token
from dryfit.notes.reading.vocabulary import Vocabulary
from dryfit.notes.reading.word_kinds import FILLERS
from dryfit.notes.reading.word_tokens import WordReader
from dryfit.notes.reading.words_of_stock import CURRENCY_SIGNS, SLASHED

_SIGNS = {
    ",": "_COMMA",
    ";": "_COMMA",
    ":": "_COLON",
    "=": "_EQ",
    "+": "_PLUS",
    "-": "_MINUS",
    "*": "_STAR",
    "/": "_SLASH",
    "(": "_LPAR",
    ")": "_RPAR",
    ".": "_DOT",
    "&": "_AND",
    "%": "_PERCENT",
    "×": "BY",
    "?": "LEFTOUT",
    **dict.fromkeys(CURRENCY_SIGNS, "CURRENCY"),
}


_UNITS = "|".join(sorted(map(re.escape, SLASHED), key=len, reverse=True))
_SLASHED = re.compile(rf"/ ?({_UNITS})(?![^\W_])", re.IGNORECASE)
_COUNTED_BY_A = frozenset({"STOCK", "DEFECT", "SPARE"})


@dataclass(frozen=True, slots=True)
class Failure:
    """Where a line could not be read on: from `start` to `end` stands what did not fit.

    `takes` is what the parser could have taken there; `tokens` are those before.  `fault` names a
    number that is no number (see `numbers.Spelled`), or None.
    """

    line: SenseLine
    start: int
    end: int
    takes: frozenset[str]
    tokens: tuple[Token, ...]
    fault: str | None = None


@dataclass(frozen=True, slots=True)
class Reading:
    """A line read to its end: the parse tree, and its tokens in order."""

    line: SenseLine
    tree: Tree[Token]
    tokens: tuple[Token, ...]


def read_line(line: SenseLine, vocabulary: Vocabulary) -> Reading | Failure:
    """Return the parse of the line, or where and why it stops."""
    scan = _Scan(line, vocabulary)
    parse = LineParse()
    tokens: list[Token] = []
    at = scan.skip(0)
    while at < len(line.text):
        takes = parse.takes()
        made = scan.token(at, takes, tokens[-1].type if tokens else "")
        if made is None:
            filler = scan.filler(at, takes)
            if filler:
                at = scan.skip(filler)
                continue
            start, end = scan.stumble(at)
            return Failure(line, start, end, takes, tuple(tokens))
        if isinstance(made, Fault):
            return Failure(line, at, made.end, takes, tuple(tokens), made.fault)
        parse.feed(made)
        tokens.append(made)
        at = scan.skip(end_of(made))
    takes = parse.takes()
    if END not in takes:
        end = len(line.text)
        return Failure(line, end, end, takes, tuple(tokens))
    return Reading(line, parse.finish(), tuple(tokens))


class _Scan:
    """One line, and the file's names."""

    def __init__(self, line: SenseLine, vocabulary: Vocabulary) -> None:
        self.text = line.text
        self.decimal_comma = vocabulary.decimal_comma
        self.reader = WordReader(line, vocabulary)
        self.skip = self.reader.ahead.skip

    def token(self, at: int, takes: frozenset[str], after: str) -> Token | Fault | None:
        """Return the token that stands at the place, or None if the parser can take none.

        `after` is the type of the token before.
        """
        if "TEXT" in takes and not ("_COLON" in takes and self.text[at] == ":"):
            return token("TEXT", self.text[at:], at, len(self.text))
        if "CLAUSETEXT" in takes:
            end = self._end_of_clause(at)
            return token("CLAUSETEXT", self.text[at:end].rstrip(), at, end)
        sign = self.text[at]
        if begins_number(self.text, at):
            words = self.reader.at_word
            return number_at(self.text, at, takes, words, decimal_comma=self.decimal_comma)
        if sign in "xX" and is_size_sign(self.text, at) and "BY" in takes:
            return token("BY", "x", at, at + 1)
        if at in self.reader.at_word:
            return self.reader.token(self.reader.at_word[at], takes, after)
        if sign == "/" and "PERUNIT" in takes:
            return self._slashed(at)
        possessive = self._possessive(at) if "_POSS" in takes else None
        if possessive:
            return token("_POSS", possessive, at, at + len(possessive))
        terminal = _SIGNS.get(sign)
        return token(terminal, sign, at, at + 1) if terminal in takes and terminal else None

    def _slashed(self, at: int) -> Token:
        """Return the unit of "14/m", or else the sign of a fraction or a quotient."""
        found = _SLASHED.match(self.text, at)
        if found is None:
            return token("_SLASH", "/", at, at + 1)
        return token("PERUNIT", SLASHED[found[1].lower()], at, found.end())

    def _end_of_clause(self, at: int) -> int:
        comma = self.text.find(",", at)
        return len(self.text.rstrip() if comma < 0 else self.text[:comma].rstrip())

    def filler(self, at: int, takes: frozenset[str]) -> int | None:
        """Return the end of an article that stands at the place, or None.

        ``a`` is one only before what `_COUNTED_BY_A` names: "have a board", "with a knot".
        """
        index = self.reader.at_word.get(at)
        if index is None:
            return None
        word = self.reader.words[index]
        one = word.text in ("a", "an") and self.reader.ahead.begins(
            index + 1, _COUNTED_BY_A & takes
        )
        return word.end if one or word.text in FILLERS else None

    def stumble(self, at: int) -> tuple[int, int]:
        """Return the place of the word, number or sign that did not fit."""
        index = self.reader.at_word.get(at)
        if index is not None:
            return at, self.reader.words[index].end
        number = spelled_at(self.text, at, decimal_comma=self.decimal_comma)
        return at, number.end if number else at + 1

    def _possessive(self, at: int) -> str | None:
        """Return the sign of "leg's width" and "legs' width" that stands at the place, or None."""
        if self.text.startswith("'s ", at):
            return "'s"
        return "'" if self.text[at - 1 : at + 1].lower() == "s'" else None
