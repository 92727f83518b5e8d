"""Laps are levelled before the glued whole is cut, sanded or coated."""

import pytest
from tests.pieces.reading import model_of, text_of
from tests.property.plan_oracle.documents import documents
from tests.property.plan_oracle.levels import levelling
from tests.unit.operations.worked import listed

PIECES = ("mirror", "slatted_stand", "boot_bench", "flat_lap_frame", "tee_laps")


def test_the_rabbet_of_a_glued_frame_is_measured_from_levelled_faces() -> None:
    rules = {(rule.before, rule.after) for rule in listed(model_of(text_of("mirror")))[0].rules}
    cut = {after for before, after in rules if before == "frame / level"}
    assert any("rabbet" in each for each in cut), cut
    assert "frame / sand 120" in cut
    assert "frame / coat 1" in cut


@pytest.mark.parametrize("name", PIECES)
def test_a_plan_levels_before_it_touches_the_faces(name: str) -> None:
    made, errors = documents(text_of(name))
    assert made is not None, errors
    assert list(levelling(*made)) == []
