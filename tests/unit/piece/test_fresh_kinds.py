"""A sum of the wrong kind is told with words that mend it."""

from __future__ import annotations

import pytest
from tests.pieces.reading import changed, checked, errors, text_of


def test_a_cure_without_a_unit_is_offered_in_hours() -> None:
    text = changed(text_of("step_stool"), ("cure 2 h", "cure 2"))
    (found,) = errors(checked(text))
    assert found.code == "wrong-kind"
    (hint,) = found.hints
    assert hint.corrected_line == "glue up base: side frames, long rails, cure 2 h"
    assert not errors(checked(changed(text, ("cure 2\n", "cure 2 h\n"))))


@pytest.mark.parametrize(
    ("written", "advice"),
    [("15 mm * 15 mm", "multiplied"), ("2 h", "such as `45 mm`"), ("30 mm / 2 mm", "its unit")],
)
def test_the_advice_fits_what_is_wrong(written: str, advice: str) -> None:
    (found,) = errors(
        checked(changed(text_of("step_stool"), ("overhang = 15", f"overhang = {written}")))
    )
    assert found.code == "wrong-kind"
    assert advice in found.hints[0].message
