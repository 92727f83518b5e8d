"""``--strict``: what is a warning counts, is shown, and stops the later stages, as an error."""

from __future__ import annotations

from dataclasses import replace

from dryfit.diagnostics import Findings, Severity


def without_warnings(findings: Findings) -> Findings:
    """Return the findings with every warning made an error; questions and notices stay."""
    return tuple(
        replace(finding, severity=Severity.ERROR)
        if finding.severity is Severity.WARNING
        else finding
        for finding in findings
    )
