"""Grooves: through ones on the saw, stopped ones on the router table between two stops."""

from dataclasses import replace
from fractions import Fraction

from tests.unit.operations.worked import listed, operation, piece, setting, shop_without

from dryfit.joinery.feature import Feature
from dryfit.plan.operation import WorkList
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
    assert groove.details == ("Go to full depth in 2 steps",)  # 6 mm a pass: TRADE B0


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
