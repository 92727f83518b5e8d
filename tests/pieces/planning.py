"""Plans of notes, made once for all tests of a process: what they share is their largest cost."""

from functools import lru_cache
from pathlib import Path

from dryfit import workshop
from dryfit.diagnostics import Findings, Source
from dryfit.notes import source_of
from dryfit.plan.plan import Plan
from dryfit.workshop import Checked

KEPT = 160
"""Enough for every example and test piece in the shipped shop, and the same again."""


@lru_cache(maxsize=KEPT)
def planned(text: str, shop: Path | None = None) -> tuple[Checked, Plan | None, Findings]:
    """Notes checked and planned in the shipped shop or that of a file, and all that was found.

    A shop file must not change under its name.
    """
    source = source_of("notes.dryfit", text.encode())
    assert isinstance(source, Source), source
    checked = workshop.check(source, shop, {})
    checked, _, _ = workshop.laid_out(checked)
    plan, findings = workshop.plan(checked, lambda _: None)
    return checked, plan, findings
