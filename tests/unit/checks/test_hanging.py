"""What hangs on a wall (M20): by what, and what its fixings must carry."""

from __future__ import annotations

from tests.pieces.reading import checked, model_of

from dryfit.placing.hanging import hangs_by, wall_load
from dryfit.placing.weights import whole_weight

SHELF = """piece Wall shelf
overall 900 wide, 200 deep, 500 high
timber pine
hangs on a {wall} wall, 1400 up
2 sides, upright, 200 x 18, facing side, at left and right
3 shelves, flat, 200 x 18, into sides, housing 6, up 0, 240 and 482
{hanger}
glue up case: sides, shelves
"""
HANGER = "bought 2 wall hangers"


def told(wall: str, hanger: str = HANGER) -> list[str]:
    text = SHELF.format(wall=wall, hanger=hanger)
    return [each.code for each in checked(text).findings if each.rule == "M20"]


def test_a_rail_at_the_back_under_the_top_is_what_it_hangs_by() -> None:
    """Whatever it is called; a rail at the front, or low down, holds nothing on the wall."""
    case = """piece Wall case
overall 620 wide, 210 deep, 330 high
timber cherry
hangs on a stud wall, 1500 up
2 sides, upright, facing side, 330 x 210 x 18, at left and right
1 rail, across, on edge, 60 x 18, between sides, at {}, 2 dowels into sides
glue up case: sides, rail
"""
    for where, told_so in (
        ("back, down 20", False),
        ("back, up 20", True),
        ("front, down 20", True),
    ):
        found = {each.code for each in checked(case.format(where)).findings}
        assert ("hangs-by-nothing" in found) == told_so, where


def test_a_piece_hangs_by_something() -> None:
    assert told("stud", "") == ["hangs-by-nothing", "wall-load"]
    assert told("stud") == ["wall-load"]
    assert hangs_by(model_of(SHELF.format(wall="stud", hanger=HANGER))) == ("wall hanger ",)


def test_a_rail_to_hang_it_by_is_found_by_its_name() -> None:
    rail = "1 hanging rail, across, facing front, 60 x 18, between sides, at back, down 18, screws"
    assert "hangs-by-nothing" not in told("stud", rail)


def test_boards_alone_carry_little() -> None:
    assert told("plasterboard") == ["board-wall"]


def test_the_load_by_hand() -> None:
    # Two shelves under the top one, 876 long in their housings, at 30 kg a metre; every 400 mm of
    # 900 is 3 fixings, of which only half is taken to carry.
    model = model_of(SHELF.format(wall="brick", hanger=HANGER))
    load = wall_load(model)
    assert load.own == whole_weight(model).kilograms
    assert float(load.inside) == 2 * 0.876 * 30
    assert load.fixings == 3
    assert load.each == load.total * 2 / 3


def test_a_wood_that_no_table_weighs_counts_as_the_heaviest() -> None:
    # 0.69 is the largest specific gravity of the tables (black locust); 8 % of moisture in it.
    pine = SHELF.format(wall="brick", hanger=HANGER)
    known = wall_load(model_of(pine))
    told, unknown = (
        model_of(pine.replace("timber pine", f"timber {wood}"))
        for wood in ("black locust", "lacewood")
    )
    assert not known.guessed
    assert wall_load(unknown).guessed
    assert wall_load(unknown).own == wall_load(told).own == whole_weight(told).kilograms
    (notice,) = [each for each in checked(pine).findings if each.code == "wall-load"]
    assert "taken" not in notice.message
    (notice,) = [
        each
        for each in checked(pine.replace("pine", "lacewood")).findings
        if each.code == "wall-load"
    ]
    assert "its wood taken as heavy as black locust" in notice.message


def test_nothing_of_what_hangs_is_said_to_stand_on_the_floor() -> None:
    text = SHELF.format(wall="stud", hanger=HANGER)
    hung = {each.text for each in model_of(text).assumptions}
    assert "the sides reach down to the bottom of the piece" in hung
    stood = model_of(text.replace("hangs on a stud wall, 1400 up\n", ""))
    assert "the sides stand on the floor" in {each.text for each in stood.assumptions}
