"""How many buttons a rail takes, where they stand, and how they give way to what is written."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from tests.pieces.reading import changed, checked, codes, errors, model_of

from dryfit import workshop
from dryfit.diagnostics import Source
from dryfit.notes import source_of
from dryfit.placing.model import Model
from dryfit.quantities.units import INCH

DESK = """piece Desk
units mm
overall 1125 wide, 625 deep, 675 high
timber ash
4 legs, upright, 43 x 43, at corners, set in 15
2 long aprons, across, on edge, 105 x 22, tenon 20 long 10 thick into legs, set back 3
2 short aprons, front to back, on edge, 105 x 22, tenon 20 long 10 thick into legs, set back 3
1 stretcher, front to back, flat, 52 x 22, between long aprons: housing 7, 20 below the top
1 top, flat, 21 thick, glued from 6
top onto long aprons and short aprons: buttons
glue up 2 ends: 2 legs, 1 short apron
glue up base: ends, long aprons, stretcher
finish wax
"""
STOOL = """piece Step stool
units mm
overall 410 wide, 240 deep, 380 high
timber ash
4 legs, upright, 43 x 43, at corners, set in 13
2 long rails, across, on edge, 60 x 18, tenon 21 long 6 thick into legs, set back 5
2 short rails, front to back, on edge, 60 x 18, tenon 21 long 6 thick into legs, set back 5
1 seat, flat, 26 thick, glued from 4
seat onto long rails and short rails: buttons
glue up 2 side frames: 2 legs, 1 short rail
glue up base: side frames, long rails
finish wax
"""


def places(model: Model, rail: str, axis: int) -> list[Fraction]:
    """The middles of the buttons of a rail along an axis."""
    own = {joint.guest for joint in model.joints if joint.kind == "buttons" and joint.host == rail}
    boxes = [copy.box for part in model.parts for copy in part.copies if copy.name in own]
    return sorted((box.low[axis] + box.high[axis]) / 2 for box in boxes)


@pytest.mark.parametrize("number", ["", "16 "])
def test_a_button_stands_aside_of_a_stretcher_in_the_middle(number: str) -> None:
    model = model_of(changed(DESK, ("short aprons: buttons", f"short aprons: {number}buttons")))
    # Legs end at 58 and 1067: five buttons from 108 to 1017, 227.25 apart, the middle one at
    # 562.5.  There the housing 52 wide begins at 536.5; a slot reaches 15, and 3 stay between.
    usual = [Fraction(108 * 4 + 909 * index, 4) for index in range(5)]
    usual[2] = Fraction(1037, 2)
    assert places(model, "front long apron", 0) == usual
    assert places(model, "back long apron", 0) == usual
    # Short ones have three: legs end at 58 and 567.
    assert places(model, "left short apron", 1) == [108, Fraction(625, 2), 517]


def test_that_a_button_stands_aside_is_listed() -> None:
    told = [each.text for each in model_of(DESK).assumptions if "usual place" in each.text]
    words = "a button on the {} long apron stands 44 to the left of its usual place, clear of the "
    assert [each.partition(" clear of ")[0] for each in told] == [
        words.format(side).partition(" clear of ")[0] for side in ("front", "back")
    ]
    assert all("stretcher" in each for each in told)


def test_a_rail_too_short_for_two_buttons_has_one_in_its_middle() -> None:
    """Shoulders 56 and 184: at 78 and 134 two slots of 30 and more leave nothing between them."""
    model = model_of(STOOL)
    assert places(model, "left short rail", 1) == [120]
    assert len(places(model, "front long rail", 0)) == 2
    assert any(each.text == "6 buttons hold the seat" for each in model.assumptions)


def test_a_written_number_that_has_no_room_is_told() -> None:
    # Legs end at 56 and 354: 198 between the outer ones of a long rail, a slot and a wall are 33.
    found = checked(changed(STOOL, ("short rails: buttons", "short rails: 20 buttons")))
    assert [each.message for each in errors(found)] == [
        "the rails under the seat take 16 buttons at most"
    ]


@pytest.mark.parametrize(
    ("chisels", "wide"),
    [
        ('"chisel 6" = false', INCH / 4),
        ('"chisel 6" = { station = "mortiser", width = "6 mm" }', 6),
    ],
)
def test_slots_are_as_wide_as_a_chisel_of_the_shop(
    chisels: str, wide: Fraction, tmp_path: Path
) -> None:
    shop = tmp_path / "shop.toml"
    shop.write_text(f'format = "dryfit-shop/1"\nname = "Shop"\n[cutter]\n{chisels}\n')
    text = changed(DESK, ("tenon 20 long 10 thick", "tenon 20 long"))
    source = source_of("desk.dryfit", text.encode())
    assert isinstance(source, Source)
    found = workshop.check(source, shop, {})
    assert "no-such-chisel" not in codes(found)
    assert found.model is not None
    slots = [f for f in found.model.part("long apron").features if f.role == "button slot"]
    assert {slot.across[1] - slot.across[0] for slot in slots} == {wide}
