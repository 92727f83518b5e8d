"""What tips (H40, H41), and knee room (H35): just beyond the figure, and just within."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import FILES, checked, model_of

from dryfit.checks.drawers_out import check_drawers_out
from dryfit.diagnostics import Diagnostic
from dryfit.geometry.box import spanning
from dryfit.placing.weights import weight_of
from dryfit.quantities.units import POUND

CASE = """piece Bookcase
overall 600 wide, {deep} deep, {high} high
timber pine
{words}
2 sides, upright, {deep} x 18, facing side, at left and right
2 shelves, flat, {deep} x 18, into sides, housing 6, up 0 and {top}
glue up case: sides, shelves
"""
TABLE = """piece {name}
overall 900 wide, 900 deep, {high} high
timber ash
{words}
4 legs, upright, 60 x 60, at corners, set in {inset}
2 aprons, across, {apron} x 22, tenon 20 long 8 thick 40 wide into legs
2 rails, front to back, {apron} x 22, dowels into legs
1 top, flat, 20 thick, onto aprons and rails: buttons
glue up base: legs, aprons, rails
"""
CHEST = """piece Chest
overall 500 wide, 300 deep, 800 high
timber pine
{words}
2 sides, upright, 300 x 18, facing side, at left and right
1 top, flat, 300 x 18, into sides, housing 6, flush top
1 bottom, flat, 300 x 18, into sides, housing 6, flush bottom
1 divider, flat, 300 x 18, into sides, housing 6, up 560
bay = opening between sides and divider and top
1 drawer, as dovetailed drawer, in bay, gap 1, up 578, {deep} deep
glue up case: sides, top, bottom, divider
"""


def rows(text: str, *rules: str) -> list[Diagnostic]:
    return [each for each in checked(text).findings if each.rule in rules]


def case(deep: int, high: int, words: str = "") -> list[Diagnostic]:
    return rows(CASE.format(deep=deep, high=high, top=high - 18, words=words), "H40", "H41")


def table(inset: int, high: int = 600, apron: int = 60, name: str = "Stand") -> list[Diagnostic]:
    text = TABLE.format(inset=inset, high=high, apron=apron, name=name, words="")
    return rows(text, "H35", "H40", "H41")


@pytest.mark.parametrize(
    ("deep", "high", "fires"),
    [(199, 1200, True), (200, 1200, False), (160, 1000, False), (90, 1200, False)],
)
def test_less_deep_than_a_sixth_of_over_a_metre(deep: int, high: int, fires: bool) -> None:
    assert [each.code for each in case(deep, high)] == ["may-tip"] * fires


def test_what_is_fixed_to_the_wall_or_hangs_there_does_not_tip() -> None:
    assert case(160, 1200, "fixed to the wall") == []
    assert case(160, 1200, "hangs on a brick wall, 300 up") == []


@pytest.mark.parametrize(("inset", "fires"), [(150, False), (151, True)])
def test_a_top_further_out_than_a_quarter_of_its_base(inset: int, fires: bool) -> None:
    # 900 - 2 x 150 = 600 between the outsides of the legs: a quarter is 150.
    found = table(inset)
    assert [each.code for each in found] == ["top-far-out"] * 2 * fires
    if fires:
        assert found[0].figures == {"overhang": Fraction(151), "base": Fraction(598)}
        assert "to the left and right" in found[0].message


@pytest.mark.parametrize(
    ("name", "apron", "fires"),
    [("Desk", 100, False), ("Desk", 101, True), ("Sideboard", 150, False)],
)
def test_knee_room_under_the_apron_of_a_desk(name: str, apron: int, fires: bool) -> None:
    found = table(60, high=730, apron=apron, name=name)
    assert [each.code for each in found] == ["knee-room"] * fires


@pytest.mark.parametrize(("wide", "fires"), [(599, False), (600, True)])
def test_nobody_sits_at_a_bedside_table(wide: int, fires: bool) -> None:
    text = TABLE.format(name="Bedside table", inset=60, high=730, apron=101, words="")
    found = rows(text.replace("900 wide", f"{wide} wide"), "H35")
    assert [each.code for each in found] == ["knee-room"] * fires


def test_a_low_table_needs_no_knee_room() -> None:
    assert table(60, high=450, apron=110, name="Tea table") == []


def test_a_child_on_a_drawer_tips_a_light_chest() -> None:
    (row,) = rows(CHEST.format(words="for children", deep=280), "H40")
    assert row.code == "drawers-tip"
    assert "a child of 27 kg leaning on one" in row.message
    assert rows(CHEST.format(words="", deep=280), "H40") == []
    assert rows(CHEST.format(words="for children\nfixed to the wall", deep=280), "H40") == []


def test_the_moments_by_hand() -> None:
    # The drawer's own weight and 8.5 lb a cubic foot, its middle two thirds of its depth further
    # out; the case's parts each at the middle of their 300.
    model = model_of(CHEST.format(words="", deep=280))
    drawer = [c for part in model.parts if part.opening for c in part.copies]
    box = spanning(tuple(copy.box for copy in drawer))
    litres = box.volume() / Fraction(10**6)
    filled = litres * Fraction(85, 10) * POUND / (Fraction(3048, 1000) ** 3)
    assert float(filled) == pytest.approx(float(litres) * 0.13616, rel=1e-4)
    heavy = weight_of(model, (copy.name for copy in drawer)).kilograms + filled
    lever = Fraction(2, 3) * box.extent(1) - (box.low[1] + box.high[1]) / 2
    parts = [copy for part in model.parts if not part.opening for copy in part.copies]
    own = weight_of(model, (copy.name for copy in parts)).kilograms
    stands = own * 150 > heavy * lever
    base = spanning(tuple(copy.box for copy in parts if copy.box.low[2] == 0))
    assert stands
    assert list(check_drawers_out(model, base)) == []


def test_no_example_tips() -> None:
    names = [path.stem for path in FILES.values() if path.parent.name == "examples"]
    for name in names:
        assert rows(FILES[name].read_text(encoding="utf-8"), "H40", "H41") == []


def test_splayed_legs_stand_further_apart() -> None:
    # Set in 80 with 8 degrees of splay on 404 mm: the feet stand some 57 mm further out.
    text = FILES["splayed_bench"].read_text(encoding="utf-8").replace("80 across", "150 across")
    upright = text.replace(", splayed 8 degrees to the sides", "")
    assert "to the left and right" in " ".join(row.message for row in rows(upright, "H41"))
    assert "to the left and right" not in " ".join(row.message for row in rows(text, "H41"))


def test_a_case_of_a_wood_that_no_table_weighs_is_no_case_without_weight() -> None:
    # Of mahogany the tables hold no specific gravity on this basis.
    text = CHEST.format(words="", deep=280).replace("timber pine", "timber mahogany")
    assert rows(text, "H40") == []
    (row,) = rows(text.replace("mahogany", "mahogany\nfor children"), "H40")
    assert "taken as light as eastern white pine" in row.message
    assert row.span is not None
    assert row.span.text().startswith("1 drawer")
