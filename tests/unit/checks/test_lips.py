"""What shows at lipped edges: solid wood across an end (TRADE G8), shapes through a lip."""

import pytest
from tests.pieces.reading import checked, text_of

CASE = """piece Tray
units mm
overall 600 wide, 300 deep, 18 high
timber oak
1 tray, across, flat, of birch ply, 600 x 300 x 18, lipped {lip}
{cut}
finish hard wax oil, 2 coats, 8 h apart
"""


def told(lip: str, cut: str = "") -> list[str]:
    found = checked(CASE.format(lip=lip, cut=cut))
    codes = [each.code for each in found.findings]
    return [code for code in codes if code.startswith("lip")]


@pytest.mark.parametrize(
    ("lip", "found"),
    [
        ("12 of oak at ends", []),
        ("13 of oak at ends", ["lipping-thick"]),
        ("13 of oak at front", []),
    ],
)
def test_solid_wood_across_an_end_is_at_most_12_thick(lip: str, found: list[str]) -> None:
    # TRADE G8: "plywood lipping of solid > 12 thick across ends (W)".
    assert told(lip) == found


@pytest.mark.parametrize(
    ("cut", "found"),
    [
        ("round-over on tray: front top edge, 6 radius", []),
        ("round-over on tray: front top edge, 7 radius", ["lip-cut-through"]),
        ("chamfer on tray: front bottom edge, 8 wide", ["lip-cut-through"]),
        ("round-over on tray: back top edge, 7 radius", []),
        (
            "curve in tray: front edge, 20 deep, from 90 from left to 90 from right",
            ["lip-cut-through"],
        ),
        ("notch in tray: back edge, 40 wide, 20 deep, 60 from left", []),
        ("chamfer on tray: right top edge, 8 wide", []),
        ("taper in tray: bottom face, from 300 from left to the right, 18 to 12", []),
        ("groove in tray: bottom, 6 wide, 6 deep, 3 from front", []),
    ],
)
def test_a_shape_deeper_than_the_lip_shows_the_plies(cut: str, found: list[str]) -> None:
    assert told("6 of oak at front", cut) == found


def test_no_part_is_called_as_the_strips_of_another() -> None:
    text = text_of("lipped_case") + (
        "1 side lip, front to back, flat, 250 x 20 x 10, on the inside face of left side: glue, "
        "up 200, of oak\n"
    )
    found = [each for each in checked(text).findings if each.code == "name-twice"]
    assert [each.message for each in found] == [
        "side lip: so the strips are called that lip the side"
    ]
