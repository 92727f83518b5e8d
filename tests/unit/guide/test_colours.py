"""The colouring file colours what the reader reads: its patterns are applied line by line here."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import NamedTuple

import pytest
from lark import Token
from tests.unit.guide.printed import readings

from dryfit.diagnostics import Source
from dryfit.guide.colours import colours_json
from dryfit.guide.kinds import kind_of
from dryfit.notes import canonical, names_by_line, parse
from dryfit.notes.reading.lexer import Reading, read_line
from dryfit.notes.reading.lines import sense_lines
from dryfit.notes.reading.words import PHRASES, SPELLINGS
from dryfit.patterns import shipped

ROOT = Path(__file__).resolve().parents[3]
NOTES = sorted((*ROOT.glob("examples/*.dryfit"), *ROOT.glob("tests/pieces/*.dryfit")))


class Rule(NamedTuple):
    """One pattern of the file, and the scope of each of its groups; group 0 is the whole."""

    pattern: re.Pattern[str]
    scopes: dict[int, str]


def rules() -> list[Rule]:
    """The rules of the file in the order in which an editor tries them."""
    document = json.loads(colours_json())
    names = [entry["include"].removeprefix("#") for entry in document["patterns"]]
    assert sorted(names) == sorted(document["repository"])
    found = []
    for name in names:
        rule = document["repository"][name]
        scopes = {0: rule["name"]} if "name" in rule else {}
        scopes |= {int(key): value["name"] for key, value in rule.get("captures", {}).items()}
        found.append(Rule(re.compile(rule["match"]), scopes))
    return found


RULES = rules()


def coloured(line: str) -> list[str]:
    """The scope of every character, as such grammars work: earliest match, then first rule."""
    scopes = [""] * (len(line) + 1)
    matches = [rule.pattern.search(line) for rule in RULES]
    at = 0
    while at < len(line):
        for number, rule in enumerate(RULES):
            known = matches[number]
            if known is not None and (known.start() < at or not known.group()):
                matches[number] = rule.pattern.search(line, at)
        found = [
            (match, rule)
            for match, rule in zip(matches, RULES, strict=True)
            if match and match.group()
        ]
        if not found:
            break
        match, rule = min(found, key=lambda pair: pair[0].start())
        for group, scope in sorted(rule.scopes.items()):
            start, end = match.span(group)
            scopes[start:end] = [scope.removesuffix(".dryfit")] * (end - start)
        at = match.end()
    return scopes


def expected(token: Token, text: str) -> set[str]:
    """The scopes that are right for a token; empty where the file cannot know."""
    if token.type in ("INT", "NUMBER", "MEASURE"):
        return {"constant.numeric"}
    if token.type == "TEXT":
        return {"string.unquoted"}
    if token.type == "VALUE" and token.start_pos == 0:
        return {"variable.other"}
    meanings = PHRASES.get(canonical(text), ())
    if any(token.type == terminal for terminal, _ in meanings):
        return {kind_of(terminal).scope for terminal, _ in meanings} | (
            {"keyword.operator"} if token.type == "BY" else set()
        )
    return {"keyword.operator"} if text in ("=", "+", "-", "*", "/", "×", "(", ")") else set()


def judged(reading: Reading) -> int:
    """How many tokens of the line can be judged; each must have its colour."""
    line, judged = reading.line, 0
    typed = [coloured(text) for text in line.source.lines()]
    for token in reading.tokens:
        if token.type == "TEXT" and reading.tree.data == "limit":
            continue  # the reason of a limit stands behind a comma, as other phrases do
        start, end = token.start_pos, token.end_pos
        assert start is not None
        assert end is not None
        place = line.span(start, end)
        right = expected(token, line.text[start:end])
        got = typed[place.line - 1][place.column - 1]
        assert not right or got in right, (line.text, line.text[start:end], token.type, got)
        judged += bool(right)
    return judged


@pytest.mark.parametrize("path", NOTES, ids=lambda path: path.stem)
def test_every_token_of_real_notes_is_coloured_as_what_it_is(path: Path) -> None:
    source = Source(path.name, path.read_text(encoding="utf-8"))
    lines = tuple(sense_lines(source))
    names = names_by_line(lines, shipped())
    readings = [read_line(line, words) for line, words in zip(lines, names, strict=True)]
    assert sum(judged(reading) for reading in readings if isinstance(reading, Reading)) > 20


def test_every_token_of_the_language_page_is_coloured_as_what_it_is() -> None:
    assert sum(judged(reading) for reading in readings()) > 400


@pytest.mark.parametrize("terminal", sorted(SPELLINGS))
def test_every_word_of_the_table_is_coloured_whole(terminal: str) -> None:
    for phrase in SPELLINGS[terminal]:
        # Openers are words of the beginning of a line, all others of any place in it.
        line = phrase if kind_of(terminal).scope == "keyword.control" else f"legs, {phrase}"
        scopes = coloured(line)[-len(phrase) - 1 : -1]
        meant = {kind_of(kind).scope for kind, _ in PHRASES[canonical(phrase)]}
        assert len(set(scopes)) == 1, (phrase, scopes)
        assert scopes[0] in meant | {"keyword.operator", "string.unquoted"}, (phrase, scopes)


def test_what_a_line_begins_with() -> None:
    assert coloured("4 legs, upright")[:7] == [
        "constant.numeric",
        "",
        *["entity.name.type"] * 4,
        "",
    ]
    assert coloured("four long rails across")[5] == "entity.name.type"
    assert coloured("four long rails across")[-2] == "storage.modifier"
    assert coloured("finish seat before glue up base")[0] == "keyword.control"
    assert coloured("overhang = 15")[:8] == ["variable.other"] * 8
    assert coloured("    45 wide, 5 from bottom")[7] == "support.type"


def test_a_remark_is_a_remark_to_its_end() -> None:
    line = "note keep 4 legs dry # 2 rails, upright"
    scopes = coloured(line)
    assert set(scopes[line.index("#") : -1]) == {"comment.line.number-sign"}
    assert scopes[line.index("4")] == "string.unquoted"


def test_no_pattern_is_slow_on_a_long_line() -> None:
    # Each rule looks at a letter a fixed number of times; a rule that backtracked over all ways to
    # part the letters would not come to an end here.
    for line in ("a" * 5000, "4 " + "a" * 5000, "4 " + "ab " * 1500, "9" * 5000, "x" * 5000):
        assert len(coloured(line)) == len(line) + 1


def test_the_notes_of_these_tests_can_be_read() -> None:
    assert len(NOTES) > 10
    for path in NOTES:
        _, findings = parse(Source(path.name, path.read_text(encoding="utf-8")), shipped())
        assert findings == ()
