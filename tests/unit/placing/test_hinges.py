"""Doors and lids on hinges worked by hand (TRADE B23): both leaves let in equally."""

from fractions import Fraction
from pathlib import Path

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, model_of_piece, text_of
from tests.unit.operations.worked import listed, rule
from tests.unit.rehearsal.played import Played, played

from dryfit.joinery.hinges import Hinge, hinge_screw, usual_count
from dryfit.operations.milling.plane_to_fit import WHY_PLANED_FIRST
from dryfit.placing.model import Model
from dryfit.plan.operation import Operation

SHOPS = Path(__file__).parents[2] / "shops"
CASE = text_of("hinged_case")

FRAMED = changed(
    CASE,
    (
        "1 door, upright, facing front, 18 thick, glued from 3, in bay",
        "1 door, as framed door, 20 deep, in bay",
    ),
)

CHEST = """piece Chest
units mm, to nearest 1
overall 500 wide, 300 deep, 320 high
timber birch ply
2 ends, upright, facing side, 300 x 20, at left and right, up 0
1 front, across, on edge, 300 x 20, housing 5 into ends, at front, up 0
1 back, across, on edge, 300 x 20, housing 5 into ends, at back, up 0
1 lid, flat, 500 x 300 x 20
lid onto ends
lid to back: 2 hinges 50 long
glue up box: ends, front, back
finish oil, 2 coats
"""


@pytest.fixture(scope="module")
def case() -> Model:
    return model_of(CASE)


def leaves(model: Model, part: str) -> list[tuple[Fraction, ...]]:
    """Middle along, length, and width and depth of each recess in a part."""
    rows: list[tuple[Fraction, ...]] = []
    for each in model.part(part).features:
        if each.role == "hinge recess":
            (start, end), (near, far) = each.along, each.across
            rows.append(((start + end) / 2, end - start, far - near, each.depth))
    return rows


def test_both_leaves_are_let_in_by_half_of_what_the_hinge_is_over_the_gap(case: Model) -> None:
    # TRADE B23: (5 - 2) / 2 = 1.5; a leaf of 15 less half of the barrel of 5 is 12.5 wide.
    for part in ("door", "side"):
        assert {row[1:] for row in leaves(case, part)} == {
            (Fraction(50), Fraction(25, 2), Fraction(3, 2))
        }
    assert Hinge(Fraction(50), Fraction(15), Fraction(5)).depth(Fraction(2)) == Fraction(3, 2)


def test_they_stand_a_sixth_from_the_ends_and_70_at_most(case: Model) -> None:
    # The door is 600 - 2 x 20 - 2 x 2 = 556 high: a sixth would be 93, so 70.
    assert [row[0] for row in leaves(case, "door")] == [*mm(70, 486)]
    # The door stands 22 above the floor.
    assert [row[0] for row in leaves(case, "side")] == [*mm(92, 508)]
    assert usual_count(Fraction(1300)) == 3


def test_the_barrel_stands_at_the_front(case: Model) -> None:
    door = case.part("door")
    for part in (door, case.part("side")):
        copy = next(each for each in part.copies if "right" not in each.name)
        recesses = [
            feature.box(copy.box, copy.frame)
            for feature in part.features
            if feature.role == "hinge recess" and copy.hand in feature.hands
        ]
        assert [recess.low[1] for recess in recesses] == [0, 0]


def test_hinges_are_bought_and_what_is_usual_is_listed(case: Model) -> None:
    rows = [(each.item, each.size, each.count) for each in case.hardware if "hinge" in each.item]
    assert rows == [("butt hinge", "50 long", 2)]
    # H20: 16 in a side of 20, which is 3 less than it at least.
    assert case.hardware[0].purpose == "door on sides, with screws 3 x 16"
    (told,) = (each for each in case.assumptions if "hinges" in each.text)
    assert told.instead == "door to left side: 2 hinges 15 wide 5 thick, 50 long"
    again = model_of(changed(CASE, ("door to left side: 2 hinges, 50 long", told.instead)))
    assert leaves(again, "door") == leaves(case, "door")
    bought = changed(CASE, ("finish oil", "bought 2 hinges, for door\nfinish oil"))
    assert len([each for each in model_of(bought).hardware if "hinge" in each.item]) == 1


def test_the_stile_of_a_framed_door_takes_them() -> None:
    """Said of the door: of its parts only the stile beside the carrier is met (M13)."""
    model = model_of(FRAMED)
    assert len(leaves(model, "door > stile")) == 2
    assert not leaves(model, "door > upper rail")
    assert played(FRAMED).said() == ""


def test_a_lid_is_hinged_to_the_back() -> None:
    # It lies on the back, with no gap: half of 5.
    model = model_of(CHEST)
    lid = [each for each in model.part("lid").features if each.role == "hinge recess"]
    assert {each.depth for each in lid} == {Fraction(5, 2)}
    assert {each.depth for each in model.part("back").features} >= {Fraction(5, 2)}
    assert played(CHEST).said() == ""


@pytest.mark.parametrize(
    "words", ["2 hinges, 2 thick", "2 hinges, 15 thick", "9 hinges", "2 hinges, 40 wide"]
)
def test_what_does_not_fit_is_told(words: str) -> None:
    text = changed(CASE, ("2 hinges, 50 long", words))
    assert "hinges-do-not-fit" in codes(checked(text))


def test_a_screw_of_a_hinge_stays_inside() -> None:
    # H20: 3 mm shorter than the wood; sold 10, 12 and 16 long (common practice).
    assert [hinge_screw(Fraction(wood)) for wood in (19, 18, 15, 13)] == [*mm(16, 12, 12, 10)]
    assert hinge_screw(Fraction(12)) is None
    thin = changed(CHEST, ("500 x 300 x 20\nlid onto", "500 x 300 x 12\nlid onto"), ("320", "312"))
    found = [each for each in checked(thin).findings if each.code == "hinges-do-not-fit"]
    assert [each.rule for each in found] == ["H20"]


def test_a_door_that_is_nowhere_near_is_told() -> None:
    text = changed(CASE, ("in bay, gap 2,", "in bay, gap 30,"))
    assert "joint-without-contact" in codes(checked(text))


@pytest.mark.parametrize("word", ["to", "hung on", "hinged to"])
def test_ways_to_say_it(word: str) -> None:
    model = model_of(changed(CASE, ("door to left", f"door {word} left")))
    assert [joint.kind for joint in model.joints if "door" in joint.guest] == ["hinges"]


@pytest.fixture(scope="module")
def plan() -> Played:
    return played(CASE)


def test_recesses_come_after_the_glue_and_before_the_finish(plan: Played) -> None:
    assert plan.said() == ""
    rows = [op for step in plan.plan.steps for op in step.operations]
    let_in = [at for at, op in enumerate(rows) if "hinge recesses" in op.id]
    assert len(let_in) == 2
    assert min(let_in) > max(at for at, op in enumerate(rows) if op.kind == "glue up")
    assert max(let_in) < min(at for at, op in enumerate(rows) if op.kind == "coat")
    (fit,) = (op for op in rows if op.kind == "fit")
    assert "Hang the door: screw the 2 hinges" in fit.sentence
    assert rows.index(fit) > max(at for at, op in enumerate(rows) if op.kind == "coat")


@pytest.mark.parametrize("part", ["door", "side"])
def test_a_leaf_without_its_recess_is_told(plan: Played, part: str) -> None:
    assert "no recesses that face one another" in plan.idle(f"{part} / hinge").said()


def rows_of(made: Played) -> dict[str, Operation]:
    return {op.id: op for step in made.plan.steps for op in step.operations}


def test_a_door_stands_to_its_gaps_before_leaves_are_marked(plan: Played) -> None:
    # TRADE B26: door fitted to gap, recess, finish, hang.
    order = list(rows_of(plan))
    for part in ("door", "side"):
        assert order.index("door / plane to fit") < order.index(f"{part} / hinge recesses")
    marked = rule(listed(model_of_piece("hinged_case"))[0], "door / plane to fit", "door / lay out")
    assert marked.reason == WHY_PLANED_FIRST


def test_a_framed_door_is_fitted_when_it_is_glued() -> None:
    rows = rows_of(played(FRAMED))
    order = list(rows)
    fit = rows["door > door / fit to gap"]
    assert fit.details == (("Beside the side the gap is ", Fraction(2)),)
    # 5 min and 3 a metre round a door of 356 x 556: 5 + 5.5.
    assert fit.tenths == 105
    for part in ("door > stile", "side"):
        assert order.index(fit.id) < order.index(f"{part} / hinge recesses")
    for glued in ("case", "door > door"):
        assert order.index(f"{glued} / glue up") < order.index(fit.id)


def test_a_lid_that_lies_on_its_carrier_has_no_gap() -> None:
    assert not any("fit to gap" in name for name in rows_of(played(CHEST)))


def test_recesses_are_routed_at_one_setting_or_chiselled(plan: Played) -> None:
    # TRADE B26: 5 for the router, then 6 a leaf; 12 a leaf with a chisel.
    rows = rows_of(plan)
    assert sorted(rows[f"{part} / hinge recesses"].tenths for part in ("door", "side")) == [
        120,
        170,
    ]
    assert "hand-router" in rows["door / hinge recesses"].cautions
    bench = rows_of(played(CASE, SHOPS / "hand_tools.toml"))
    for part in ("door", "side"):
        row = bench[f"{part} / hinge recesses"]
        assert row.tenths == 240
        assert "hand-router" not in row.cautions
        assert not any("router" in str(words) for line in row.details for words in line)


FRAMED_CHEST = """piece Framed chest
units mm
timber pine
overall 600 wide, 400 deep, 400 high
4 posts, upright, 45 x 45, at corners
2 long rails, across, on edge, 60 x 25, tenon 20 long into posts, set back 0
2 short rails, front to back, on edge, 60 x 25, tenon 20 long into posts, set back 0
1 lid, flat, 20 thick, onto posts and long rails and short rails, from 3 staves
lid to back long rail: 2 hinges
glue up front frame: front posts, front long rail
glue up back frame: back posts, back long rail
glue up body: front frame, back frame, short rails
"""


def test_a_leaf_waits_for_the_frame_of_its_own_copy_and_not_for_that_of_the_other() -> None:
    model = model_of(FRAMED_CHEST)
    waits = {f.after for f in model.part("long rail").features if f.role == "hinge recess"}
    assert waits == {"back frame"}
    assert "waits-for-others" not in codes(checked(FRAMED_CHEST))
