"""H72 to H80 but for glue across the grain: panels, fronts, finish, moisture, unlike woods."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, errors, text_of

from dryfit.diagnostics import Diagnostic, Severity

DOOR = """piece Door
units mm
overall {wide} wide, 22 deep, 700 high
timber beech
2 stiles, upright, facing front, 60 x 22, at left and right
2 rails, across, on edge, 60 x 22, tenon 30 into stiles, at top and bottom
1 panel, facing front, 8 thick, inside stiles and rails, groove {groove}
glue up door: stiles, rails, panel
"""


def told(text: str, *wanted: str) -> list[Diagnostic]:
    found = checked(text)
    assert found.model is not None, [each.message for each in found.findings]
    return [each for each in found.findings if each.code in wanted]


@pytest.mark.parametrize(
    ("wide", "groove", "severity"),
    [
        # Beech .00431, 3 % to come, 2 % to lose.  240 of sight and 9 deep: 252.7 wide, gap 3.0, 6
        # are in; 2.2 are lost, 4.9 stay, of which 4 are asked (half of 9, less the rounding).
        (360, 9, None),
        # 440 and 9: 448 wide, gap 4, 5 in, 3.9 lost: 3.1.
        (560, 9, Severity.WARNING),
        # 440 and 12: 454 wide, gap 4, 8 in: 6.1.
        (560, 12, None),
        # 640 and 6: 641 wide, gap 5.5, a half in, 5.5 lost.
        (760, 6, Severity.ERROR),
    ],
)
def test_a_panel_has_to_stay_in_its_grooves(
    wide: int, groove: int, severity: Severity | None
) -> None:
    found = told(DOOR.format(wide=wide, groove=groove), "panel-comes-out")
    assert [each.severity for each in found] == ([severity] if severity else [])


def test_a_panel_that_does_not_reach_its_grooves() -> None:
    # 840 of sight: 852 x .00431 x 3 % / 2 + 1 = 6.5 of gap, and 6 of groove.
    found = checked(DOOR.format(wide=960, groove=6))
    assert [each.code for each in errors(found)] == ["panel-comes-out"]
    deep = errors(found)[0].hints[0].message.split(" ")[2]
    assert errors(checked(DOOR.format(wide=960, groove=deep))) == []


def test_the_depth_that_is_offered_is_enough() -> None:
    (found,) = told(DOOR.format(wide=560, groove=9), "panel-comes-out")
    assert "across the grain (American beech)" in found.message
    assert "dried to 6 % of moisture" in found.message
    deep = found.hints[0].message.split("grooves ")[1].split(" ")[0]
    assert told(DOOR.format(wide=560, groove=deep), "panel-comes-out") == []


BOX = """piece Wall box
units mm
overall 536 wide, 200 deep, 436 high
timber beech
2 sides, upright, facing side, 200 x 18, at left and right
2 ends, flat, across, 200 x 18, into sides: housing 6, at top and bottom
bay = opening between sides and ends
1 door, upright, 18 thick, in bay, gap {gap}{words}, 0 from front
door to left side: 2 hinges, 50 long
glue up box: sides, ends
"""


@pytest.mark.parametrize(
    ("gap", "words", "fires"),
    [
        # 500 less the gaps; beech .00431 x 3 % x 496 = 6.4, and 0.8 (TRADE H76): 7.2.
        ("2", "", True),
        ("4", "", False),
        ("2", ", quartersawn", False),  # .00190: 2.8 and 0.8
        ("2", ", of birch ply", False),
    ],
)
def test_a_solid_door_needs_room_to_swell(gap: str, words: str, *, fires: bool) -> None:
    found = told(BOX.format(gap=gap, words=words), "front-swells")
    assert len(found) == fires
    for each in found:
        assert "may swell by 6.5 mm" in each.message
        assert each.figures["room"] == 4


def test_a_framed_door_is_not_asked_as_one_board() -> None:
    # wall_cabinet has a door with a panel 273 wide, and a drawer, in openings with a gap of 2.
    assert told(text_of("wall_cabinet"), "front-swells") == []


LID = """piece Chest lid
units mm
overall 700 wide, {wide} deep, 20 high
timber oak
1 lid, flat, across, {wide} x 20
{finish}
"""


@pytest.mark.parametrize(
    ("wide", "finish", "fires"),
    [
        (400, "finish top of lid with oil varnish", True),
        (150, "finish top of lid with oil varnish", False),
        (400, "finish lid with oil varnish", False),
        (400, "finish faces of lid with oil varnish", False),
        (400, "finish top of lid with oil varnish\nfinish bottom of lid with shellac", False),
        (400, "finish oil varnish\nno finish on bottom of lid", True),
        (400, "finish oil varnish\nno finish on front edge of lid", False),
    ],
)
def test_a_free_board_is_finished_on_both_faces(wide: int, finish: str, *, fires: bool) -> None:
    found = told(LID.format(wide=wide, finish=finish), "finished-on-one-face")
    assert len(found) == fires


def test_what_is_glued_into_a_case_is_held_flat() -> None:
    text = BOX.format(gap="4", words="") + "finish outside of sides with oil varnish\n"
    assert told(text, "finished-on-one-face") == []


@pytest.mark.parametrize(
    ("line", "code"),
    [
        # A heated house: 6 to 11 %, in the middle 8.5; TRADE H80: 2 % away.
        ("have 1 board of oak, 1000 x 320 x 25, rough, at 10.5 %", None),
        ("have 2 boards of oak, 1000 x 320 x 25, rough, moisture 11 %", "wood-not-dry"),
        ("have 1 board of oak, 1000 x 320 x 25, rough, at 6 %", "wood-too-dry"),
        ("have 1 board of pine, 1000 x 320 x 25, rough, at 14 %", None),  # nothing is of pine
        ("wood at 12 %", "wood-not-dry"),
        ("wood at 9 %\nhave 1 board of oak, 1000 x 320 x 25, rough, at 14 %", None),  # it waited
        ("stands in a damp place\nwood at 14 %", None),
    ],
)
def test_wood_far_from_where_it_will_be(line: str, code: str | None) -> None:
    text = f"{LID.format(wide=300, finish='')}{line}\n"
    found = told(text, "wood-not-dry", "wood-too-dry")
    assert [each.code for each in found] == ([code] if code else [])


def test_what_it_will_shrink_by_is_worked_out_of_the_widest_board() -> None:
    # Red oak .00369 x 300 x 3.5 %, from 12 to 8.5: 3.87.
    text = f"{LID.format(wide=300, finish='')}wood at 12 %\n"
    (found,) = told(text, "wood-not-dry")
    assert found.figures["change"] == 300 * Fraction("0.00369") * Fraction("3.5")
    assert "lid, 300 wide, shrinks by 4 mm" in found.message


LAYERS = """piece Bench top
units mm
overall 700 wide, {wide} deep, 60 high
timber beech
1 plank, flat, across, {wide} x 30, up 30
1 layer, flat, across, {wide} x 30, under plank: glue{words}
glue up top: plank, layer
"""


@pytest.mark.parametrize(
    ("wide", "words", "fires"),
    [
        (300, "", False),
        (300, ", of teak", True),  # .00431 and .00186: over .001 (TRADE G8)
        (75, ", of teak", False),
        (300, ", quartersawn", True),  # .00431 and .00190
        (300, ", of red oak", False),  # .00431 and .00369
    ],
)
def test_layers_that_move_unlike_one_another(wide: int, words: str, *, fires: bool) -> None:
    found = told(LAYERS.format(wide=wide, words=words), "woods-unlike")
    assert len(found) == fires
    for each in found:
        assert each.severity is Severity.WARNING


LIPPED = """piece Table board
units mm
overall {all} wide, 400 deep, 22 high
timber birch ply
1 board, flat, across, 600 x 400 x 22
1 lip, front to back, 22 x {thick}, on the left face of board: glue, of ash
glue up whole: board, lip
"""


@pytest.mark.parametrize(("thick", "fires"), [(12, False), (13, True)])
def test_a_thick_lipping_across_the_end_of_a_sheet(thick: int, *, fires: bool) -> None:
    # TRADE G8: "plywood lipping of solid > 12 thick across ends (W)".
    found = told(LIPPED.format(all=600 + thick, thick=thick), "lipping-thick")
    assert len(found) == fires


def test_a_runner_glued_across_a_side_fails_sooner_than_a_board() -> None:
    # TRADE G8: "solid side with glued cross-grain runner/cleat > 100 (E)".
    text = """piece Chest side
units mm
overall {wide} wide, 60 deep, 700 high
timber oak
1 side, upright, facing front, {wide} x 20, at back
1 {name}, across, 30 x 20, on the front of side: glue, 200 from bottom
glue up whole: side, {name}
"""
    for wide, name, severity in (
        (90, "cleat", Severity.WARNING),
        (101, "cleat", Severity.ERROR),
        (101, "rail", Severity.WARNING),
    ):
        found = told(text.format(wide=wide, name=name), "glued-across-grain")
        assert [each.severity for each in found] == [severity], (wide, name)


def test_a_sound_piece_is_quiet() -> None:
    assert codes(checked(changed(DOOR.format(wide=360, groove=9), ("beech", "ash")))) == []


SLAB = """piece Wash stand top
units mm
overall 600 wide, {wide} deep, 42 high
timber oak
1 top, flat, across, 600 x {wide} x 22, up 0
bought 1 {thing}, 600 wide, {wide} deep, 20 thick, onto top{fixed}
"""


@pytest.mark.parametrize(
    ("wide", "thing", "fixed", "severity"),
    [
        (400, "marble slab", ": glue", Severity.ERROR),
        (100, "steel plate", ": screws", Severity.WARNING),
        (400, "marble slab", "", None),
        (400, "marble slab", ": glue the middle 60", None),
        (400, "cushion", ": glue", None),
        (70, "brass strip", ": screws", None),
    ],
)
def test_stone_and_metal_do_not_move_with_wood(
    wide: int, thing: str, fixed: str, severity: Severity | None
) -> None:
    # TRADE G8: "stone, glass, metal fixed rigid to solid wood across (E)".
    found = [
        each
        for each in checked(SLAB.format(wide=wide, thing=thing, fixed=fixed)).findings
        if each.code == "rigid-across-grain"
    ]
    assert [each.severity for each in found] == ([severity] if severity else [])
