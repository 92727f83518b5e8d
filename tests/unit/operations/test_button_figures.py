"""What the maker of a button has to know, and how long its slot is where it slides (B22, B26.2)."""

from fractions import Fraction

from tests.unit.operations.worked import boot_bench, lengths_of, operation, piece

from dryfit.joinery.panel import edge_movement
from dryfit.operations.button_figures import button_details


def test_the_buttons_of_the_worked_example() -> None:
    # TRADE I1: tongue 5.5 thick, 8.5 long, its top 11 below the button's; body 2.5 off the apron.
    board, tongue, stand_off, hole = operation(boot_bench(), "button / make").details
    assert lengths_of(tongue) == (Fraction("8.5"), Fraction("5.5"), Fraction(11))
    assert stand_off == (
        "The body stands ",
        Fraction("2.5"),
        " off the apron, so that the top can move",
    )
    # The grain runs through the tongue, or it snaps: 40 long, as the cut list has it.
    button = piece().part("button")
    assert lengths_of(board) == (button.thickness, button.width, button.length)
    assert "grain runs along the button" in str(board[0])
    # 40 long: the body from 8.5 to 40, its middle at 24.25; a 4 mm screw goes through 4.5.
    assert lengths_of(hole) == (Fraction("4.5"), Fraction("24.25"))


def test_parts_that_are_no_buttons_have_no_such_figures() -> None:
    assert button_details(piece().part("apron"), piece()) == ()


def test_a_slot_along_which_the_top_moves_is_longer_by_that_movement() -> None:
    everywhere = ("top onto long rails: 6 buttons", "top onto long rails and end rails: buttons")
    model = piece("buttoned_top", everywhere)
    top = model.part("top")
    lengths: dict[str, set[Fraction]] = {}
    for part in model.parts:
        for slot in part.features:
            if slot.role == "button slot":
                lengths.setdefault(part.run, set()).add(slot.along[1] - slot.along[0])
    assert top.run == "across"
    # Button 28, 1 mm at either end: 30 on rails along the grain of the top.
    assert lengths["across"] == {Fraction(30)}
    # On the end rails the edges of the 300 wide top carry it along, to either side.
    moves = edge_movement(Fraction(300), "oak")
    assert moves > 1
    assert lengths["front to back"] == {30 + 2 * moves}
