"""What notes say, without where they say it: to compare two spellings of the same notes."""

import re
from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields, is_dataclass

from dryfit.diagnostics import Findings, Source, Span
from dryfit.notes import parse
from dryfit.notes.reading.lines import fold, sense_lines
from dryfit.notes.reading.numbers import GLYPHS
from dryfit.patterns.library import shipped

# Kept as typed, to be shown: `written` is a name, `text` of stock and assumptions a whole line.
AS_TYPED = {"written", "text"}
G = "".join(GLYPHS)
WORD = re.compile(rf"[^\W\d{G}]+|[0-9]+|\S")
SIZE_SIGN = re.compile(rf"(?<=[0-9{G}])[xX]|\b[xX](?=[{G}]|\b)")


@dataclass(frozen=True)
class Said:
    """The statements with the lines on which they begin, the patterns, the findings and the names
    of what could not be read.
    """

    statements: tuple[tuple[int, object], ...]
    patterns: object
    findings: Counter[tuple[int | None, str, str]]
    unreadable: frozenset[str]


def said(text: str) -> Said:
    """What a text says."""
    notes, findings = parse(Source("a.dryfit", text), shipped())
    statements = tuple((each.span.line, meaning(each)) for each in notes.statements)
    return Said(statements, meaning(notes.patterns), told(findings), notes.unreadable)


def statements(text: str) -> list[str]:
    """The statements as typed, a continued line and a pattern down to its end each as one."""
    lines = text.split("\n")
    found: list[str] = []
    in_pattern = False
    for line in sense_lines(Source("a.dryfit", text)):
        typed = "\n".join(lines[line.line - 1 : line.stretches[-1].line])
        if in_pattern:
            found[-1] += f"\n{typed}"
        else:
            found.append(typed)
        opens = re.match(r"\s*pattern\b", line.text, re.IGNORECASE) is not None
        closes = re.fullmatch(r"\s*end", line.text, re.IGNORECASE) is not None
        in_pattern = (in_pattern or opens) and not closes
    return found


def told(findings: Findings) -> Counter[tuple[int | None, str, str]]:
    """The findings by line, severity and code; their words may hold what was typed."""
    return Counter(
        (finding.span.line if finding.span else None, finding.severity.value, finding.code)
        for finding in findings
    )


def meaning(tree: object) -> object:
    """A statement, a Model or anything in them as nested plain values without places."""
    if isinstance(tree, Source | Span):
        return None
    if is_dataclass(tree) and not isinstance(tree, type):
        return type(tree).__name__, tuple(
            (field.name, _field(field.name, getattr(tree, field.name))) for field in fields(tree)
        )
    if isinstance(tree, Mapping):
        return {key: meaning(value) for key, value in tree.items()}
    if isinstance(tree, tuple | list):
        return tuple(meaning(item) for item in tree)
    # What is shown to the maker may hold a name as it was typed, two blanks between its words.
    return " ".join(tree.split()) if isinstance(tree, str) else tree


def _field(name: str, value: object) -> object:
    return words(value) if name in AS_TYPED and isinstance(value, str) else meaning(value)


def words(text: str) -> tuple[str, ...]:
    """The words, numbers and signs of a line as the language takes them, without its blanks."""
    signs = fold(text).replace("''", '"').replace("×", " x ")
    return tuple(WORD.findall(SIZE_SIGN.sub(" x ", signs)))


def as_multiset(items: Iterable[object]) -> Counter[str]:
    """The items without their places and their order."""
    return Counter(repr(meaning(item)) for item in items)
