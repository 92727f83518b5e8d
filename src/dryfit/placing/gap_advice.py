"""What to write where the copies of a part and the gaps between its hosts do not fit."""

from __future__ import annotations

from collections.abc import Sequence

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.piece.declared import Contact, Declared, DeclaredPart
from dryfit.placing.seats import counted, written


def copies_and_gaps(
    part: DeclaredPart,
    contact: Contact,
    groups: Sequence[tuple[str, ...]],
    declared: Declared,
) -> Diagnostic:
    """Return the finding that a part's copies and the gaps between its hosts do not fit."""
    hosts = " and ".join(written(declared, host.part) for host in contact.hosts)
    return Diagnostic(
        "copies-and-gaps",
        Severity.ERROR,
        f"{part.count} {part.written}, but the {hosts} leave {_gaps_in_words(len(groups))}",
        contact.span,
        rule="H27",
        hints=(Hint(_gap_advice(part, groups)),),
    )


def _gaps_in_words(gaps: int) -> str:
    return "no gap that way" if not gaps else f"{gaps} gap{'' if gaps == 1 else 's'} that way"


def _gap_advice(part: DeclaredPart, groups: Sequence[tuple[str, ...]]) -> str:
    if part.count == 4 and len(groups) == 2:
        return (
            f"for {part.written} all round write two lines with two names, one `across` and one "
            "`front to back`"
        )
    if part.count > 1 and len(groups) == 1:
        if part.run == "upright":
            return "to have them side by side in that gap, add `spread`"
        sides = ("front and back", "left and right")[part.axes[0]]
        return (
            "to have them one above the other in that gap, add `spread up and down`; to have one "
            f"at each side of it, `at {sides}`"
        )
    many = counted(len(groups), part.name)
    where = f"at {groups[0][0]}" if part.count == 1 and groups[0] else "at"
    return f"write {many}, or say `{where}`" + ("" if part.count == 1 else " and the places")
