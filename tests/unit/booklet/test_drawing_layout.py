"""The parts that drawings are made of: sheet, ruler, dimensions, balloons, how a part lies."""

from fractions import Fraction
from itertools import permutations

import pytest
from tests.unit.booklet import drawn_steps as steps
from tests.unit.booklet.drawn_bench import bench
from tests.unit.booklet.svg_reading import collisions, lettering, root_of

from dryfit.booklet.drawing.balloons import Wanted, crosses, draw_balloons
from dryfit.booklet.drawing.canvas import FINE, Canvas, number, text_room
from dryfit.booklet.drawing.dimension import Span, dimension_beside, dimensions_below
from dryfit.booklet.drawing.lying import (
    BEFORE,
    BEHIND,
    by_hand,
    lying,
    surface_towards,
    ways_of_lying,
)
from dryfit.booklet.drawing.rect import Rect
from dryfit.booklet.drawing.ruler import GAP, ruler
from dryfit.booklet.drawing.shapes import wrapped
from dryfit.booklet.text import Amount
from dryfit.geometry.frame import SURFACES, frames_over
from dryfit.geometry.shadow import hull
from dryfit.plan.operation import Work
from dryfit.plan.setting import Hold

MODEL = bench()
POST = MODEL.part("post")


@pytest.mark.parametrize(
    ("value", "written"), [(1.0, "1"), (-0.001, "0"), (2.345678, "2.35"), (-1.5, "-1.5")]
)
def test_numbers_are_written_one_way(value: float, written: str) -> None:
    assert number(value) == written


def test_hatching_stays_inside_and_is_one_path() -> None:
    canvas = Canvas()
    canvas.hatch(Rect(3, 4, 20, 11))
    paths = list(root_of(canvas.finish("hatch")).iter("{http://www.w3.org/2000/svg}path"))
    assert len(paths) == 1
    drawn = paths[0].get("d", "").replace("L", " ").split("M")[1:]
    points = [float(value) for line in drawn for value in line.split()]
    assert len(drawn) > 5
    assert all(3 <= x <= 20 for x in points[::2])
    assert all(4 <= y <= 11 for y in points[1::2])


def test_a_sheet_is_as_large_as_what_is_drawn_and_a_placed_one_moves() -> None:
    inner, outer = Canvas(), Canvas()
    inner.rect(Rect(0, 0, 10, 5))
    inner.text((5, 2.5), "post")
    outer.place(inner, 20, 30)
    svg = outer.finish("moved")
    assert (svg.width_mm, svg.height_mm) == (12, 7)
    assert lettering(svg)[0].room.middle == pytest.approx((25, 32.5), abs=0.01)


def test_a_quantity_carries_its_exact_value_and_words_are_escaped() -> None:
    canvas = Canvas()
    canvas.text((0, 0), ("<b> ", Amount(Fraction("450.85"), '17 3/4"')))
    assert '&lt;b&gt; <tspan class="q" data-mm="450.85">17 3/4&quot;</tspan>' in (
        canvas.finish("t").markup
    )


def test_a_short_part_is_drawn_whole_in_true_scale() -> None:
    scale = ruler(100, [(0, 10)], room=90, scale=0.5)
    assert scale.breaks() == ()
    assert [scale.at(along) for along in (0, 40, 100)] == [0, 20, 50]


def test_a_long_part_keeps_what_matters_in_true_scale() -> None:
    scale = ruler(1000, [(0, 20), (400, 460), (440, 480)], room=90, scale=0.5)
    assert scale.at(480) - scale.at(400) == pytest.approx(80 * 0.5)
    assert scale.at(400) - scale.at(20) == GAP
    assert len(scale.breaks()) == 1
    assert scale.end <= 90
    places = [scale.at(along) for along in range(0, 481, 5)]
    assert places == sorted(places)


def test_a_ruler_from_the_right_is_the_mirror_image() -> None:
    left = ruler(1000, [(0, 20), (400, 480)], room=90, scale=0.5)
    right = ruler(1000, [(0, 20), (400, 480)], room=90, scale=0.5, start=90, direction=-1)
    for along in (0, 10, 200, 400, 470):
        assert right.at(along) == pytest.approx(90 - left.at(along))


def test_what_does_not_fit_makes_the_scale_smaller() -> None:
    scale = ruler(1000, [(0, 1000)], room=90, scale=0.5)
    assert scale.scale < 0.5
    assert scale.end <= 90


@pytest.mark.parametrize("ends", [(0, 2), (0, 30), (0, 12), (-40, 3)])
def test_dimensions_in_a_stack_never_collide(ends: tuple[float, float]) -> None:
    canvas = Canvas()
    amount = (Amount(Fraction(12345, 10), "1234.5"),)
    spans = [Span(*ends, amount, "near side"), Span(0, 31, amount, "far side"), Span(5, 9, amount)]
    bottom = dimensions_below(canvas, spans, 0.0, start=2.0)
    svg = canvas.finish("stack")
    assert collisions(svg) == []
    assert max(line.room.bottom for line in lettering(svg)) <= bottom


def test_an_upright_dimension_stands_away_from_the_view() -> None:
    canvas = Canvas()
    amount = (Amount(Fraction(27), "27"),)
    right = dimension_beside(canvas, 10, 0, amount, at=8, edge=2)
    left = dimension_beside(canvas, 10, 0, amount, at=-8, edge=-2)
    assert right.left > 8
    assert left.right < -8


def test_the_hull_of_a_square_with_a_point_inside_is_the_square() -> None:
    square = [(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)]
    assert set(hull([*square, (2.0, 1.0)])) == set(square)


def test_lines_cross_only_inside_both() -> None:
    assert crosses(((0, 0), (4, 4)), ((0, 4), (4, 0)))
    assert not crosses(((0, 0), (4, 4)), ((5, 4), (9, 0)))


def test_balloons_stand_apart_and_off_what_must_stay_free() -> None:
    canvas = Canvas()
    outline = [(0.0, 0.0), (60.0, 0.0), (60.0, 30.0), (0.0, 30.0)]
    wanted = [Wanted(letter, ((20.0 + at, 15.0),)) for at, letter in enumerate("CDGHJK")]
    free = Rect(15, -14, 45, -4)
    draw_balloons(canvas, wanted, outline, rooms=[free])
    lines = lettering(canvas.finish("balloons"))
    middles = [line.room.middle for line in lines]
    assert sorted(line.words for line in lines) == list("CDGHJK")
    for index, (x, y) in enumerate(middles):
        assert not free.meets(Rect(x - 3.5, y - 3.5, x + 3.5, y + 3.5))
        assert all((x - u) ** 2 + (y - v) ** 2 > 7.2**2 for u, v in middles[:index])


def test_words_are_wrapped_and_none_is_lost() -> None:
    text = "Hatched: cut away. To scale, shortened at the break."
    lines = wrapped(text, 40)
    assert " ".join(lines) == text
    assert all(text_room((0, 0), line).width <= 40 for line in lines)


def test_the_surface_at_the_fence_is_the_one_that_geometry_puts_there() -> None:
    # Each of the 48 frames is a part lying in some way; the frame itself says what looks where.
    tried = 0
    for axes in permutations((0, 1, 2)):
        for frame in frames_over((axes[0], axes[1], axes[2])):
            down, left = frame.surface_facing(2, -1), frame.surface_facing(0, -1)
            hand = frame.handedness()
            assert surface_towards(BEFORE, down, left, hand) == frame.surface_facing(1, -1)
            assert surface_towards(BEHIND, down, left, hand) == frame.surface_facing(1, 1)
            tried += 1
    assert tried == 48


def test_features_are_seen_from_stop_fence_and_table() -> None:
    work = Work("post", steps.HAND_A, (steps.MORTISE,), Hold("F", "E2", "R2"), ())
    (copies,) = by_hand(POST, work)
    region = lying(POST, copies, work, "behind").regions[0]
    assert [*map(int, region.from_stop)] == [430 - 375, 430 - 335]
    assert [*map(int, region.from_fence)] == [45 - 21, 45 - 13]
    assert [*map(int, region.from_table)] == [30 - 21, 30]


def test_left_and_right_hands_lie_apart_only_where_a_feature_is_cut() -> None:
    names = (*steps.HAND_A, *steps.HAND_B)
    assert len(by_hand(POST, Work("post", names, (steps.HOUSING,), None, ()))) == 2
    assert len(by_hand(POST, Work("post", names, (), None, ()))) == 1


def test_blanks_lie_as_their_part_and_what_is_no_part_is_left_out() -> None:
    blanks = steps.step("band saw", (), Work("post", ("post blank 1",), (), None, ()))
    assert len(ways_of_lying(MODEL, blanks, "along")) == 1
    frame = steps.step("bench", (), Work("end frame 1", (), (), None, ()))
    assert ways_of_lying(MODEL, frame, "along") == ()


@pytest.mark.parametrize("surface", SURFACES)
def test_a_part_can_lie_on_each_of_its_surfaces(surface: str) -> None:
    work = Work("post", steps.HAND_A, (steps.HOUSING,), Hold(surface, None, None), ())
    way = lying(POST, by_hand(POST, work)[0], work, "before")
    assert {SURFACES[mark][0] for mark in way.marks} == {0, 1, 2}
    assert sorted(way.sizes) == [30, 45, 430]


def test_drawing_a_line_is_one_path() -> None:
    canvas = Canvas()
    canvas.lines([((0, 0), (1, 1)), ((2, 2), (3, 3))], FINE)
    assert canvas.finish("lines").markup.count("<path") == 1
