"""A setting's drawing shows exactly the settings' numbers, each hand, and nothing on top of it."""

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import pytest
from tests.unit.booklet import drawn_steps as steps
from tests.unit.booklet import planned
from tests.unit.booklet.drawn_bench import bench
from tests.unit.booklet.svg_reading import collisions, lettering, quantities

from dryfit.booklet.bench import Bench
from dryfit.booklet.drawing.canvas import Svg
from dryfit.booklet.drawing.setup import setup_drawing
from dryfit.booklet.drawings import step_drawing
from dryfit.booklet.labels import label
from dryfit.booklet.text import Say
from dryfit.joinery.staves import Staves
from dryfit.plan.plan import Step
from dryfit.quantities import Display

MODEL = bench()
INCHES = Display.inches()


def draw(step: Step, display: Display | None = None) -> Svg:
    drawing = setup_drawing(MODEL, step, steps.ACCESSORIES, display or MODEL.display)
    assert drawing is not None
    return drawing


def words(svg: Svg) -> list[str]:
    return [line.words for line in lettering(svg)]


ALL: dict[str, Callable[[], Step]] = {
    "housing": steps.housing,
    "length": steps.length,
    "mortise A": lambda: steps.mortise(steps.HAND_A, "left"),
    "mortise B": lambda: steps.mortise(steps.HAND_B, "right"),
    "groove": steps.groove,
    "rip": steps.rip,
    "plane": steps.plane,
    "by hand": steps.by_hand,
}


@pytest.mark.parametrize("name", ALL)
@pytest.mark.parametrize("display", [Display(), INCHES], ids=["mm", "in"])
def test_no_figure_stands_on_another_and_none_is_too_small(name: str, display: Display) -> None:
    drawing = draw(ALL[name](), display)
    assert collisions(drawing) == []
    assert min(line.size for line in lettering(drawing)) >= 4.6
    assert drawing.width_mm <= 130


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("housing", {"27", "12", "15", "105", "125", "25", "80"}),
        ("length", {"45", "430"}),
        ("mortise A", {"335", "375", "13", "21"}),
        ("mortise B", {"335", "375", "13", "21"}),
        ("groove", {"9", "12", "15.2"}),
        ("rip", {"33", "45"}),
        ("plane", {"30"}),
        ("by hand", {"20", "900", "920", "45", "100"}),
    ],
)
def test_the_figures_are_the_settings_and_no_others(name: str, expected: set[str]) -> None:
    assert set(quantities(draw(ALL[name]()))) == expected


def test_inches_are_shown_and_carry_exact_millimetres() -> None:
    drawing = draw(steps.rip(), INCHES)
    assert '1 49/64" near side' in " | ".join(words(drawing)) or '1 49/64"' in words(drawing)
    assert "45" in quantities(drawing)


def test_both_hands_are_drawn_and_each_with_the_edge_at_the_fence() -> None:
    drawn = words(draw(steps.housing()))
    assert "From above: post, hand A: R at the stop" in drawn
    assert "From above: post, hand B: R at the stop" in drawn
    assert {"E", "E2"} <= set(drawn)


def test_hands_cut_from_opposite_ends_come_out_as_mirror_images() -> None:
    def across(svg: Svg, word: str) -> float:
        return next(line.room.middle[0] for line in lettering(svg) if line.words == word)

    left, right = draw(ALL["mortise A"]()), draw(ALL["mortise B"]())
    assert across(left, "R") < across(left, "335") < across(left, "375") + 40
    assert across(right, "R") > across(right, "335")
    span = across(left, "335") - across(left, "R")
    assert across(right, "R") - across(right, "335") == pytest.approx(span, abs=0.02)


def test_the_spacer_is_drawn_with_the_other_limit_from_the_end() -> None:
    drawn = words(draw(steps.housing()))
    assert "The same with the spacer at the stop" in drawn
    assert "spacer" in drawn
    assert "from R" in drawn


def test_the_height_says_that_it_includes_the_sleds_floor() -> None:
    assert "12 + 15 deep" in words(draw(steps.housing()))


def test_an_axis_that_only_stands_is_not_drawn() -> None:
    assert "360" not in quantities(draw(steps.housing()))


def test_a_long_part_is_shortened_and_says_so_and_a_short_one_does_not() -> None:
    assert any("shortened at the break" in line for line in words(draw(steps.length())))
    assert not any("shortened" in line for line in words(draw(steps.rip())))


def test_a_length_that_waits_for_a_measurement_is_about() -> None:
    drawn = words(draw(steps.length("base length")))
    assert any(line.startswith("about 430") for line in drawn)
    assert any("base length" in line for line in drawn)


def test_a_changed_setting_changes_the_drawing_and_only_its_figures() -> None:
    before = steps.rip()
    settings = tuple(
        (axis, replace(setting, value=Fraction(44), far=Fraction("47.2")))
        if axis == "fence" and setting
        else (axis, setting)
        for axis, setting in before.settings
    )
    after = replace(before, settings=settings)
    assert [mm.replace("44", "45") for mm in quantities(draw(after))] == quantities(draw(before))
    assert "44" in quantities(draw(after))


def test_jointing_has_no_setting_to_draw() -> None:
    assert setup_drawing(MODEL, steps.joint(), steps.ACCESSORIES, MODEL.display) is None


def test_a_panel_is_drawn_in_its_clamps_numbered_once_each() -> None:
    parts = tuple(
        replace(part, staves=Staves(4, Fraction(90))) if part.name == "top" else part
        for part in MODEL.parts
    )
    model = replace(MODEL, parts=parts)
    drawing = setup_drawing(model, steps.glue_panel(), steps.ACCESSORIES, model.display)
    assert drawing is not None
    assert [word for word in words(drawing) if word.isdigit()] == ["1", "2", "3", "4", "5"]
    # Over and under in turn: of five the first, the middle and the last one lie on top.
    assert drawing.markup.count("stroke-dasharray") == 2
    assert collisions(drawing) == []


def test_work_on_an_assembly_is_left_to_the_glue_up() -> None:
    sanding = steps.step("sander", (), kind="sand")
    assert setup_drawing(MODEL, sanding, steps.ACCESSORIES, MODEL.display) is None


def test_a_cut_that_begins_at_the_fence_is_measured_to_its_far_side() -> None:
    cut = steps.mortise(steps.HAND_A, "left")
    at_fence = steps.mm("fence", 0, 21, to="near")
    settings = tuple((axis, at_fence if axis == "fence" else it) for axis, it in cut.settings)
    drawing = draw(replace(cut, settings=settings))
    assert "21" in quantities(drawing)


@pytest.mark.parametrize("name", ["length", "mortise A", "groove"])
def test_what_is_noted_below_one_drawing_is_not_said_below_the_next(name: str) -> None:
    step = ALL[name]()
    first = draw(step)
    again = setup_drawing(
        MODEL, step, steps.ACCESSORIES, MODEL.display, noted=frozenset({first.note})
    )
    assert again is not None
    assert "To scale" in first.note
    assert " ".join(words(first)).endswith(first.note)
    assert "scale" not in " ".join(words(again))
    assert again.height_mm < first.height_mm
    assert quantities(again) == quantities(first)


@pytest.mark.parametrize(
    ("changed", "section"),
    [
        (("stop",), False),
        (("fence", "stop"), False),
        (("depth", "stop"), True),
        (("cutter", "fence", "stop"), True),
    ],
)
def test_a_depth_that_stays_is_drawn_once_a_visit(changed: tuple[str, ...], section: bool) -> None:
    # The view from above shows how far the fence stands off, the section how deep it goes.
    first = steps.mortise(steps.HAND_A, "left")
    then = replace(steps.mortise(steps.HAND_B, "right"), changed=changed)
    at = Bench(MODEL, planned.plan(), planned.shop(), label(MODEL), Say(MODEL.display))
    drawing = step_drawing(then, (first,), at)
    assert drawing is not None
    assert ("Section through the cut" in words(drawing)) == section
