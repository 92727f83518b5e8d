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
