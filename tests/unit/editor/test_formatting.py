"""The changes of formatting are those of tidying, a line each."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st
from tests.unit.editor.notes import STOOL

from dryfit.diagnostics import Source
from dryfit.editor.formatting import Change, formatting
from dryfit.editor.places import Place
from dryfit.notes import tidied


def test_tidy_notes_have_no_change() -> None:
    assert formatting("n", tidied(Source("n", STOOL)), "utf-16", {}) == ()


def test_only_the_lines_that_change_are_changed() -> None:
    untidy = STOOL.replace("4 legs, upright, 40 x 40", "4 legs ,upright,40x40")
    (change,) = formatting("n", untidy, "utf-16", {})
    before = untidy.split("\n")[6]
    assert change == Change(Place(6, 0, len(before)), STOOL.split("\n")[6])


def test_a_text_that_is_none_has_no_change() -> None:
    assert formatting("n", "piece \x00  x", "utf-16", {}) == ()


@given(text=st.text(st.sampled_from("4 legs,\n x:#=()½😀\ud800"), max_size=40))
def test_changes_are_of_lines_that_are_there(text: str) -> None:
    for change in formatting("n", text, "utf-32", {}):
        assert change.place.end == len(text.split("\n")[change.place.line])
