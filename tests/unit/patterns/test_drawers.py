"""The shipped drawers at their defaults, worked by hand (TRADE B8, B15, B20, B25)."""

from fractions import Fraction

import pytest
from tests.pieces.reading import checked, model_of

from dryfit.diagnostics import Source
from dryfit.patterns import shipped, start_of
from dryfit.quantities.units import INCH
from dryfit.workshop import check, laid_out

BLOCKS = {block.name: block for block in shipped()}


def sizes(name: str) -> dict[str, tuple[Fraction, Fraction, Fraction]]:
    """Length, width and thickness of each part of a drawer 400 wide, 350 deep, 110 high."""
    model = model_of(start_of(BLOCKS[name]))
    assert model.overall == (Fraction(400), Fraction(350), Fraction(110))
    return {
        part.name.rpartition(" > ")[2]: (part.length, part.width, part.thickness)
        for part in model.parts
    }


@pytest.mark.parametrize(
    ("name", "worked"),
    [
        (
            "dovetailed drawer",
            {
                # B15: 350 less the lap of 5.  B20: the back ends 8 below the sides and stands on
                # the bottom, 110 - 8 - 10 - 6; the bottom 376 + 2 x 6 - 1.5 by 350 - 18 + 6 - 1.
                "drawer front": ("400", "110", "18"),
                "drawer side": ("345", "110", "12"),
                "drawer back": ("400", "86", "12"),
                "drawer bottom": ("386.5", "337", "6"),
            },
        ),
        (
            "plywood drawer",
            {
                # B8: rabbets 6 deep leave a lip of 6: 400 - 2 x 6 is 388.  The bottom 4 deep in
                # grooves all round with half a mm of room: 376 + 8 - 1 by 326 + 8 - 1.
                "drawer side": ("350", "110", "12"),
                "drawer front": ("388", "110", "12"),
                "drawer back": ("388", "110", "12"),
                "drawer bottom": ("383", "333", "6"),
            },
        ),
    ],
)
def test_a_drawer_is_as_worked_by_hand(name: str, worked: dict[str, tuple[str, str, str]]) -> None:
    assert sizes(name) == {
        part: tuple(Fraction(size) for size in row) for part, row in worked.items()
    }


DRAWN = """piece Chest
units inches to 1/16
overall 24 wide, 16 deep, 12 high
timber pine
2 ends, front to back, on edge, 12 x 3/4, at left and right, up 0, box joint into sides
2 sides, across, on edge, 12 x 3/4, at front and back, up 0
1 drawer, as dovetailed drawer, 20 wide, 12 deep, HIGH high, up 1
2 runners, front to back, on the inside of ends, screws, running in drawer's WHAT
glue up chest: ends, sides
"""


def test_the_end_of_a_name_inside_a_pattern_finds_it() -> None:
    findings = checked(DRAWN.replace("HIGH", "4").replace("WHAT", "sides")).findings
    told = next(each for each in findings if each.code == "unknown-name")
    assert "did you mean `drawer side`?" in {hint.message for hint in told.hints}


def test_a_range_is_told_in_the_units_of_the_notes() -> None:
    # 70 mm is 2 3/4 in, 220 mm is 8 11/16 in, by 25.4 to the inch and to the nearest 1/16.
    findings = checked(DRAWN.replace("HIGH", "2").replace("WHAT", "drawer sides")).findings
    told = next(each for each in findings if each.code == "parameter-out-of-range")
    assert 'is 2"; it is made for 2 3/4" to 8 11/16"' in told.message


DRAWER_OF_SHEET = """\
piece Open box with a drawer
units {units}
overall 16 in wide, 12 in deep, 6 in high
timber maple
have 1 sheet of birch ply, {sheet}
2 sides, upright, facing side, depth x 3/4 in, at left and right
1 top, across, flat, depth x 3/4 in, into sides, housing 1/4 in, flush top
1 bottom, across, flat, depth x 3/4 in, into sides, housing 1/4 in, flush bottom
bay = opening between sides and top and bottom
1 drawer, as dovetailed drawer, in bay, gap 1/16 in across, 11 in deep, 4 3/8 in high, \
0 from front, 0 above the bottom of bay
glue up case: sides, top, bottom
"""


@pytest.mark.parametrize(
    ("units", "sheet", "thick"),
    [
        ("inches", "48 x 24 x 1/4, measures 15/64", Fraction(15, 64) * INCH),
        ("inches", "48 x 24 x 1/4", Fraction(1, 4) * INCH),
        ("mm", "1220 x 610 x 6, measures 5.7", Fraction("5.7")),
        ("mm", "1220 x 610 x 9", Fraction(6)),
    ],
)
def test_a_drawer_bottom_is_as_thick_as_the_sheet_on_hand(
    units: str, sheet: str, thick: Fraction
) -> None:
    """A groove is cut to what the sheet measures (TRADE A5.5); 9 mm is no sheet of 6 mm."""
    notes = DRAWER_OF_SHEET.format(units=units, sheet=sheet)
    found = check(Source("drawer.dryfit", notes), None, {})
    assert not found.failed, found.findings
    assert found.model is not None
    (bottom,) = (part for part in found.model.parts if part.name.endswith("drawer bottom"))
    assert bottom.thickness == thick
    told = [each.text for each in found.model.assumptions if "drawer bottom: it is of" in each.text]
    assert bool(told) == (thick not in (6, Fraction(1, 4) * INCH))
    laid = laid_out(found)[1]
    assert laid is not None
    assert (laid.verdict == "enough") == (thick != 6)


def test_in_inches_a_drawer_is_of_wood_as_it_is_sold_there() -> None:
    """3/4, 1/2 and 1/4 in stand for 18, 12 and 6 mm (common practice), and it is said."""
    notes = DRAWER_OF_SHEET.format(units="inches", sheet="48 x 24 x 1/4")
    model = check(Source("drawer.dryfit", notes), None, {}).model
    assert model is not None
    thick = {part.name.rpartition(" > ")[2]: part.thickness / INCH for part in model.parts}
    assert thick["drawer front"] == Fraction(3, 4)
    assert thick["drawer side"] == thick["drawer back"] == Fraction(1, 2)
    assert thick["drawer bottom"] == Fraction(1, 4)
    assert any('wall 1/2" for 12 mm' in each.text for each in model.assumptions)


def test_a_drawer_may_be_told_its_bottom_in_inches() -> None:
    notes = DRAWER_OF_SHEET.format(units="inches", sheet="48 x 24 x 1/4")
    found = check(
        Source("drawer.dryfit", notes.replace("drawer, in", "drawer, wall 3/8, floor 1/4, in")),
        None,
        {},
    )
    assert not found.failed, found.findings
