"""Findings as marks: where, how grave, and never anything but marks."""

from __future__ import annotations

from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st
from tests.unit.editor.notes import STOOL

from dryfit.diagnostics import Severity
from dryfit.editor.findings import Examined, Mark, examined
from dryfit.editor.places import Place


def marks_of(text: str, shop_file: Path | None = None) -> tuple[Mark, ...]:
    return examined("stool.dryfit", text, shop_file, {}, "utf-16").marks


def test_flawless_notes_have_no_mark() -> None:
    found = examined("stool.dryfit", STOOL, None, {}, "utf-16")
    assert found.marks == ()
    assert found.checked is not None
    assert found.checked.model is not None


def test_a_mark_stands_under_its_word_and_says_what_to_write() -> None:
    (mark,) = marks_of(
        STOOL.replace("6 thick into legs, set back reveal\n2", "6 thick into lges\n2")
    )
    assert mark.place == Place(7, 58, 62)
    assert (mark.severity, mark.code) == (Severity.ERROR, "unknown-name")
    message, hint, correction = mark.message.split("\n")
    assert message == "nothing here is called `lges`"
    assert hint == "did you mean `legs`?"
    assert correction.startswith("try: 2 long rails, across")
    (fix,) = mark.fixes
    assert fix.title == hint
    assert fix.place == Place(7, 0, 62)
    assert fix.text == "2 long rails, across, 55 x 20, tenon 20 long 6 thick into legs"


def test_places_are_counted_in_utf_16() -> None:
    (mark,) = marks_of(STOOL.replace("legs, upright", "legs 😀, upright"))
    assert mark.place == Place(6, 7, 9)


def test_a_second_place_is_told_as_such() -> None:
    (mark,) = marks_of(STOOL + "1 leg, upright, 40 x 40\n")
    ((place, said),) = mark.related
    assert place.line == 6
    assert said


def test_what_has_no_place_in_the_text_is_marked_at_its_top(tmp_path: Path) -> None:
    (missing,) = marks_of(STOOL, tmp_path / "none.toml")
    assert missing.place == Place(0, 0, 0)
    assert "none.toml" in missing.message
    shop = tmp_path / "shop.toml"
    shop.write_text('format = "dryfit-shop/1"\nwalks = "1 min"\n')
    (wrong,) = marks_of(STOOL, shop)
    assert wrong.place == Place(0, 0, 0)
    assert "shop.toml:2:1: " in wrong.message


def test_a_text_that_is_none_is_marked() -> None:
    assert [mark.code for mark in marks_of("piece \ud800")] == ["not-utf8"]
    assert [mark.code for mark in marks_of("piece \x00")] == ["control-character"]


@given(text=st.text(st.sampled_from("4 legs,\n x:#=()½😀into at corners\ud800"), max_size=60))
def test_any_text_is_examined(text: str) -> None:
    found = examined("any", text, None, {}, "utf-16")
    assert isinstance(found, Examined)
    lines = text.count("\n") + 1
    assert all(0 <= mark.place.line < lines for mark in found.marks)
