"""Wishes against what the glue-ups order by themselves are told by `check`."""

from __future__ import annotations

import pytest
from tests.pieces.reading import checked, text_of

from dryfit.diagnostics import Diagnostic

STOOL = text_of("step_stool")  # side frames, then base: side frames, long rails


def circles(wish: str) -> list[Diagnostic]:
    found = checked(f"{STOOL}{wish}\n").findings
    return [each for each in found if each.code == "wishes-in-a-circle"]


@pytest.mark.parametrize(
    "wish",
    [
        "finish base before glue up side frames",
        "finish base before glue up base",
        "glue up base before glue up side frames",
        "finish side frames before glue up side frames",
    ],
)
def test_a_wish_that_no_order_fulfils_is_refused(wish: str) -> None:
    (found,) = circles(wish)
    assert found.hints[0].message == "take this wish out"
    assert found.notes[0].message == "this glue-up asks for it"


@pytest.mark.parametrize(
    "wish",
    [
        "finish seat before glue up base",
        "finish side frames before glue up base",
        "glue up side frames before glue up base",
        "finish legs before glue up side frames",
    ],
)
def test_a_wish_that_can_be_is_let_be(wish: str) -> None:
    assert circles(wish) == []
