"""What is bought: ordered by measure, fitted in words of its kind, in before what covers it."""

import pytest
from tests.pieces.reading import changed, model_of
from tests.unit.operations.worked import listed, operation

from dryfit.operations.fitting.fitting_bought import WHY_COVERED, WHY_ORDERED
from dryfit.plan.operation import Rule

MIRROR = """\
piece Mirror
units mm
overall 420 wide, 34 deep, 700 high
timber walnut
2 stiles, upright, facing front, 60 x 22, at left and right, 0 from front
2 rails, across, on edge, 70 x 22, at bottom and top, 0 from front
rails crossing stiles: half lap, stiles show
rabbet in frame: back inner edges, 10 wide, 8 deep, after glue up frame
2 battens, across, on edge, 40 x 12, on the back of stiles, lapping 25, screws, spread up and down
light = opening between stiles and rails
bought 1 mirror, 4 thick, in light, order after measured
bought 2 hangers, for stiles
glue up frame: stiles, rails
finish hard wax oil, 2 coats
"""


def test_glass_goes_in_before_the_battens_that_hold_it() -> None:
    work, _ = listed(model_of(MIRROR))
    assert Rule("mirror / fit", "batten / fit", WHY_COVERED) in work.rules
    covered = [rule.after for rule in work.rules if rule.reason == WHY_COVERED]
    assert covered == ["batten / fit"]


def test_what_is_ordered_by_measure_is_measured_when_the_frame_is_made() -> None:
    work, _ = listed(model_of(MIRROR))
    row = operation(work, "mirror / measure")
    assert row.sentence == (
        "Measure the place of the mirror in the light, and order by that: "
        "317 wide x 577 high x 4 thick is what the plan has"
    )
    before = {rule.before for rule in work.rules if rule.after == row.id}
    assert "frame / ease edges" in before
    assert Rule(row.id, "mirror / fit", WHY_ORDERED) in work.rules
    early, _ = listed(model_of(changed(MIRROR, ("order after measured", "order first"))))
    assert not [each for each in early.operations if each.kind == "measure"]


@pytest.mark.parametrize(
    ("line", "sentence", "check"),
    [
        ("2 shelf pins, for rails", "Put the shelf pins into their holes, for the rails", "level"),
        ("4 hinges, for stiles", "Fit the hinges to the stiles", "turns freely"),
        ("1 label", "Fit the label", "sits true and tight"),
    ],
)
def test_things_are_fitted_in_words_of_their_kind(line: str, sentence: str, check: str) -> None:
    work, _ = listed(model_of(changed(MIRROR, ("2 hangers, for stiles", line))))
    (row,) = [
        each
        for each in work.operations
        if each.kind == "fit" and each.part not in {"mirror", "batten"}
    ]
    assert row.sentence == sentence
    assert check in (row.check or "")
