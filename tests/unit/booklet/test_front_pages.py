"""What the first pages tell of finish, limits, measurements, orders and wood."""

from dataclasses import replace

from tests.pieces.reading import changed, checked, model_of
from tests.unit.booklet import planned
from tests.unit.operations.worked import shipped_shop

from dryfit import workshop
from dryfit.booklet.bench import Bench
from dryfit.booklet.cautions import table
from dryfit.booklet.circumstances import circumstances
from dryfit.booklet.finish_page import finishes, left_bare
from dryfit.booklet.labels import label
from dryfit.booklet.parts_list import part_rows
from dryfit.booklet.spares import spare_wood
from dryfit.booklet.text import Say, plain
from dryfit.booklet.wood_needed import wood_needed
from dryfit.placing.model import Model

BOX = """\
piece Box
units mm
overall 400 wide, 200 deep, 300 high
timber maple
at most 310 high, the shelf above it
ply = 6
measured ply = 5.6
2 sides, upright, facing side, 200 x 16, at left and right
1 top, flat, across, 200 x 16, into sides, housing 5, flush top
1 bottom, flat, across, 200 x 16, into sides, housing 5, flush bottom
1 back, upright, ply thick, of ply, inside sides and top and bottom, groove 5, 8 from back
bought 2 handles, 90 wide, for sides, order after measured
glue up case: sides, top, bottom, back
finish outside of sides with oil varnish, 2 coats, 24 h apart
no finish on back
"""


def bench(model: Model) -> Bench:
    return Bench(model, planned.plan(), planned.shop(), label(model), Say(model.display))


def test_the_finish_page_names_surfaces_and_what_stays_bare() -> None:
    model = model_of(BOX)
    assert finishes(bench(model)) == (
        ("oil varnish, 2 coats, 24 h apart", "the outside of the side"),
    )
    assert left_bare(model) == "top, bottom, back, sides but for the outside"


def test_with_one_finish_for_all_nothing_is_bare_and_without_any_nothing_is_said() -> None:
    whole = changed(BOX, ("outside of sides with ", ""), ("no finish on back\n", ""))
    assert left_bare(model_of(whole)) == ""
    assert left_bare(model_of(BOX[: BOX.index("finish outside")])) == ""


def test_limits_measurements_place_and_orders_are_to_be_kept_in_mind() -> None:
    found = checked(changed(BOX, ("timber maple", "timber white oak\noutdoors")))
    assert found.model is not None
    said = circumstances(found.model, found.findings)
    assert said[0] == "The piece stands outdoors."
    limit = "10 mm below the limit of 310 mm (the shelf above it)."
    assert f"The piece: height comes to 300 mm, {limit}" in said
    assert "Ply: measured 5.6 mm, planned 6 mm." in said
    assert "Order 2 handles, 90 wide, when the place is measured." in said


def test_a_measured_sheet_keeps_its_tenth_in_the_cut_list() -> None:
    model = model_of(BOX)
    listed = part_rows(model, label(model), Say(model.display), shipped_shop())
    rows = {row.name: plain(row.thickness) for row in listed}
    assert rows == {"sides": "16", "top": "16", "bottom": "16", "back": "5.6"}


def test_sheets_are_told_by_area() -> None:
    """378 wide between shoulders of 368 and 278 high between 268: 0.105 square metres."""
    solid, sheet = wood_needed(model_of(BOX), Say(model_of(BOX).display))
    assert solid.customary.endswith("board feet")
    assert plain(sheet.timber) == "ply, 5.6 mm thick"
    back = model_of(BOX).part("back")
    assert sheet.amount == back.length * back.width
    assert (sheet.metric, sheet.customary) == ("0.10 m²", "1.1 square feet")


def test_no_source_is_marked_from_memory_twice() -> None:
    for caution in table():
        assert caution.cited.count("memory") <= 1
        assert "memory" in caution.cited or caution.read or caution.source == "common practice"


def test_test_pieces_and_a_spare_are_listed_beside_the_wood() -> None:
    """TRADE A3.4 and H55: one test piece of each thickness, one spare of what has most cuts."""
    found = checked(BOX[: BOX.index("bought")] + "glue up case: sides, top, bottom, back")
    plan, _ = workshop.plan(found, lambda _: None)
    assert plan is not None
    assert found.model is not None
    said = spare_wood(replace(bench(found.model), plan=plan, shop=shipped_shop()))
    test_pieces, spare = (plain(text) for text in said)
    assert test_pieces.startswith(
        "Test pieces: a strip of each thickness that is planed, 16, at least 300 mm long."
    )
    # A side has two housings and a groove; it is 300 long, and 120 more for snipe.
    assert spare.startswith("A spare: one more blank of the side, ")
