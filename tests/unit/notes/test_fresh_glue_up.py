"""A wish about a glue-up that no line declares asks for that line."""

from __future__ import annotations

from tests.pieces.reading import changed, checked, errors, text_of


def test_the_missing_glue_up_is_what_is_asked_for() -> None:
    glue = "glue up base: side frames, long rails, cure 2 h\n"
    found = checked(changed(text_of("step_stool"), (glue, "")))
    told = next(each for each in errors(found) if each.code == "unknown-name")
    assert told.message == "no glue-up is called `base`"
    assert "`glue up base: " in told.hints[0].message


def test_after_another_word_it_is_still_a_part() -> None:
    found = checked(changed(text_of("step_stool"), ("seat onto legs", "seat onto plinth")))
    assert "no part is called `plinth`" in [each.message for each in errors(found)]
