"""What the steps of a visit need not say or draw again."""

from dataclasses import replace

from tests.unit.booklet import drawn_steps as steps
from tests.unit.booklet import planned
from tests.unit.booklet.drawn_bench import bench
from tests.unit.booklet.svg_reading import lettering

from dryfit.booklet.bench import Bench
from dryfit.booklet.labels import label
from dryfit.booklet.steps import StepView, visit_steps
from dryfit.booklet.text import Say
from dryfit.plan.plan import Step, Waits

MARKED = "a part whose face is marked is not turned the wrong way"


def views(*visit: Step) -> tuple[StepView, ...]:
    model = bench()
    at = Bench(model, planned.plan(), planned.shop(), label(model), Say(model.display))
    numbered = [replace(step, number=number) for number, step in enumerate(visit, 11)]
    return visit_steps(numbered, at)


def has_section(view: StepView) -> bool:
    assert view.drawing is not None
    return any(line.words == "Section through the cut" for line in lettering(view.drawing))


def lying_on(surface: str) -> Step:
    """A mortise with that surface down, of which only the stop is set anew."""
    step = replace(steps.mortise(steps.HAND_A, "left"), changed=("stop",))
    (operation,) = step.operations
    (work,) = operation.work
    assert work.hold is not None
    turned = replace(work, hold=replace(work.hold, down=surface))
    return replace(step, operations=(replace(operation, work=(turned,)),))


def test_a_section_is_drawn_once_for_each_side_that_lies_down_while_only_the_stop_is_set() -> None:
    first = replace(lying_on("F"), changed=("cutter", "fence", "depth", "stop"))
    drawn = views(first, lying_on("E"), lying_on("F"), lying_on("E"))
    assert [has_section(view) for view in drawn] == [True, True, False, False]
    deeper = replace(lying_on("F"), changed=("depth",))
    assert [has_section(view) for view in views(first, lying_on("E"), deeper)] == [True] * 3


def test_what_all_steps_of_a_visit_wait_for_is_told_at_the_first() -> None:
    waits = Waits(4, "post / layout", MARKED, 0)
    visit = [replace(lying_on("F"), waits_for=(waits,)) for _ in range(2)]
    own = Waits(5, "apron / rip", "it is not there before", 0)
    visit.append(replace(lying_on("F"), waits_for=(waits, own)))
    assert [view.reasons for view in views(*visit)] == [
        (f"After step 4: {MARKED}",),
        (),
        ("After step 5: it is not there before",),
    ]
