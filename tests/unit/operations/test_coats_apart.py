"""A wish may need a coat before a glue-up: then the two are not coated in one visit."""

from tests.pieces.reading import model_of
from tests.unit.operations.worked import shipped_shop

from dryfit.operations import work_list
from dryfit.plan.operation import Operation
from dryfit.planning.make_plan import make_plan

TRAYS = """\
piece Trays
overall 600 wide, 400 deep, 120 high
timber oak
2 long bars, across, flat, 50 x 20, at front and back, up 0
2 short bars, front to back, flat, 50 x 20, at left and right, up 0
short bars crossing long bars: half lap
2 upper bars, across, flat, 50 x 20, at front and back, up 100
2 cross bars, front to back, flat, 50 x 20, at left and right, up 100
cross bars crossing upper bars: half lap
glue up lower frame: long bars, short bars, cure 1 h
glue up upper frame: upper bars, cross bars, cure 1 h
finish shellac, 3 coats, 2 h apart
"""
WISH = "finish lower frame before glue up upper frame\n"


def first_coats(text: str) -> tuple[Operation, Operation]:
    work, _ = work_list(model_of(text), shipped_shop())
    assert work is not None
    by_id = {operation.id: operation for operation in work.operations}
    return by_id["lower frame / coat 1"], by_id["upper frame / coat 1"]


def test_without_a_wish_both_get_their_coats_in_one_visit() -> None:
    lower, upper = first_coats(TRAYS)
    assert lower.together == upper.together == "coat 1"
    # A wish that one visit can keep leaves it as it is.
    lower, upper = first_coats(f"{TRAYS}sand lower frame before sand upper frame\n")
    assert lower.together == upper.together == "coat 1"


def test_a_wish_that_needs_one_dry_before_the_other_is_glued_wins_over_the_visit() -> None:
    alone = first_coats(TRAYS)
    lower, upper = first_coats(TRAYS + WISH)
    assert lower.together != upper.together
    # Setting out and cleaning are then done for each by itself, and are no longer shared.
    assert lower.tenths > alone[0].tenths
    assert upper.tenths > alone[1].tenths


def test_the_plan_keeps_the_wish() -> None:
    model = model_of(TRAYS + WISH)
    work, _ = work_list(model, shipped_shop())
    assert work is not None
    plan, findings = make_plan(model, shipped_shop(), work, effort=1)
    assert plan is not None, findings
    coat, glued = map(plan.step_of, ("lower frame / coat 3", "upper frame / glue up"))
    assert coat.number < glued.number
