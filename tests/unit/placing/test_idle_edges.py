"""Edges that a joint's cuts take away are not eased: they are not there any more."""

from fractions import Fraction

from tests.pieces.reading import changed, model_of, text_of

TABLE = changed(
    text_of("plated_top"),
    ("figure-8 plates\n", "figure-8 plates\nchamfer on long aprons: bottom edges, 4 wide\n"),
)


def test_bottom_edges_of_a_tenoned_rail_are_the_two_along_it() -> None:
    # The shoulder below the tenon is far deeper than the chamfer, so that both ends are gone.
    apron = model_of(TABLE).part("long apron")
    chamfers = [each for each in apron.features if each.role == "chamfer"]
    assert [each.along for each in chamfers] == [(Fraction(0), apron.length)] * 2


def test_bottom_edges_of_a_plain_board_go_all_round() -> None:
    board = changed(
        text_of("plated_top"),
        ("figure-8 plates\n", "figure-8 plates\nchamfer on top: bottom edges, 4 wide\n"),
    )
    assert (
        len([each for each in model_of(board).part("top").features if each.role == "chamfer"]) == 4
    )
