"""Openings: spaces between parts that have a name."""

from __future__ import annotations

from collections.abc import Sequence

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.notes.tree import Join, OpeningLine
from dryfit.piece.declared import Host, Opening
from dryfit.piece.names import Names


def declared_openings(lines: Sequence[OpeningLine], names: Names) -> tuple[Opening, ...]:
    """Return the openings that lines declare; findings of names gather there."""
    return tuple(
        Opening(
            line.name,
            line.name_span.text(),
            names.hosts(line.between),
            line.name_span,
            line.span,
        )
        for line in lines
    )


def is_fit_for(join: Join, host: Host, names: Names) -> bool:
    """Return whether a part can go so into what is named: an opening takes only what is in it.

    Findings: opening-is-no-part.
    """
    if host.part not in names.openings or join.preposition == "in":
        return True
    finding = Diagnostic(
        "opening-is-no-part",
        Severity.ERROR,
        f"`{host.part}` is an opening, there is no wood in it",
        host.span,
        rule="H38",
        hints=(Hint(f"write `in {host.part}`, or name one of the parts that it lies between"),),
    )
    if finding not in names.findings:
        names.findings.append(finding)
    return False
