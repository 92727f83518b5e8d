"""What a machine does not take is worked at the bench, and the plan says why (TRADE A6)."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import model_of
from tests.unit.operations.worked import (
    lengths_of,
    listed,
    operation,
    piece,
    said,
    setting,
    shipped_shop,
    shop_without,
)

from dryfit.joinery.feature import Feature
from dryfit.operations.cut import Site
from dryfit.operations.cuts.grooves import BLADE, DADO, HAND, ROUTER, cuts_by
from dryfit.operations.machine_limits import (
    NO_MACHINE,
    Piece,
    under_spindle,
    why_not_at_band_saw,
    why_not_at_mitre_saw,
    why_not_jointed_edge,
    why_not_jointed_face,
    why_not_on_sled,
    why_not_planed,
    why_not_ripped,
)
from dryfit.operations.milling.lengths import way_to_length
from dryfit.operations.ways.machines import blade_on_sled, router_for
from dryfit.placing.model import Model
from dryfit.plan.operation import Detail
from dryfit.stock.blanks.blank import blank_of

CASE = """piece Case
units mm
overall {wide} wide, 155 deep, {high} high
timber pine
2 sides, upright, facing side, 150 x 18, at left and right
1 shelf, across, flat, 150 x {shelf}, up 10, housing 6 into sides
1 back, upright, facing front, 5 thick, on the back of sides and shelf, screws, of birch ply
glue up case: sides, shelf
"""


def case(wide: int = 700, high: int = 720, shelf: str = "18") -> Model:
    """Two sides, a shelf and a sheet back as large as the case is seen from before."""
    return model_of(CASE.format(wide=wide, high=high, shelf=shelf))


def size(length: int, width: int, thickness: int) -> Piece:
    """A piece of whole millimetres."""
    return Piece(Fraction(length), Fraction(width), Fraction(thickness))


def words(why: Detail | None) -> str:
    """A reason in words."""
    assert why
    return said(why)


def figures(why: Detail) -> list[float]:
    """The lengths that a reason names, in mm."""
    return [float(each) for each in lengths_of(why)]


def test_a_reason_names_the_machine_its_limit_and_the_piece() -> None:
    why = why_not_jointed_edge(size(600, 80, 9), shipped_shop())
    assert words(why) == (
        "By hand: the jointer takes a thickness of 12 mm or more, and this is 9 mm"
    )
    why = why_not_planed(size(600, 320, 30), Fraction(20), shipped_shop())
    assert words(why) == "By hand: the planer takes a width of 310 mm or less, and this is 320 mm"


def test_each_machine_takes_what_lies_just_within_its_limits() -> None:
    # The limits of the shipped shop, TRADE A6; a throat of 300 bounds the fence alone.
    shop = shipped_shop()
    assert why_not_jointed_face(size(300, 200, 12), shop) is None
    assert why_not_jointed_edge(size(300, 20, 12), shop) is None
    assert why_not_planed(size(300, 310, 150), Fraction(5), shop) is None
    assert why_not_at_band_saw(size(75, 400, 150), shop) is None
    assert why_not_ripped(size(760, 900, 3), Fraction(760), shop) is None
    assert why_not_ripped(size(300, 20, 76), Fraction(6), shop) is None
    assert why_not_at_mitre_saw(size(150, 300, 90), shop) is None
    # On a sled with a base of 12: 79 - 12 - 3.
    assert why_not_on_sled(size(75, 900, 64), "sled", shop) is None


@pytest.mark.parametrize(
    ("why", "word"),
    [
        (why_not_jointed_face(size(299, 100, 20), shipped_shop()), "length"),
        (why_not_jointed_face(size(300, 19, 20), shipped_shop()), "width"),
        (why_not_jointed_face(size(300, 201, 20), shipped_shop()), "width"),
        (why_not_jointed_face(size(300, 100, 11), shipped_shop()), "thickness"),
        (why_not_jointed_edge(size(300, 19, 20), shipped_shop()), "width"),
        (why_not_planed(size(299, 100, 20), Fraction(18), shipped_shop()), "length"),
        (why_not_planed(size(300, 100, 20), Fraction(4), shipped_shop()), "thickness"),
        (why_not_planed(size(300, 100, 151), Fraction(18), shipped_shop()), "thickness"),
        (why_not_at_band_saw(size(74, 100, 20), shipped_shop()), "length"),
        (why_not_at_band_saw(size(300, 100, 151), shipped_shop()), "thickness"),
        (why_not_ripped(size(299, 100, 20), Fraction(50), shipped_shop()), "length"),
        (why_not_ripped(size(900, 900, 20), Fraction(761), shipped_shop()), "width"),
        (why_not_ripped(size(300, 100, 20), Fraction(5), shipped_shop()), "width"),
        (why_not_ripped(size(300, 100, 77), Fraction(50), shipped_shop()), "thickness"),
        (why_not_ripped(size(300, 100, 2), Fraction(50), shipped_shop()), "thickness"),
        (why_not_at_mitre_saw(size(149, 100, 20), shipped_shop()), "length"),
        (why_not_at_mitre_saw(size(300, 301, 20), shipped_shop()), "width"),
        (why_not_at_mitre_saw(size(300, 100, 91), shipped_shop()), "thickness"),
        (why_not_on_sled(size(74, 100, 20), "sled", shipped_shop()), "length"),
        (why_not_on_sled(size(300, 100, 65), "sled", shipped_shop()), "thickness"),
    ],
)
def test_each_machine_refuses_what_lies_just_beyond(why: Detail | None, word: str) -> None:
    assert f"takes a {word} of" in words(why) or f"through a {word} of" in words(why)


def test_a_limit_that_the_shop_does_not_give_is_none_and_no_machine_needs_no_words() -> None:
    shop = shipped_shop()
    jointer = replace(shop.stations["jointer"], limits={})
    boundless = replace(shop, stations={**shop.stations, "jointer": jointer})
    assert why_not_jointed_face(size(1, 5000, 1), boundless) is None
    assert why_not_jointed_face(size(600, 100, 20), shop_without("jointer")) == NO_MACHINE
    assert why_not_ripped(size(600, 100, 20), Fraction(50), shop_without("rip fence")) == ()


def test_what_is_shorter_along_the_fence_than_wide_from_it_is_not_ripped() -> None:
    # TRADE A6.2: it turns at the blade.
    assert why_not_ripped(size(400, 420, 6), Fraction(400), shipped_shop()) is None
    why = why_not_ripped(size(400, 420, 6), Fraction(401), shipped_shop())
    assert "turn at the blade" in words(why)


def test_staves_too_thin_for_the_jointer_get_their_second_edge_with_a_plane() -> None:
    # 8 thick and 1.5 to flatten: 9.5, and the jointer takes 12.
    work, _ = listed(case(shelf="8, glued from 2"))
    edge = operation(work, "shelf stave / second edge")
    assert (edge.station, edge.settings) == ("bench", ())
    assert "folded like a book with a plane" in edge.sentence
    assert [figures(detail) for detail in edge.details] == [[12, 9.5]]
    # While the boards are rough the jointer takes them.
    assert operation(work, "shelf stave / edge").station == "jointer"
    # The panel's own edge for the saw's fence, 8 thick, is planed, too.
    assert operation(work, "shelf / straight edge").station == "bench"
    assert operation(work, "shelf / width").station == "table saw"


def test_staves_as_thick_as_the_jointer_takes_go_over_it() -> None:
    work, _ = listed(case(shelf="10 1/2, glued from 2"))  # 12 with what flattening takes
    assert operation(work, "shelf stave / second edge").station == "jointer"


@pytest.mark.parametrize(("width", "station"), [(302, "planer"), (303, "bench")])
def test_a_panel_is_as_wide_as_one_pass_over_its_edges_leaves_it(width: int, station: str) -> None:
    # Staves sawn 1 over their width: a pass of 0.5 leaves each 0.5 wider than it is counted, and
    # three of (303 + 6) / 3 come to 310.5, where the planer takes 310.
    text = f"""piece Board
units mm
overall 500 wide, {width} deep, 20 high
timber beech
1 board, across, flat, 500 x {width} x 20, glued from 3
"""
    work, _ = listed(model_of(text))
    assert operation(work, "board / flatten").station == station


def test_a_board_thinner_than_usual_is_chosen_as_thick_as_the_jointer_takes() -> None:
    # 6 + 5 (A5) would be 11.
    model = case(shelf="6")
    assert blank_of(model.part("shelf"), model, shipped_shop()).thickness == 12
    assert blank_of(model.part("shelf"), model, shop_without("jointer")).thickness == 11
    work, _ = listed(model)
    assert operation(work, "shelf / face").station == "jointer"


def test_a_short_blank_is_left_as_long_as_the_machines_need() -> None:
    # Two sides of 60: 2 x 60 + 3.2 + 2 x 60 for snipe, to whole 5: 245. The machines take 300.
    model = case(high=60)
    blank = blank_of(model.part("side"), model, shipped_shop())
    assert (blank.each, float(blank.length)) == (2, 300)
    work, _ = listed(model)
    cut = operation(work, "side / rough length")
    assert "by machine has to be 300 mm long" in said(cut.details[-1])
    for what in ("face", "edge", "thickness", "width"):
        assert operation(work, f"side / {what}").station != "bench"
    # Where all is done by hand, nothing is gained by a longer piece: 2 x 60 + 3.2 + 25.
    by_hand = shop_without("jointer", "planer", "table saw")
    assert blank_of(model.part("side"), model, by_hand).length == 150


def test_a_sheet_wider_than_the_fence_goes_is_sawn_along_a_straight_edge() -> None:
    work, _ = listed(case(wide=800, high=900))
    width = operation(work, "back / width")
    assert (width.station, width.settings) == ("bench", ())
    assert "straight edge as a guide" in width.sentence
    assert figures(width.details[0]) == [760, 800]


def test_a_sheet_shorter_than_it_is_wide_is_not_ripped_at_the_fence() -> None:
    wide, _ = listed(case(wide=700, high=500))
    assert operation(wide, "back / width").station == "bench"
    square, _ = listed(case(wide=700, high=700))
    assert operation(square, "back / width").station == "table saw"


def test_a_hole_farther_in_than_the_drill_press_reaches_is_drilled_by_hand() -> None:
    # The middle of a back 700 wide is 350 from either edge; its throat is 150.
    assert under_spindle(Fraction(60), Fraction(150), "drill press", shipped_shop())
    assert not under_spindle(Fraction(59), Fraction(150), "drill press", shipped_shop())
    assert not under_spindle(Fraction(60), Fraction(151), "drill press", shipped_shop())
    work, _ = listed(case())
    holes = [each for each in work.operations if each.part == "back" and each.kind == "hole"]
    for each in holes:
        if each.station == "drill press":
            fence = setting(each, "fence").value
            assert isinstance(fence, Fraction)
            assert fence <= 150
    assert {each.station for each in holes} == {"bench", "drill press"}


def test_a_part_too_short_for_the_sled_is_cut_by_another_machine() -> None:
    post = piece().part("post")
    lap = next(feature for feature in post.features if feature.kind == "end lap")
    blade = blade_on_sled(shipped_shop())
    assert blade is not None
    for length, takes in ((Fraction(75), True), (Fraction(74), False)):
        site = Site(replace(post, length=length), lap, post.copies)
        assert blade.reaches(site) is takes
        router = router_for(site, shipped_shop())
        assert router is not None


def test_a_part_is_cut_to_length_where_its_blank_can_be_held() -> None:
    post, shop = piece().part("post"), shipped_shop()
    assert way_to_length(post, Fraction(985), shop).station == "table saw"
    by_hand = way_to_length(post, Fraction(70), shop)
    assert by_hand.station == "bench"
    assert figures(by_hand.why_not) == [75, 70]


@pytest.mark.parametrize(
    ("start", "length", "thickness", "ways"),
    [
        (0, 900, 20, (BLADE, DADO, ROUTER)),
        (10, 900, 20, (ROUTER,)),
        (0, 900, 5, (BLADE, DADO)),  # the router table takes 6
        (10, 199, 20, ()),  # and 200 along its fence
        # Grooved from end to end in its blank, which is left 300 long.
        (0, 100, 20, (BLADE, DADO, ROUTER)),
    ],
)
def test_a_groove_is_offered_to_machines_that_take_the_part(
    start: int, length: int, thickness: int, ways: tuple[str, ...]
) -> None:
    groove = Feature(
        id="groove",
        kind="long slot",
        role="groove",
        surface="F",
        along=(Fraction(start), Fraction(length)),
        across=(Fraction(10), Fraction(16)),
        depth=Fraction(3),
        fit="free",
        mate="slat",
    )
    apron = piece().part("apron")
    part = replace(apron, length=Fraction(length), thickness=Fraction(thickness))
    site = Site(part, groove, apron.copies)
    shop, display = shipped_shop(), piece().display
    offered = tuple(way for way in (BLADE, DADO, ROUTER) if cuts_by(way, site, display, shop))
    assert offered == ways
    assert cuts_by(HAND, site, display, shop)


def test_a_groove_far_from_the_edge_is_beyond_the_fence_of_the_saw() -> None:
    apron = piece().part("apron")
    for near, taken in ((Fraction(760), True), (Fraction(761), False)):
        groove = Feature(
            id="groove",
            kind="long slot",
            role="groove",
            surface="F",
            along=(Fraction(0), apron.length),
            across=(near, near + Fraction(16, 5)),  # the blade's own width: one place of the fence
            depth=Fraction(3),
            fit="free",
        )
        site = Site(replace(apron, width=Fraction(900)), groove, apron.copies)
        assert bool(cuts_by(BLADE, site, piece().display, shipped_shop())) is taken


@pytest.mark.parametrize(
    ("deep", "station", "turned"),
    [(295, "mitre saw", False), (296, "mitre saw", True), (596, "bench", False)],
)
def test_a_wide_board_is_turned_over_at_the_mitre_saw(
    deep: int, station: str, turned: bool
) -> None:
    # Rough it is 5 wider (A5); the saw cuts 300, from both sides 600 (common practice).
    notes = CASE.replace("150 x", f"{deep} x").replace("155 deep", f"{deep + 5} deep")
    work, _ = listed(model_of(notes.format(wide=700, high=720, shelf="18")))
    cut = operation(work, "side / rough length")
    assert cut.station == station
    assert any("turn the board over" in said(detail) for detail in cut.details) is turned
