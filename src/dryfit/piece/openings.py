"""Openings: spaces between parts that have a name."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.notes.tree import OpeningLine
from dryfit.piece.declared import Host, Opening
from dryfit.piece.names import Names


def declared_openings(lines: Sequence[OpeningLine], names: Names) -> tuple[Opening, ...]:
    """Return the openings that lines declare; findings of names gather there.

    Findings: opening-is-no-part.
    """
    return tuple(
        Opening(
            line.name,
            line.name_span.text(),
            parts_only(names.hosts(line.between), names),
            line.name_span,
            line.span,
        )
        for line in lines
    )


def parts_only(hosts: Iterable[Host], names: Names) -> tuple[Host, ...]:
    """Return what is named without the openings, of which there is no wood.

    Findings: opening-is-no-part.
    """
    parts: list[Host] = []
    for host in hosts:
        if host.part not in names.openings:
            parts.append(host)
            continue
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
    return tuple(parts)
