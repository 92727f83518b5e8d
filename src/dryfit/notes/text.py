"""From the bytes of a file to a text that can be read line by line."""

from __future__ import annotations

import re

from dryfit.diagnostics import Diagnostic, Hint, Severity, Source, Span

MOST_LINES = 10_000
MOST_CHARACTERS = 80 * MOST_LINES

# Tab and newline are the only control characters with a meaning in a text.
_CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f]")


def source_of(name: str, data: bytes) -> Source | Diagnostic:
    """Return the text of the bytes under the name, or the finding that says why there is none.

    Strict UTF-8 with or without a byte order mark; line ends become single newlines.

    Findings
    --------
    not-utf8, control-character, notes-too-long
    """
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        return Diagnostic(
            code="not-utf8",
            severity=Severity.ERROR,
            message=f"{name} is not a UTF-8 text: a byte on line {line} cannot be read",
            span=None,
            hints=(Hint("save the file as plain text with the encoding UTF-8"),),
        )
    source = Source(name, text.replace("\r\n", "\n").replace("\r", "\n"))
    return _refusal(source) or source


def too_long(source: Source) -> Diagnostic | None:
    """Return the finding for a text beyond what notes on one piece can need, or None."""
    if len(source.text) <= MOST_CHARACTERS and source.text.count("\n") < MOST_LINES:
        return None
    return Diagnostic(
        code="notes-too-long",
        severity=Severity.ERROR,
        message=f"{source.name} is longer than notes can be: "
        f"at most {MOST_LINES} lines and {MOST_CHARACTERS} characters are read",
        span=None,
        hints=(Hint("keep one piece in a file"),),
    )


def _refusal(source: Source) -> Diagnostic | None:
    beyond = too_long(source)
    if beyond:
        return beyond
    found = _CONTROL.search(source.text)
    if found is None:
        return None
    line = source.text.count("\n", 0, found.start()) + 1
    column = found.start() - (source.text.rfind("\n", 0, found.start()) + 1) + 1
    return Diagnostic(
        code="control-character",
        severity=Severity.ERROR,
        message=f"a control character (U+{ord(found.group()):04X}) has no place in a text",
        span=Span(source, line, column, column + 1),
        hints=(Hint("take it out, or save the file as plain text"),),
    )
