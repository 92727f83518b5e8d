"""Grooves: through ones on the saw, stopped ones on the router table between two stops."""

from dataclasses import replace
from fractions import Fraction

from tests.pieces.reading import model_of
from tests.unit.operations.worked import (
    listed,
    operation,
    piece,
    rule,
    said,
    setting,
    shop_without,
)

from dryfit.joinery.feature import Feature
from dryfit.operations.cut import Site
from dryfit.operations.cuts.groove_families import groove_families
from dryfit.operations.cuts.grooves import ends_to_square
from dryfit.plan.operation import Operation, WorkList
from dryfit.plan.setting import Hold
from dryfit.shop.shop import Shop

STOPPED = Feature(
    id="groove for slat",
    kind="long slot",
    role="groove",
    surface="E2",
    along=(Fraction(100), Fraction(800)),
    across=(Fraction(8), Fraction(14)),
    depth=Fraction(10),
    fit="free",
    mate="slat",
)


def with_groove(groove: Feature, shop: Shop | None = None) -> WorkList:
    """The boot bench with another groove in its aprons."""
    model = piece()
    apron = model.part("apron")
    grooved = replace(apron, features=(*apron.features, groove))
    parts = tuple(grooved if part is apron else part for part in model.parts)
    return listed(replace(model, parts=parts), shop)[0]


def test_a_stopped_groove_is_never_cut_on_the_saw() -> None:
    groove = operation(with_groove(STOPPED), "apron / groove for slat")
    assert groove.station == "router table"
    assert setting(groove, "cutter").value == "straight bit 6"
    assert setting(groove, "height").value == 10
    fence, stop = setting(groove, "fence"), setting(groove, "stop")
    assert (fence.value, fence.far, fence.origin) == (Fraction(8), Fraction(14), "F")
    assert (stop.value, stop.far, stop.to) == (Fraction(100), Fraction(800), "both")
    assert stop.side in {"left", "right"}
    assert {work.hold for work in groove.work} == {Hold("E2", "F", "R")}
    assert groove.details[0] == ("Go to full depth in 2 steps",)  # 6 mm a pass: TRADE B0


def test_a_groove_that_something_goes_into_is_tried_on_scrap() -> None:
    groove = operation(with_groove(STOPPED), "apron / groove for slat")
    assert groove.tests == 1
    assert groove.trial is not None


def test_mirrored_parts_have_their_stops_on_opposite_sides() -> None:
    model = piece()
    post = model.part("post")
    groove = replace(STOPPED, along=(Fraction(150), Fraction(300)), hands=("A", "B"))
    grooved = replace(post, features=(*post.features, groove))
    parts = tuple(grooved if part is post else part for part in model.parts)
    work, _ = listed(replace(model, parts=parts))
    hands = [operation(work, f"post / groove for slat / hand {hand}") for hand in "AB"]
    assert {setting(each, "stop").side for each in hands} == {"left", "right"}


def test_a_through_groove_on_an_edge_rides_with_its_face_at_the_fence() -> None:
    through = replace(STOPPED, along=(Fraction(0), Fraction(920)))
    work = with_groove(through)
    groove = [op for op in work.operations if op.id.startswith("apron / groove for slat / ")]
    assert [op.station for op in groove] == ["table saw", "table saw"]
    assert [setting(op, "fence").value for op in groove] == [8, Fraction("10.8")]
    assert {work.hold for op in groove for work in op.work} == {Hold("E2", "F", None)}


def test_without_a_saw_and_a_router_table_grooves_are_ploughed_by_hand() -> None:
    shop = shop_without("table saw", "router table", "sled", "rip fence", "dado")
    assert operation(with_groove(STOPPED, shop), "apron / groove for slat").station == "bench"


def test_a_groove_wider_than_the_blade_by_much_takes_exact_passes() -> None:
    wide = replace(STOPPED, along=(Fraction(0), Fraction(920)), across=(Fraction(5), Fraction(15)))
    shop = shop_without("dado")
    rows = [
        setting(op, "fence")
        for op in with_groove(wide, shop).operations
        if op.kind == "groove" and op.work[0].features == (STOPPED.id,)
    ]
    values = [row.value for row in rows]
    assert values[0] == 5
    assert rows[-1].far == 15
    assert len(values) == 4  # 1 + ceil((10 - 3.2) / 3.0)


def test_a_groove_in_several_passes_is_checked_when_the_last_has_made_it_whole() -> None:
    through = replace(STOPPED, along=(Fraction(0), Fraction(920)))
    passes = [
        op
        for op in with_groove(through).operations
        if op.id.startswith("apron / groove for slat / ")
    ]
    assert [op.check for op in passes] == [
        None,
        "what belongs into the groove slides in it by hand",
    ]


def grooves_of(work: WorkList, mate: str) -> list[Operation]:
    return [
        op for op in work.operations if op.id.partition(" / ")[2].startswith(f"groove for {mate}")
    ]


def test_grooves_for_one_panel_are_cut_one_way_with_one_setting() -> None:
    # TRADE B0.2: the stiles' grooves are stopped, so that the rails' go to the router table too.
    work, _ = listed(piece("panel_door"))
    rows = grooves_of(work, "panel")
    assert [(op.part, op.station) for op in rows] == [
        ("stile", "router table"),
        ("rail", "router table"),
    ]
    for axis, value in (("cutter", "straight bit 8"), ("height", 9), ("fence", 6)):
        assert [setting(op, axis).value for op in rows] == [value, value]
    assert {held.hold.against_fence for op in rows for held in op.work if held.hold} == {"F"}
    assert len({op.together for op in rows}) == 1


def test_round_ends_are_squared_and_the_minutes_counted() -> None:
    # Bit 8: radius 4. Two stiles with two ends, 0.5 min each; 0.538 m in two depths at
    # 0.4 + 0.4 a metre: 4 x 0.4 + 4 x 0.4 x 0.538 = 2.46 min.
    work, _ = listed(piece("panel_door"))
    stile = next(op for op in grooves_of(work, "panel") if op.part == "stile")
    assert stile.tenths == 45
    assert said(stile.details[-1]) == (
        "The bit leaves round ends, 4 mm in radius: square them with a chisel to 51 mm and 589 mm "
        "from R, or the corners of the panel do not go home"
    )


def test_only_the_blind_end_of_a_rabbet_is_squared() -> None:
    # The back rabbet of a side runs out at its top: 72 mm of it begin blind above the kick board.
    model = model_of(
        """piece Case
overall 500 wide, 250 deep, 700 high
timber oak
2 sides, upright, facing side, 250 x 18, at left and right
1 top, across, flat, 250 x 18, between sides, rabbet 9, flush with top of sides
1 bottom, across, flat, 250 x 18, into sides, housing 6, up 72
1 back, upright, facing front, 6 thick, of birch ply, inside sides and top and bottom, rabbet 9
glue up case: sides, top, bottom
"""
    )
    work, _ = listed(model)
    details = [said(each) for op in work.operations if op.part == "side" for each in op.details]
    squared = [each for each in details if "in radius" in each]
    assert squared
    assert all(each.startswith("The bit leaves a round end, ") for each in squared)


def test_the_corner_of_the_panel_needs_the_squared_end() -> None:
    # By numbers: the groove is at full width from 51 + 4, the panel's corner stands at 52.
    model = piece("panel_door")
    stile, panel = model.part("stile"), model.part("panel")
    groove = next(each for each in stile.features if each.role == "groove")
    corner = (stile.length - panel.length) / 2
    assert groove.along[0] <= corner < groove.along[0] + 4
    site = Site(stile, groove, stile.copies)
    assert ends_to_square(site, Fraction(4)) == 2


def test_an_end_that_a_housing_takes_away_is_not_squared() -> None:
    # The tray's housings, 20 to 34 and as deep, reach over the round ends at 29 to 32.
    work, _ = listed(piece("tray"))
    groove = next(op for op in grooves_of(work, "bottom") if op.part == "long side")
    assert not any("round ends" in said(detail) for detail in groove.details)


def test_a_through_groove_has_no_round_ends() -> None:
    work, _ = listed(piece("panel_door"))
    rail = next(op for op in grooves_of(work, "panel") if op.part == "rail")
    assert rail.details == (("Go to full depth in 2 steps",),)


def test_the_ways_to_groove_for_a_panel_are_told_with_their_minutes() -> None:
    work, _ = listed(piece("panel_door"))
    (row,) = [each for each in work.alternatives if each.group == "grooves for panel"]
    assert row.chosen
    assert row.method == "router table"
    assert row.operations == ("stile / groove for panel", "rail / groove for panel")
    assert "router table 14.7 min" in row.reason


def test_without_a_router_table_each_groove_is_cut_as_it_can_be() -> None:
    work, _ = listed(piece("panel_door"), shop_without("router table"))
    stations = {op.part: op.station for op in grooves_of(work, "panel")}
    assert stations == {"stile": "bench", "rail": "table saw"}


def test_through_grooves_of_a_family_take_the_quickest_way_set_up_included() -> None:
    # 10 wide in four passes of the blade, or in one of the router: two aprons of 920.
    wide = replace(STOPPED, along=(Fraction(0), Fraction(920)), across=(Fraction(5), Fraction(15)))
    shop = shop_without("dado")
    model = piece()
    apron = model.part("apron")
    site = Site(replace(apron, features=(wide,)), wide, apron.copies)
    (family,) = groove_families((site,), model.display, shop)
    # Blade: 4 x (2 x 0.2 + 2 x 0.4 x 0.92) + 4 fences + height = 4.54 + 4 + 1.
    assert family.minutes["single blade"] == 10 * Fraction("9.544")
    # Router, 10 deep in two steps of 6: 2 x (2 x 0.4 + 2 x 0.4 x 0.92) + bit, height, fence
    # 2 + 1.5 + 1.5, and the way there and back: 3.07 + 5 + 2.
    assert family.minutes["router table"] == 10 * Fraction("10.072")
    assert {way for _, way in family.sites} == {"single blade"}


def test_each_end_of_the_part_meets_one_stop() -> None:
    # The stile is 640 long, its groove 51 to 589 from R: 640 - 51 = 589 from R2.
    work, _ = listed(piece("panel_door"))
    stile = next(op for op in grooves_of(work, "panel") if op.part == "stile")
    assert setting(stile, "stop").side == "right"
    assert said(stile.details[1]) == (
        "Stop on the right, met by R: 589 mm to the far side of the bit; stop on the left, met by "
        "R2: 589 mm to the far side of the bit"
    )
    assert "lower it onto the running bit" in said(stile.details[2])


def test_where_a_groove_runs_out_there_is_no_stop() -> None:
    # An apron 920 long, grooved from 100 on: R2 alone meets a stop, 820 from the start of the cut.
    open_end = replace(STOPPED, along=(Fraction(100), Fraction(920)))
    groove = operation(with_groove(open_end), "apron / groove for slat")
    words = said(groove.details[1])
    assert "met by R2: 820 mm" in words
    assert words.count("met by") == 1


def test_through_grooves_come_before_the_stops_are_clamped_on() -> None:
    work, _ = listed(piece("panel_door"))
    found = rule(work, "rail / groove for panel", "stile / groove for panel")
    assert "against the stops" in found.reason


LONG = replace(STOPPED, surface="B", depth=Fraction(5))


def test_a_groove_too_long_for_the_stops_at_the_fence_is_cut_with_the_router_in_the_hands() -> None:
    # An apron of 920, grooved from 100 to 800: the far stop stands 820 from the bit's far side.
    shop = shop_without()
    table = shop.stations["router table"]
    for longest, station in ((820, "router table"), (819, "bench")):
        limits = {**table.limits, "longest_stop": Fraction(longest)}
        stations = {**shop.stations, "router table": replace(table, limits=limits)}
        work = with_groove(LONG, replace(shop, stations=stations))
        assert operation(work, "apron / groove for slat").station == station


def test_a_router_in_the_hands_is_led_along_the_nearer_edge_between_marks() -> None:
    work = with_groove(replace(LONG, along=(Fraction(5), Fraction(910))))
    groove = operation(work, "apron / groove for slat")
    assert groove.sentence.startswith("Rout, between its marks, the groove")
    assert groove.cautions == ("hand-router",)
    assert any("its guide along E;" in str(line[0]) for line in groove.details)
