from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Note, Severity, Source, Span
from dryfit.diagnostics.as_json import finding_json, findings_json, severity_counts
from dryfit.diagnostics.render import full, short

SOURCE = Source("stool.dryfit", "piece Stool\n2 rails,\tinto lges\n4 legs")
MISTYPED = Diagnostic(
    "unknown-name",
    Severity.ERROR,
    "nothing here is called `lges`",
    Span(SOURCE, 2, 15, 19),
    hints=(Hint("did you mean `legs`?", "2 rails,\tinto legs"),),
)
COLLIDES = Diagnostic(
    "mortises-collide",
    Severity.WARNING,
    "the mortises collide by 1.5 mm",
    Span(SOURCE, 3, 3, 7),
    rule="H05",
    figures={"overlap": Fraction(3, 2)},
    notes=(Note("the other mortise", Span(SOURCE, 2, 3, 8)), Note("both are 20 deep")),
)


def test_full_form_underlines_the_place_and_offers_the_line() -> None:
    assert full([MISTYPED]).splitlines() == [
        "error[unknown-name]: nothing here is called `lges`",
        " --> stool.dryfit:2:15",
        "  |",
        "2 | 2 rails, into lges",
        "  |               ^^^^",
        "hint: did you mean `legs`?",
        "try:  2 rails, into legs",
    ]


def test_full_form_names_second_places_and_sorts_by_line() -> None:
    text = full([COLLIDES, MISTYPED])
    assert text.index("lges") < text.index("mortises")
    assert "warning[mortises-collide]: the mortises collide by 1.5 mm\n" in text
    assert "H05" not in text
    assert "note: the other mortise (line 2, column 3)\nnote: both are 20 deep" in text


def test_an_empty_place_still_has_a_caret() -> None:
    missing = Diagnostic("line-unfinished", Severity.ERROR, "more", Span(SOURCE, 3, 7, 7))
    assert full([missing]).endswith("3 | 4 legs\n  |       ^")


def test_signs_that_a_terminal_would_act_on_are_not_printed() -> None:
    source = Source("a\x1b[2J", "\x1b[31mred\u202e")
    finding = Diagnostic("x", Severity.ERROR, "bad \x1b", Span(source, 1, 1, 2))
    assert "\x1b" not in full([finding]) + short(finding)
    assert "\u202e" not in full([finding])


def test_short_form_is_one_line_an_editor_can_follow() -> None:
    assert (
        short(MISTYPED) == "stool.dryfit:2:15: error[unknown-name]: nothing here is called `lges`"
    )
    nowhere = Diagnostic("no-overall", Severity.ERROR, "the overall size is missing", None)
    assert short(nowhere) == "error[no-overall]: the overall size is missing"


def test_json_entry_has_the_keys_of_the_contract_in_order() -> None:
    assert finding_json(COLLIDES, lambda length: f"{float(length)}") == {
        "code": "mortises-collide",
        "rule": "H05",
        "severity": "warning",
        "message": "the mortises collide by 1.5 mm",
        "file": "stool.dryfit",
        "line": 3,
        "column": 3,
        "end_line": 3,
        "end_column": 7,
        "text": "legs",
        "figures": {"overlap": {"exact": "3/2 mm", "mm": 1.5, "shown": "1.5"}},
        "notes": [
            {"message": "the other mortise", "file": "stool.dryfit", "line": 2, "column": 3},
            {"message": "both are 20 deep", "file": None, "line": None, "column": None},
        ],
        "hints": [],
    }
    assert list(finding_json(COLLIDES, str))[:4] == ["code", "rule", "severity", "message"]


def test_json_array_is_sorted_and_counted() -> None:
    lines = [entry["line"] for entry in findings_json([COLLIDES, MISTYPED], str)]
    assert lines == [2, 3]
    assert severity_counts([COLLIDES, MISTYPED]) == {
        "errors": 1,
        "warnings": 1,
        "questions": 0,
        "notices": 0,
    }
