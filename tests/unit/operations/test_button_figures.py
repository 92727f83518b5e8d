"""What the maker of a button has to know, and how long its slot is where it slides (B22, B26.2)."""

from fractions import Fraction

from tests.unit.operations.worked import (
    boot_bench,
    lengths_of,
    listed,
    operation,
    piece,
    rule,
    said,
)

from dryfit.joinery.panel import edge_movement
from dryfit.operations.fitting.button_figures import button_details
from dryfit.placing.model import Model
from dryfit.wood import moving


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
    moves = edge_movement(Fraction(300), moving("oak"))
    assert moves > 1
    assert lengths["front to back"] == {30 + 2 * moves}


GROOVED = ("top onto long rails: 6 buttons", "groove in long rails: inside, {}, through\n{}")
BOTH = "top onto long rails and end rails: buttons"


def grooved(groove: str, *lines: str) -> Model:
    """The buttoned top, held on all four rails, with this groove in the long rails."""
    was, now = GROOVED
    return piece("buttoned_top", (was, now.format(groove, "\n".join((*lines, BOTH)))))


def kinds_of(model: Model) -> dict[str, tuple[Fraction, Fraction]]:
    """The kinds of buttons with the thickness of each, and how far its tongue is set down."""
    made = [part for part in model.parts if part.made]
    down = [next(f.depth for f in part.features if f.surface == "F") for part in made]
    return {part.name: (part.thickness, depth) for part, depth in zip(made, down, strict=True)}


def test_slots_of_their_own_stand_as_the_groove_in_the_other_rails() -> None:
    # 11 from top and 6 wide: set down 11 - 1, thick 11 + 6 + 3.5 - 1 - 0.5 (TRADE B26.2).
    model = grooved("6 wide, 9 deep, 11 from top")
    assert kinds_of(model) == {"button": (Fraction(19), Fraction(10))}
    rail = model.part("end rail")
    slots = [each.across for each in rail.features if each.role == "button slot"]
    # From the upper edge, whichever edge of the rail that is.
    assert {min(near, rail.width - far) for near, far in slots} == {11}
    assert {far - near for near, far in slots} == {6}


def test_a_groove_as_wide_as_no_chisel_is_not_asked_of_the_slots() -> None:
    # Shipped shop: chisels of 6, 8, 10, 12 mm; the usual slot is 12 from top, 6 wide.
    kinds = kinds_of(grooved("7 wide, 9 deep, 11 from top"))
    assert kinds == {
        "button": (Fraction(20), Fraction(10)),
        "button of kind 2": (Fraction(20), Fraction(11)),
    }


def test_buttons_for_grooves_at_two_heights_are_made_apart_and_told_apart() -> None:
    second = "groove in end rails: inside, 6 wide, 9 deep, 14 from top, through"
    model = grooved("6 wide, 9 deep, 11 from top", second)
    work, _ = listed(model)
    first, other = (operation(work, f"{name} / make") for name in kinds_of(model))
    assert said(first.details[0]) == "The buttons go into the long rails"
    assert said(other.details[0]) == "The buttons of kind 2 go into the end rails"
    # Thickness, length and set-down of each: 11 - 1 and 14 - 1 (TRADE B26.2).
    assert [lengths_of(each.details[2])[2] for each in (first, other)] == [10, 13]
    for each in (first, other):
        (row,) = each.work
        part = model.part(row.part)
        assert {copy.hand for copy in part.copies} == {"A"}
        assert rule(work, each.id, "top / fit")
