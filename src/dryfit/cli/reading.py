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
    return notes_of(name, read_bytes(name))


def read_bytes(name: str) -> bytes:
    """Return the bytes of the file, or of standard input for ``-``; OSError when there are none."""
    return sys.stdin.buffer.read() if name == STANDARD_INPUT else Path(name).read_bytes()


def notes_of(name: str, data: bytes) -> Source:
    """Return the text of the bytes; StoppedError where they are none."""
    source = source_of(name, data)
    if isinstance(source, Diagnostic):
        raise StoppedError(source.message)
    return source
