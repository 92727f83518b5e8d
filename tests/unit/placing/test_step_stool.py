"""The step stool: sizes worked out by hand beside the notes (leg 240 - 22 and so on)."""

from fractions import Fraction

import pytest
from tests.pieces.reading import (
    changed,
    checked,
    checked_piece,
    codes,
    errors,
    mm,
    model_of_piece,
    text_of,
)

from dryfit.placing.model import Model


@pytest.fixture(scope="module")
def stool() -> Model:
    return model_of_piece("step_stool")


def test_nothing_is_found_wrong() -> None:
    assert codes(checked_piece("step_stool")) == []


@pytest.mark.parametrize(
    ("name", "count", "sizes", "shoulder"),
    [
        ("leg", 4, (218, 40, 40), None),
        ("long rail", 2, (350, 55, 20), 310),
        ("short rail", 2, (230, 55, 20), 190),
        ("seat", 1, (420, 300, 22), None),
        ("button", 4, (40, 28, 20), None),
    ],
)
def test_cut_list(
    stool: Model, name: str, count: int, sizes: tuple[int, int, int], shoulder: int | None
) -> None:
    part = stool.part(name)
    assert len(part.copies) == count
    assert (part.length, part.width, part.thickness) == mm(*sizes)
    assert part.shoulder_length == shoulder


def test_four_millimetres_of_wood_stand_between_the_mortises_of_a_leg(stool: Model) -> None:
    leg = stool.part("leg")
    for copy in leg.copies:
        first, second = (feature.box(copy.box, copy.frame) for feature in leg.features)
        assert first.overlap(second) is None
        # Each is 21 deep from an inner face of 40, so it leaves 19; the other begins at
        # 2 + (20 - 6) / 2 = 9 and ends at 15.
        gaps = [
            max(first.low[axis], second.low[axis]) - min(first.high[axis], second.high[axis])
            for axis in (0, 1)
        ]
        assert max(gaps) == 19 - 15


def test_rails_stand_back_two_from_the_legs(stool: Model) -> None:
    assert stool.copy("front long rail").box.low[1] == 15 + 2
    assert stool.copy("back long rail").box.high[1] == 300 - 15 - 2
    assert stool.copy("left short rail").box.low[0] == 15 + 2


def test_thin_legs_with_long_thick_tenons_collide_by_one_and_a_half() -> None:
    notes = changed(
        text_of("step_stool"), ("40 x 40", "38 x 38"), ("20 long 6 thick", "22 long 7 thick")
    )
    notes = changed(notes, ("reveal = 2", "reveal = 3"))
    found = checked(notes)
    (collision,) = (f for f in errors(found) if f.code == "mortises-collide")
    assert collision.rule == "H05"
    # Mortise 22 + 1 deep from the inner face of a 38 leg leaves 15; the other begins at
    # 3 + (20 - 7) / 2 = 9.5 and ends at 16.5: they share 1.5.
    assert collision.figures["overlap"] == Fraction(3, 2)
    assert collision.span is not None
    lines = collision.span.source.lines()
    assert "long rails" in lines[collision.span.line - 1]
    (other,) = collision.notes
    assert other.span is not None
    assert "short rails" in lines[other.span.line - 1]


def test_hands_of_legs_alternate_round_the_stool(stool: Model) -> None:
    hands = {copy.name: copy.hand for copy in stool.part("leg").copies}
    assert hands["front left leg"] == hands["back right leg"] != hands["front right leg"]
    assert hands["front right leg"] == hands["back left leg"]


def test_the_seat_lies_on_all_legs_and_long_rails_but_only_rails_take_buttons(
    stool: Model,
) -> None:
    buttons = {joint.host for joint in stool.joints if joint.kind == "buttons"}
    assert buttons == {"front long rail", "back long rail"}
    rests = {joint.host for joint in stool.joints if joint.kind == "rest"}
    assert buttons < rests
    assert len(rests) == 6


def test_a_tenon_line_in_words_does_not_hide_its_assumptions(stool: Model) -> None:
    texts = [assumption.text for assumption in stool.assumptions]
    assert "the tenons of long rails are 30 wide" in texts
    assert "the legs stand on the floor" in texts
