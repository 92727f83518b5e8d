"""Positions of keys and values, compared with what `tomllib` reads from the same characters."""

import tomllib
from collections.abc import Iterator
from pathlib import Path as FilePath
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dryfit.diagnostics import Source
from dryfit.shop import read_shop
from dryfit.shop.places import Path, Places
from dryfit.shop.read import SHIPPED


def _leaves(tree: dict[str, Any], path: Path = ()) -> Iterator[tuple[Path, object]]:
    for key, value in tree.items():
        if isinstance(value, dict):
            yield from _leaves(value, (*path, key))
        else:
            yield (*path, key), value


def _spans_hold_what_toml_reads(text: str) -> int:
    places = Places(Source("shop.toml", text))
    count = 0
    for path, value in _leaves(tomllib.loads(text)):
        if "\n" in _whole_value(places, path):
            continue
        assert tomllib.loads(f"x = {places.value(path).text()}")["x"] == value
        key = next(iter(tomllib.loads(f"{places.key(path).text()} = 1")))
        assert key == path[-1]
        count += 1
    return count


def _whole_value(places: Places, path: Path) -> str:
    extent = places._values[path]
    return places._source.text[extent.start : extent.end]


def test_every_value_of_the_shipped_file_is_found() -> None:
    assert _spans_hold_what_toml_reads(SHIPPED.read_text(encoding="utf-8")) > 250


def test_strings_lists_and_tables_that_try_hard() -> None:
    text = (
        "a = 'its' # not \"this\" = 1\n"
        'b."c d".e = "quote \\" and ] and # and }"\n'
        "c = { d = [1, 2, { e = 'x}' }], f = 1e3 } # end\n"
        'm = """one\ntwo = "2"\n"""\n'
        "l = [\n  'a', # first\n  'b',\n]\n"
        "[t.'u v'] # header = no\n"
        "  w  =  -1.5\n"
        "[[rows]]\nx = 2001-02-03 04:05:06\n"
    )
    places = Places(Source("shop.toml", text))
    assert places.value(("b", "c d", "e")).text() == '"quote \\" and ] and # and }"'
    assert places.value(("c", "f")).text() == "1e3"
    assert places.value(("m",)).text() == '"""one'
    assert places.value(("l",)).text() == "["
    assert places.value(("t", "u v", "w")).text() == "-1.5"
    assert places.key(("t", "u v", "w")).column == 3
    assert places.value(("rows", "x")).text() == "2001-02-03 04:05:06"
    assert places.key(("t", "u v", "missing")).text() == "'u v'"


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


_TEXTS = st.text(st.sampled_from("ab \"#=[]{},.'\\é"), max_size=6)
_SCALARS = st.one_of(st.integers(-9, 99).map(str), st.just("true"), _TEXTS.map(_quoted))
_GAPS = st.sampled_from(["", " ", "\t"])


@st.composite
def _documents(draw: st.DrawFn) -> str:
    lines = []
    for number in range(draw(st.integers(1, 6))):
        if draw(st.booleans()):
            lines.append(f"[table{number}.{_quoted(draw(_TEXTS))}] # [no]")
        value = draw(_SCALARS)
        kind = draw(st.sampled_from(["plain", "list", "table", "lines"]))
        if kind == "list":
            value = f"[{value},{draw(_GAPS)}{draw(_SCALARS)}]"
        elif kind == "lines":
            value = f"[\n  {value}, # ]\n]"
        elif kind == "table":
            value = f"{{ {_quoted(draw(_TEXTS))} = {value} }}"
        key = f"{_quoted(draw(_TEXTS))}{draw(_GAPS)}.k{number}"
        lines.append(f"{draw(_GAPS)}{key}{draw(_GAPS)}={draw(_GAPS)}{value}{draw(_GAPS)}# = 1")
    return "\n".join(lines) + draw(st.sampled_from(["", "\n"]))


@given(_documents())
def test_positions_in_any_file(text: str) -> None:
    try:
        tomllib.loads(text)
    except tomllib.TOMLDecodeError:
        return  # a key that stands twice
    _spans_hold_what_toml_reads(text)


@pytest.fixture(scope="module")
def own(tmp_path_factory: pytest.TempPathFactory) -> FilePath:
    return tmp_path_factory.mktemp("shop") / "shop.toml"


@given(data=st.data())
def test_a_damaged_file_is_reported_and_never_a_traceback(
    own: FilePath, data: st.DataObject
) -> None:
    text = SHIPPED.read_text(encoding="utf-8")
    at = data.draw(st.integers(0, len(text) - 1))
    length = data.draw(st.integers(0, 8))
    damage = data.draw(st.sampled_from(["", "\n", '"', "]", "{", "=", "x", "1 ", "[[", "\\", "é"]))
    own.write_text(text[:at] + damage + text[at + length :], encoding="utf-8")
    shop, findings = read_shop(own, {})
    assert (shop is None) == bool(findings)
    for finding in findings:
        assert finding.span is not None
        line = finding.span.source.lines()[finding.span.line - 1]
        assert 1 <= finding.span.column <= len(line) + 1
