"""Backs in rabbets worked by hand with TRADE B8 and B24: one of plywood, one of boards."""

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, model_of_piece, text_of
from tests.unit.rehearsal.played import Played, played

from dryfit.placing.model import Model
from dryfit.rehearsal.fault import Reason

CASE = text_of("spice_case")
BOARDS = text_of("tool_cupboard")


@pytest.fixture(scope="module")
def case() -> Model:
    return model_of(CASE)


@pytest.fixture(scope="module")
def boards() -> Model:
    return model_of(BOARDS)


def rabbets(model: Model, part: str) -> list[tuple[int, ...]]:
    """Along, across and depth of the rabbets for the back in a part, in whole mm."""
    return [
        tuple(int(x) for x in (*each.along, *each.across, each.depth))
        for each in model.part(part).features
        if each.role == "rabbet" and each.fit == "free"
    ]


def test_the_back_is_the_opening_between_the_rabbets_less_one(case: Model) -> None:
    # TRADE B8: 400 - 2 x 18 = 364 inside + 2 x 6 - 1 = 375; 600 - 36 + 12 - 1 = 575.
    back = case.part("back")
    assert (back.length, back.width) == mm(575, 375)
    box = case.copy("back").box
    assert (box.low[1], box.high[1]) == mm(154, 160)


def test_the_rabbets_are_as_deep_as_the_housings_and_as_wide_as_the_back(case: Model) -> None:
    # E lies behind, where the fence stands; the housings take the corners, so all run through.
    assert rabbets(case, "side") == [(0, 600, 0, 6, 6)]
    assert rabbets(case, "top") == [(0, 376, 0, 6, 6)]
    told = {each.text: each.instead for each in case.assumptions}
    line = told["the rabbets for the back are 6 deep, as the housings are"]
    assert line is not None
    assert line.endswith("rabbet 6 deep")


def test_without_housings_they_are_half_as_deep_as_the_wood_is_thick() -> None:
    bare = changed(BOARDS, ("rabbet 10, 1 between", "rabbet, 1 between"))
    assert "the rabbets for the back boards are 11 deep" in {
        each.text for each in model_of(bare).assumptions
    }


def test_further_in_than_flush_the_rabbet_is_as_much_wider(case: Model) -> None:
    deeper = model_of(changed(CASE, ("bottom, rabbet", "bottom, rabbet 6, 3 from back")))
    assert rabbets(deeper, "side") == [(0, 600, 0, 9, 6)]
    assert rabbets(case, "side") == [(0, 600, 0, 6, 6)]


def test_where_the_corner_would_show_the_rabbet_stops(boards: Model) -> None:
    # 618 is the lower face of the top: 10 beyond it, and 12 short of the end.  The rabbets of the
    # corners are 22 wide and 14 deep, so that the one for the back runs into them.
    assert rabbets(boards, "side") == [(0, 640, 0, 12, 10)]
    dowelled = changed(BOARDS, ("rabbet 14 into sides, flush top", "dowels into sides, flush top"))
    assert rabbets(model_of(dowelled), "side") == [(0, 628, 0, 12, 10)]


def test_boards_share_the_width_with_a_gap_between_them(boards: Model) -> None:
    # 520 - 44 = 476 + 20 - 1 = 495, less 5 gaps of 1, by 6.
    board = boards.part("back board")
    assert (board.length, board.width) == (Fraction(640 - 44 + 20 - 1), Fraction(490, 6))
    first, second = (boards.copy(f"back board {number}").box for number in (1, 2))
    assert second.low[0] - first.high[0] == 1
    # One rabbet in the top for all of them, and one screw at each end of each.
    assert len(rabbets(boards, "top")) == 1
    (screws,) = {
        sum(each.count for each in boards.hardware if each.item == "wood screw"),
    }
    assert screws == 12


def test_one_millimetre_is_the_usual_gap_and_is_listed() -> None:
    model = model_of(changed(BOARDS, (", 1 between", "")))
    told = {each.text: each.instead for each in model.assumptions}
    line = told["the back boards stand 1 apart"]
    assert line is not None
    assert line.endswith(", screws, 0 from back, 1 between")


def test_boards_of_a_back_may_be_tongued_into_one_another() -> None:
    # 495 and 5 times the 8 of a tongue less the gap of 1, by 6.
    model = model_of(changed(BOARDS, (", 1 between, screws", ", tongue and groove, gap 1")))
    assert model.part("back board").width == Fraction(495 + 5 * 7, 6)
    kinds = [each.kind for each in model.joints if each.guest.startswith("back board")]
    assert kinds.count("tongue and groove") == 5


def test_ship_lapped_boards_lie_half_over_half() -> None:
    # 420 - 40 + 20 - 1 = 399, and 3 times a lap of 9 less its gap of 1, by 4.
    model = model_of_piece("lapped_back")
    board = model.part("back board")
    assert board.width == Fraction(399 + 3 * 8, 4)
    laps = {
        (each.surface, each.depth, *each.across) for each in board.features if each.fit == "slip"
    }
    assert {(surface, depth) for surface, depth, *_ in laps} == {
        ("F", Fraction(6)),
        ("B", Fraction(6)),
    }
    assert {far - near for _, _, near, far in laps} == {9}
    first, second = (model.copy(f"back board {number}").box for number in (1, 2))
    assert first.high[0] - second.low[0] == 8
    played_rack = played(text_of("lapped_back"))
    assert played_rack.said() == ""
    assert Reason.FIT in played_rack.idle("back board / rabbet for back board").reasons()


def test_the_usual_ship_lap_is_listed_and_a_long_one_told() -> None:
    rack = text_of("lapped_back")
    told = {each.text for each in model_of(changed(rack, ("lap 9", "lap"))).assumptions}
    assert "the ship laps of back board are 8 long" in told
    assert "tongue-does-not-fit" in codes(checked(changed(rack, ("lap 9", "lap 60"))))


def test_a_back_of_solid_wood_is_pinned_at_its_ends_only() -> None:
    solid = changed(CASE, ("6 thick, of birch ply", "8 thick, glued from 4"))
    model = model_of(solid)
    (pins,) = (each for each in model.hardware if each.item == "panel pin")
    assert (pins.size, pins.count) == ("25 long", 2)
    glued = changed(solid, ("bottom, shelf", "bottom, shelf, back"))
    assert "rabbet-does-not-fit" in codes(checked(glued))


def test_plywood_named_in_the_glue_up_is_glued_in() -> None:
    glued = model_of(changed(CASE, ("bottom, shelf", "bottom, shelf, back")))
    assert {each.glued for each in glued.joints if each.kind == "back rabbet"} == {True}
    assert glued.fittings == ()
    assert "panel pin" not in {each.item for each in glued.hardware}


def test_what_leaves_no_lip_is_told() -> None:
    assert "rabbet-does-not-fit" in codes(
        checked(changed(CASE, ("bottom, rabbet", "bottom, rabbet 18")))
    )
    narrow = changed(CASE, ("bottom, rabbet", "bottom, rabbet 6, screws"))
    assert "screw-in-joint" in codes(checked(narrow))


def test_pins_are_three_times_as_long_as_the_back_is_thick(case: Model) -> None:
    # 600 and 400 over 150: 4 a side, 3 above and below (common practice).
    (pins,) = (each for each in case.hardware if each.item == "panel pin")
    assert (pins.size, pins.count) == ("20 long", 14)


@pytest.fixture(scope="module", params=[CASE, BOARDS], ids=["plywood", "boards"])
def plan(request: pytest.FixtureRequest) -> Played:
    return played(request.param)


def test_the_plan_passes_its_rehearsal(plan: Played) -> None:
    assert plan.said() == ""


@pytest.mark.parametrize("part", ["side", "top"])
def test_a_rabbet_that_is_not_cut_is_found(plan: Played, part: str) -> None:
    assert Reason.FIT in plan.idle(f"{part} / rabbet for back").reasons()


def test_a_back_that_is_left_out_is_found(plan: Played) -> None:
    assert Reason.COUNT in plan.without("back / fit", "back board / fit").reasons()


def test_the_back_goes_in_after_the_glue_and_the_finish(plan: Played) -> None:
    names = [op.id for step in plan.plan.steps for op in step.operations]
    (fit,) = (name for name in names if name in {"back / fit", "back board / fit"})
    assert names.index(fit) > max(at for at, name in enumerate(names) if "coat" in name)


def test_a_back_called_pinned_has_pins_all_round() -> None:
    # As the plain line: a pin at the middle alone would let the back drop out of its rabbets.
    plain, pinned = (
        model_of(CASE),
        model_of(changed(CASE, ("and bottom, rabbet", "and bottom, rabbet, pinned"))),
    )
    assert pinned.hardware == plain.hardware
    assert [each.kind for each in pinned.fittings] == [each.kind for each in plain.fittings]
    assert "pins" in {each.kind for each in pinned.fittings}
    words = "and bottom, rabbet, pinned at the middle"
    middle = model_of(changed(CASE, ("and bottom, rabbet", words)))
    assert "pinned" in {each.kind for each in middle.fittings}
