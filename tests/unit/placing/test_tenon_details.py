"""What a line says of a tenon beyond its sizes, in exact places of cuts."""

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, errors, mm, model_of
from tests.property.test_placing import Solids, cells

from dryfit.joinery.feature import Feature
from dryfit.joinery.mortise_tenon import TenonSizes
from dryfit.placing.model import Joint, Model

TABLE = """piece Table base
units mm
overall {wide} wide, 500 deep, 700 high
timber oak
4 legs, upright, 60 x 60, at corners
2 aprons, across, 100 x 24, {tenon} into legs{more}, flush with top of legs
2 side rails, front to back, 100 x 24, tenon 24 long 8 thick 40 wide into legs, up 300
glue up base: legs, aprons, side rails
"""


def base(tenon: str, more: str = "") -> Model:
    return model_of(TABLE.format(tenon=tenon, more=more, wide=800))


def tenon(model: Model) -> TenonSizes:
    """The tenon of the first apron."""
    found = apron_joint(model).tenon
    assert found is not None
    return found


def apron_joint(model: Model) -> Joint:
    return next(joint for joint in model.joints if joint.guest == "front apron")


def cut(model: Model, part: str, role: str) -> list[Feature]:
    return [each for each in model.part(part).features if each.role == role]


def spaces(model: Model) -> tuple[Fraction, Fraction]:
    """The shoulders of the front apron below and above its tenons."""
    joint, copy = apron_joint(model), model.copy("front apron")
    return joint.region.low[2] - copy.box.low[2], copy.box.high[2] - joint.region.high[2]


def test_shoulders_give_width_and_place() -> None:
    model = base("tenon 24 long 8 thick", ", shoulders 5 below 65 above")
    assert spaces(model) == mm(5, 65)
    assert tenon(model).width == 30


def test_one_shoulder_and_the_width() -> None:
    assert spaces(base("tenon 24 long 8 thick 30 wide", ", shoulder 10 above")) == mm(60, 10)


def test_shoulders_that_do_not_add_up_are_told() -> None:
    text = TABLE.format(
        tenon="tenon 24 long 8 thick 40 wide", more=", shoulders 5 below 65 above", wide=800
    )
    assert codes(checked(text)) == ["shoulders-clash"]


def test_an_offset_moves_from_the_middle() -> None:
    # 24 thick, 8 of tenon: cheeks of 8 and 8, moved by 2 to the front.
    model = base("tenon 24 long 8 thick 40 wide", ", offset 2 to front")
    joint, copy = apron_joint(model), model.copy("front apron")
    assert joint.region.low[1] - copy.box.low[1] == 6
    assert copy.box.high[1] - joint.region.high[1] == 10


def test_two_tenons_stand_side_by_side_with_equal_shoulders() -> None:
    model = base("2 tenons 24 long 8 thick 25 wide")
    sizes = tenon(model)
    assert sizes.count == 2
    assert (sizes.width, sizes.between) == (Fraction(25), Fraction(33, 2))
    assert spaces(model) == (Fraction(67, 4), Fraction(67, 4))
    assert len(cut(model, "leg", "mortise")) >= 2
    assert {each.depth for each in cut(model, "apron", "tenon gap")} == {Fraction(24)}


def test_a_haunch_fills_the_edge_at_the_end_of_its_host() -> None:
    model = base("tenon 24 long 8 thick 50 wide", ", haunch 10 long")
    sizes = tenon(model)
    assert sizes.haunch is not None
    assert sizes.haunch.side == 1
    assert (sizes.haunch.length, sizes.haunch.reach) == mm(10, 45)
    (socket,) = {(each.along, each.depth) for each in cut(model, "leg", "haunch")}
    assert socket == ((Fraction(655), Fraction(700)), Fraction(11))
    above = [each for each in cut(model, "apron", "tenon shoulder") if each.depth == 45]
    assert {each.along for each in above} == {
        (Fraction(0), Fraction(14)),
        (Fraction(714), Fraction(728)),
    }


def test_a_haunch_without_sizes_is_assumed_and_takes_a_third_of_the_rail() -> None:
    model = base("tenon 24 long 12 thick", ", haunched")
    assert tenon(model).width <= 62
    assert any("haunches of the aprons are 10 long" in each.text for each in model.assumptions)


def test_a_through_tenon_takes_its_length_from_the_host_and_what_is_proud() -> None:
    text = TABLE.format(tenon="tenon 8 thick 40 wide", more=", through, proud 6", wide=812)
    model = model_of(changed(text, ("at corners", "at corners, set in 6 across")))
    apron = model.part("apron")
    assert apron.length == 812
    assert [(add.length, add.proud) for add in apron.adds] == [mm(66, 6), mm(66, 6)]
    assert apron.shoulder_length == 680
    terms = model.figures["apron.length"].terms
    assert [term.label for term in terms][1:] == [
        "tenon at R, 6 of it proud",
        "tenon at R2, 6 of it proud",
    ]
    assert {each.depth for each in cut(model, "leg", "mortise") if each.mate == "apron"} == {60}


def test_a_through_tenon_of_another_length_is_told() -> None:
    text = TABLE.format(tenon="tenon 30 long 8 thick 40 wide", more=", through", wide=800)
    assert "through-length" in codes(checked(text))


def test_wedges_and_pegs_are_bought_by_the_joint() -> None:
    model = base("tenon 8 thick 40 wide", ", through, wedged 2, pegs 8")
    rows = {(row.item, row.size, row.count) for row in model.hardware}
    assert {("wedge", "8 wide", 8), ("peg", "8 thick", 4)} <= rows


def test_peg_holes_lie_in_one_line_unless_they_are_drawn() -> None:
    # 8 mm pegs stand 12 from the shoulder; drawbored ones 1 mm nearer to it.
    plain = base("tenon 24 long 8 thick 40 wide", ", pegs 8")
    drawn = base("tenon 24 long 8 thick 40 wide", ", pegs 8, drawbored")
    assert {each.along for each in cut(plain, "apron", "peg hole")} == {mm(8, 16), mm(712, 720)}
    assert {each.along for each in cut(drawn, "apron", "peg hole")} == {mm(9, 17), mm(711, 719)}
    for model in (plain, drawn):
        (hole,) = cut(model, "leg", "peg hole")
        assert (hole.kind, hole.mate) == ("hole", None)
        assert hole.depth == 60


def test_pegs_that_take_too_much_of_the_tenon() -> None:
    text = TABLE.format(tenon="tenon 24 long 8 thick 40 wide", more=", 3 pegs 8", wide=800)
    assert "pegs-too-many" in codes(checked(text))


@pytest.mark.parametrize(
    ("tenon", "more", "code"),
    [
        ("tenon 24 long 8 thick 40 wide", ", offset 2 to left", "tenon-side-unclear"),
        ("tenon 24 long 8 thick 40 wide", ", haunch 30 long", "haunch-too-long"),
        ("housing 10", ", wedged", "detail-not-for-joint"),
        ("9 tenons 24 long 8 thick 40 wide", "", "tenon-off-rail"),
        ("tenon 24 long 8 thick", ", shoulders 60 below 60 above", "tenon-off-rail"),
    ],
)
def test_what_cannot_be_is_an_error(tenon: str, more: str, code: str) -> None:
    found = checked(TABLE.format(tenon=tenon, more=more, wide=800))
    assert code in {each.code for each in errors(found)}


@pytest.mark.parametrize(
    "more",
    ["", ", haunched", ", haunch 10 long 20 deep", ", through", ", shoulders 20 below 30 above"],
)
def test_wood_fills_every_joint_once(more: str) -> None:
    model = base("tenon 8 thick", more)
    _filled_once(model)


def test_wood_fills_rows_of_tenons_once() -> None:
    _filled_once(base("3 tenons 24 long 8 thick"))


def _filled_once(model: Model) -> None:
    solids = Solids(model)
    for joint in model.joints:
        pair = (joint.guest, joint.host)
        common = solids.copies[joint.guest].box.overlap(solids.copies[joint.host].box)
        assert common is not None
        edges = [
            cut for name in pair for box in solids.removed[name] if (cut := box.overlap(common))
        ]
        for point in cells([common, *edges]):
            filled = [name for name in pair if solids.has_wood(name, point)]
            inside = all(
                joint.region.low[axis] < point[axis] < joint.region.high[axis] for axis in range(3)
            )
            assert len(filled) <= 1, f"{joint.id} at {point}"
            assert not inside or filled, f"{joint.id} at {point}"
