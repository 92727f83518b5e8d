"""Ways of cutting by the tools that the shop has (TRADE B0.1, B0.2, H48; M24, M26)."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import model_of
from tests.unit.operations.worked import (
    boot_bench,
    listed,
    operation,
    piece,
    rule,
    said,
    setting,
    shipped_shop,
    shop_without,
)

from dryfit.plan.setting import Pass


def test_the_dado_set_is_chosen_for_the_family_and_says_why() -> None:
    chosen, other = boot_bench().alternatives
    assert (chosen.method, chosen.chosen) == ("dado set", True)
    assert (other.method, other.chosen) == ("single blade in passes", False)
    assert chosen.operations == other.operations
    assert "17.5 min" in chosen.reason  # 8 in, 8 out, 1.5 test: TRADE B0.1


def test_a_shop_without_a_dado_set_cuts_all_laps_in_passes_of_the_blade() -> None:
    work, _ = listed(piece(), shop_without("dado"))
    lap = operation(work, "post / end lap")
    assert setting(lap, "cutter").value == "combination blade"
    assert setting(lap, "height").value == 27
    assert (setting(lap, "stop").value, setting(lap, "stop").far) == (
        Fraction("41.8"),
        Fraction(45),
    )
    assert len(lap.work[0].passes) == 15
    housing = operation(work, "post / housing for bottom end rail")
    assert housing.work[0].passes[1] == Pass(spacer=Fraction("41.8"))
    assert setting(housing, "stop").value == Fraction("121.8")
    # The blade reaches 79 above the table: the deep shoulder too is sawn, 55 + 12 high.
    deep = operation(work, "apron / tenon shoulders / upper")
    assert setting(deep, "height").value == 67


def test_the_dado_set_stays_in_its_box_where_passes_are_quick() -> None:
    shop = shipped_shop()
    quick = replace(shop, minutes={**shop.minutes, "lap pass": {"each": Fraction("0.5")}})
    work, _ = listed(piece(), quick)
    chosen = next(row for row in work.alternatives if row.chosen)
    assert chosen.method == "single blade in passes"
    assert setting(operation(work, "post / end lap"), "cutter").value == "combination blade"


def test_without_a_table_saw_the_router_table_cuts_short_parts_and_hands_the_long() -> None:
    work, _ = listed(piece(), shop_without("table saw", "dado", "sled", "rip fence"))
    lap = operation(work, "post / end lap")
    assert lap.station == "router table"
    assert setting(lap, "height").value == 15
    assert setting(lap, "cutter").value == "straight bit 20"
    assert operation(work, "apron / tenon cheeks").station == "bench"
    assert operation(work, "post / width").station == "bench"


def test_hand_tools_do_everything_in_a_shop_of_benches() -> None:
    benches = {"bench", "glue bench", "finish bench"}
    machines = [name for name in shipped_shop().stations if name not in benches]
    work, findings = listed(piece(), shop_without(*machines, "sled", "rip fence"))
    assert {op.station for op in work.operations} == benches
    assert not findings
    assert all(op.tenths > 0 for op in work.operations)


@pytest.mark.parametrize("machine", ["mortiser", "jointer", "planer", "band saw", "mitre saw"])
def test_a_missing_machine_moves_its_work_and_nothing_else(machine: str) -> None:
    work, _ = listed(piece(), shop_without(machine))
    assert machine not in {op.station for op in work.operations}
    kept = {op.id: op.station for op in work.operations}
    moved = [
        op.id
        for op in boot_bench().operations
        if op.station != machine and kept.get(op.id) not in {op.station, None}
    ]
    assert moved == []


def test_without_a_mortiser_the_drill_press_takes_the_mortises() -> None:
    work, _ = listed(piece(), shop_without("mortiser"))
    mortise = operation(work, "post / mortise for apron / hand A")
    assert mortise.station == "drill press"
    assert setting(mortise, "cutter").value == "drill 8"
    assert setting(mortise, "fence").value == 13


def test_a_length_beyond_the_sled_goes_to_the_mitre_saw_not_into_an_error() -> None:
    work, _ = listed(piece("step_stool", ("overall 420 wide", "overall 1420 wide")))
    assert operation(work, "long rail / length").station == "mitre saw"
    assert operation(work, "short rail / length").station == "table saw"


def test_pockets_for_buttons_stand_on_marks_and_screw_holes_at_one_stop() -> None:
    work, _ = listed(piece("step_stool"))
    slots = operation(work, "long rail / button slots")
    assert {row.axis for row in slots.settings} == {"cutter", "fence", "depth", "stop"}
    # The mortises before have left a pair of stops, against which the rail would run.
    assert setting(slots, "stop").value == "off"
    holes = operation(boot_bench(), "slat / screw holes")
    stop = setting(holes, "stop")
    assert isinstance(stop.value, Fraction)
    assert stop.far is not None
    # Middle 15 from either end, as the feature says, whatever the drill is.
    assert (stop.value + stop.far) / 2 == 15
    assert {work.hold.at_stop for work in holes.work if work.hold} == {"R", "R2"}


def test_off_centre_tenons_take_a_height_for_each_face() -> None:
    model = piece()
    apron = model.part("apron")
    features = tuple(
        replace(feature, depth=Fraction(5 if feature.surface == "F" else 9))
        if feature.role == "tenon cheek"
        else feature
        for feature in apron.features
    )
    parts = tuple(
        replace(part, features=features) if part is apron else part for part in model.parts
    )
    work, _ = listed(replace(model, parts=parts))
    assert setting(operation(work, "apron / tenon cheeks / face"), "height").value == 17
    assert setting(operation(work, "apron / tenon cheeks / back"), "height").value == 21


def test_a_cut_after_a_glue_up_is_made_by_hand_when_the_glue_is_hard() -> None:
    model = piece()
    apron = model.part("apron")
    late = tuple(
        replace(feature, after="base") if feature.role == "groove" else feature
        for feature in apron.features
    )
    parts = tuple(replace(part, features=late) if part is apron else part for part in model.parts)
    work, _ = listed(replace(model, parts=parts))
    groove = operation(work, "apron / groove")
    assert groove.station == "bench"
    assert rule(work, "base / glue up", "apron / groove").lag == 14400
    assert rule(work, "apron / groove", "base / sand 120")
    assert ("apron / groove", "base / dry fit") not in {(r.before, r.after) for r in work.rules}


def test_a_part_from_a_sheet_is_ripped_and_cut_to_length_and_nothing_else() -> None:
    model = piece()
    slat = model.part("slat")
    parts = tuple(replace(part, stock="sheet") if part is slat else part for part in model.parts)
    work, _ = listed(replace(model, parts=parts))
    kinds = [op.kind for op in work.operations if op.part == "slat"]
    assert kinds[:2] == ["width", "length"]
    assert "thickness" not in kinds


def test_what_is_cut_by_hand_says_where_its_lines_are() -> None:
    shoulders = operation(boot_bench(), "apron / tenon shoulders / upper")
    assert (
        said(shoulders.details[0]) == "tenon shoulder at R on E: 0 mm to 20 mm from R, 55 mm deep"
    )
    assert shoulders.sentence == "Saw and pare the upper tenon shoulders on both aprons"
    holes = operation(boot_bench(), "bottom end rail / pilot holes")
    assert said(holes.details[2]).endswith("middle 170 mm from R")


def test_why_no_dado_set_is_mounted_stands_with_the_cuts_and_their_alternative() -> None:
    # Tray: 4 housings of 14: 5 passes of 3.2 each against one, at 0.25 min; 8 + 8 + 1.5 min.
    work, _ = listed(piece("tray"))
    words = (
        "the passes take 5 min without a dado set and 1 min with it; to fit, prove and remove it "
        "takes 17.5 min, so it does not pay"
    )
    chosen = next(row for row in work.alternatives if row.chosen)
    assert (chosen.method, chosen.reason) == ("single blade in passes", words)
    housing = operation(work, "long side / housing for end / 1")
    assert said(housing.details[0]) == f"In passes of the blade that is in the saw: {words}"
    assert "level them with a chisel" in said(housing.details[1])


def test_a_stop_in_line_with_the_cutter_is_clamped_ahead_of_it() -> None:
    # The boot bench's tenon is 20 long, and so is the dado: near side 0, far side 20.
    cheeks = operation(boot_bench(), "apron / tenon cheeks")
    stop = setting(cheeks, "stop")
    assert (stop.value, stop.far) == (Fraction(0), Fraction(20))
    assert any("ahead of the cutter" in said(detail) for detail in cheeks.details)
    laps = operation(boot_bench(), "post / end lap")
    assert not any("ahead of the cutter" in said(detail) for detail in laps.details)


def test_a_dado_set_that_leaves_a_hair_of_an_inch_tenon_clears_it_in_one_pass() -> None:
    # 3/4" is 19.05; a set built in steps of 0.1 to 19.0 leaves 0.05 at the open end of the cheek.
    work, _ = listed(piece("step_stool", ("tenon 20 long", "tenon 19.05 long")))
    cheeks = operation(work, "long rail / tenon cheeks")
    stop = setting(cheeks, "stop")
    assert (stop.value, stop.far) == (Fraction("0.05"), Fraction("19.05"))
    assert {len(each.passes) for each in cheeks.work} == {1}
    assert any("clamp it to the rip fence" in said(detail) for detail in cheeks.details)


CASE = """piece Spice case
units mm
overall 640 wide, 165 deep, 720 high
timber cherry
2 sides, upright, 165 x 20, at left and right
1 shelf, across, 140 x 18, housing 7 into sides, up 30
1 hanging rail, across, 70 x 18, tenon 14 long 6 thick into sides, at back, down 60
glue up case: sides, shelf, hanging rail
"""


def test_a_mortise_beyond_the_mortisers_throat_is_set_from_the_nearer_edge() -> None:
    # The throat is 150; from edge E the chisel would stand at 153 to 159, from E2 at 6 to 12.
    work, _ = listed(model_of(CASE))
    rows = [row for row in work.operations if "mortise for hanging rail" in row.id]
    assert rows
    for row in rows:
        fence = setting(row, "fence")
        assert (fence.value, fence.far, fence.origin) == (Fraction(6), Fraction(12), "E2")
        assert {each.hold.against_fence for each in row.work if each.hold} == {"E2"}
