"""Every page keeps its promise: its example has exactly its finding, what is written instead none.

Notices of another code are passed over: they tell of something that is as it should be.  What no
notes can bring out, such as a mistake of our own, has a page that says what to do; those are few.
"""

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from dryfit import workshop
from dryfit.diagnostics import Diagnostic, Findings, Severity
from dryfit.diagnostics.explain import INVENTORY, WIDTH, Page, known_codes, page, page_text
from dryfit.diagnostics.render import full
from dryfit.notes import source_of

ALL_PAGES = tuple(shown for code in known_codes() if (shown := page(code)))
PAGES = tuple(shown for shown in ALL_PAGES if shown.what_to_do is None)
FROM_NO_NOTES = {"rehearsal-failed", "search-ended-early", "wood-not-found"}
LONGEST_EXAMPLE = 12
LONGER = {
    "patterns-too-deep": 21,  # six patterns, each with its three lines
    "drawer-tight-behind": 13,  # a drawer, and the case that it runs in
    "door-blocked": 13,  # a door, its case, and the ledge before it
    "drawer-blocked": 14,  # a drawer, and the case with the rail before it
    "runner-groove-close": 14,  # a drawer, and the case that it runs in
    "runner-bears-little": 13,  # a drawer, and the case that it runs in
    "drawer-tips": 13,  # a drawer, and the case that it runs in
}


@cache
def found_in(shown: Page, notes: str, shop: str | None, inventory: str | None = None) -> Findings:
    """What the command of the page finds in notes, a shop file and an inventory."""
    with TemporaryDirectory() as folder:
        if inventory is not None:
            (Path(folder) / INVENTORY).write_text(inventory, encoding="utf-8")
        return _found_in(shown, notes, shop, Path(folder))


def _found_in(shown: Page, notes: str, shop: str | None, folder: Path) -> Findings:
    source = source_of("example.dryfit", shown.written_out(notes).encode(shown.encoding))
    if isinstance(source, Diagnostic):
        return (source,)
    shop_file = None
    if shop is not None:
        shop_file = folder / "shop.toml"
        shop_file.write_text(shop, encoding="utf-8")
    checked = workshop.check(source, shop_file, {}, folder=folder)
    if checked.failed or shown.command == "check":
        return checked.findings
    if shown.command == "stock":
        return checked.findings + workshop.laid_out(checked)[2]
    return workshop.plan(checked, lambda _: None)[1]


def told(findings: Findings, shown: Page) -> set[str]:
    """The codes of the findings, without those of other notices."""
    return {
        finding.code
        for finding in findings
        if finding.severity is not Severity.NOTICE or finding.code == shown.code
    }


@pytest.mark.parametrize("shown", PAGES, ids=lambda shown: shown.code)
def test_the_example_has_exactly_this_finding(shown: Page) -> None:
    findings = found_in(shown, shown.example, shown.shop, shown.inventory)
    assert told(findings, shown) == {shown.code, *shown.beside}, full(findings)


@pytest.mark.parametrize("shown", PAGES, ids=lambda shown: shown.code)
def test_what_is_written_instead_is_without_a_finding(shown: Page) -> None:
    findings = found_in(shown, shown.instead, shown.instead_shop, shown.instead_inventory)
    assert told(findings, shown) == set(), full(findings)


@pytest.mark.parametrize("shown", PAGES, ids=lambda shown: shown.code)
def test_a_page_is_short_and_says_everything(shown: Page) -> None:
    for said in (shown.means, shown.matters, shown.source, shown.example, shown.instead):
        assert said.strip()
    for example in (shown.example, shown.instead, shown.shop or "", shown.instead_shop or ""):
        lines = example.strip("\n").split("\n")
        assert len(lines) <= LONGER.get(shown.code, LONGEST_EXAMPLE)
        assert max(map(len, lines)) <= WIDTH - 4
    text = page_text(shown, full(found_in(shown, shown.example, shown.shop, shown.inventory)))
    assert max(map(len, text.splitlines())) <= WIDTH


def test_pages_differ_in_what_they_say() -> None:
    assert len({shown.means for shown in ALL_PAGES}) == len(ALL_PAGES)


def test_only_what_no_notes_bring_out_has_a_page_without_an_example() -> None:
    assert {shown.code for shown in ALL_PAGES} - {shown.code for shown in PAGES} == FROM_NO_NOTES


@pytest.mark.parametrize("code", sorted(FROM_NO_NOTES))
def test_a_page_without_an_example_says_what_to_do(code: str) -> None:
    shown = page(code)
    assert shown is not None
    assert shown.shop is None
    text = page_text(shown)
    assert "What to do\n\n" in text
    assert "Example" not in text
    assert ("report it" in text) == (code == "rehearsal-failed")
    assert max(map(len, text.splitlines())) <= WIDTH
