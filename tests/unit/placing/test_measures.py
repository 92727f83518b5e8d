"""A case whose doors and shelf are cut to what it measures: formulae, order, and figures taken."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, text_of
from tests.unit.rehearsal.played import Played, played

from dryfit.piece.declared import Measured
from dryfit.placing.model import Model
from dryfit.placing.place import place
from dryfit.plan.operation import Operation
from dryfit.plan.setting import Setting
from dryfit.rehearsal.fault import Reason

CASE = text_of("measured_case")


@pytest.fixture(scope="module")
def case() -> Model:
    return model_of(CASE)


@pytest.fixture(scope="module")
def plan() -> Played:
    return played(CASE)


def formulas(model: Model, part: str) -> dict[str, str]:
    return {each.dimension: each.formula for each in model.part(part).measures}


def operation(plan: Played, name: str) -> Operation:
    return next(op for step in plan.plan.steps for op in step.operations if op.id == name)


def setting(plan: Played, name: str, axis: str) -> Setting:
    return next(each for each in operation(plan, name).settings if each.axis == axis)


def test_a_loose_shelf_is_the_measured_width_less_two(case: Model) -> None:
    # 600 less two sides of 18 is 564; a loose shelf is 2 shorter (TRADE C5.5).
    assert case.part("shelf").length == 562
    assert formulas(case, "shelf") == {"length": "bay width - 2 mm"}


def test_a_door_hands_its_formula_on_to_its_parts(case: Model) -> None:
    # Two doors share 564 less 2 + 3 + 2: 278.5 each, 460 high.  A rail stands between stiles of
    # 50 with tenons of 25: 278.5 - 100 + 50 = 228.5 = (564 - 107) / 2.
    assert case.part("door > stile").length == 460
    assert case.part("door > rail").length == Fraction(457, 2)
    assert formulas(case, "door > stile") == {"length": "bay height - 4 mm"}
    assert formulas(case, "door > rail") == {"length": "(bay width - 107 mm) / 2"}
    assert set(formulas(case, "door > panel")) == {"length", "width"}
    assert formulas(case, "side") == formulas(case, "top") == {}


def test_a_millimetre_more_in_the_opening_moves_each_size_by_its_share() -> None:
    # Placed anew with the opening a millimetre larger, every size grows by what its chain says.
    found = checked(CASE)
    assert found.model is not None
    assert found.shop is not None
    for dimension in ("width", "height"):
        size = {"width": Fraction(565), "height": Fraction(465)}[dimension]
        line = found.declared.openings[0].span
        taken = Measured("opening", f"bay.{dimension}", None, None, (size,), size, line)
        larger, _ = place(replace(found.declared, measured=(taken,)), found.shop)
        assert larger is not None
        for part in found.model.parts:
            other = larger.part(part.name)
            for word, before, after in (
                ("length", part.length, other.length),
                ("width", part.width, other.width),
            ):
                measure = part.waits_for(word)
                moves = measure is not None and measure.name == f"bay {dimension}"
                assert after - before == (measure.share if measure and moves else 0)


def test_the_case_has_cured_before_it_is_measured(plan: Played) -> None:
    # 12 h at least (TRADE C5.3); it is measured at three heights for its width.
    steps = {op.id: step for step in plan.plan.steps for op in step.operations}
    waits = {wait.step: wait.lag for wait in steps["bay width / measure"].waits_for}
    assert waits[steps["case / glue up"].number] == 12 * 60 * 10
    assert "three heights" in (operation(plan, "bay width / measure").check or "")
    assert "three widths" in (operation(plan, "bay height / measure").check or "")


def test_what_moves_with_the_opening_is_set_by_a_formula(plan: Played) -> None:
    assert setting(plan, "shelf / length", "stop").formula == "bay width - 2 mm"
    assert setting(plan, "door > panel / width", "fence").formula == "(bay width - 179 mm) / 2"
    # A mortise at the far end is a fixed way from that end: 28 wide and 50 - 28 - 9 = 13 in.
    far = setting(plan, "door > stile / mortise for door > rail / 2", "stop")
    assert far.measure == "bay height"
    assert far.formula is not None
    assert far.formula.startswith("bay height - ")
    near = setting(plan, "door > stile / mortise for door > rail / 1", "stop")
    assert near.measure is None


def test_what_hangs_on_no_length_may_be_cut_before_it() -> None:
    # A groove from end to end hangs on no length: it is cut on the overlong blank (TRADE C5.3).
    made = played(f"{CASE}groove in shelf: bottom, 6 wide, 5 deep, 20 from front, through\n")
    plan = made.plan
    operations = [op.id for step in plan.steps for op in step.operations]
    groove = next(name for name in operations if name.startswith("shelf / groove"))
    waits = {wait.operation for wait in plan.step_of(groove).waits_for}
    assert not waits & {"bay width / measure", "shelf / length"}
    assert operations.index("bay width / measure") < operations.index("shelf / length")
    assert operations.index(groove) < operations.index("shelf / length")


@pytest.mark.parametrize(
    ("operation", "reason"),
    [("shelf / length", Reason.WAIT), ("door > panel / width", Reason.WAIT)],
)
def test_a_size_off_the_drawing_is_refused(plan: Played, operation: str, reason: Reason) -> None:
    def nominal(op: Operation) -> Operation:
        if op.id != operation:
            return op
        rows = tuple(replace(each, measure=None, formula=None) for each in op.settings)
        return replace(op, settings=rows)

    assert reason in plan.with_operations(nominal).reasons()


def test_measured_figures_are_cut_into_the_plan() -> None:
    # The smallest of three counts: 564.6 - 2 = 562.6, (564.6 - 107) / 2 = 228.8; 470 - 4 = 466.
    text = f"{CASE}measured bay width = 565, 564.6, 564.8\nmeasured bay height = 470\n"
    model = model_of(text)
    assert model.part("shelf").length == Fraction(2813, 5)
    assert model.part("door > rail").length == Fraction(1144, 5)
    assert model.part("door > stile").length == 466
    made = played(text)
    assert made.faults() == ()
    stop = setting(made, "shelf / length", "stop")
    assert (stop.value, stop.taken, stop.waits) == (Fraction(2813, 5), True, None)
    point = operation(made, "bay width / measure").measure
    assert point is not None
    assert (point.nominal, point.taken) == (mm(564)[0], Fraction(2823, 5))


def test_a_narrower_opening_makes_narrower_doors() -> None:
    text = f"{CASE}measured bay width = 562\n"
    assert model_of(text).part("door > rail").length == Fraction(455, 2)
    assert played(text).faults() == ()


def test_a_line_that_says_as_drawn_waits_for_nothing() -> None:
    text = changed(CASE, ("30 from front", "30 from front, cut as drawn"))
    assert model_of(text).part("shelf").measures == ()
    told = [each.text for each in model_of(CASE).assumptions if "cut to size when" in each.text]
    assert "the shelf: cut to size when bay width is measured in the glued case" in told
    instead = [each.instead for each in model_of(CASE).assumptions if "the shelf: cut" in each.text]
    assert instead[0] is not None
    assert instead[0].endswith(", cut as drawn")


def test_what_is_glued_in_with_the_case_is_not_measured_for() -> None:
    text = changed(
        CASE,
        (
            "gap 1 across, 230 above the bottom of bay, 30",
            "gap 0 across, 230 above the bottom of bay, 30",
        ),
        ("glue up case: sides, top, bottom", "glue up case: sides, top, bottom, shelf"),
        ("bought 4 shelf pins, 5 dia, for shelf\n", "shelf into sides: dowels\n"),
    )
    assert model_of(text).part("shelf").measures == ()
    assert played(text).said() == ""


def test_a_door_of_boards_is_sawn_to_its_opening_and_planed_to_its_gaps() -> None:
    # TRADE C5.4: solid and inset, so planed.  The wall case: 700 - 36 = 664 wide, 484 high; doors
    # (664 - 7) / 2 = 328.5 wide and 480 high when planed, sawn 332 and 484.
    text = text_of("wall_case")
    door = model_of(text).part("door")
    assert (door.length, door.width) == (Fraction(480), Fraction(657, 2))
    made = played(text)
    assert made.faults() == ()
    assert setting(made, "door / width", "fence").formula == "bay width / 2"
    assert setting(made, "door / width", "fence").value == 332
    assert setting(made, "door / length", "stop").value == 484
    off = [tuple(each) for each in operation(made, "door / plane to fit").details]
    assert ("Off its length, both edges together: about ", Fraction(4)) in off
    numbers = {op.id: step.number for step in made.plan.steps for op in step.operations}
    assert numbers["door / length"] < numbers["door / plane to fit"] < numbers["door / sand 120"]


def test_a_door_that_is_cut_to_measure_is_not_planed() -> None:
    text = changed(
        text_of("wall_case"),
        ("at left and right, glued from 4", "at left and right, glued from 4, cut to measure"),
    )
    made = played(text)
    assert setting(made, "door / width", "fence").formula == "(bay width - 7 mm) / 2"
    assert "door / plane to fit" not in {op.id for s in made.plan.steps for op in s.operations}


def test_a_door_that_nobody_planes_does_not_fit() -> None:
    assert Reason.SIZE in played(text_of("wall_case")).without("plane to fit").reasons()


def test_a_framed_door_is_not_planed_as_a_board_is() -> None:
    text = changed(CASE, ("20 deep, 0 from front", "20 deep, 0 from front, plane to fit"))
    assert "not-planed-to-fit" in codes(checked(text))
