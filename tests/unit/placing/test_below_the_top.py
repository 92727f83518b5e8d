"""Of which top `160 below the top` speaks on the line of what lies between others."""

from __future__ import annotations

import pytest
from tests.pieces.reading import changed, model_of

CABINET = """piece Cabinet
units mm
overall 450 wide, 380 deep, 600 high
timber oak
2 sides, upright, facing side, 380 wide, 20 thick, at left and right
1 top, flat, 20 thick, onto sides
1 bottom, flat, 18 thick, between sides, housing 6, up 60
1 back, upright, facing front, 8 thick, inside sides and top and bottom, groove 6, 10 from back
1 shelf, flat, 18 thick, between sides, housing 6, 160 below the top, in front of back, 0 from front
glue up case: sides, top, bottom, back, shelf
"""
SHELF = "1 shelf, flat, 18 thick, between sides, housing 6, 160 below the top"
HOUSED = ("thick, onto sides", "thick, between sides, housing 6, down 0")
NO_TOP = (("1 top", "1 lid"), ("sides and top", "sides and lid"), (": sides, top", ": sides, lid"))


def reference(text: str) -> tuple[int, tuple[tuple[str, str | None], ...]]:
    """How high the shelf's upper side lies, and what is listed of its place, with its line."""
    model = model_of(text)
    listed = [each for each in model.assumptions if "is measured from" in each.text]
    high = model.part("shelf").copies[0].box.high[2]
    return int(high), tuple((each.text, each.instead) for each in listed)


@pytest.mark.parametrize("words", [", in front of back", ", 362 wide"])
@pytest.mark.parametrize("top", [HOUSED, ("onto sides", "onto sides")])
def test_a_mate_whose_edge_is_hidden_is_no_reference(top: tuple[str, str], words: str) -> None:
    text = changed(CABINET, top, (", in front of back", words))
    # The top is 20 of 600, so that its underside is at 580; the back ends 5 up in it.
    high, ((said, line),) = reference(text)
    assert high == 580 - 160
    assert said == "the shelf is measured from the bottom of top"
    assert (
        line
        == changed(SHELF, ("below the top", "below the bottom of top")) + f"{words}, 0 from front"
    )


def test_without_a_board_of_that_name_the_hosts_are_meant() -> None:
    high, ((said, line),) = reference(changed(CABINET, *NO_TOP))
    assert high == 580 - 160
    assert said == "the shelf is measured from the top of sides"
    assert line == f"{SHELF} of sides, in front of back, 0 from front"


def test_above_the_bottom_is_above_the_board_of_that_name() -> None:
    high, ((said, _),) = reference(changed(CABINET, ("160 below the top", "100 above the bottom")))
    assert high == 60 + 18 + 100 + 18
    assert said == "the shelf is measured from the top of bottom"


@pytest.mark.parametrize("changes", [(), NO_TOP, (HOUSED,)])
def test_the_line_that_is_listed_puts_the_shelf_there(changes: tuple[tuple[str, str], ...]) -> None:
    text = changed(CABINET, *changes)
    high, ((_, line),) = reference(text)
    written = next(each for each in text.splitlines() if each.startswith("1 shelf"))
    assert line is not None
    assert reference(changed(text, (written, line))) == (high, ())


def test_what_is_fastened_to_a_face_is_measured_from_that() -> None:
    ledge = "1 ledge, across, 200 x 20 x 20, on the front of back, screws, 30 below the top\n"
    model = model_of(f"{CABINET}{ledge}")
    top = model.part("back").copies[0].box.high[2]
    assert model.part("ledge").copies[0].box.high[2] == top - 30
