from pathlib import Path

import pytest
from tests.unit.diagnostics.emitted_codes import UnfollowedError, emitted_codes

from dryfit.diagnostics.explain import known_codes


def test_every_code_has_a_page_and_every_page_a_code() -> None:
    emitted, known = emitted_codes(), set(known_codes())
    lacking = [f"{code} ({emitted[code]})" for code in sorted(emitted.keys() - known)]
    assert not lacking, "write src/dryfit/diagnostics/pages/CODE.toml for " + ", ".join(lacking)
    gone = sorted(known - emitted.keys())
    assert not gone, "nothing emits these codes any more: " + ", ".join(gone)


PLANTED = """
class Finding:
    code: str
    text: str

class Wrong(ValueError):
    def __init__(self, text: str, code: str = "by-default") -> None: ...

def report(where: int, code: str) -> None:
    Finding(code, "passed on")

_TABLE = {1: ("in-a-table", "x"), 2: ("in-a-table-too", "y")}
_MORE = {1: ("in-a-table", "x"), **dict.fromkeys((2, 3), ("in-a-table-thrice", "z"))}
_ROWS = (("x", "in-rows"), ("y", "in-more-rows"))
_WORDS = {1: "left", 2: "right"}
_NAME = "by-name"

def told(flag: bool, word: str) -> None:
    Finding("direct", "x")
    Finding(text="x", code="by-keyword")
    report(1, "if-so" if flag else "if-not")
    report(2, _NAME)
    code, text = _TABLE[1]
    report(3, code)
    side = _WORDS[1]
    report(4, f"{side}-twice")
    kind, text = _MORE[3]
    report(4, kind)
    for _, sort in _ROWS:
        report(5, sort)
    named_kind, text = named(flag)
    report(5, named_kind)

def named(flag: bool) -> tuple[str, str]:
    return ("returned", "x") if flag else ("returned-else", "y")
"""


def test_codes_are_followed_to_where_they_are_written(tmp_path: Path) -> None:
    (tmp_path / "planted.py").write_text(PLANTED, encoding="utf-8")
    assert sorted(emitted_codes(tmp_path)) == [
        "by-default",
        "by-keyword",
        "by-name",
        "direct",
        "if-not",
        "if-so",
        "in-a-table",
        "in-a-table-thrice",
        "in-a-table-too",
        "in-more-rows",
        "in-rows",
        "left-twice",
        "returned",
        "returned-else",
        "right-twice",
    ]


def test_a_code_that_cannot_be_followed_is_told(tmp_path: Path) -> None:
    planted = PLANTED + '\ndef odd(row: list[str]) -> None:\n    report(6, "".join(row))\n'
    (tmp_path / "planted.py").write_text(planted, encoding="utf-8")
    with pytest.raises(UnfollowedError, match=r"planted\.py:\d+"):
        emitted_codes(tmp_path)
