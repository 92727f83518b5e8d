"""The notes that a command is given: a file, or standard input."""

from __future__ import annotations

import sys
from pathlib import Path

from dryfit.cli.status import StoppedError
from dryfit.diagnostics import Diagnostic, Source
from dryfit.notes import source_of

STANDARD_INPUT = "-"


def read_notes(name: str) -> Source:
    """Return the text of the file, or of standard input for ``-``.

    Raises StoppedError where it is no text, OSError where it cannot be read.
    """
    data = sys.stdin.buffer.read() if name == STANDARD_INPUT else Path(name).read_bytes()
    source = source_of(name, data)
    if isinstance(source, Diagnostic):
        raise StoppedError(source.message)
    return source
