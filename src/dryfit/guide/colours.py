"""`dryfit help colours`: the language for an editor's syntax colouring, made from the word table.

The form is a TextMate grammar in JSON, which very many editors read: patterns tried in order at
every place of a line, each with the scope that colours what it matches.  Its regular expressions
keep to what Oniguruma and Python have in common, so that a test can apply them.

A colouring file knows no declared names: a place word inside a name is coloured as a place.
"""

from __future__ import annotations

import json
import re

from dryfit.guide.kinds import KINDS, OPENING
from dryfit.guide.vocabulary import phrases_by_kind
from dryfit.notes.names import plural
from dryfit.notes.reading.numbers import COUNT_WORDS, GLYPHS
from dryfit.notes.reading.word_kinds import LOOSE_STOPS, NAME_STOPS
from dryfit.notes.reading.words import PHRASES
from dryfit.quantities import UNITS

Rule = dict[str, object]

_SUFFIX = ".dryfit"
_BETWEEN = r"[\s_-]+"
# Terminals behind which a line is free text to its end.
_FREE_TEXT = ("PIECE", "NOTE", "DONE", "INVENTORY")
_TICK = "'"
_INCH_SIGNS = ("\u2033", "\u2032", "\u201d", "\u2019")  # primes and quotation marks of telephones
_ENDS_NAME = NAME_STOPS | LOOSE_STOPS
# "45 wide," is a size, as the rest of a continued line may begin; "2 wide rails" is a name.
_SIZES = frozenset(["DIMADJ", "UNIT"])


def colours_json() -> str:
    """Return the grammar as one JSON document, ending in a newline."""
    rules = {
        "remark": _rule("comment.line.number-sign", "#.*$"),
        "free-text": _free_text(),
        "value": _value(),
        "parts": _parts(),
        "opener": _rule("keyword.control", rf"^\s*(?:{_any_of(_openers())})(?![^\W_])"),
        "number": _rule("constant.numeric", _number()),
        **_words(),
        "size-sign": _rule("keyword.operator", r"(?<=[0-9\s])[xX](?=[0-9\s])|\u00d7"),
        "sign": _rule("keyword.operator", r"[=+*/()-]"),
    }
    document = {
        "name": "dryfit",
        "scopeName": f"source{_SUFFIX}",
        "fileTypes": ["dryfit"],
        "patterns": [{"include": f"#{name}"} for name in rules],
        "repository": rules,
    }
    return json.dumps(document, indent=2, ensure_ascii=False) + "\n"


def _rule(scope: str, match: str) -> Rule:
    return {"name": scope + _SUFFIX, "match": f"(?i){match}"}


def _with_captures(match: str, *scopes: str) -> Rule:
    captures = {
        str(number): {"name": scope + _SUFFIX} for number, scope in enumerate(scopes, start=1)
    }
    return {"match": f"(?i){match}", "captures": captures}


def _free_text() -> Rule:
    openers = _any_of(_phrases_of(frozenset(_FREE_TEXT)))
    return _with_captures(
        rf"^\s*({openers})(?![^\W_])([^#]*)", "keyword.control", "string.unquoted"
    )


def _value() -> Rule:
    measured = _any_of(_phrases_of(frozenset(["MEASURED"])))
    return _with_captures(
        rf"^\s*(?:(let)\s+)?(?!(?:{measured})(?![^\W_]))([^\W\d_][^=,:;#()+*/\u00d7]*?)\s*(=)",
        "keyword.control",
        "variable.other",
        "keyword.operator",
    )


def _parts() -> Rule:
    """Return the rule of ``4 legs``: a count and the name up to a sign or a word that ends it."""
    stops, sizes = _any_of(_phrases_of(_ENDS_NAME)), _any_of(_phrases_of(_SIZES))
    cuts = _any_of(_phrases_of(frozenset(["FEATURE"])))
    ended = (
        rf"(?:{stops})(?![^\W_])|(?:{sizes})(?![ _-]*[^\W\d_])"
        rf"|(?:{cuts})\s+(?:in|on)(?![^\W_])"  # "2 holes in back" makes no parts
    )
    word = rf"(?!{ended})[^\W\d_]+(?:[ _-]+|(?![^\W_]))"
    return _with_captures(
        rf"^\s*([0-9]+|(?:{'|'.join(COUNT_WORDS)})(?![^\W_]))\s*((?:x\s|off\b|\u00d7)?)\s*"
        rf"((?:{word})+)",
        "constant.numeric",
        "keyword.operator",
        "entity.name.type",
    )


def _number() -> str:
    glyphs = "".join(GLYPHS)
    part = rf"(?:[0-9]+[/\u2044][0-9]+|[{glyphs}])"
    value = rf"(?:[0-9]+(?:[ ]+|-){part}|[0-9]+[ ]*[{glyphs}]|{part}|[0-9]*[.,]?[0-9]+)"
    names = sorted((name for name in UNITS if name.isalpha()), key=len, reverse=True)
    signs = "|".join(re.escape(sign) for sign in ('"', _TICK * 2, _TICK, "\u00b0", *_INCH_SIGNS))
    return rf"(?<![^\W\d_]){value}(?:[ ]*(?:{signs}|(?:{'|'.join(names)})(?![^\W_])))?"


def _words() -> dict[str, Rule]:
    """Return one rule a kind and number of words, those of most words first.

    ``front to back`` must be tried before ``front``, whatever their kinds.
    """
    # What begins a line may stand elsewhere too ("overall width", "before glue up"), and is then
    # what else it can be, if anything.
    kinds = sorted(phrases_by_kind(), key=lambda entry: entry[0] is OPENING)
    most = max(len(phrase.split()) for phrase in PHRASES)
    rules: dict[str, Rule] = {}
    for length in range(most, 0, -1):
        for kind, phrases in kinds:
            found = [phrase for phrase in phrases if len(phrase.split()) == length]
            if found:
                position = KINDS.index(kind) if kind in KINDS else len(KINDS)
                match = rf"(?<![^\W_])(?:{_any_of(found)})(?![^\W_])"
                rules[f"words-{length}-{position}"] = _rule(kind.scope, match)
    return rules


def _phrases_of(terminals: frozenset[str]) -> list[str]:
    return [
        phrase
        for phrase, meanings in PHRASES.items()
        if any(terminal in terminals for terminal, _ in meanings)
    ]


def _openers() -> list[str]:
    return next(list(phrases) for kind, phrases in phrases_by_kind() if kind is OPENING)


def _any_of(phrases: list[str]) -> str:
    """Return an alternation of phrases in singular and plural, long ones first."""
    ordered = sorted(phrases, key=lambda phrase: (-len(phrase), phrase))
    return "|".join(_spellings(phrase) for phrase in ordered)


def _spellings(phrase: str) -> str:
    """Return one phrase with any blank or hyphen between its words, as names are compared.

    Each word may be a plural: ``pockets at back``.
    """
    return _BETWEEN.join(_one_or_many(word) for word in phrase.split(" "))


def _one_or_many(word: str) -> str:
    many = plural(word)
    return f"{word}s?" if many == f"{word}s" else f"(?:{many}|{word})"
