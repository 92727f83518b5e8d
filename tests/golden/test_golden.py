"""Whole outputs of the examples against files that were reviewed by eye.

`pytest tests/golden --update-golden` rewrites them; read the difference before you commit it.
"""

from __future__ import annotations

import re
from html import unescape
from pathlib import Path

import pytest

from dryfit import workshop
from dryfit.booklet import render
from dryfit.booklet.sides import sides_of
from dryfit.cli.why import answers
from dryfit.diagnostics import Source
from dryfit.placing.as_text import parts_table
from dryfit.plan.as_text import steps_table

EXAMPLES = Path(__file__).parents[2] / "examples"
GOLDEN = Path(__file__).parent
_BLOCKS = r"</?(?:p|li|h1|h2|h3|tr|div|section|header|ol|ul|table|caption|title|text)\b[^>]*>"


def reading(html: str) -> str:
    """The words of a page, a line for each block, as a screen reader comes by them."""
    body = re.sub(r"<(style|head)\b.*?</\1>", "", html, flags=re.DOTALL)
    lines = re.sub(r"<[^>]+>", " ", re.sub(_BLOCKS, "\n", body)).split("\n")
    words = (" ".join(unescape(line).split()) for line in lines)
    said = "\n".join(line for line in words if line) + "\n"
    # The number of a booklet changes with every value of the shop's file, used here or not; what it
    # hangs on is tested with the steps as a document.
    return re.sub(r"\bBooklet [0-9a-f]{4}-[0-9a-f]{4}\b", "Booklet number", said)


PIECES = (
    "boot_bench", "linen_chest", "step_stool", "tea_table", "tool_tote", "wall_cabinet",
    "writing_desk",
)  # fmt: skip


@pytest.mark.parametrize("name", PIECES)
def test_outputs_are_as_reviewed(name: str, request: pytest.FixtureRequest) -> None:
    text = (EXAMPLES / f"{name}.dryfit").read_text(encoding="utf-8")
    checked = workshop.check(Source(f"{name}.dryfit", text), None, {})
    checked, laid, found = workshop.laid_out(checked)
    plan, findings = workshop.plan(checked, lambda _: None)
    findings += found
    assert checked.model is not None
    assert checked.shop is not None
    assert plan is not None
    plan, faults = workshop.rehearse(checked, plan, lambda _: None)
    assert plan is not None, [fault.message for fault in faults]
    plan = workshop.priced(checked, plan)
    why = workshop.reasons(checked, plan, plan.steps)
    book = render(
        checked.model, plan, checked.shop, findings, rehearsed=True, reasons=why, laid=laid
    )
    made = {
        "parts": parts_table(checked.model),
        "steps": steps_table(
            plan, sides_of(plan, checked.model), checked.declared.display, rehearsed=True
        ),
        "booklet": reading(book),
    }
    if name == "step_stool":
        made["why"] = answers((), checked.model, plan, why)
    for what, words in made.items():
        path = GOLDEN / f"{name}.{what}.txt"
        if request.config.getoption("--update-golden"):
            path.write_text(words, encoding="utf-8")
        assert words == path.read_text(encoding="utf-8")
