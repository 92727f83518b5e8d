"""What the steps say of glue that goes on parts of a joint, of dry joints, and of tape."""

from tests.pieces.reading import model_of
from tests.unit.operations.worked import operation, shipped_shop
from tests.unit.placing.test_glue_patches import CASE, SLATS

from dryfit.operations import work_list
from dryfit.plan.operation import Operation, WorkList

FIRST = "finish slats with paint, 2 coats, 4 h apart\nfinish slats before glue up board\n"


def planned(text: str) -> WorkList:
    work, findings = work_list(model_of(text), shipped_shop())
    assert work is not None, findings
    return work


def said(row: Operation) -> str:
    return " ".join("".join(str(word) for word in detail) for detail in row.details)


def test_the_glue_up_says_which_part_of_a_joint_gets_glue() -> None:
    row = operation(planned(SLATS.format(glue="glue the middle 60")), "board / glue up")
    assert "8 glued butts of slat on bearer: only on the middle 60" in said(row)


def test_the_front_of_a_housing_is_named_by_its_side() -> None:
    row = operation(planned(CASE.format(glue=", glue front 75")), "case / glue up")
    assert "only on the front 75" in said(row)


def test_tape_is_a_millimetre_narrower_than_each_patch() -> None:
    # TRADE K6: 24 wide on bearers of 25, along the 60 that get glue.
    row = operation(planned(SLATS.format(glue="glue the middle 60") + FIRST), "slat / coat 1")
    assert said(row) == (
        "8 strips of tape where the bearer goes, 24 wide, 60 long "
        "Tape off before the last coat is hard"
    )


def test_only_the_first_coat_is_taped_for() -> None:
    row = operation(planned(SLATS.format(glue="glue the middle 60") + FIRST), "slat / coat 2")
    assert row.details == ()


def test_a_dry_joint_between_glued_ones_is_told_at_the_glue_up() -> None:
    text = CASE.format(glue="").replace(
        "glue up case: sides, shelves",
        "1 middle shelf, across, flat, 250 x 18, up 200, into sides: housing 6, dry\n"
        "glue up case: sides, shelves, middle shelf",
    )
    row = operation(planned(text), "case / glue up")
    assert "No glue between middle shelf and side: they stay dry" in said(row)


def test_what_is_kept_dry_is_fitted_without_glue() -> None:
    text = CASE.format(glue=", knock-down").replace("glue up case: sides, shelves\n", "")
    row = operation(planned(text), "shelf / fit")
    assert row.sentence == "Put 2 shelves in place dry: no glue, so that it comes apart again"


def test_screws_in_a_glued_joint_are_driven_in_the_glue_up_and_bought() -> None:
    text = SLATS.format(glue="screws, glue the middle 60")
    row = operation(planned(text), "board / glue up")
    assert "screws between slat and bearer are driven while the glue is wet" in said(row)
    assert row.glue_up is not None
    assert row.glue_up.clamps == ()
    assert any("wood screw" in each.item for each in model_of(text).hardware)
