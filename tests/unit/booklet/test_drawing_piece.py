"""The cover, the glue-ups, the parts and the time line."""

from dataclasses import replace
from fractions import Fraction
from xml.etree import ElementTree as ET

import pytest
from tests.unit.booklet.drawn_bench import bench
from tests.unit.booklet.planned import plan
from tests.unit.booklet.svg_reading import SVG, collisions, lettering, quantities, root_of
from tests.unit.operations.worked import shipped_shop

from dryfit.booklet.drawing import (
    Svg,
    glue_up_drawing,
    part_sheets,
    piece_drawing,
    timeline,
)
from dryfit.booklet.drawing.glue_up import copies_in, diagonal, flat_axis
from dryfit.booklet.labels import label
from dryfit.plan.plan import Moment
from dryfit.quantities import Display

MODEL = bench()
LABELS = label(MODEL)


def drawings() -> list[Svg]:
    return [
        piece_drawing(MODEL, LABELS.parts),
        timeline(plan(), shipped_shop()),
        *(glue_up_drawing(MODEL, a, LABELS.copies, MODEL.display) for a in MODEL.assemblies),
        *(sheet for part in MODEL.parts for sheet in part_sheets(part, MODEL, LABELS)),
    ]


@pytest.mark.parametrize("drawing", drawings(), ids=lambda drawing: drawing.title)
def test_a_drawing_is_plain_svg_that_prints_everywhere(drawing: Svg) -> None:
    root = root_of(drawing)
    assert root.tag == f"{SVG}svg"
    assert root.find(f"{SVG}title") is not None
    for element in root.iter():
        assert element.tag.removeprefix(SVG) in {
            "svg", "title", "g", "path", "circle", "text", "tspan"
        }  # fmt: skip
        assert element.get("style") is None
        assert element.get("fill") in {None, "none", "#fff", "#000"}
    assert collisions(drawing) == []
    assert min(line.size for line in lettering(drawing)) >= 4.6


def test_every_figure_of_a_drawing_carries_its_quantity() -> None:
    for drawing in drawings()[2:]:
        for text in root_of(drawing).iter(f"{SVG}text"):
            loose = "".join([text.text or "", *(child.tail or "" for child in text)])
            assert "." not in loose or loose.endswith(".")


def test_each_part_that_is_seen_is_lettered_once() -> None:
    letters = [line.words for line in lettering(piece_drawing(MODEL, LABELS.parts))]
    seen = [LABELS.parts[name] for name in ("post", "end rail", "apron", "top", "slat")]
    assert sorted(word for word in letters if word.isalpha()) == sorted(seen)


def test_the_cover_carries_the_overall_sizes() -> None:
    assert quantities(piece_drawing(MODEL, LABELS.parts)) == ["1000", "360", "450"]
    assert quantities(piece_drawing(MODEL, LABELS.parts, sizes=False)) == []


def test_a_piece_in_inches_is_the_same_drawing_with_other_figures() -> None:
    def lines(display: Display) -> list[str | None]:
        root = root_of(piece_drawing(bench(display), LABELS.parts, sizes=False))
        return [path.get("d") for path in root.iter(f"{SVG}path")]

    assert lines(Display()) == lines(Display.inches())


def test_text_from_the_notes_is_escaped() -> None:
    hostile = bench(piece="<script>&\"'</script>")
    drawing = piece_drawing(hostile, {"post": "<b>&", "top": '"'})
    words = [line.words for line in lettering(drawing)]
    assert "<b>&" in words
    assert "<script>" not in drawing.markup
    title = root_of(drawing).find(f"{SVG}title")
    assert title is not None
    assert title.text == "<script>&\"'</script>, seen from the front right"


def test_same_model_same_bytes() -> None:
    first, second = piece_drawing(MODEL, LABELS.parts), piece_drawing(bench(), LABELS.parts)
    assert first == second
    assert ET.canonicalize(first.markup) == ET.canonicalize(second.markup)


def test_the_diagonals_are_those_of_the_worked_example() -> None:
    # 340 x 430 gives 548.2 and 340 x 940 gives 999.6 (Pythagoras).
    assert diagonal(Fraction(340), Fraction(430)) == Fraction("548.179")
    assert diagonal(Fraction(940), Fraction(340)) == Fraction("999.600")
    shown = [
        next(line.words for line in lettering(drawing) if "." in line.words)
        for drawing in drawings()[2:5]
    ]
    assert shown == ["548.2", "548.2", "999.6"]


def test_a_diagonal_is_rounded_half_up_and_exact_where_it_is_whole() -> None:
    assert diagonal(Fraction(3), Fraction(4)) == 5
    assert diagonal(Fraction(1), Fraction(1)) == Fraction("1.414")


def test_frames_are_flat_and_the_base_is_not() -> None:
    assert [flat_axis(assembly) for assembly in MODEL.assemblies] == [0, 0, None]


def test_an_assembly_holds_the_copies_of_its_assemblies() -> None:
    assert len(copies_in(MODEL, MODEL.assemblies[0])) == 4
    assert len(copies_in(MODEL, MODEL.assemblies[2])) == 10


def test_clamps_are_numbered_bars_first_and_then_each_lap() -> None:
    frame, base = drawings()[2], drawings()[4]
    assert _numbers(frame) == ["1", "1", "2", "2", "3", "4", "5", "6"]
    assert _numbers(base) == ["1", "1", "2", "2"]


def _numbers(drawing: Svg) -> list[str]:
    return [line.words for line in lettering(drawing) if line.words.isdigit()]


def test_the_copies_that_come_together_are_named() -> None:
    words = {line.words for line in lettering(drawings()[4])}
    posts = {LABELS.copies[f"{d} {s} post"] for d in ("front", "back") for s in ("left", "right")}
    aprons = {LABELS.copies["front apron"], LABELS.copies["back apron"]}
    assert posts | aprons <= words


def test_the_time_line_has_a_row_for_each_day_with_work_and_its_waits() -> None:
    words = [line.words for line in lettering(timeline(plan(), shipped_shop()))]
    days = sorted({step.starts.day for step in plan().steps})
    assert [word for word in words if word.startswith("Day ")] == [f"Day {day}" for day in days]
    assert "clamps" in words
    assert "drying" in words


def test_a_step_that_goes_on_the_next_day_is_drawn_in_the_hours_of_both() -> None:
    """From 14:00 on Friday to 10:00 on Monday: no hour of the night, and no day off."""
    step = plan().steps[0]
    long = replace(step, starts=Moment(0, 5, "14:00"), ends=Moment(0, 8, "10:00"))
    drawn = timeline(replace(plan(), steps=(long,)), shipped_shop())
    words = [line.words for line in lettering(drawn)]
    assert [word for word in words if word.isdigit() and word != str(step.visit)] == [
        str(hour) for hour in range(8, 17)
    ]
    assert [word for word in words if word.startswith("Day")] == [
        "Day 5",
        "Days 6 to 7: nothing to do by hand",
        "Day 8",
    ]


def _bars(drawing: Svg) -> list[str]:
    return [line.words for line in lettering(drawing) if line.words[0].isdigit()]


def test_the_day_reaches_to_closing_time_and_to_the_end_of_clamps_in_the_evening() -> None:
    """The shop is open to 16:00; clamps from 14:23 for 2 h are off at 16:23."""
    step = plan().steps[0]
    short = replace(step, starts=Moment(0, 1, "08:00"), ends=Moment(0, 1, "09:00"))
    hours = [str(hour) for hour in range(8, 18)]
    drawn = timeline(replace(plan(), steps=(short,)), shipped_shop())
    assert _bars(drawn)[: len(hours) - 1] == hours[:-1]
    glued = next(each for each in plan().steps if each.operations[0].glue_up)
    one = replace(glued.operations[0], after_tenths=1200)
    late = replace(
        glued, starts=Moment(0, 1, "14:00"), ends=Moment(0, 1, "14:23"), operations=(one,)
    )
    drawn = timeline(replace(plan(), steps=(short, late)), shipped_shop())
    assert _bars(drawn)[: len(hours)] == hours


def test_every_bar_is_named_by_the_number_of_its_visit() -> None:
    """Of short visits close together the last is named for all; one at closing time, beside it."""
    step = plan().steps[0]
    times = [("08:00", "08:05"), ("08:12", "08:14"), ("12:00", "12:05"), ("15:55", "16:00")]
    steps = tuple(
        replace(step, visit=visit, starts=Moment(0, 1, begin), ends=Moment(0, 1, end))
        for visit, (begin, end) in enumerate(times, start=31)
    )
    named = _bars(timeline(replace(plan(), steps=steps), shipped_shop()))
    assert named[-3:] == ["31–32", "33", "34"]


def test_the_time_line_ends_with_the_day_on_which_all_is_dry() -> None:
    first = next(step for step in plan().steps if step.operations)
    dries = replace(first.operations[0], after_tenths=3 * 24 * 600)
    step = replace(first, operations=(dries,))
    over = replace(step.ends, tenths=step.ends.tenths + 3 * 24 * 600, day=step.ends.day + 3)
    drawn = timeline(replace(plan(), steps=(step,), done=over), shipped_shop())
    words = [line.words for line in lettering(drawn)]
    assert f"Day {over.day}" in words
    assert words.count("drying") == 2
