"""An edge shoulder is cut only where a groove and the cheeks leave wood to cut."""

from tests.pieces.reading import changed, model_of, text_of
from tests.unit.operations.worked import listed

from dryfit.placing.model import Model

DOOR = text_of("panel_door")


def shoulders(model: Model) -> list[tuple[str, str]]:
    """End and edge of the rails' shoulders."""
    return [
        (each.id.split(" ")[3], each.surface)
        for each in model.part("rail").features
        if each.role == "tenon shoulder"
    ]


def test_a_groove_as_deep_as_the_shoulder_and_as_wide_as_the_tenon_leaves_nothing_to_cut() -> None:
    # By numbers: rails 60 wide, tenons 6 thick, a groove of 6 x 9 along the inner edge E2, and
    # shoulders of 9.
    assert [surface for _, surface in shoulders(model_of(DOOR))] == ["E", "E"]


def test_a_groove_narrower_than_the_tenon_leaves_a_shoulder() -> None:
    model = model_of(changed(DOOR, ("8 thick, inside", "5 thick, inside")))
    assert {surface for _, surface in shoulders(model)} == {"E", "E2"}


def test_no_step_cuts_where_nothing_is_left() -> None:
    work, _ = listed(model_of(DOOR))
    (step,) = [each for each in work.operations if each.kind == "tenon shoulder"]
    assert {name for row in step.work for name in row.features} == {
        each.id for each in model_of(DOOR).part("rail").features if each.role == "tenon shoulder"
    }
