"""What is not glued is fitted, once, after its last coat."""

import pytest
from tests.pieces.reading import text_of
from tests.unit.operations.test_hung_lid import CHEST
from tests.unit.rehearsal.played import played

from dryfit.rehearsal.deeds import deeds_of
from dryfit.rehearsal.fitting import fittings
from dryfit.rehearsal.surfaces import surfaces


@pytest.mark.parametrize(
    ("piece", "left_out", "told"),
    [
        ("trestle", "beam / fit", "beam and left leg are neither glued nor fitted together"),
        ("tray_chest", "tray 2 / fit", "tray bottom: never put in"),
        ("wall_case", "knob / fit", "knob is bought and never fitted"),
        ("potting_table", "shelf slat / fit", "shelf slat 1 and left ledger are neither"),
        ("screwed_frame", "board / fit", "board and "),
    ],
)
def test_what_is_never_fitted_is_told(piece: str, left_out: str, told: str) -> None:
    sound = played(text_of(piece))
    assert list(fittings(deeds_of(sound.plan), sound.goal)) == []
    plan = sound.without(left_out).plan
    assert plan != sound.plan
    messages = [fault.message for fault in fittings(deeds_of(plan), sound.goal)]
    assert any(told in message for message in messages), messages


def test_two_finishes_of_one_part_add_up() -> None:
    trestle = played(text_of("trestle"))
    assert list(surfaces(deeds_of(trestle.plan), trestle.goal, trestle.shop)) == []
    bare = trestle.without("seat / coat 1 / bottom")
    faults = list(surfaces(deeds_of(bare.plan), bare.goal, bare.shop))
    # Three coats on all of the piece, and one more on the underside of the seat.
    assert [(fault.message, fault.needed) for fault in faults] == [
        ("seat: 3 x oil varnish", "4 x oil varnish, as the notes ask for")
    ]


@pytest.mark.parametrize(
    ("left_out", "told"),
    [
        ("batten / fit", "left batten: never fitted"),
        ("lid / fit", "lid: never fitted"),
    ],
)
def test_a_lid_is_hung_and_its_battens_are_fitted(left_out: str, told: str) -> None:
    sound = played(CHEST)
    assert list(fittings(deeds_of(sound.plan), sound.goal)) == []
    messages = [
        fault.message for fault in fittings(deeds_of(sound.without(left_out).plan), sound.goal)
    ]
    assert told in messages


CLEATED = """piece Pastry board
units mm
overall 600 wide, 330 deep, 46 high
timber oak
{}
cleats under board: screws
finish hard wax oil, 2 coats, 8 h apart
"""
BOARD = "1 board, across, flat, 600 x 330 x 24, down 0"
CLEATS = "2 cleats, front to back, flat, 292 x 36 x 22, at left and right, set in 60 across, up 0"


@pytest.mark.parametrize("lines", [(BOARD, CLEATS), (CLEATS, BOARD)])
def test_a_lone_board_is_not_fitted_to_its_cleats(lines: tuple[str, str]) -> None:
    sound = played(CLEATED.format("\n".join(lines)))
    assert list(fittings(deeds_of(sound.plan), sound.goal)) == []
    bare = sound.without("cleat / fit").plan
    assert any(
        "neither glued nor fitted" in fault.message
        for fault in fittings(deeds_of(bare), sound.goal)
    )
