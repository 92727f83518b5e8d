"""Bought things: they take up space, are never milled, and make the shopping list."""

from fractions import Fraction

from tests.pieces.reading import changed, checked, codes, errors, mm, model_of

from dryfit.geometry.box import Box
from dryfit.operations import work_list

CART = """\
piece Cart
units mm
overall 600 wide, 300 deep, 500 high
timber ash
bought 4 casters, 108 high, 40 wide, 40 thick, under bottom at corners, set in 10
bought 2 knobs, 30 dia, for sides, order first
2 sides, upright, facing side, 300 x 18, at left and right, glued from 3
1 bottom, flat, 300 x 18, into sides, housing 6, flush bottom, glued from 3
1 top, flat, 300 x 18, into sides, housing 6, flush top, glued from 3
glue up case: sides, top, bottom
finish oil varnish, 2 coats, 24 h apart
"""


FRAMES = """\
pattern frame with width, depth, height
2 stiles, upright, 20 x 10, at left and right
end
2 bay frames, as frame, 200 wide, 10 deep, 200 high, spread across, 0 from front, up 150
"""


def test_casters_stand_on_the_floor_and_carry_the_case() -> None:
    model = model_of(CART)
    casters = next(thing for thing in model.bought if thing.name == "caster")
    boxes = {copy.name: copy.box for copy in casters.copies}
    assert boxes["front left caster"] == Box(mm(10, 10, 0), mm(50, 50, 108))  # type: ignore[arg-type]
    assert boxes["back right caster"] == Box(mm(550, 250, 0), mm(590, 290, 108))  # type: ignore[arg-type]
    assert model.part("side").length == 500 - 108


def test_bought_things_are_no_parts_and_have_no_milling() -> None:
    model, shop = model_of(CART), checked(CART).shop
    assert [part.name for part in model.parts] == ["side", "bottom", "top"]
    assert shop is not None
    work, _ = work_list(model, shop)
    assert work is not None
    ids = [op.id for op in work.operations if op.id.startswith(("caster", "knob"))]
    assert ids == ["caster / fit", "knob / fit"]


def test_the_shopping_list_has_things_glue_and_finish() -> None:
    rows = {row.item: row for row in model_of(CART).hardware}
    assert (rows["caster"].count, rows["caster"].purpose) == (4, "under the bottom")
    assert rows["caster"].size == "40 wide x 108 high x 40 deep"
    assert (rows["knob"].count, rows["knob"].size) == (2, "30 dia")
    assert rows["knob"].purpose == "sides; order first"
    # Four housings 6 deep for boards 18 thick, bottom and both walls: 4 x (18 + 2 x 6) x 300 mm2;
    # two lines between the staves of each of two boards 576 long and two 392 long, 18 thick:
    # 36000 + 69696 mm2 at 180 g a square metre are 19 g.
    assert rows["white glue"].size == "about 20 g"
    area = sum((c.area for c in model_of(CART).coatings), Fraction(0))
    assert rows["oil varnish"].size == f"about {-(-area * 2 // 500_000) * 50} ml"


def test_a_bought_thing_in_the_way_is_an_overlap() -> None:
    found = checked(changed(CART, ("under bottom at corners, set in 10", "at corners, up 100")))
    assert {"overlap"} == {finding.code for finding in errors(found)}


def test_without_a_size_little_room_is_assumed_and_said() -> None:
    model = model_of(changed(CART, (", 40 wide, 40 thick", "")))
    casters = next(thing for thing in model.bought if thing.name == "caster")
    assert casters.copies[0].box.extent(0) == 50
    assert any("casters take up 50" in each.text for each in model.assumptions)


def test_lower_casters_make_higher_sides() -> None:
    text = changed(CART, ("set in 10", "set in 10, up 0"), ("108 high", "100 high"))
    assert "overall-not-met" not in codes(checked(text))
    assert model_of(text).part("side").length == 400


def test_a_bought_thing_can_stand_in_an_opening() -> None:
    text = changed(
        CART,
        ("finish oil", "bay = opening between sides and top and bottom\nfinish oil"),
        (
            "bought 2 knobs",
            "bought 1 basket, 200 high, in bay, gap 5 across, 250 deep\nbought 2 knobs",
        ),
    )
    basket = next(thing for thing in model_of(text).bought if thing.name == "basket")
    # The bay is 564 wide between sides of 18; 5 are left at either side.
    assert basket.purpose == "in the bay"
    assert basket.copies[0].box.extent(0) == 554


def test_in_inches_glue_and_finish_are_bought_by_ounces() -> None:
    text = changed(
        CART,
        ("units mm", "units inches"),
        ("overall 600 wide, 300 deep, 500 high", "overall 24 wide, 12 deep, 20 high"),
    )
    text = changed(text, ("108 high, 40 wide, 40 thick", "4 high, 1 1/2 wide, 1 1/2 thick"))
    text = changed(
        text, ("set in 10", "set in 1/2"), ("300 x 18", "12 x 3/4"), ("housing 6", "housing 1/4")
    )
    rows = {row.item: row.size for row in model_of(changed(text, ("30 dia", "1 1/4 dia"))).hardware}
    # 2 x 426 and 2 x 604.5 square inches, two coats at 10 square metres a litre: 266 ml.
    assert (rows["white glue"], rows["oil varnish"]) == ("about 1 oz", "about 9 fl oz")


def test_what_is_bought_for_instances_of_a_pattern_names_them_as_the_line_does() -> None:
    text = changed(
        CART,
        ("bought 2 knobs", "bought 4 hinges, for bay frames\nbought 2 knobs"),
        (
            "glue up case",
            f"{FRAMES}glue up case",
        ),
    )
    found = checked(text)
    assert found.model is not None, codes(found)
    hinge = next(row for row in found.model.hardware if row.item == "hinge")
    assert hinge.purpose == "bay frames"


MIRROR = """\
piece Mirror
units mm
overall 420 wide, 22 deep, 700 high
timber walnut
2 stiles, upright, facing front, 60 x 22, at left and right, 0 from front
2 rails, across, on edge, 70 x 22, at bottom and top, 0 from front
rails crossing stiles: half lap, stiles show
light = opening between stiles and rails
bought 1 mirror, 4 thick, in light, gap 1
glue up frame: stiles, rails
"""


def _mirror(words: str) -> tuple[str, tuple[Fraction, ...]]:
    model = model_of(changed(MIRROR, ("4 thick, in light, gap 1", words)))
    (thing,) = model.bought
    return thing.size, tuple(thing.copies[0].box.extent(axis) for axis in range(3))


def test_sizes_that_are_worked_out_are_bought_by() -> None:
    """The light is 420 - 2 x 60 wide and 700 - 2 x 70 high; 1 is left all round."""
    assert _mirror("4 thick, in light, gap 1, 0 from front") == (
        "298 wide x 558 high x 4 thick",
        mm(298, 4, 558),
    )


def test_wide_high_and_deep_of_a_bought_thing_are_those_of_the_piece() -> None:
    for words in (
        "4 thick, 250 wide, 500 high",
        "500 high, 250 wide, 4 deep",
        "4 thick, 250 x 500",
    ):
        assert _mirror(f"{words}, in light") == ("250 wide x 500 high x 4 thick", mm(250, 4, 500))
    assert _mirror("4 thick, 250 wide, in light, gap 1 up and down")[1] == mm(250, 4, 558)
    assert errors(checked(changed(MIRROR, ("4 thick, in", "4 thick, 500 wide, in"))))


def test_a_diameter_of_what_takes_up_room_stays_on_the_list() -> None:
    text = changed(CART, ("108 high, 40 wide, 40 thick", "108 high, 60 dia"))
    caster = next(thing for thing in model_of(text).bought if thing.name == "caster")
    assert caster.size == "108 high, 60 dia"
    assert [caster.copies[0].box.extent(axis) for axis in range(3)] == [60, 60, 108]


def test_a_size_that_two_in_a_row_say_already_is_said_twice() -> None:
    for line in ("1 top, flat, 300 x 18, 20 thick,", "1 top, flat, 300 x 18, 310 wide,"):
        assert codes(checked(changed(CART, ("1 top, flat, 300 x 18,", line)))) == ["size-twice"]
    twice = changed(MIRROR, ("4 thick, in", "300 wide, 320 x 580, 4 thick, in"))
    assert "size-twice" in codes(checked(twice))


def test_the_glue_between_staves_is_bought() -> None:
    """Seven lines of 1800 x 30 mm at 180 g a square metre are 68 g."""
    text = (
        "piece Board\nunits mm\noverall 1800 wide, 900 deep, 30 high\ntimber oak\n"
        "1 board, flat, across, 30 thick, glued from 8 staves\n"
    )
    rows = {row.item: row.size for row in model_of(text).hardware}
    assert rows["white glue"] == "about 70 g"


def test_what_is_bought_for_a_face_says_which() -> None:
    model = model_of("""
piece Hall shelf
units mm
overall 620 wide, 190 deep, 300 high
timber cherry
2 sides, upright, facing side, 190 x 16, at left and right
1 rail, across, facing front, 90 x 18, dowels into sides, up 40, at back, set back 10
bought 4 coat hooks, spread across, on the front of rail
bought 1 label, 2 thick, 60 long, 30 wide, behind rail, up 60
glue up shelf: sides, rail
""")
    assert [thing.purpose for thing in model.bought] == [
        "on the front of the rail",
        "on the back of the rail",
    ]
