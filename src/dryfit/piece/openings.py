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
    """Return whether a part can go so into what is named: ``in`` is for openings, and they for it.

    Findings: in-no-opening, opening-is-no-part.
    """
    opening = host.part in names.openings
    if opening == (join.preposition == "in"):
        return True
    if opening:
        code, message = "opening-is-no-part", f"`{host.part}` is an opening, there is no wood in it"
        hint = f"write `in {host.part}`, or name one of the parts that it lies between"
    else:
        code, message = "in-no-opening", f"`{host.part}` is a part and no opening"
        hint = (
            f"write `into {host.part}` for a joint, or name the space on a line such as "
            f"`bay = opening between {host.part} and ...` and write `in bay`"
        )
    finding = Diagnostic(code, Severity.ERROR, message, host.span, rule="H38", hints=(Hint(hint),))
    if finding not in names.findings:
        names.findings.append(finding)
    return False
