"""What keeps loose pieces out of two members that touch, told at the line of their joint."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.piece.declared import Contact
from dryfit.placing.site import Site


@dataclass(frozen=True, slots=True)
class Wrong:
    """What keeps the pieces from being put in, what to write instead, and its figures in mm.

    `rule` is the rule of TRADE; with a warning they go in, but not as they should.
    """

    message: str
    remedy: str
    figures: dict[str, Fraction]
    rule: str
    severity: Severity = Severity.ERROR


def not_fitting(site: Site, contact: Contact, code: str, wrong: Wrong) -> None:
    """Tell once what is wrong with the joint of a line."""
    finding = Diagnostic(
        code,
        wrong.severity,
        wrong.message,
        contact.span,
        rule=wrong.rule,
        figures=wrong.figures,
        hints=(Hint(wrong.remedy),),
    )
    site.tell_once(finding)
