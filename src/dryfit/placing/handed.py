"""Parts that are said to be handed must come out as left and right ones."""

from __future__ import annotations

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.piece.declared import DeclaredPart
from dryfit.placing.model import Part
from dryfit.placing.site import Site


def report_not_handed(site: Site, declared: DeclaredPart, part: Part) -> None:
    """Report a part whose copies are said to be mirrored, though all are cut alike.

    Findings: not-handed.
    """
    if declared.handed is None or len(part.hands()) > 1:
        return
    one = len(part.copies) == 1
    alike = "there is only one" if one else "nothing that is cut tells a left one from a right one"
    site.findings.append(
        Diagnostic(
            "not-handed",
            Severity.WARNING,
            f"the {part.written} {'is' if one else 'are'} said to be handed, but {alike}",
            declared.handed,
            rule="H27",
            hints=(Hint("place them at left and right, or leave `handed` out"),),
        )
    )
