"""Problems in the user's text as data: where, what, why, and what to write instead."""

from dryfit.diagnostics.diagnostic import (
    Diagnostic,
    Findings,
    Hint,
    Note,
    Severity,
    once,
    worst,
)
from dryfit.diagnostics.figure import Assumption, Figure, Term
from dryfit.diagnostics.source import Source, Span

__all__ = [
    "Assumption",
    "Diagnostic",
    "Figure",
    "Findings",
    "Hint",
    "Note",
    "Severity",
    "Source",
    "Span",
    "Term",
    "once",
    "worst",
]
