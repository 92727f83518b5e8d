"""The boot bench against TRADE I1: settings of every joint, and minutes row by row."""

from fractions import Fraction

import pytest
from tests.pieces.reading import mm
from tests.unit.operations.worked import boot_bench, operation, setting

from dryfit.plan.setting import Hold, Pass

LAPS = (
    "post / end lap",
    "post / housing for bottom end rail",
    "top end rail / end lap",
    "bottom end rail / end lap",
)


@pytest.mark.parametrize("name", LAPS)
def test_all_laps_stand_at_one_height_on_the_sled(name: str) -> None:
    lap = operation(boot_bench(), name)
    assert setting(lap, "height").value == 27  # 15 deep + 12 base: TRADE I1, row 26
    assert setting(lap, "cutter").value == "dado 20"
    assert setting(lap, "accessory").value == "sled"
    assert lap.trial == operation(boot_bench(), LAPS[0]).trial
    assert lap.together == operation(boot_bench(), LAPS[0]).together
    assert lap.tests == 2


def test_sixteen_laps_are_cut() -> None:
    laps = [work for name in LAPS for work in operation(boot_bench(), name).work]
    assert sum(len(work.copies) * len(work.features) for work in laps) == 16


@pytest.mark.parametrize("name", [name for name in LAPS if "housing" not in name])
def test_end_laps_reach_from_25_to_45_and_clear_to_the_end(name: str) -> None:
    lap = operation(boot_bench(), name)
    stop = setting(lap, "stop")
    assert (stop.value, stop.far, stop.to) == (Fraction(25), Fraction(45), "near")
    assert {work.passes for work in lap.work} == {(Pass(), Pass(between=True), Pass(between=True))}


def test_the_housing_is_cut_at_the_stop_and_with_a_spacer() -> None:
    housing = operation(boot_bench(), "post / housing for bottom end rail")
    stop = setting(housing, "stop")
    assert (stop.value, stop.far, stop.origin) == (Fraction(105), Fraction(125), "R")
    assert {work.passes for work in housing.work} == {
        (Pass(), Pass(spacer=Fraction(25)), Pass(between=True))
    }


def test_posts_of_two_hands_lie_with_opposite_edges_at_the_fence() -> None:
    housing = operation(boot_bench(), "post / housing for bottom end rail")
    holds = [work.hold for work in housing.work]
    assert len(holds) == 2
    assert {hold.against_fence for hold in holds if hold} == {"E", "E2"}
    assert {(hold.down, hold.at_stop) for hold in holds if hold} == {("B", "R")}
    assert sorted(name for work in housing.work for name in work.copies) == [
        "back left post",
        "back right post",
        "front left post",
        "front right post",
    ]


def test_rail_laps_are_cut_on_the_outer_face_at_both_ends() -> None:
    lap = operation(boot_bench(), "top end rail / end lap")
    assert [(work.features, work.hold) for work in lap.work] == [
        (("end lap at R",), Hold("F", "E", "R")),
        (("end lap at R2",), Hold("F", "E2", "R2")),
    ]


def test_mortises_mirror_their_stops_and_share_the_rest() -> None:
    hands = [operation(boot_bench(), f"post / mortise for apron / hand {h}") for h in "AB"]
    for mortise in hands:
        assert setting(mortise, "depth").value == 21
        assert setting(mortise, "fence").value == 13
        assert setting(mortise, "fence").origin == "E"
        stop = setting(mortise, "stop")
        assert (stop.value, stop.far) == (Fraction(335), Fraction(375))
        assert (stop.to, stop.origin) == ("both", "R")
        assert setting(mortise, "cutter").value == "chisel 8"
    assert {setting(mortise, "stop").side for mortise in hands} == {"left", "right"}
    assert hands[0].trial == hands[1].trial


def test_the_groove_takes_two_positions_of_the_fence() -> None:
    passes = [operation(boot_bench(), f"apron / groove / {turn}") for turn in (1, 2)]
    assert [setting(each, "fence").value for each in passes] == [12, Fraction("14.8")]
    assert setting(passes[1], "fence").far == 18
    assert {setting(each, "height").value for each in passes} == {Fraction(9)}
    assert {work.hold for each in passes for work in each.work} == {Hold("B", "E", None)}


def test_cheeks_stand_at_19_lower_shoulders_at_17_and_upper_ones_are_sawn_by_hand() -> None:
    cheeks = operation(boot_bench(), "apron / tenon cheeks")
    lower = operation(boot_bench(), "apron / tenon shoulders / lower")
    upper = operation(boot_bench(), "apron / tenon shoulders / upper")
    assert setting(cheeks, "height").value == 19
    assert setting(cheeks, "stop").far == 20
    assert sum(len(work.copies) * len(work.features) for work in cheeks.work) == 8
    assert setting(lower, "height").value == 17
    assert setting(lower, "stop").far == 20
    # 55 + 12 is more than the 45 that a dado set reaches: TRADE H48.
    assert upper.station == "bench"
    assert upper.settings == ()


def test_short_parts_are_cut_on_the_sled_and_long_ones_at_the_mitre_saw() -> None:
    work = boot_bench()
    assert setting(operation(work, "post / length"), "stop").value == 430
    assert operation(work, "post / length").station == "table saw"
    assert operation(work, "apron / length").station == "mitre saw"
    assert setting(operation(work, "apron / length"), "stop").value == 920
    top = operation(work, "top / length")
    assert top.station == "table saw"
    assert all(row.axis != "stop" for row in top.settings)


def test_through_cuts_of_one_accessory_may_share_a_height() -> None:
    work = boot_bench()
    for kind, height, thickest in (("width", 33, 30), ("length", 45, 30)):
        rows = [op for op in work.operations if op.kind == kind and op.station == "table saw"]
        ranges = [setting(row, "height") for row in rows]
        assert all(row.value == row.at_least for row in ranges)
        assert max(row.at_least or 0 for row in ranges) == height
        assert all(row.at_most and row.at_most >= height for row in ranges)
        base = 12 if kind == "length" else 0
        assert height == thickest + base + 3  # TRADE 0.5


# Run minutes of TRADE I1, of the rows that have the same operations.  Rows that several of our
# operations make up are added.
ROWS = [
    ("02b", ("apron / rip",), 12),  # 1.3 there: aprons 1060 long, here 1040
    ("02c", ("top stave / rip",), 27),
    ("02", ("slat / rip",), 32),
    ("03", ("top stave / face",), 78),
    ("04", ("top stave / edge",), 43),
    ("05", ("apron / face", "apron / edge"), 57),  # 5.8 there, as 02b
    ("07", ("slat / face", "slat / edge"), 146),
    ("10", ("top stave / thickness",), 63),
    ("12", ("top stave / width",), 30),
    ("13", ("top stave / second edge",), 43),
    ("14", ("top / glue up",), 188),
    ("16", ("slat / width",), 36),
    ("17", ("apron / width",), 14),
    ("20", ("post / length",), 24),
    ("21", ("top end rail / length", "bottom end rail / length"), 24),
    ("22", ("apron / length",), 16),
    ("24", ("post / mortise for apron / hand A",), 45),
    ("25", ("post / mortise for apron / hand B",), 45),
    (
        "26",
        ("post / end lap", "top end rail / end lap", "bottom end rail / end lap"),
        90,
    ),
    ("27", ("post / housing for bottom end rail",), 30),
    ("28", ("apron / tenon cheeks",), 20),
    ("29", ("apron / tenon shoulders / lower",), 10),
    ("30", ("apron / tenon shoulders / upper",), 160),
    ("32", ("end frame 1 / glue up",), 195),
    ("33", ("button / make",), 180),
    ("34", ("end frame 2 / glue up",), 195),
    ("37", ("base / glue up",), 175),
    ("40", ("slat / length",), 40),
]


@pytest.mark.parametrize(("row", "names", "tenths"), ROWS, ids=[row for row, _, _ in ROWS])
def test_minutes_of_work(row: str, names: tuple[str, ...], tenths: int) -> None:
    assert sum(operation(boot_bench(), name).tenths for name in names) == tenths, row


def test_every_copy_of_a_gang_comes_out_of_a_blank_long_enough() -> None:
    rough = operation(boot_bench(), "post / rough length")
    # 2 x 430 + 3.2 + 120 of snipe = 983.2, to whole 5 mm: TRADE I1, stock.
    assert rough.rough == mm(985, 50, 34)
    rail = operation(boot_bench(), "top end rail / rough length")
    assert rail.rough == mm(805, 50, 34)
    stave = operation(boot_bench(), "top stave / rough length")
    assert stave.rough == (Fraction(1120), Fraction("96.5"), Fraction(27))
