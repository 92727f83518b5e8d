"""Notes whose findings are announced in them, columns included; any other finding fails.

Above the line that it is about, a remark says what must be found::

    #! error[unknown-name] 15-19: nothing here is called `lges`
    #! note (line 3): first written here
    #! hint: did you mean `legs`?
    #! try: 2 rails, into legs

A file in which nothing is announced must be flawless.  ``try:`` is the whole corrected line
without the blanks round it.
"""

from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest

from dryfit.diagnostics import Diagnostic, Source, Span
from dryfit.notes import parse

FILES = sorted(Path(__file__).parent.glob("*.dryfit"))


def announced(text: str) -> Counter[tuple[int, str]]:
    """The announced findings: each with the line on which it must be."""
    found: Counter[tuple[int, str]] = Counter()
    waiting: list[str] = []
    for number, line in enumerate(text.split("\n"), start=1):
        if line.startswith("#! "):
            said = line.removeprefix("#! ")
            if said.split("[")[0] in ("error", "warning", "question", "notice"):
                waiting.append(said)
            else:
                waiting[-1] += f"\n{said}"
        elif line.strip():
            found.update((number, said) for said in waiting)
            waiting = []
    assert not waiting, "announced after the last line"
    return found


def told(finding: Diagnostic) -> tuple[int, str]:
    """A finding in the form in which it is announced."""
    assert finding.span is not None
    return finding.span.line, "\n".join(_told_lines(finding, finding.span))


def _told_lines(finding: Diagnostic, span: Span) -> Iterator[str]:
    columns = f"{span.column}-{span.end_column}"
    yield f"{finding.severity.value}[{finding.code}] {columns}: {finding.message}"
    for note in finding.notes:
        where = f" (line {note.span.line})" if note.span else ""
        yield f"note{where}: {note.message}"
    for hint in finding.hints:
        yield f"hint: {hint.message}"
        if hint.corrected_line is not None:
            yield f"try: {hint.corrected_line.strip()}"


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_findings_are_those_announced(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    _, findings = parse(Source(path.name, text))
    assert Counter(told(finding) for finding in findings) == announced(text)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_corrections_remove_the_finding(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    _, findings = parse(Source(path.name, text))
    for finding in findings:
        for hint in finding.hints:
            if hint.corrected_line is None or finding.span is None:
                continue
            lines = text.split("\n")
            lines[finding.span.line - 1] = hint.corrected_line
            _, left = parse(Source(path.name, "\n".join(lines)))
            assert told(finding) not in [told(other) for other in left]


def test_the_collection_is_not_empty() -> None:
    assert len(FILES) >= 10
