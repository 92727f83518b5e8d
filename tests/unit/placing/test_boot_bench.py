"""The boot bench, worked out by hand: TRADE I1, the trade notes' worked example.

Its sizes were checked there by filling a 1 mm grid.
"""

from fractions import Fraction
from itertools import pairwise

import pytest
from tests.pieces.reading import checked_piece, codes, mm, model_of_piece

from dryfit.joinery.feature import Feature
from dryfit.placing.model import Model


@pytest.fixture(scope="module")
def bench() -> Model:
    return model_of_piece("boot_bench")


def test_nothing_is_found_wrong() -> None:
    assert codes(checked_piece("boot_bench")) == []


@pytest.mark.parametrize(
    ("name", "count", "length", "width", "thickness", "shoulder"),
    [
        ("post", 4, 430, 45, 30, None),
        ("top end rail", 2, 340, 45, 30, 250),
        ("bottom end rail", 2, 340, 45, 30, 250),
        ("apron", 2, 920, 100, 22, 880),
        ("top", 1, 1000, 360, 20, None),
        ("slat", 5, 940, 40, 18, None),
        ("button", 6, 40, 28, 20, None),
    ],
)
def test_cut_list(
    bench: Model, name: str, count: int, length: int, width: int, thickness: int, shoulder: int
) -> None:
    part = bench.part(name)
    assert len(part.copies) == count
    assert (part.length, part.width, part.thickness) == mm(length, width, thickness)
    assert part.shoulder_length == shoulder


def test_the_top_is_glued_from_four_staves_of_366_together(bench: Model) -> None:
    staves = bench.part("top").staves
    assert staves is not None
    assert (staves.count, staves.width) == (4, Fraction(183, 2))
    assert staves.count * staves.width == 366


@pytest.mark.parametrize(
    ("figure", "terms"),
    [
        ("post.length", [450, -20]),
        ("top end rail.length", [360, -10, -10]),
        ("top end rail.shoulder length", [340, -45, -45]),
        ("apron.shoulder length", [1000, -30, -30, -30, -30]),
        ("apron.length", [880, 20, 20]),
        ("top.length", [1000]),
        ("slat.length", [1000, -30, -30]),
    ],
)
def test_every_length_has_its_sum(bench: Model, figure: str, terms: list[int]) -> None:
    found = bench.figures[figure]
    assert [term.amount for term in found.terms] == terms
    assert sum(term.amount for term in found.terms) == found.value


def laps(model: Model) -> list[Feature]:
    return [feature for part in model.parts for feature in part.features if feature.role == "lap"]


def test_all_sixteen_laps_are_15_deep_and_45_long(bench: Model) -> None:
    copies = [
        feature
        for part in bench.parts
        for copy in part.copies
        for feature in part.features
        if feature.role == "lap" and copy.hand in feature.hands
    ]
    assert len(copies) == 16
    assert {feature.depth for feature in copies} == {15}
    assert {feature.along[1] - feature.along[0] for feature in copies} == {45}
    assert sum(joint.kind == "half lap" for joint in bench.joints) == 8


def test_post_laps_are_cut_from_the_inner_face_rail_laps_from_the_outer(bench: Model) -> None:
    assert {f.surface for f in bench.part("post").features} == {"B"}
    assert {f.surface for f in bench.part("top end rail").features} == {"F"}


def test_post_housings_stand_at_80_to_125_and_end_laps_at_the_top(bench: Model) -> None:
    along = {f.id: f.along for f in bench.part("post").features if f.role == "lap"}
    assert along == {
        "cross slot for bottom end rail": mm(80, 125),
        "end lap at R2": mm(385, 430),
    }


def test_apron_tenons_are_8_between_7_and_7_and_40_between_5_and_55(bench: Model) -> None:
    features = {f.id: f for f in bench.part("apron").features}
    cheeks = [f for f in features.values() if f.role == "tenon cheek"]
    assert [f.depth for f in cheeks] == [7] * 4
    assert 22 - 7 - 7 == 8
    assert {f.along for f in cheeks} == {mm(0, 20), mm(900, 920)}
    shoulders = sorted(f.depth for f in features.values() if f.role == "tenon shoulder")
    assert shoulders == [5, 5, 55, 55]


def test_post_mortises_stand_at_335_to_375_and_13_to_21_from_the_outer_face(bench: Model) -> None:
    (mortise,) = (f for f in bench.part("post").features if f.kind == "mortise")
    assert (*mortise.along, *mortise.across, mortise.depth) == mm(335, 375, 13, 21, 21)
    assert 385 - mortise.along[1] == 10  # clear of the lap zone
    assert bench.part("post").thickness - mortise.depth == 9  # wood behind it


def test_posts_are_two_hands_front_left_with_back_right(bench: Model) -> None:
    hands = {copy.name: copy.hand for copy in bench.part("post").copies}
    assert hands == {
        "front left post": "A",
        "back right post": "A",
        "front right post": "B",
        "back left post": "B",
    }


def test_the_button_groove_lies_12_below_the_top_and_inside_the_upper_shoulder(
    bench: Model,
) -> None:
    (groove,) = (f for f in bench.part("apron").features if f.role == "groove")
    assert (*groove.across, groove.depth) == mm(12, 18, 9)
    assert groove.across[1] < 55


def test_buttons_have_a_tongue_of_5_5_by_8_5_eleven_below_their_top(bench: Model) -> None:
    button = bench.part("button")
    above, below = sorted(button.features, key=lambda f: -f.depth)
    assert (above.depth, below.depth) == (Fraction(11), Fraction(7, 2))
    assert button.thickness - above.depth - below.depth == Fraction(11, 2)
    assert above.along == (Fraction(0), Fraction(17, 2))
    engaged = {joint.region.extent(1) for joint in bench.joints if joint.kind == "buttons"}
    assert engaged == {6}  # so the body stands 8.5 - 6 = 2.5 off the apron
    assert {j.clearance for j in bench.joints if j.kind == "buttons"} == {3}


def test_slats_are_8_33_apart_and_wait_for_the_base(bench: Model) -> None:
    copies = bench.part("slat").copies
    gaps = {b.box.low[1] - a.box.high[1] for a, b in pairwise(copies)}
    assert gaps == {Fraction(250 - 5 * 40, 6)}
    measure = bench.part("slat").measure
    assert measure is not None
    assert (measure.name, measure.stage, measure.nominal) == ("base length", "base", Fraction(940))


def test_diagonals_are_548_2_and_999_6(bench: Model) -> None:
    diagonals = {
        each.stage: round(float(each.square[0] ** 2 + each.square[1] ** 2) ** 0.5, 1)
        for each in bench.assemblies
        if each.square
    }
    assert diagonals == {"end frame": 548.2, "base": 999.6}


def test_sums_meet_the_overall_size(bench: Model) -> None:
    assert bench.overall == mm(1000, 360, 450)
    assert 940 + 2 * 30 == bench.overall[0] == bench.part("top").length
    assert 340 + 2 * 10 == bench.overall[1] == bench.part("top").width
    assert bench.overall[2] == 430 + 20


def test_ten_screws_and_six_for_the_buttons(bench: Model) -> None:
    screws = [each for each in bench.hardware if "screw" in each.item]
    assert [(h.item, h.size, h.count, h.purpose) for h in screws] == [
        ("wood screw", "4 x 30", 6, "buttons into top"),
        ("wood screw", "4 x 35", 10, "slats into bottom end rails"),
    ]


def test_each_end_frame_closes_its_four_laps_and_the_base_the_four_tenons(bench: Model) -> None:
    kinds = {
        each.name: [*sorted({bench.joint(joint).kind for joint in each.joints}), len(each.joints)]
        for each in bench.assemblies
    }
    assert kinds == {
        "end frame 1": ["half lap", 4],
        "end frame 2": ["half lap", 4],
        "base": ["mortise and tenon", 4],
    }


def test_every_figure_that_is_a_sum_adds_up(bench: Model) -> None:
    for figure in bench.figures.values():
        if figure.terms:
            assert sum(term.amount for term in figure.terms) == figure.value, figure.name
