"""``steps --compare``: what the three orders of one piece take, side by side."""

from __future__ import annotations

import argparse
import sys

from dryfit.cli.on_notes import laid_notes, planned, status_of, tell
from dryfit.cli.status import StoppedError
from dryfit.plan.as_text import UNREHEARSED
from dryfit.plan.compared_text import compared
from dryfit.plan.favour import WORTH
from dryfit.progress import Progress


def compare(options: argparse.Namespace) -> int:
    """Print a table of the plans for all favours.

    Raises StoppedError for an option that asks for one of them alone.
    """
    if options.json:
        raise StoppedError(
            "--compare prints a table of three plans and --json one plan: "
            "use --json with --favour, once for each"
        )
    for option in ("favour", "move"):
        if getattr(options, option) is not None:
            raise StoppedError(f"--compare makes all three plans: leave --{option} out")
    rehearsed = not options.unrehearsed
    with Progress(timed=options.verbose) as progress:
        checked, _ = laid_notes(options, progress)
        plans, findings = planned(options, checked, progress, tuple(WORTH), rehearsed=rehearsed)
    tell(findings)
    if plans:
        lines = [] if rehearsed else [UNREHEARSED, ""]
        sys.stdout.write("\n".join((*lines, compared(plans))))
    return status_of(findings)
