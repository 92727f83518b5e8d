"""A part finished before a glue-up, as a wish has it: nothing later goes over its surfaces."""

from functools import cache

from tests.pieces.reading import model_of, text_of
from tests.unit.operations.worked import listed, operation

from dryfit.plan.operation import WorkList


@cache
def work(stage: str = "side frames") -> WorkList:
    notes = f"{text_of('step_stool')}\nfinish legs before glue up {stage}\n"
    return listed(model_of(notes))[0]


def worked_on(deed: str) -> set[str]:
    """The copies that operations of this deed on assemblies work on."""
    return {
        name
        for row in work().operations
        if row.id.startswith(("side frame", "base")) and f" / {deed}" in row.id
        for each in row.work
        for name in each.copies
    }


def test_finished_legs_are_neither_sanded_nor_coated_once_more() -> None:
    for deed in ("sand inside", "sand", "ease edges", "coat"):
        copies = worked_on(deed)
        assert copies
        assert not any("leg" in name for name in copies), deed


def test_the_sentences_say_what_is_left_out() -> None:
    spared = "but not the legs, which are finished"
    for name in ("side frame 1 / sand inside 120", "base / sand 180", "base / coat 2"):
        assert spared in operation(work(), name).sentence, name


def test_a_part_that_is_finished_alone_is_worked_whole() -> None:
    assert "but not" not in operation(work(), "leg / sand 120").sentence
    assert "but not" not in operation(work(), "leg / coat 1").sentence


def test_what_is_finished_before_a_later_stage_is_sanded_inside_before_the_first() -> None:
    # The legs are coated before the base is glued; the frames were glued before that.
    inside = operation(work("base"), "side frame 1 / sand inside 120")
    assert any("leg" in name for each in inside.work for name in each.copies)


def test_what_is_finished_before_a_later_stage_is_sanded_and_coated_in_the_glued_frame() -> None:
    for frame in ("side frame 1", "side frame 2"):
        lags = {
            rule.after: rule.lag
            for rule in work("base").rules
            if rule.before == f"{frame} / glue up" and rule.after.startswith("leg /")
        }
        # White glue in the shipped shop: 12 h until it is sanded, 24 h until it gets a finish.
        assert lags == {"leg / sand 120": 12 * 600, "leg / coat 1": 24 * 600}


def test_glue_faces_that_are_shut_by_then_are_not_taped() -> None:
    model = model_of(f"{text_of('step_stool')}\nfinish legs before glue up base\n")
    (coating,) = [each for each in model.coatings if each.subject == "leg"]
    assert coating.glued_later == ("base",)
    mates = {
        model.part_of(name).name
        for joint in (model.joint(name) for name in coating.masks)
        for name in (joint.guest, joint.host)
    }
    assert mates == {"leg", "long rail"}


def test_the_whole_is_tried_dry_before_a_part_of_it_is_coated() -> None:
    rules = {(rule.before, rule.after) for rule in work().rules}
    assert ("base / dry fit", "leg / coat 1") in rules
