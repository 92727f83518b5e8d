"""Wood that rests while it is planed: for its thickness, use, moisture, or a word (TRADE A3.7)."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.pieces.planning import planned
from tests.pieces.reading import text_of
from tests.unit.operations.worked import listed, operation, said
from tests.unit.rehearsal.played import Played, played

from dryfit.placing.model import Model
from dryfit.placing.staying_straight import DRAWERS, RAILS, STILES, staying_straight
from dryfit.rehearsal.fault import Reason

A_DAY = 24 * 60 * 10
DOOR = text_of("resting_door")


@pytest.fixture(scope="module")
def door() -> Played:
    return played(DOOR)


def rows_of(of: Played) -> dict[str, int]:
    """The rests of a plan by the operation that they come after, in tenths."""
    rows = (op for step in of.plan.steps for op in step.operations)
    return {op.id: op.after_tenths for op in rows if op.kind in {"rough thickness", "resaw"}}


def model_of(text: str) -> Model:
    checked, _, _ = planned(text)
    assert checked.model is not None
    return checked.model


def test_stiles_of_a_door_rest_and_what_is_planed_in_one_go_does_not(door: Played) -> None:
    """TRADE A3.7: 5 off 27 is less than a quarter, but it is a stile; rails are told not to."""
    assert door.said() == ""
    assert rows_of(door) == {"stile / rough thickness": A_DAY, "panel / resaw": 3 * A_DAY}
    rows = {op.id: op for step in door.plan.steps for op in step.operations}
    close = rows["stile / rough thickness"]
    assert [str(each.value) for each in close.settings if each.axis == "thickness"] == ["47/2"]
    assert "for 24 h" in said(close.details[-1])
    assert "for 3 days" in said(rows["panel / resaw"].details[-1])


def test_they_begin_no_sooner(door: Played) -> None:
    steps = {op.id: step for step in door.plan.steps for op in step.operations}
    rested = steps["panel stave / face"].starts.tenths - steps["panel / resaw"].ends.tenths
    assert rested >= 3 * A_DAY


def test_a_word_of_the_notes_makes_any_wood_rest() -> None:
    """Even where no boards are told of, which no rule does."""
    bare = "\n".join(line for line in DOOR.splitlines() if not line.startswith("have"))
    bare = bare.replace("planed in one go", "2 days on stickers")
    of = played(bare)
    assert of.said() == ""
    assert rows_of(of) == {"rail / rough thickness": 2 * A_DAY, "panel / resaw": 3 * A_DAY}


def test_a_rest_that_was_left_out_is_refused(door: Played) -> None:
    spoiled = door.without("stile / rough thickness")
    told = [fault for fault in spoiled.faults() if fault.reason is Reason.WAIT]
    assert any("planed from 27 to 22 in one go" in fault.message for fault in told)


def test_wood_that_is_said_to_rest_longer_is_planed_too_soon(door: Played) -> None:
    parts = tuple(
        replace(part, rested=4 * A_DAY) if part.name in {"stile", "panel"} else part
        for part in door.goal.parts
    )
    told = replace(door, goal=replace(door.goal, parts=parts)).said()
    assert "stile / thickness begins too soon after stile / rough thickness" in told
    assert "panel stave / face begins too soon after panel / resaw; needed: 96 h" in told


def test_boards_of_unknown_moisture_rest_where_the_shop_says_so(door: Played) -> None:
    rests = replace(door.shop.rests, straight=0, unknown=A_DAY)
    told = replace(door, shop=replace(door.shop, rests=rests)).said()
    # The stiles have rested; of the rails, from boards as little known, the notes say otherwise.
    assert told == ""
    unsaid = tuple(replace(part, rested=None) for part in door.goal.parts)
    of = replace(door, goal=replace(door.goal, parts=unsaid))
    told = replace(of, shop=replace(of.shop, rests=rests)).said()
    assert "planed from 27 to 22 in one go" in told
    dry = tuple(replace(board, damp=False) for board in door.plan.boards)
    of = replace(of, plan=replace(of.plan, boards=dry))
    assert replace(of, shop=replace(of.shop, rests=rests)).said() == ""


def test_what_has_to_stay_straight_is_known_by_its_names() -> None:
    assert staying_straight(model_of(DOOR)) == {"stile": STILES}
    # Stiles of a picture frame hang still, and so do the rails of anything that is short.
    assert staying_straight(model_of(text_of("framed_panel"))) == {}
    drawer = staying_straight(model_of(text_of("bedside_drawer")))
    assert drawer["drawer > tray side"] == DRAWERS
    assert "left side" not in drawer
    long = model_of(text_of("long_bench"))
    assert {*staying_straight(long).values()} <= {RAILS}


SHELF = """piece Shelf
units mm
overall 600 wide, WIDE deep, THICK high
timber ash
1 shelf, across, flat, THICK thick, 2 days on stickers
finish oil, 2 coats
"""


@pytest.mark.parametrize(
    ("wide", "thick", "where"),
    [
        # The shipped jointer takes 200 in width and 12 in thickness or more; 1.5 is left on.
        (150, 20, "at the jointer"),
        (240, 20, "with a plane"),
        (150, 10, "with a plane"),
        (150, 11, "at the jointer"),
        # Wider than the planer too: it is planed by hand from first to last.
        (360, 30, "with a plane"),
    ],
)
def test_what_has_moved_goes_to_the_jointer_only_where_that_takes_it(
    wide: int, thick: int, where: str
) -> None:
    text = SHELF.replace("WIDE", str(wide)).replace("THICK", str(thick))
    last = operation(listed(model_of(text))[0], "shelf / thickness")
    told = [said(detail) for detail in last.details]
    assert f"What has moved in its rest gets one face true again {where} first" in told
