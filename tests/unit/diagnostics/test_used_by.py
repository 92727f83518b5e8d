"""What stands in a pattern is told at the line that uses it."""

from dryfit.diagnostics import Diagnostic, Severity, Source, Span
from dryfit.diagnostics.as_json import finding_json
from dryfit.diagnostics.render import full, short

NOTES = Source("desk.dryfit", "piece Desk\n1 base, as leg base, 900 wide\n")
PATTERN = Source("leg_base.dryfit", "pattern leg base with width\n4 posts, 45 x 45\nend\n")
USE = Span(NOTES, 2, 1, 30)
INSIDE = Span(PATTERN, 2, 10, 17, used_by=USE)
FINDING = Diagnostic("size-huge", Severity.QUESTION, "is that meant?", INSIDE)


def test_a_finding_points_at_the_line_that_uses_the_pattern() -> None:
    text = full([FINDING])
    assert "--> desk.dryfit:2:1" in text
    assert "2 | 1 base, as leg base, 900 wide" in text
    assert "note: in the pattern: `45 x 45` (leg_base.dryfit, line 2, column 10)" in text
    assert short(FINDING).startswith("desk.dryfit:2:1: question[size-huge]")


def test_the_document_has_the_line_of_the_notes_and_that_of_the_pattern() -> None:
    entry = finding_json(FINDING, str)
    assert (entry["file"], entry["line"], entry["column"]) == ("desk.dryfit", 2, 1)
    assert entry["notes"] == [
        {
            "message": "in the pattern: `45 x 45`",
            "file": "leg_base.dryfit",
            "line": 2,
            "column": 10,
        }
    ]


def test_a_pattern_in_a_pattern_is_told_at_the_outermost_line() -> None:
    inner = Span(Source("drawer.dryfit", "1 front\n"), 1, 3, 8, used_by=INSIDE)
    assert inner.told() == USE
    assert INSIDE.told().source is NOTES


def test_findings_are_sorted_by_the_line_that_the_maker_wrote() -> None:
    before = Diagnostic("size-huge", Severity.QUESTION, "first?", Span(NOTES, 1, 1, 6))
    assert sorted([FINDING, before], key=Diagnostic.sort_key) == [before, FINDING]
