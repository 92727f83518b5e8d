"""Blanks of lipped sheets: cores by TRADE A10, strips of solid wood, banding by the metre."""

from dataclasses import replace
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st
from tests.pieces.reading import checked, mm
from tests.unit.operations.worked import shipped_shop

from dryfit.diagnostics import Severity
from dryfit.placing.lip import Lip, added
from dryfit.placing.model import Model, Part
from dryfit.placing.strips import milled_parts
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.needs import needs_of

CASE = """piece Lipped shelves
units mm
overall 620 wide, 250 deep, 700 high
timber oak
2 sides, upright, facing side, of birch ply, 250 x 18, at left and right, {sides}
3 shelves, across, flat, of birch ply, 250 x 18, between sides, housing 6, up 40, 240 and 440, {on}
glue up case: sides, shelves
finish hard wax oil, 2 coats, 8 h apart
"""
OAK = "have 1 board of oak, 2000 x 120 x 27, rough\n"


def case(on: str, *, sides: str = "edge banded at front and top", stock: str = "") -> Model:
    found = checked(CASE.format(on=on, sides=sides) + stock)
    assert found.model is not None, found.findings
    assert not any(each.severity is Severity.WARNING for each in found.findings)
    return found.model


def blanks(model: Model) -> dict[str, Blank]:
    return {blank.part.name: blank for blank in needs_of(model, shipped_shop())[0].blanks}


def sizes(part: Part) -> tuple[Fraction, ...]:
    return part.length, part.width, part.thickness


def test_the_core_is_cut_out_of_the_sheet_and_the_strip_out_of_a_board() -> None:
    # TRADE A10: core width = W - n_lip * t_lip = 250 - 2 * 8 = 234; each edge of the sheet is
    # trimmed by 3 (A5), so that it is sawn 602 x 240 first.  A strip is 596 + 2 * 10 long and
    # 18 + 2 * 1 wide (common practice).
    found = blanks(case("lipped 8 thick of oak at front and back"))
    shelf, strip = found["shelf"], found["shelf lip"]
    assert sizes(shelf.part) == mm(596, 234, 18)
    assert [shelf.length, shelf.width, shelf.count] == [Fraction(602), Fraction(240), 3]
    assert sizes(strip.part) == mm(616, 20, 8)
    assert (strip.part.timber, strip.count, len(strip.pieces)) == ("oak", 6, 6)


def test_all_round_both_sizes_lose_two_lips_and_end_strips_are_as_long_as_the_core_is_wide() -> (
    None
):
    # 596 - 2 * 8 = 580 by 250 - 2 * 8 = 234; strips at the ends 234 + 20 long.
    found = blanks(case("lipped 8 of oak all round"))
    assert sizes(found["shelf"].part) == mm(580, 234, 18)
    assert sizes(found["shelf end lip"].part) == mm(254, 20, 8)
    assert sizes(found["shelf edge lip"].part) == mm(616, 20, 8)


def test_banding_is_bought_by_the_metre_and_has_no_blank() -> None:
    # Of two sides 700 x 250 the front and the top, each 10 longer at either end: what covers the
    # top, an end, is as long as the core is wide, 249.5.  2 * (720 + 269.5) * 1.1 = 2177 mm.
    model = case("lipped 8 of oak at front")
    assert sizes(blanks(model)["side"].part) == (Fraction(1399, 2), Fraction(499, 2), Fraction(18))
    assert "side lip" not in blanks(model)
    (row,) = [each for each in model.hardware if each.item == "edge banding"]
    assert row.size == "at least 20 mm wide, 0.5 mm thick, about 2.5 m"
    assert row.purpose == "sides"


def test_strips_are_resawn_out_of_boards_that_are_thick_enough() -> None:
    # 27 rough less 2 to true it gives 25, and two leaves of 8 + 1.5 with a kerf of 1.3 take 20.3.
    strip = blanks(case("lipped 8 of oak at front", stock=OAK))["shelf lip"]
    assert strip.leaves == 2
    assert blanks(case("lipped 8 of oak at front"))["shelf lip"].leaves == 1


SHELF = next(part for part in case("lipped 8 of oak at front").parts if part.name == "shelf")
SURFACES = ("E", "E2", "R", "R2")


@given(
    st.lists(
        st.tuples(st.sampled_from(SURFACES), st.fractions(Fraction(1, 2), 40), st.booleans()),
        unique_by=lambda lip: lip[0],
    )
)
def test_core_and_lips_make_up_the_size_in_the_notes(
    lips: list[tuple[str, Fraction, bool]],
) -> None:
    span = SHELF.spans[0]
    lipped = tuple(Lip(surface, thick, "oak", banded, span) for surface, thick, banded in lips)
    shelf = replace(SHELF, lips=lipped)
    strips = milled_parts((shelf,), shipped_shop().allowances)
    core = strips[-1]
    assert core.length + added(lipped, 0) == SHELF.length
    assert core.width + added(lipped, 1) == SHELF.width
    solid = [lip for lip in lipped if not lip.banded]
    made = sum(len(part.copies) for part in strips[:-1])
    assert made == len(solid) * len(SHELF.copies)
    # What goes across the grain covers the core, what goes along it covers that and the ends.
    along = {part.length for part in strips[:-1]}
    assert along <= {SHELF.length + 20, core.width + 20}


def test_a_single_strip_is_resawn_too_and_leaves_a_leaf_over() -> None:
    # Else the planer would take 21 mm off a board of 27.
    sides = blanks(case("lipped 8 of oak at front", sides="lipped 6 of oak at front", stock=OAK))
    assert sides["side lip"].leaves == 2
    one = (
        CASE.replace("3 shelves", "1 shelf")
        .replace("sides, shelves", "sides, shelf")
        .replace("up 40, 240 and 440", "up 40")
    )
    found = checked(one.format(on="lipped 6 of oak at front", sides="banded at front") + OAK)
    assert found.model is not None
    alone = blanks(found.model)["shelf lip"]
    assert (alone.leaves, alone.each, alone.count) == (2, 1, 1)


def test_a_core_that_was_spoiled_takes_its_lip_with_it() -> None:
    again = case("lipped 6 of oak at front", stock="spoiled: 1 shelf\n")
    needed = needs_of(again, shipped_shop())[0].blanks
    spares = [each for each in needed if each.what == "spare" and not each.if_room]
    assert sorted(each.part.name for each in spares) == ["shelf", "shelf lip"]
