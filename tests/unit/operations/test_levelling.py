"""Laps are levelled before the glued whole is cut, sanded or coated."""

import pytest
from tests.pieces.reading import changed, model_of, model_of_piece, text_of
from tests.property.plan_oracle.documents import documents
from tests.property.plan_oracle.levels import levelling
from tests.unit.operations.worked import listed
from tests.unit.rehearsal.played import played

PIECES = ("mirror", "slatted_stand", "boot_bench", "flat_lap_frame", "tee_laps", "bridled_frame")


def test_the_rabbet_of_a_glued_frame_is_measured_from_levelled_faces() -> None:
    rules = {(rule.before, rule.after) for rule in listed(model_of_piece("mirror"))[0].rules}
    cut = {after for before, after in rules if before == "frame / level"}
    assert any("rabbet" in each for each in cut), cut
    assert "frame / sand 120" in cut
    assert "frame / coat 1" in cut


@pytest.mark.parametrize("name", PIECES)
def test_a_plan_levels_before_it_touches_the_faces(name: str) -> None:
    made, errors = documents(text_of(name))
    assert made is not None, errors
    assert list(levelling(*made)) == []


STOOL = changed(
    text_of("plated_top"),
    (
        "2 end aprons, front to back, on edge, 80 x 20, tenon 20 long 6 thick",
        "2 end aprons, front to back, on edge, 80 x 20, tenon 20 long 6 thick, pegged",
    ),
)


def test_pegs_of_the_ends_are_made_level_when_the_base_is_hard_or_not_glued_yet() -> None:
    rules = listed(model_of(STOOL))[0].rules
    (lag,) = (
        rule.lag
        for rule in rules
        if rule.before == "base / glue up" and rule.after == "end 1 / level"
    )
    (own,) = (
        rule.lag
        for rule in rules
        if rule.before == "end 1 / glue up" and rule.after == "end 1 / level"
    )
    assert lag == own > 0
    assert played(STOOL).said() == ""


def test_a_finished_panel_is_not_planed_level_with_its_pegged_door() -> None:
    door = changed(text_of("panel_door"), ("6 thick into stiles", "6 thick, pegged into stiles"))
    (level,) = (op for op in listed(model_of(door))[0].operations if op.kind == "level")
    assert {name for work in level.work for name in work.copies} == {
        *("left stile", "right stile"),
        *("bottom rail", "top rail"),
    }
    assert played(door).said() == ""


def test_a_cut_in_a_glued_frame_comes_before_the_sanding_of_whatever_is_coated_apart() -> None:
    frame = changed(
        text_of("flat_lap_frame"),
        (
            "\nglue up frame",
            "\nchamfer on long bars: outer edges, 2 wide, after glue up frame\nglue up frame",
        ),
        ("finish oil", "no finish on short bars\nfinish long bars with oil"),
    )
    assert played(frame).said() == ""
