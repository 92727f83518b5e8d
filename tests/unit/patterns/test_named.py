"""Of the shipped patterns only those are read that the notes may name."""

from __future__ import annotations

import pytest

from dryfit.patterns import library, shipped
from dryfit.patterns.named import named_in

NAMES = tuple(block.name for block in shipped())


def read(text: str) -> list[str]:
    return [block.name for block in library({"XDG_CONFIG_HOME": "/nowhere"}, text)[0]]


@pytest.mark.parametrize("name", NAMES)
def test_a_pattern_that_is_named_is_read(name: str) -> None:
    assert name in read(f"1 thing, as {name}, 600 wide")
    assert name in read(f"2 things as a {name.upper()}s: width 600")
    assert name in read(f"2 things, as the {name.replace(' ', '-')}, 600 wide  # as always")


def test_no_other_is_read() -> None:
    text = "piece Table\n1 base, as apron base, 900 wide\n1 lid, in bay, cut as drawn"
    assert read(text) == ["apron base"]
    assert read("pattern tray with width\nend\n1 box, as tray, 300 wide") == []
    assert named_in("2 boxes, as my tray, 300 wide", NAMES, {"my tray"}) == frozenset()


def test_all_are_read_where_a_name_is_mistyped() -> None:
    assert read("1 base, as apron bsae, 900 wide") == list(NAMES)
