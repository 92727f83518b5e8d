import pytest

from dryfit.diagnostics import Diagnostic, Source
from dryfit.notes import parse, source_of
from dryfit.notes.text import MOST_CHARACTERS, MOST_LINES


def test_a_byte_order_mark_and_all_line_ends_are_taken() -> None:
    source = source_of("a.dryfit", b"\xef\xbb\xbfpiece A\r\nunits mm\rtimber ash\n")
    assert isinstance(source, Source)
    assert source.text == "piece A\nunits mm\ntimber ash\n"


def test_bytes_that_are_no_utf8_are_refused_with_their_line() -> None:
    refusal = source_of("a.dryfit", b"piece A\nunits \xff\xfe mm")
    assert isinstance(refusal, Diagnostic)
    assert refusal.code == "not-utf8"
    assert "line 2" in refusal.message


@pytest.mark.parametrize("sign", ["\x00", "\x07", "\x1b", "\x7f", "\x85", "\x0c"])
def test_control_characters_are_refused_at_their_place(sign: str) -> None:
    refusal = source_of("a.dryfit", f"piece A\nunits{sign} mm".encode())
    assert isinstance(refusal, Diagnostic)
    assert refusal.code == "control-character"
    assert refusal.span is not None
    assert (refusal.span.line, refusal.span.column) == (2, 6)


@pytest.mark.parametrize("text", ["x" * (MOST_CHARACTERS + 1), "\n" * (MOST_LINES + 1)])
def test_a_text_beyond_measure_is_not_read(text: str) -> None:
    refusal = source_of("a.dryfit", text.encode())
    assert isinstance(refusal, Diagnostic)
    assert refusal.code == "notes-too-long"
    notes, findings = parse(Source("a.dryfit", text))
    assert notes.statements == ()
    assert [finding.code for finding in findings] == ["notes-too-long"]
