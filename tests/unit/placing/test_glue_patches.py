"""Where glue goes: patches of a joint, dry joints, pins; what follows from them."""

from fractions import Fraction

import pytest
from tests.pieces.reading import checked, codes, mm, model_of

from dryfit.geometry.box import Box
from dryfit.placing.model import Joint, Model

SLATS = """piece Slats
overall 600 wide, 400 deep, 78 high
timber oak
2 bearers, front to back, on edge, 60 x 25, at left and right
4 slats, across, 80 x 18, spread front to back
slats onto bearers: {glue}
glue up board: bearers, slats
"""

DOOR = """piece Door
overall 400 wide, 22 deep, 600 high
timber oak
2 stiles, upright, 60 x 22, at left and right
2 rails, across, on edge, 60 x 22, at top and bottom, tenon 30 long 8 thick into stiles
1 panel, upright, 10 thick, inside stiles and rails, groove 10{glue}
glue up door: stiles, rails, panel
"""

CASE = """piece Case
overall 600 wide, 250 deep, 500 high
timber ash
2 sides, upright, 250 x 20, at left and right
2 shelves, across, flat, 250 x 18, up 60 and 400, into sides: housing 6{glue}
glue up case: sides, shelves
"""


def slats(glue: str) -> Model:
    return model_of(SLATS.format(glue=glue))


def patches(model: Model, kind: str) -> list[tuple[Fraction, Fraction, Fraction]]:
    """The sizes of all patches of joints of a kind."""
    return [
        (box.extent(0), box.extent(1), box.extent(2))
        for joint in model.joints
        if joint.kind == kind
        for box in joint.patches
    ]


def joints(model: Model, kind: str) -> list[Joint]:
    return [joint for joint in model.joints if joint.kind == kind]


def test_without_a_word_glue_goes_on_all_of_a_joint() -> None:
    for joint in model_of(DOOR.format(glue="")).joints:
        assert joint.patches == ((joint.region,) if joint.glued else ())


def test_the_middle_lies_across_the_slat_on_each_bearer() -> None:
    # 80 wide slats on bearers of 25: 60 in the middle leaves 10 dry at both edges.
    model = slats("glue the middle 60")
    assert patches(model, "glued butt") == [mm(25, 60, 0)] * 8
    first = joints(model, "glued butt")[0]
    assert first.patches[0].low[1] - first.region.low[1] == 10
    assert first.area == 25 * 60


def test_a_middle_without_a_size_is_assumed_and_listed() -> None:
    model = slats("glue the middle")
    assert patches(model, "glued butt") == [mm(25, 60, 0)] * 8
    assert any("60 of glue" in each.text for each in model.assumptions)


def test_glue_at_the_front_of_a_housing() -> None:
    model = model_of(CASE.format(glue=", glue front 75"))
    assert patches(model, "housing") == [mm(6, 75, 18)] * 4
    assert {joint.patches[0].low[1] for joint in joints(model, "housing")} == {Fraction(0)}


def test_the_front_edge_without_a_size_is_75_of_a_housing() -> None:
    model = model_of(CASE.format(glue=", glue the front edge"))
    assert patches(model, "housing") == [mm(6, 75, 18)] * 4


def test_dry_joints_close_no_glue_up_and_hold() -> None:
    found = checked(CASE.format(glue=", dry").replace("glue up case: sides, shelves\n", ""))
    assert codes(found) == []
    assert found.model is not None
    assert all(joint.dry and not joint.glued for joint in found.model.joints)
    assert [fitting.kind for fitting in found.model.fittings] == ["dry"]


@pytest.mark.parametrize("word", ["knock-down", "bolted"])
def test_what_comes_apart_again_is_fitted_after_the_finish(word: str) -> None:
    model = model_of(CASE.format(glue=f", {word}").replace("glue up case: sides, shelves\n", ""))
    assert {joint.fastened for joint in model.joints} == {word}
    assert [fitting.kind for fitting in model.fittings] == [word]


def test_a_pin_stands_at_the_middle_of_each_joint() -> None:
    text = SLATS.format(glue="pinned at the middle").replace("glue up board: bearers, slats\n", "")
    found = checked(text)
    assert codes(found) == []
    assert found.model is not None
    joint = found.model.joints[0]
    assert joint.pinned is not None
    assert _middle(joint.pinned) == _middle(joint.region)
    assert joint.pinned.extent(1) == 3


def _middle(box: Box) -> tuple[Fraction, ...]:
    return tuple((box.low[axis] + box.high[axis]) / 2 for axis in range(3))


def test_the_middle_of_a_panel_is_glued_only_at_the_ends_of_its_grain() -> None:
    model = model_of(DOOR.format(glue=", glue the middle 60"))
    glued = [joint for joint in joints(model, "groove") if joint.glued]
    assert {model.part_of(joint.host).name for joint in glued} == {"rail"}
    assert {joint.patches[0].extent(0) for joint in glued} == {Fraction(60)}


def test_one_edge_of_a_panel_is_one_stile() -> None:
    model = model_of(DOOR.format(glue=", glue one edge"))
    glued = [joint.host for joint in joints(model, "groove") if joint.glued]
    assert glued == ["left stile"]


def test_coats_before_a_glue_up_leave_exactly_the_patches_bare() -> None:
    text = SLATS.format(glue="glue the middle 60")
    text += "finish slats with paint, 2 coats, 4 h apart\nfinish slats before glue up board\n"
    model = model_of(text)
    coating = next(each for each in model.coatings if each.before)
    assert len(coating.masks) == 8


def test_the_middle_of_a_row_of_tenons_is_glued_on_the_tenons_alone() -> None:
    # Three tenons of 30: shoulders and gaps of 77.5; of the middle 60 only the 30 of one is wood.
    model = model_of(
        "piece Top\noverall 900 wide, 400 deep, 22 high\ntimber cherry\n"
        "1 top, flat, across, 400 x 22\n"
        "2 board ends, front to back, flat, 400 x 80 x 22, at left and right\n"
        "top into board ends: 3 tenons 30 long 8 thick 30 wide, glue the middle 60\n"
        "glue up whole: top, board ends\n"
    )
    assert {joint.area for joint in model.joints} == {Fraction(2 * 30 * 30)}
