"""A cut with no mate that eats into a joint is told, whatever its family (TRADE H06)."""

import pytest
from tests.pieces.reading import changed, checked, checked_piece, text_of

from dryfit.diagnostics import Diagnostic, Severity
from dryfit.kinds.joints import joint_kinds

INTO = {
    # Where each joint lies is worked by hand from the lines of its piece.
    "half lap": (
        "flat_lap_frame",
        "hole in long bars: top, 6 dia, through, 20 from left, centred",
    ),
    "bridle": ("bridled_frame", "hole in stiles: front, 8 dia, through, 20 from bottom, centred"),
    # The mitres lie within 48 of the ends.
    "mitre": ("mitred_frame", "hole in stiles: front, 8 dia, through, 20 from bottom, centred"),
    # Corners as deep as the walls are thick: 12, and 3/4 in.
    "box joint": ("finger_box", "notch in sides: top edge, 20 wide, 10 deep, 4 from front"),
    "through dovetail": (
        "dovetailed_chest",
        "hole in sides: outside, 1/4 dia, through, 3/8 from front, 3 from bottom",
    ),
    # The back lies 6 in its grooves, 10 to 15.6 from the back edge.
    "groove": (
        "wall_case",
        "hole in sides: outside, 6 dia, through, 13 from back, 100 from bottom",
    ),
    # The bottom lies 10 to 16 up, 6 in the sides.
    "slid panel": (
        "nail_drawer",
        "hole in sides: outside, 6 dia, through, 13 from bottom, 100 from front",
    ),
    # The back lies in the rearmost 12 of the sides.
    "back rabbet": ("lapped_back", "notch in sides: back edge, 40 wide, 8 deep, 100 from bottom"),
    # Each board lies 9 over the next.
    "ship lap": (
        "lapped_back",
        "hole in back boards: front, 6 dia, through, 5 from left, 100 from bottom",
    ),
    "tongue and groove": (
        "tongued_boards",
        "hole in floor boards: top, 10 dia, through, 6 from front, 100 from left",
    ),
    # The runner lies 44 to 56 up in the sides of the drawer, 4 to 12 of whose 12 are left behind.
    "runner": (
        "bedside_drawer",
        "hole in tray sides: outside, 6 dia, through, 50 from bottom, 100 from front",
    ),
    # A leaf of 50 by about 15 stands at the front edge, near either end of the door.
    "hinges": ("hinged_case", "notch in left side: front edge, 80 wide, 10 deep, 480 from bottom"),
    # The rows stand 37 behind the front edge (TRADE B19).
    "shelf pins": ("pin_case", "groove in sides: inside, 10 wide, 8 deep, 37 from front, through"),
    "figure-8 plates": (
        "plated_top",
        "hole in long aprons: inside, 1 dia, 10 deep, 0.8 from top, centred",
    ),
    # The counterbore stands in the middle of the apron, 13.5 wide and 60 up from below.
    "slotted screws": (
        "slotted_top",
        "hole in long aprons: inside, 8 dia, 12 deep, 50 from bottom, centred",
    ),
    # The tenons, 24 thick, stand 88 to 112 from the ends and 51 to 75 from the edges of the seat.
    "round tenon": (
        "splayed_bench",
        "hole in seat: top, 10 dia, through, 100 from left, 60 from front",
    ),
    "rabbet": (
        "rabbeted_box",
        "hole in sides: outside, 8 dia, through, 30 from front, 10 from top",
    ),
}
"""By family of joints: a piece and a line that cuts into a joint of it."""
ELSEWHERE = {
    "mortise and tenon": "test_lone_cuts",
    "housing": "test_lone_cuts",
    "dowels": "test_lone_cuts",
    "biscuits": "test_lone_cuts",
    "loose tenon": "test_lone_cuts",
    "pocket screws": "test_pocket_screws",
    "half-blind dovetail": "as a through one",
    "clips": "a cut in the way of their kerf is told by top-fixing-does-not-fit",
    "screws": "they are moved clear of the cut; where there is no room screw-near-cut tells it",
    "buttons": "they are moved clear of the cut",
    "glued butt": "nothing is cut in either part",
    "rest": "nothing is cut in either part",
    "bottom runner": "nothing is cut in either part",
}


def _found(piece: str, line: str) -> list[Diagnostic]:
    text = text_of(piece)
    if "\nend\n" in text:
        text = changed(text, ("\nend\n", f"\n{line}\nend\n"))
    else:
        text = f"{text}{line}\n"
    return [each for each in checked(text).findings if each.code == "cut-in-joint"]


def test_no_family_of_joints_is_left_out() -> None:
    assert {kind.name for kind in joint_kinds()} <= INTO.keys() | ELSEWHERE.keys()


@pytest.mark.parametrize("kind", INTO)
def test_a_cut_that_eats_into_a_joint_is_told(kind: str) -> None:
    found = _found(*INTO[kind])
    assert any(f"takes wood where the {kind} with" in each.message for each in found)
    shaping = INTO[kind][1].startswith("notch")
    assert all(each.severity is Severity.ERROR for each in found) is shaping


@pytest.mark.parametrize(
    ("piece", "line"),
    [
        # A rabbet runs on round a mitred corner, as for the glass of a picture.
        ("mitred_frame", "rabbet in stiles and rails: back outer edges, 10 wide, 8 deep, through"),
        ("mitred_frame", "chamfer on stiles: all long edges, 2"),
        ("finger_box", "hole in sides: outside, 6 dia, through, 30 from front, 50 from bottom"),
        ("nail_drawer", "hole in sides: outside, 6 dia, through, 30 from bottom, 100 from front"),
        # What thins the edge of a panel lets it into its groove.
        ("nail_drawer", "rabbet in bottom: left bottom edge, 8 wide, 2 deep, through"),
        ("lapped_back", "notch in sides: front edge, 40 wide, 10 deep, 100 from bottom"),
        ("hinged_case", "notch in left side: front edge, 80 wide, 10 deep, 250 from bottom"),
        ("pin_case", "groove in sides: inside, 10 wide, 8 deep, 60 from front, through"),
        (
            "slotted_top",
            "hole in long aprons: inside, 8 dia, 9 deep, 50 from bottom, 200 from left",
        ),
        ("bedside_drawer", "hole in tray sides: outside, 6 dia, through, 70 from bottom, centred"),
    ],
)
def test_a_cut_clear_of_the_joint_is_no_fault(piece: str, line: str) -> None:
    assert _found(piece, line) == []
    whole = checked_piece(piece).findings
    assert not [each for each in whole if each.code == "cut-in-joint"]


@pytest.mark.parametrize(
    ("piece", "line", "role"),
    [
        # Without it a screw stands 112.5 from the left and 11 from the front, a button at 360.
        (
            "screwed_frame",
            "hole in board: top, 8 dia, through, 11 from front, 112 from left",
            "hole",
        ),
        (
            "buttoned_top",
            "hole in long rails: inside, 8 dia, 12 deep, 15 from top, centred",
            "slot",
        ),
    ],
)
def test_screws_and_buttons_give_way_to_a_cut(piece: str, line: str, role: str) -> None:
    model = checked(f"{text_of(piece)}{line}\n").model
    assert model is not None
    hosts = [part for part in model.parts if any(each.role == "hole" for each in part.features)]
    for part in hosts:
        (hole,) = (each for each in part.features if each.role == "hole" and each.mate is None)
        others = [each for each in part.features if each.mate and each.role.endswith(role)]
        assert others
        for each in others:
            apart = each.along[0] > hole.along[1] or each.along[1] < hole.along[0]
            assert apart or each.across[0] > hole.across[1] or each.across[1] < hole.across[0]
