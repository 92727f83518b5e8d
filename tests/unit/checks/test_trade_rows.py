"""Every row of TRADE H is built, told by something else, or has its reason: none is forgotten.

`trade_rows.txt` says at its top how a row is written.  That each code fires on the example of its
page and not on the mended one is held by `tests/unit/test_explanation_pages.py`.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest

from dryfit.diagnostics.explain import known_codes, page
from dryfit.resources import PACKAGE

TABLE = Path(__file__).with_name("trade_rows.txt")
TESTS = Path(__file__).parents[2]
LAST = 86
STATES = {"built", "merged", "construction", "rehearsed", "uncomputed", "later"}
WITH_CODES = {"built", "merged"}
WITH_TESTS = {"construction", "rehearsed"}
WITH_REASON = STATES - {"built"}


@dataclass(frozen=True)
class Row:
    """One check of the trade: what becomes of it, by which findings, and what shows that."""

    name: str
    check: str
    state: str
    codes: tuple[str, ...]
    evidence: str


def _rows() -> Iterator[Row]:
    for line in TABLE.read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            name, check, state, codes, evidence = (field.strip() for field in line.split("|"))
            listed = tuple(code.strip() for code in codes.split(",") if code.strip())
            yield Row(name, check, state, listed, evidence)


ROWS = tuple(_rows())


@cache
def sources() -> tuple[str, ...]:
    """The text of every module of the program."""
    return tuple(path.read_text(encoding="utf-8") for path in sorted(PACKAGE.rglob("*.py")))


def test_all_rows_are_there_in_order() -> None:
    assert [row.name for row in ROWS] == [f"H{number:02}" for number in range(1, LAST + 1)]


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.name)
def test_a_row_says_what_becomes_of_it(row: Row) -> None:
    assert row.state in STATES
    assert row.check
    assert bool(row.codes) == (row.state in WITH_CODES)
    assert row.evidence or row.state not in WITH_REASON


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.name)
def test_each_code_has_a_page_and_is_given_where_its_row_is_named(row: Row) -> None:
    for code in row.codes:
        if re.fullmatch(r"H\d\d", code):
            assert row.state == "merged"
            assert code in {other.name for other in ROWS if other.state == "built"}
            continue
        shown = page(code) if code in known_codes() else None
        assert shown is not None, code
        assert shown.what_to_do is None, f"{code} has no example"
        giving = [text for text in sources() if f'"{code}"' in text]
        named = any(re.search(rf"\b{row.name}\b", text) for text in giving)
        assert named or row.state == "merged", f"no module that gives {code} names {row.name}"


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.name)
def test_each_test_that_is_named_exists(row: Row) -> None:
    named = re.findall(r"([\w/]+\.py)(?:::(\w+))?", row.evidence)
    assert named or row.state not in WITH_TESTS
    for path, function in named:
        text = (TESTS / path).read_text(encoding="utf-8")
        assert f"def {function}(" in text or not function, f"{path} has no {function}"
